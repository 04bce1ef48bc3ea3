"""Load: maximum demand with diversity, what carries it, and what more would do."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from flask import Blueprint, render_template, request, url_for
from flask.typing import ResponseReturnValue
from werkzeug.datastructures import MultiDict
from wtforms import Form

from app.domain.load import Against, Asked, LoadAnswer, amps, load_answer
from app.domain.load.demand import Demand, Row
from app.domain.load.differ import RcdsDiffer, Said
from app.domain.record import Record, specs
from app.domain.tables import AMENDMENT
from app.drawing.demand import NO_PHASE, SEVERAL, UNKNOWN, draw_demand
from app.web.addresses import item_url
from app.web.fields import field_for
from app.web.session import supply

bp = Blueprint("load", __name__, url_prefix="/homes/<home>/load")
SIGNS = {"within": "Within", "beyond": "Beyond, on paper", "open": "Open"}
ROW_HEADS = ("Load", "Rule", "Figures", "Counts")
CARRY_HEADS = ("What carries it", "May carry", "Demand", "On paper", "In words")
RCD_HEADS = ("RCD", "On paper", "In words")
BESIDE_HEADS = ("Load", "Today", "Then")
VERDICTS = {
    "shown": "Guarded from overload",
    "not_shown": "Not shown to be guarded",
    "cannot_tell": "Cannot tell",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Beside:
    """Today beside what would be.

    Attributes:
        added: What is added, in words.
        caption: Caption of the table.
        rows: Group, today, then; the totals last, unless there are three phases.
        says: The supply fuse, then.
        assumes: What is assumed in both.
        to_do: What to do first: sentence and where it stands.
    """

    added: tuple[str, ...]
    caption: str
    rows: tuple[tuple[str, str, str], ...]
    says: tuple[str, ...]
    assumes: tuple[str, ...]
    to_do: tuple[Said, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Build:
    """How a demand builds up.

    Attributes:
        title: Its phase, in a three-phase home; else empty.
        picture: The drawing, as SVG.
        caption: Caption of the table.
        rows: Label, rule, figures, what counts.
    """

    title: str
    picture: str
    caption: str
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadPage:
    """The load of a home.

    Attributes:
        title: Heading.
        lede: The supply fuse against the demand, in sentences.
        builds: How the demand builds up, of three phases each; empty without a load.
        spread: Between what and what it lies, in a sentence; may be empty.
        variations: Common other ways to count: how and total.
        windows: The off-peak loads and the rest, in a sentence; may be empty.
        not_counted: Circuits and ways left out: title, address, why.
        assumes: What is assumed.
        sources: Where the rules stand, and how well that is known.
        carry: What carries it, a row each.
        carry_assumes: What is assumed in that.
        rcds: Each RCD, a row each.
        differ: Boards whose RCDs differ.
        form: The form that asks what would be added.
        names: Names of its fields, in order.
        beside: Today beside then; None unless something is added.
        edition: Which edition the figures are of.
        clear: Address without any addition.
        row_heads: Heads of the rows.
        carry_heads: Heads of what carries it.
        rcd_heads: Heads of the RCDs.
        beside_heads: Heads of today beside then.
    """

    title: str
    lede: tuple[str, ...]
    builds: tuple[Build, ...]
    spread: str
    variations: tuple[tuple[str, str], ...]
    windows: str
    not_counted: tuple[tuple[str, str, str], ...]
    assumes: tuple[str, ...]
    sources: tuple[str, ...]
    carry: tuple[tuple[str, ...], ...]
    carry_assumes: tuple[str, ...]
    rcds: tuple[tuple[str, ...], ...]
    differ: tuple[RcdsDiffer, ...]
    form: Any
    names: tuple[str, ...]
    beside: Beside | None
    edition: str
    clear: str
    row_heads: tuple[str, ...] = ROW_HEADS
    carry_heads: tuple[str, ...] = CARRY_HEADS
    rcd_heads: tuple[str, ...] = RCD_HEADS
    beside_heads: tuple[str, ...] = BESIDE_HEADS


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Show the load, beside what it would be with what the address adds."""
    net = supply(home)
    form = _form(net.record)
    good = form.validate()
    asked = _asked(form) if good else Asked()
    answer = load_answer(net, asked.additions())
    page = _page(net.record, answer, form)
    status = 200 if good else 422
    return render_template("pages/load.html", page=page), status


def _form(record: Record) -> Any:
    fields = {spec.name: field_for(spec, record) for spec in specs(Asked)}
    data = {spec.name: spec.default for spec in specs(Asked)}
    sent = MultiDict(request.args) if request.args else None
    if sent is not None:
        for name, value in data.items():
            sent.setdefault(name, "" if value is None else str(value))
    return type("WhatIfForm", (Form,), fields)(sent, data=data)


