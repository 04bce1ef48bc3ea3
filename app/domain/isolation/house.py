"""The whole home off: every switch, where, in what order, and what stays live."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.conditions import bad_ones
from app.domain.isolation.cautions import WITH_ONE, not_answered, not_the_main_switch
from app.domain.isolation.help import STOP_WHEN, whom_to_call
from app.domain.isolation.names import called, wrong_with
from app.domain.isolation.outcome import affected, behind, room_name, switches, unfed
from app.domain.isolation.own import live_because, may_have_battery
from app.domain.isolation.rounds import in_the_round, stayed_live, still_fed
from app.domain.isolation.sets import heads
from app.domain.isolation.shapes import HouseOff, OnTheDay, StillLive
from app.domain.isolation.sources import may_stay, open_kinds, other_sources
from app.domain.isolation.stops import KEEP_AWAY
from app.domain.isolation.wires import Wires, carries_supply, whose_side, wires
from app.domain.network import Network
from app.domain.record import Board, IntakeItem, Item, Point
from app.domain.unknowns import unknowns_of_sources


def house_off(net: Network, day: OnTheDay | None = None) -> HouseOff:
    """Return how the whole home is taken off, and what is still live after."""
    day, run, record = day or OnTheDay(), wires(net), net.record
    opened = heads(run)
    before, live = run.live(), run.live(opened)
    still = _still_live(run, opened, live)
    kept = live | {each.ref for each in still}
    lost = (p for p in record.points if p.ref in before and p.ref not in kept)
    return HouseOff(
        home=record.home.ref,
        home_name=record.home.name,
        switches=switches(run, opened),
        behind=behind(run, opened),
        still_live=still,
        goes_off=affected(run, lost),
        may_stay=may_stay(record, day),
        batteries=_batteries(net),
        not_main=not_the_main_switch(run),
        sources=other_sources(record, day),
        sources_answered=not open_kinds(record, day),
        unknown=_unknown(run),
        stops=_stops(bad_ones((*record.intake, *record.boards))),
        leave=_leave(bad_ones(record.points)),
        stop_when=STOP_WHEN,
        call=whom_to_call(record.home),
    )


def _batteries(net: Network) -> tuple[str, ...]:
    found = may_have_battery(net)
    return (f"{not_answered(found)} {WITH_ONE}",) if found else ()


def _stops(bad: tuple[Item, ...]) -> tuple[str, ...]:
    return (f"{wrong_with(bad)} {KEEP_AWAY}",) if bad else ()


def _leave(bad: tuple[Item, ...]) -> tuple[str, ...]:
    return (f"{wrong_with(bad)} Do not use or open it, and call.",) if bad else ()


def _still_live(
    run: Wires, opened: frozenset[str], live: frozenset[str]
) -> tuple[StillLive, ...]:
    items: tuple[Item, ...] = (*run.net.record.intake, *run.net.record.points)
    expected = tuple(
        StillLive(
            ref=item.ref,
            title=item.title,
            room=room_name(run.net.record, getattr(item, "room", None)),
            why=_why(run, item, opened),
        )
        for item in items
        if item.ref in live and carries_supply(item) and not _extra_low(item)
    )
    return (*expected, *_seen_live(run, opened))


def _seen_live(run: Wires, opened: frozenset[str]) -> Iterator[StillLive]:
    """Yield what was seen live with as much switched off, or more."""
    record = run.net.record
    found = stayed_live(run, record.points, opened)
    for seen in {s.point.ref: s for s in reversed(found)}.values():
        yield StillLive(
            ref=seen.point.ref,
            title=seen.point.title,
            room=room_name(record, seen.point.room),
            why=f"Seen live {in_the_round(record, seen)}. {still_fed([seen])}.",
        )


def _extra_low(item: Item) -> bool:
    return isinstance(item, Point) and item.current == "extra_low"


def _why(run: Wires, item: Item, opened: frozenset[str]) -> str:
    if item.ref in opened:
        return "Its supply side stays live with it off."
    if isinstance(item, IntakeItem):
        yours = item.owner == "consumer"
        return "It is before the first switch." if yours else "Not yours to switch."
    if isinstance(item, Point) and unfed(run, item):
        return "What feeds it is not recorded. It counts as live."
    if own := _kept_by(run, item, opened):
        return own
    return "Something besides the network can feed it."


def _kept_by(run: Wires, item: Item, opened: frozenset[str]) -> str:
    """Return what keeps a thing live of itself, or what it hangs on; empty if none."""
    reached = (
        why
        for point, why in live_because(run.net, item.ref)
        if item.ref in map(whose_side, run.sides([point.ref], opened))
    )
    return next(reached, "")


def _unknown(run: Wires) -> tuple[str, ...]:
    record = run.net.record
    boards = [b for b in record.boards if b.owner == "unknown"]
    said = [f"Whose {called(b)} is, is not recorded." for b in boards]
    empty = [b for b in record.boards if not record.devices_of(b.ref)]
    said += [f"No device of {called(b)} is recorded." for b in empty]
    return (*unknowns_of_sources(record), *said, *_unfed_devices(run))


def _unfed_devices(run: Wires) -> tuple[str, ...]:
    record = run.net.record
    boards = {
        d.board
        for d in record.devices
        if d.ref in run.roots and record.find(Board, d.board)
    }
    names = (record.by_ref[ref] for ref in sorted(boards))
    return tuple(f"What feeds {called(b)} is not recorded." for b in names)
