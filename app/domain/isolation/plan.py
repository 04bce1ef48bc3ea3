"""A plan for switching off: what, why that, what stays live, and the steps."""

from __future__ import annotations

from collections.abc import Iterable

from app.domain.answers import Named
from app.domain.isolation import sets
from app.domain.isolation.aim import Aim, aim
from app.domain.isolation.case import Case
from app.domain.isolation.cautions import cautions
from app.domain.isolation.help import STOP_WHEN, whom_to_call
from app.domain.isolation.labels import labels_first
from app.domain.isolation.outcome import affected, outcome
from app.domain.isolation.shapes import OnTheDay, Plan
from app.domain.isolation.sources import open_kinds, other_sources
from app.domain.isolation.steps import steps
from app.domain.isolation.stops import stops
from app.domain.isolation.turns import turns
from app.domain.isolation.wires import wires
from app.domain.network import Network

MOST_ALTERNATIVES = 4


def plan(
    net: Network, refs: Iterable[str], *, job: str = "any", day: OnTheDay | None = None
) -> Plan:
    """Return the plan for working on points, rooms, circuits or boards.

    Args:
        net: The supply network.
        refs: What is to be worked on.
        job: The kind of work, where a room is named; one of ``JOBS``.
        day: What was answered and done on the day.
    """
    meant, day = aim(net, refs, job), day or OnTheDay()
    case = _case(net, meant, day)
    turning = turns(case)
    used = case.wide if turning else case.near
    case = Case(case.wires, meant, case.near, case.wide, used, day)
    stopping = stops(case)
    found = _answer(case, Plan(home=net.record.home.ref, home_name=_name(net)))
    advised = "stop" if stopping else "wide" if turning else "nearest"
    found = found.model_copy(
        update={"advised": advised, "reasons": (*stopping, *turning)}
    )
    return found.model_copy(update={"steps": steps(found)})


def _name(net: Network) -> str:
    return net.record.home.name


def _case(net: Network, meant: Aim, day: OnTheDay) -> Case:
    run = wires(net)
    targets = meant.targets(net)
    boards = tuple(board.ref for board in meant.boards)
    near = sets.nearest(run, targets, not_on=boards)
    broad = sets.wide(run, targets, near, not_on=boards)
    return Case(run, meant, near, broad, near, day)


def _answer(case: Case, blank: Plan) -> Plan:
    record, meant = case.record, case.aim
    single = sets.single(case.wires, case.targets, case.near)
    if meant.boards:
        barred = sets.devices_on(case.wires, (b.ref for b in meant.boards))
        single = [ref for ref in single if ref not in barred]
    rooms = (record.by_ref[ref] for ref in meant.rooms if ref in record.by_ref)
    return blank.model_copy(
        update={
            "aim": tuple(Named(ref=i.ref, title=i.title) for i in meant.named),
            "job": meant.job,
            "rooms": tuple(Named(ref=i.ref, title=i.title) for i in rooms),
            "day": case.day,
            "cautions": cautions(case),
            "labels_first": labels_first(case.net, case.near_devices),
            "nearest": outcome(case.wires, meant, case.near),
            "wide": outcome(case.wires, meant, case.wide),
            "alternatives": tuple(
                outcome(case.wires, meant, frozenset([ref]))
                for ref in single[:MOST_ALTERNATIVES]
            ),
            "sources": other_sources(record, case.day),
            "sources_answered": not open_kinds(record, case.day),
            "ignored": affected(case.wires, meant.ignored),
            "stop_when": STOP_WHEN,
            "call": whom_to_call(record.home),
        }
    )
