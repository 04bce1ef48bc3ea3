"""What to bear in mind with any plan: it changes no set, but what a hand may trust."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from functools import partial

from app.domain.chain import when_of
from app.domain.isolation.case import Case
from app.domain.isolation.names import called, named
from app.domain.isolation.own import live_of_themselves
from app.domain.isolation.own import may_have_battery as batteries_open
from app.domain.isolation.shapes import Caution
from app.domain.isolation.turns import MEMORY, PRACTICE, WIRING
from app.domain.isolation.wires import Wires, whose_side
from app.domain.kinds import POINT_KINDS
from app.domain.network import Network, feeders_of
from app.domain.odd import odd_among
from app.domain.record import Board, Circuit, Device, IntakeItem, Point, Source
from app.domain.record.choices import WHEN
from app.domain.unknowns import FROM_THE_STREET

WITH_ONE = "If one has, it and what hangs on it stay live."
_MAIN = re.compile(r"^\s*main(?:s)?(?:\s+switch|\s+isolator)?\s*$", re.IGNORECASE)


def cautions(case: Case) -> tuple[Caution, ...]:
    """Return everything to bear in mind with one plan."""
    found = [caution for rule in CAUTIONS for caution in rule(case)]
    return (*found, *not_the_main_switch(case.wires))


def tails(case: Case) -> Iterator[Caution]:
    """The tails and the incoming terminals stay live."""
    del case
    yield _caution(
        "tails",
        "The wires from the meter to the main switch, and its incoming side, stay live "
        "whatever is switched. Covers stay on.",
        WIRING,
    )


def local_switch(case: Case) -> Iterator[Caution]:
    """A local switch or connection unit is no isolation of itself."""
    local = [p for p in case.aim.points if POINT_KINDS[p.kind].switches != "none"]
    fused = [p for p in case.aim.points if POINT_KINDS[p.kind].has_fuse]
    if found := list(dict.fromkeys([*local, *fused])):
        yield _caution(
            "local_switch",
            f"The switch or fuse in these isolates nothing by itself: {named(found)}. "
            "Their supply side stays live with it off.",
            MEMORY,
        )


def comes_by_itself(case: Case) -> Iterator[Caution]:
    """A supply that comes and goes by itself."""
    behind = case.wires.leads_to(case.targets)
    for item in (*case.record.intake, *case.record.devices):
        when = when_of(item)
        if item.ref in behind and when != "always":
            yield _caution(
                "comes_by_itself",
                f"{called(item)} passes it on: {WHEN[when].lower()}. "
                "No voltage at noon proves nothing: it comes on by itself.",
                MEMORY,
            )


def sub_board(case: Case) -> Iterator[Caution]:
    """A board fed from another board keeps its incoming cable live."""
    boards = dict.fromkeys(d.board for d in case.record.devices if d.ref in case.used)
    for ref in boards:
        board = case.record.find(Board, ref)
        feeder = case.record.by_ref.get((board.fed_from if board else None) or "")
        if board and feeder and not isinstance(feeder, IntakeItem):
            yield _caution(
                "sub_board",
                f"{called(board)} hangs on {called(feeder)}. "
                "With its own switches off, the cable into it stays live.",
                MEMORY,
            )


def odd_ones(case: Case) -> Iterator[Caution]:
    """Points that are not on the circuit one would look for them on."""
    for odd in odd_among(case.net, case.aim.points):
        point = case.record.by_ref[odd.point]
        yield _caution("odd", f"{called(point)}: {odd.sentence}", PRACTICE)


def own_battery(case: Case) -> Iterator[Caution]:
    """Points with a battery of their own, or direct current."""
    stored = [p for p in case.aim.points if p.battery_backed == "yes"]
    if stored:
        yield _caution(
            "own_battery",
            f"These have a battery of their own: {named(stored)}. A light or a sound "
            "says nothing about the supply.",
            MEMORY,
        )


def may_have_battery(case: Case) -> Iterator[Caution]:
    """Whether what feeds the work has a battery of its own is not recorded."""
    behind = case.wires.leads_to(case.targets)
    if found := [p for p in batteries_open(case.net) if p.ref in behind]:
        yield _caution(
            "may_have_battery",
            f"{not_answered(found)} {WITH_ONE}",
            PRACTICE,
        )


def not_answered(points: Iterable[Point]) -> str:
    """Return that nobody wrote whether points have a battery, in one sentence."""
    return (
        f"Whether these have a battery of their own is not recorded: {named(points)}."
    )


def begins_unknown(case: Case) -> Iterator[Caution]:
    """Where a supply to the work begins is not recorded."""
    behind = case.wires.leads_to(case.targets) & case.wires.roots
    items = [case.record.by_ref[ref] for ref in sorted(behind - case.targets)]
    if found := [i for i in items if i.sort not in ("source", "point")]:
        yield _caution(
            "begins_unknown",
            f"What feeds these is not recorded: {named(found)}. More may feed them.",
            PRACTICE,
        )


def two_way(case: Case) -> Iterator[Caution]:
    """Stair and landing lights often take line and neutral from two floors."""
    rooms = {r.ref: r.kind for r in case.record.rooms}
    stairs = ("stairs", "landing", "hall")
    found = [
        p
        for p in case.aim.points
        if p.kind == "two_way_switch"
        or (p.kind == "light" and rooms.get(p.room or "") in stairs)
    ]
    if found and not case.borrowed:
        yield _caution(
            "two_way",
            f"Stair and landing lights often take their line from one floor and their "
            f"neutral from another: {named(found)}. Switching single ways cannot show "
            "it.",
            PRACTICE,
        )


def old_cable(case: Case) -> Iterator[Caution]:
    """The cable of the work is old, or has no protective conductor."""
    found = (case.record.find(Circuit, ref) for ref in case.aim.circuits)
    circuits = [circuit for circuit in found if circuit]
    if old := [c for c in circuits if c.cable in ("rubber", "lead")]:
        yield _caution(
            "old_cable",
            f"Its insulation may break when it is moved, by the record: {named(old)}. "
            "Leave it to an electrician.",
            PRACTICE,
        )
    if bare := [c for c in circuits if c.has_no_earth]:
        yield _caution(
            "no_earth",
            f"By the record there is no protective conductor: {named(bare)}. Metal on "
            "it may be live in a fault. Leave it to an electrician.",
            PRACTICE,
        )


def not_the_main_switch(wires: Wires) -> tuple[Caution, ...]:
    """Name each device that is called main switch and leaves something live.

    What stays live of itself says nothing against it.
    """
    return wires.net.keep("not the main switch", partial(_not_main_switches, wires))


def _not_main_switches(wires: Wires) -> tuple[Caution, ...]:
    record, found = wires.net.record, []
    points = {p.ref for p in record.points if p.current != "extra_low"}
    before = wires.live() & points
    for device in record.devices:
        called = _MAIN.match(device.label_found or "") or device.kind == "main_switch"
        if not called or not is_at_head(wires, device):
            continue
        begins = wires.roots - live_of_themselves(wires.net)
        left = _left_by(wires, device, begins) & before
        known = _left_by(wires, device, begins - _unfed(wires)) & before
        if known:
            found.append(_not_main(device, len(known), _boards_left(wires, device)))
        elif left:
            found.append(_not_shown(device, len(left)))
    return tuple(found)


def _left_by(wires: Wires, device: Device, begins: frozenset[str]) -> frozenset[str]:
    return frozenset(map(whose_side, wires.sides(begins, [device.ref])))


def _unfed(wires: Wires) -> frozenset[str]:
    """Return where a supply begins as far as recorded, and perhaps does not.

    These are points, circuits and boards of which nobody wrote what feeds them, and
    sources of which nobody said that they are there, or feed without the network.
    """
    items = [wires.net.record.by_ref[ref] for ref in wires.roots]
    boards = _unfed_boards(wires)
    return frozenset(
        i.ref
        for i in items
        if isinstance(i, Circuit | Point)
        or (isinstance(i, Device) and i.board in boards)
        or (isinstance(i, Source) and _is_open(wires.net, i))
    )


def _unfed_boards(wires: Wires) -> frozenset[str]:
    """Return the boards that begin nowhere, but the first of a home without an intake.

    That one stands for the supply where none is recorded.
    """
    record = wires.net.record
    begun = {d.board for d in record.devices if d.ref in wires.roots}
    from_outside = any(
        isinstance(record.by_ref[ref], IntakeItem | Source)
        for device in record.devices
        for ref in feeders_of(wires.net, device.ref)
    )
    first = () if from_outside else (board.ref for board in record.boards[:1])
    return frozenset(begun.difference(first))


def _is_open(net: Network, source: Source) -> bool:
    """Return whether a source may be none, or may stop with the network."""
    if source.kind == "network":
        return False
    only_joins = source.kind not in FROM_THE_STREET and not net.fed.get(source.ref)
    stops = source.runs_without_network == "unknown" and only_joins
    return source.present == "unknown" or stops


def is_at_head(wires: Wires, device: Device) -> bool:
    """Return whether someone may take a switch for the one of the whole home.

    That of a board hanging on another board is main switch of that board only; it is
    named all the same if its label says so.
    """
    return bool(_MAIN.match(device.label_found or "")) or device.ref in wires.live(
        wires.openable
    )


def _boards_left(wires: Wires, device: Device) -> str:
    live = wires.live([device.ref])
    boards = [
        board.name
        for board in wires.net.record.boards
        if any(d.ref in live for d in wires.net.record.devices_of(board.ref))
        and board.ref != device.board
    ]
    return f" Still live: {', '.join(boards)}." if boards else ""


def _not_main(device: Device, count: int, boards: str) -> Caution:
    many = "point stays" if count == 1 else "points stay"
    return _caution(
        "not_the_main_switch",
        f"{called(device)} is not the switch for the whole home: "
        f"{count} {many} live with it off.{boards}",
        MEMORY,
    )


def _not_shown(device: Device, count: int) -> Caution:
    many = "1 point goes" if count == 1 else f"{count} points go"
    return _caution(
        "not_the_main_switch",
        f"The record does not show that {called(device)} switches the whole home: "
        f"whether {many} off with it is not recorded.",
        MEMORY,
    )


def _caution(code: str, sentence: str, basis: str) -> Caution:
    return Caution(code=code, sentence=sentence, basis=basis)


CAUTIONS: tuple[Callable[[Case], Iterator[Caution]], ...] = (
    comes_by_itself,
    sub_board,
    odd_ones,
    two_way,
    local_switch,
    own_battery,
    may_have_battery,
    begins_unknown,
    old_cable,
    tails,
)
