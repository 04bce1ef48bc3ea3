"""The arithmetic of a circuit: each figure with its working, and what is missing."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, render_template, url_for
from flask.typing import ResponseReturnValue

from app.domain.circuits import (
    CAME,
    CannotTell,
    Figure,
    Part,
    Working,
    circuit_figures,
)
from app.domain.record import Circuit, Record
from app.domain.results import MeasuredBeside, measured_beside, results_of
from app.domain.tables import AMENDMENT
from app.web.addresses import edit_url, item_url
from app.web.result_rows import HEADS as RESULT_HEADS
from app.web.result_rows import result_rows
from app.web.session import needed, supply

bp = Blueprint("figures", __name__, url_prefix="/homes/<home>/circuits/<ref>/figures")
SIGNS = {"within": "Within", "beyond": "Beyond", "open": "Open"}
HEADS = ("What", "Number", "Where from")


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkingView:
    """One calculation.

    Attributes:
        label: What it gives.
        shown: Its result, rounded.
        formula: The formula.
        put_in: The formula with its numbers.
        figures: What went in: what, number, where from.
        rounding: How it is rounded.
        source: Where the formula stands.
    """

    label: str
    shown: str
    formula: str
    put_in: str
    figures: tuple[tuple[str, str, str], ...]
    rounding: str
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PartView:
    """One question.

    Attributes:
        id: Its anchor.
        title: The question.
        sign: Within, Beyond, Open, or empty where no limit applies.
        says: The answer.
        assumes: All that is assumed in it.
        workings: Its calculations.
        missing: What is missing: label and the address where it is written down.
    """

    id: str
    title: str
    sign: str
    says: str
    assumes: tuple[str, ...]
    workings: tuple[WorkingView, ...]
    missing: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FiguresPage:
    """The figures of a circuit.

    Attributes:
        title: Heading.
        lede: How many questions are open, beyond and within.
        parts: The questions.
        measured: What was measured, copied from papers, beside these figures.
        results: Every result of the circuit over time.
        result_heads: Heads of that table.
        heads: Heads of the tables of what went in.
        edition: Which edition the figures are of.
        circuit: Name and address of the circuit.
        tables: Address of the reference tables.
    """

    title: str
    lede: str
    parts: tuple[PartView, ...]
    measured: tuple[MeasuredBeside, ...]
    results: tuple[tuple[object, ...], ...]
    result_heads: tuple[str, ...]
    heads: tuple[str, ...]
    edition: str
    circuit: tuple[str, str]
    tables: str


@bp.get("/")
def show(home: str, ref: str) -> ResponseReturnValue:
    """Show the figures of a circuit."""
    net = supply(home)
    circuit = needed(net.record, Circuit, ref)
    answer = circuit_figures(net, circuit)
    parts, record = answer.parts, net.record
    page = FiguresPage(
        title=f"Figures of {circuit.title}",
        lede=_lede(parts),
        parts=tuple(_part(net.record, part) for part in parts),
        measured=measured_beside(record, circuit, answer),
        results=result_rows(record, results_of(record, circuit.ref), of=False),
        result_heads=("Paper", *RESULT_HEADS[1:]),
        heads=HEADS,
        edition=AMENDMENT,
        circuit=(circuit.title, item_url(home, circuit)),
        tables=url_for("tables.index"),
    )
    return render_template("pages/circuits/figures.html", page=page)


def _lede(parts: tuple[Part, ...]) -> str:
    count = {sign: sum(part.sign == sign for part in parts) for sign in SIGNS}
    return (
        f"Calculated from your record: {count['beyond']} beyond a limit, "
        f"{count['within']} within, {count['open']} open. Nothing here was measured "
        "unless it says so."
    )


def _part(record: Record, part: Part) -> PartView:
    return PartView(
        id=part.code,
        title=part.title,
        sign=SIGNS.get(part.sign or "", ""),
        says=part.says,
        assumes=part.assumes,
        workings=tuple(_working(working) for working in part.workings),
        missing=tuple(dict.fromkeys(_missing(record, part))),
    )


def _missing(record: Record, part: Part) -> list[tuple[str, str]]:
    both = [o for o in (part.found, part.limit) if isinstance(o, CannotTell)]
    home = record.home
    return [
        (
            f"Write down {need.label}",
            url_for("homes.edit", home=home.ref)
            if need.ref == home.ref
            else edit_url(home.ref, record.by_ref[need.ref]),
        )
        for outcome in both
        for need in outcome.needs
        if need.ref == home.ref or need.ref in record.by_ref
    ]


def _working(working: Working) -> WorkingView:
    return WorkingView(
        label=working.label,
        shown=working.shown,
        formula=working.formula,
        put_in=working.put_in,
        figures=tuple(_figure(figure) for figure in working.figures),
        rounding=working.rounding,
        source=working.source,
    )


def _figure(figure: Figure) -> tuple[str, str, str]:
    basis = f" ({figure.basis})" if figure.basis else ""
    came = CAME[figure.came].capitalize()
    return figure.label, figure.shown, f"{came}: {figure.source}{basis}"
