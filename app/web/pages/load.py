"""The load: what the record adds up to, against what it goes through; one load more."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from flask import Blueprint, render_template, request
from flask.typing import ResponseReturnValue

from app.domain.load import (
    KINDS,
    Against,
    Demand,
    Load,
    RcdLoad,
    WhatIf,
    added_load,
    demand,
    rcd_loads,
    supply_fuse,
    two_rcds,
    what_if,
)
from app.domain.load.against import SHOWN
from app.domain.network import Network
from app.domain.record.choices import PHASE
from app.domain.tables import NEWER
from app.drawing.demand import NAMES, draw_demand
from app.errors import InvalidError
from app.web.session import supply
from app.web.words import quantity, with_board

bp = Blueprint("load", __name__, url_prefix="/homes/<home>/load")
KIND_NAMES = {
    "shower": "Electric shower",
    "charger": "Vehicle charger",
    "heat-pump": "Heat pump",
    "cooker": "Cooker",
    "heater": "Direct heater",
    "immersion": "Immersion heater",
    "storage-heater": "Storage heater",
    "battery": "Battery",
    "other": "Something else",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Then:
    """One load more, beside today.

    Attributes:
        added: What was added, in words.
        rows: What it goes through: name, today, then, in words.
        managed: The total with vehicle charging managed; empty without any.
        first: What to do first.
    """

    added: str
    rows: tuple[tuple[str, str, str], ...]
    managed: str
    first: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadPage:
    """The load.

    Attributes:
        title: Heading.
        answer: The sum against the supply fuse, in one sentence.
        drawing: How it builds up, as SVG.
        rows: Each row of the sum: load, rule, loads with figures, amperes.
        parts: The sum by day and by night or by phase: name and amperes.
        against: What it goes through: name, rating, through it, in words.
        rcds: Each RCD: name, rating, before it, behind it, what follows.
        why: For each board with several RCDs: its name, and sentences.
        left_out: Loads that are not in the sum.
        added: What was added: kind and kilowatts, for each box of the form.
        kinds: Kinds that can be added: code and words.
        then: One load more, beside today; None when nothing was added.
        error: What is wrong with what was typed; empty when nothing.
        newer: Which edition the values are of.
    """

    title: str
    answer: str
    drawing: str
    rows: tuple[tuple[str, str, str, str], ...]
    parts: tuple[tuple[str, str], ...]
    against: tuple[tuple[str, str, str, str], ...]
    rcds: tuple[tuple[str, str, str, str, str], ...]
    why: tuple[tuple[str, tuple[str, ...]], ...]
    left_out: tuple[str, ...]
    added: tuple[str, str]
    kinds: tuple[tuple[str, str], ...]
    then: Then | None
    error: str
    newer: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Show the load, and with what is thought of beside it."""
    net = supply(home)
    kind, kilowatts = (request.args.get(name, "").strip() for name in ("kind", "kw"))
    try:
        additions = [added_load(f"{kind}={kilowatts}")] if kind or kilowatts else []
        error = ""
    except InvalidError:
        additions, error = [], "Enter the power in kilowatts, such as 8.5."
    page = _page(net, additions, (kind, kilowatts), error)
    return render_template("pages/load.html", page=page), 422 if error else 200


def _page(
    net: Network, additions: list[Load], added: tuple[str, str], error: str
) -> LoadPage:
    found = what_if(net, additions)
    fuse = supply_fuse(net)
    today = found.today
    return LoadPage(
        title="Load",
        answer=_answer(today, found.against_today[0]),
        drawing=draw_demand(today, fuse.rated_current_a if fuse else None),
        rows=tuple(_rows(today)),
        parts=tuple(_parts(net, today)),
        against=tuple(_against(each) for each in found.against_today),
        rcds=tuple(_rcds(net)),
        why=tuple((each.board.name, each.sentences) for each in two_rcds(net)),
        left_out=tuple(f"{load.title}: {load.basis}" for load in today.left_out),
        added=added,
        kinds=tuple((code, KIND_NAMES[code]) for code in KINDS),
        then=_then(found) if additions else None,
        error=error,
        newer=NEWER,
    )


def _answer(today: Demand, fuse: Against) -> str:
    span = f"{today.low:.0f} to {today.high:.0f} A by the usual readings of the table"
    if not today.rows:
        return "No load is known yet: give circuits their use and their connected load."
    start = f"On paper, cautious: {today.total:.0f} A ({span})."
    return f"{start} Against {fuse.title}: {fuse.sentence}"


def _rows(today: Demand) -> Iterator[tuple[str, str, str, str]]:
    for row in today.rows:
        loads = "; ".join(f"{load.title} {_figure(load)}" for load in row.loads)
        yield NAMES[row.rule], f"{row.words} ({row.source})", loads, f"{row.amps:.1f} A"


def _figure(load: Load) -> str:
    amps = f"{load.amps:.1f} A" if load.amps is not None else "not known"
    return f"{amps}, {'assumed, ' if load.assumed else ''}{load.basis}"


def _parts(net: Network, today: Demand) -> Iterator[tuple[str, str]]:
    loads = [load for row in today.rows for load in row.loads]
    night = [load for load in loads if load.off_peak]
    if night:
        day = [load for load in loads if not load.off_peak]
        yield "Without what is only there off-peak", f"{demand(day).total:.0f} A"
        yield "Only what is there off-peak", f"{demand(night).total:.0f} A"
    if net.record.home.phases == "three":
        for phase, words in PHASE.items():
            these = [load for load in loads if load.phase == phase]
            if these:
                yield f"Phase: {words}", f"{demand(these).total:.0f} A"


def _against(each: Against) -> tuple[str, str, str, str]:
    return each.title, quantity(each.rated, "A"), f"{each.amps:.0f} A", each.sentence


def _rcds(net: Network) -> Iterator[tuple[str, str, str, str, str]]:
    for each in rcd_loads(net):
        before = f"{each.before_title} {quantity(each.before, 'A')}".strip()
        yield (
            with_board(net.record, each.device.ref),
            quantity(each.rated, "A"),
            before,
            quantity(each.ways, "A"),
            f"{SHOWN[each.verdict].capitalize()}. {_behind(each)}",
        )


def _behind(each: RcdLoad) -> str:
    return f"Demand behind it, for information: {each.demand.total:.0f} A."


def _then(found: WhatIf) -> Then:
    pairs = zip(found.against_today, found.against_then, strict=False)
    added = [load for row in found.then.rows for load in row.loads if not load.circuit]
    total = found.then_managed
    return Then(
        added=", ".join(load.title for load in added),
        rows=(
            ("In all", f"{found.today.total:.0f} A", f"{found.then.total:.0f} A"),
            *((a.title, a.sentence, b.sentence) for a, b in pairs),
        ),
        managed=f"{total.total:.0f} A" if total else "",
        first=found.first,
    )
