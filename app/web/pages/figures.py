"""The figures of a circuit, each with its working."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, render_template, url_for
from flask.typing import ResponseReturnValue

from app.domain.circuits import ORIGINS, Check, Input, Working, circuit_figures
from app.domain.record import Circuit
from app.domain.tables import NEWER
from app.errors import NotFoundError
from app.web.addresses import item_url
from app.web.session import supply

bp = Blueprint("figures", __name__, url_prefix="/homes/<home>/circuits/<ref>/figures")


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkingView:
    """One figure.

    Attributes:
        title: What it is.
        shown: The figure, or what it needs.
        formula: How it is worked out.
        inputs: What was put in: name, value, where from.
        source: Where the formula stands.
    """

    title: str
    shown: str
    formula: str
    inputs: tuple[tuple[str, str, str], ...]
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckView:
    """One figure held against another.

    Attributes:
        title: The question.
        answer: Yes, no, or what is needed, in a sentence.
        workings: Both figures.
        note: What else to know.
    """

    title: str
    answer: str
    workings: tuple[WorkingView, ...]
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FiguresPage:
    """The figures of a circuit.

    Attributes:
        title: Heading.
        circuit: Name and address of the circuit.
        checks: Figures against their limits.
        workings: Figures by themselves.
        newer: Which edition the values are of.
        tables: Address of the reference tables.
    """

    title: str
    circuit: tuple[str, str]
    checks: tuple[CheckView, ...]
    workings: tuple[WorkingView, ...]
    newer: str
    tables: str


@bp.get("")
def show(home: str, ref: str) -> ResponseReturnValue:
    """Show the figures of one circuit."""
    net = supply(home)
    circuit = net.record.find(Circuit, ref)
    if circuit is None:
        raise NotFoundError(f"There is no circuit “{ref}” in this home.")
    found = circuit_figures(net, circuit)
    page = FiguresPage(
        title=f"Figures of {circuit.title}",
        circuit=(circuit.title, item_url(home, circuit)),
        checks=tuple(_check(each) for each in found.checks),
        workings=tuple(_working(each) for each in found.workings),
        newer=NEWER,
        tables=url_for("tables.index"),
    )
    return render_template("pages/figures.html", page=page)


def _check(check: Check) -> CheckView:
    answers = {
        True: f"Yes: {check.figure.shown}, limit {check.limit.shown}.",
        False: f"No: {check.figure.shown}, limit {check.limit.shown}.",
        None: f"Cannot tell: needs {', '.join(check.needs)}.",
    }
    return CheckView(
        title=check.title,
        answer=answers[check.holds],
        workings=(_working(check.figure), _working(check.limit)),
        note=check.note,
    )


def _working(working: Working) -> WorkingView:
    return WorkingView(
        title=working.title,
        shown=working.shown,
        formula=working.formula,
        inputs=tuple(_input(each) for each in working.inputs),
        source=working.source,
    )


def _input(each: Input) -> tuple[str, str, str]:
    value = f"{round(each.value, 4).normalize():f} {each.unit}".strip()
    where = ORIGINS[each.origin]
    return each.name, value, f"{where}: {each.note}" if each.note else where
