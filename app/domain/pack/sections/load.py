"""Maximum demand with diversity, against what carries it."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.load import CAUTIOUS, Demand, load_answer
from app.domain.network import Network
from app.domain.pack.blocks import Block, Lines, Section, Table, Text


def section(net: Network) -> Section:
    """Return the section: the rows, the total, and each thing that carries it."""
    return Section(code="load", title="Load", blocks=tuple(_blocks(net)))


def _blocks(net: Network) -> Iterator[Block]:
    answer = load_answer(net)
    demand = answer.demand
    if not answer.phases:
        yield from _demand(demand, "")
    for each in answer.phases:
        yield from _demand(each.demand, each.phase or "no one phase recorded")
    left = (f"{n.title} ({n.ref}): {n.why}" for n in demand.not_counted)
    yield Lines(lines=(*demand.assumes, *left))
    yield Lines(
        lines=tuple(
            f"{a.thing.title} ({a.thing.ref}): {a.says}" if a.thing else a.says
            for a in answer.against
        )
    )
    yield Lines(
        lines=tuple(f"{r.rcd.title} ({r.rcd.ref}): {r.says}" for r in answer.rcds)
    )


def _demand(found: Demand, of: str) -> Iterator[Block]:
    on = f", {of}" if of else ""
    yield Text(text=f"Calculated from this record{on}: {found.total}. {CAUTIOUS}")
    yield Table(
        caption=f"By group{on}",
        heads=("Load", "Rule", "Worked out", "Counts"),
        widths=(3, 5, 4, 2),
        rows=tuple((r.label, r.rule, r.put_in, r.shown) for r in found.rows),
        otherwise="No load is recorded.",
    )