def _asked(form: Any) -> Asked:
    return Asked.model_validate(
        {spec.name: form[spec.name].value() for spec in specs(Asked)}
    )


def _page(record: Record, answer: LoadAnswer, form: Any) -> LoadPage:
    found, home = answer.demand, record.home.ref
    fuses = [each for each in answer.against if each.what == "supply_fuse"]
    return LoadPage(
        title="Load",
        lede=tuple(each.says for each in fuses),
        builds=tuple(_builds(answer, fuses)),
        spread="" if answer.phases else _spread(found),
        variations=tuple((v.label, v.shown) for v in found.variations),
        windows="" if answer.phases else _windows(found),
        not_counted=tuple(_left_out(record, found)),
        assumes=found.assumes,
        sources=tuple(dict.fromkeys(_source(row) for row in found.rows)),
        carry=tuple(_carry(answer)),
        carry_assumes=_carry_assumes(answer),
        rcds=tuple((r.rcd.title, VERDICTS[r.verdict], r.says) for r in answer.rcds),
        differ=answer.rcds_differ,
        form=form,
        names=tuple(spec.name for spec in specs(Asked)),
        beside=_beside(answer),
        edition=AMENDMENT,
        clear=url_for(".index", home=home),
    )


def _left_out(record: Record, found: Demand) -> Iterator[tuple[str, str, str]]:
    for each in found.not_counted:
        url = item_url(record.home.ref, record.by_ref[each.ref])
        yield each.title, url, each.why


def _builds(answer: LoadAnswer, fuses: list[Against]) -> Iterator[Build]:
    if not answer.phases and answer.demand.rows:
        yield _build(answer.demand, fuses, "", "")
    for each in answer.phases:
        if each.demand.rows:
            own = [fuse for fuse in fuses if fuse.phase == each.phase]
            yield _build(
                each.demand, own, each.phase, each.phase or "No one phase recorded"
            )


def _build(found: Demand, fuses: list[Against], phase: str, title: str) -> Build:
    """Return a demand beside its one fuse, or said why no fuse stands beside it."""
    rated = fuses[0].rated.value if len(fuses) == 1 and fuses[0].rated else None
    without = SEVERAL if len(fuses) > 1 else UNKNOWN if fuses else NO_PHASE
    on = f" on {phase}" if phase else ", no one phase recorded" if title else ""
    return Build(
        title=title,
        picture=draw_demand(found, rated, phase=phase, without=without),
        caption=f"Demand with diversity{on}, calculated from your record",
        rows=tuple(_row(row) for row in found.rows),
    )


def _row(row: Row) -> tuple[str, ...]:
    return row.label, row.rule, row.put_in, row.shown


def _source(row: Row) -> str:
    return f"{row.source} ({row.basis})" if row.basis else f"{row.label}: {row.source}"


def _spread(found: Demand) -> str:
    if not found.variations:
        return ""
    low, high = amps(found.low), amps(found.high)
    return f"Counted in other common ways it lies between {low} and {high}."


def _windows(found: Demand) -> str:
    if not found.off_peak:
        return ""
    return (
        f"Without what is on in off-peak hours only it is {found.day}; that alone is "
        f"{found.off_peak}."
    )


def _carry(answer: LoadAnswer) -> list[tuple[str, ...]]:
    return [
        (
            ", ".join(part for part in (_thing(each), each.phase) if part),
            each.rated.shown if each.rated else "",
            each.demand,
            SIGNS[each.sign],
            each.says,
        )
        for each in answer.against
        if each.what != "supply_fuse"
    ]


def _thing(each: Against) -> str:
    return each.thing.title if each.thing else "Supply fuse"


def _carry_assumes(answer: LoadAnswer) -> tuple[str, ...]:
    rated = [each.rated for each in answer.against if each.rated]
    return tuple(dict.fromkeys(a for figure in rated for a in figure.assumes))


def _beside(answer: LoadAnswer) -> Beside | None:
    if answer.what_if is None:
        return None
    today = {row.label: row.shown for row in answer.demand.rows}
    then = {row.label: row.shown for row in answer.what_if.then.rows}
    labels = dict.fromkeys((*then, *today))
    rows = [(name, today.get(name, "none"), then.get(name, "none")) for name in labels]
    today_all = answer.demand.total if answer.loads else "none"
    together = ("Together", today_all, answer.what_if.then.total)
    total = () if answer.phases else (together,)
    return Beside(
        added=tuple(each.title for each in answer.what_if.additions),
        caption=f"Today beside then{', all phases' if answer.phases else ''}",
        rows=(*rows, *total),
        says=tuple(each.says for each in answer.what_if.against),
        assumes=answer.what_if.then.assumes,
        to_do=answer.what_if.to_do,
    )
