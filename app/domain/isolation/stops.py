"""Rules that stop a plan: first find out, or leave it to someone else."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from app.domain.conditions import bad_ones
from app.domain.isolation.case import Case
from app.domain.isolation.names import called, listed, named, wrong_with
from app.domain.isolation.outcome import breaks_neutral, unfed
from app.domain.isolation.own import open_dc, own_batteries
from app.domain.isolation.rounds import stayed_live, still_fed, told
from app.domain.isolation.shapes import Reason
from app.domain.isolation.sources import open_kinds, said_yes_unrecorded, unplaced
from app.domain.isolation.turns import GUIDES, MEMORY, PRACTICE, WIRING, Rule, reason
from app.domain.isolation.wires import whose_side
from app.domain.network import upstream
from app.domain.record import Board, Device, IntakeItem, Item, Point
from app.domain.record.choices import SOURCE_KINDS
from app.domain.results.polarity import polarity_wrong

WIRING_TESTED = "BS 7671:2018+A2:2022, 132.14.1 and 643.6, from memory."
DC_LIVE = "BS 7671:2018+A2:2022, section 712, from memory."
KEEP_AWAY = "Keep away and call, before any switch there is touched."
# What a person can settle on the day, by asking whoever depends on it.
SETTLED = frozenset({"leave_on", "medical"})


def stops(case: Case) -> tuple[Reason, ...]:
    """Return every reason to stop and find out before anything is opened."""
    settled = SETTLED & {*case.day.settled}
    found = (found for rule in STOPS for found in rule(case))
    return tuple(reason for reason in found if reason.code not in settled)


def stop(code: str, sentence: str, basis: str) -> Reason:
    """Return one reason to stop."""
    return reason(code, sentence, basis, "stop")


def nothing_to_work_on(case: Case) -> Iterator[Reason]:
    """The record holds no point for what was asked."""
    if not case.targets:
        yield stop(
            "nothing",
            "The record holds nothing to part here. That does not say that nothing "
            "is there.",
            PRACTICE,
        )


def source_unanswered(case: Case) -> Iterator[Reason]:
    """Nobody has said whether a kind of source is there."""
    if kinds := open_kinds(case.record, case.day):
        names = listed(SOURCE_KINDS[kind].lower() for kind in kinds)
        yield stop(
            "source_unanswered",
            f"Not answered whether these can feed the home: {names}. Until then "
            "nobody can say that nothing else feeds this.",
            PRACTICE,
        )


def source_unplaced(case: Case) -> Iterator[Reason]:
    """A source is there, and the record does not say where it joins."""
    names = [called(source) for source in unplaced(case.record)]
    names += [
        SOURCE_KINDS[kind].lower()
        for kind in said_yes_unrecorded(case.record, case.day)
    ]
    if names:
        yield stop(
            "source_unplaced",
            f"Where this joins the installation is not recorded: {listed(names)}.",
            PRACTICE,
        )


def feed_unknown(case: Case) -> Iterator[Reason]:
    """What feeds a thing that is worked on is not recorded."""
    points = [point for point in case.aim.points if unfed(case.wires, point)]
    circuits = [
        case.record.by_ref[ref] for ref in case.aim.circuits if ref in case.wires.roots
    ]
    if found := [*points, *circuits]:
        yield stop(
            "feed_unknown",
            f"What feeds these is not recorded: {named(found)}. "
            "They count as live, whatever is switched.",
            PRACTICE,
        )


def not_parted(case: Case) -> Iterator[Reason]:
    """A supply still reaches what is worked on, and the record knows which."""
    live = case.wires.live(case.used)
    fed = [point for point in case.aim.points if not unfed(case.wires, point)]
    found = [point for point in fed if point.ref in live]
    begun = live - case.wires.roots
    circuits = (case.record.by_ref[ref] for ref in case.aim.circuits if ref in begun)
    named_ones: list[Item] = [*found, *circuits]
    if named_ones:
        yield stop(
            "not_parted",
            f"These cannot be made dead from here: {named(named_ones)}.",
            MEMORY,
        )


def battery_feeds(case: Case) -> Iterator[Reason]:
    """What is worked on, or what feeds it, has a battery of its own."""
    holders, found = _kept_live(case, own_batteries(case.net))
    if found:
        yield stop(
            "battery_feeds",
            "These have a battery of their own and feed more: "
            f"{named(holders)}. {_count_as_live(holders, found)} Switch the battery "
            "off at itself and unplug it. What has no plug is an electrician's.",
            MEMORY,
        )


def dc_side(case: Case) -> Iterator[Reason]:
    """What is on the d.c. side of an inverter or a battery is not recorded."""
    holders, found = _kept_live(case, open_dc(case.net))
    if found:
        yield stop(
            "dc_side",
            f"The d.c. side of these is not recorded: {named(holders)}. "
            f"{_count_as_live(holders, found)} Record what is wired to that side, or "
            "leave it to an electrician.",
            DC_LIVE,
        )


def _count_as_live(holders: tuple[Point, ...], found: tuple[Item, ...]) -> str:
    if set(found) == set(holders):
        return "They count as live, whatever is switched."
    return f"So these count as live, whatever is switched: {named(found)}."


def _kept_live(
    case: Case, holders: Iterable[Point]
) -> tuple[tuple[Point, ...], tuple[Item, ...]]:
    """Return those of some points that keep part of the work live, and that part."""
    refs = [*(point.ref for point in case.aim.points), *case.aim.circuits]
    part: dict[str, frozenset[str]] = {}
    for point in holders:
        reached = case.wires.sides([point.ref], case.used)
        part[point.ref] = frozenset(map(whose_side, reached)) & {*refs}
    kept = [ref for ref in refs if any(ref in each for each in part.values())]
    by_ref = case.record.by_ref
    return (
        tuple(point for point in holders if part[point.ref]),
        tuple(by_ref[ref] for ref in kept),
    )


def seen_live(case: Case) -> Iterator[Reason]:
    """A point of the work stayed live in a round with as much switched off, or more."""
    if found := stayed_live(case.wires, case.aim.points, case.used):
        yield stop(
            "seen_live",
            f"Seen live: {told(found, case.net)}. {still_fed(found)}. Put the mark "
            "right in its round, find out what feeds it, or leave it to an "
            "electrician.",
            PRACTICE,
        )


def whose(case: Case) -> Iterator[Reason]:
    """A switch that would serve is on a board of which nobody said whose it is."""
    behind = case.wires.leads_to(case.targets)
    devices = (d for d in case.record.devices if d.ref in behind)
    boards = {device.board for device in devices}
    items: list[Item] = [
        board
        for board in case.record.boards
        if board.ref in boards and board.owner == "unknown"
    ]
    live = case.wires.live(case.used)
    if items and case.targets & live:
        yield stop(
            "whose",
            f"Whose these are is not recorded: {named(items)}. "
            "Only what is your own is switched.",
            PRACTICE,
        )


def board_itself(case: Case) -> Iterator[Reason]:
    """Work on a board means its cover, which comes off for an electrician only."""
    if case.aim.boards:
        yield stop(
            "board_itself",
            f"Work on {named(case.aim.boards)} itself is an electrician's: its cover "
            "stays on, and its incoming cable is live with its own switch off.",
            PRACTICE,
        )


def head_leaves_neutral(case: Case) -> Iterator[Reason]:
    """The wide set itself is not recorded to open both poles."""
    if not case.both_poles:
        return
    next_before = case.parting(case.used)
    if leaves := [switch for switch in next_before if not breaks_neutral(switch)]:
        yield stop(
            "head_leaves_neutral",
            "Line and neutral both have to be parted, and the record does not say that "
            f"these break both: {named(leaves)}.",
            WIRING,
        )


def leave_on(case: Case) -> Iterator[Reason]:
    """Something goes off that is marked to be left on."""
    live, before = case.wires.live(case.used), case.wires.live()
    gone = case.used | (before - live)
    for device in case.record.devices:
        if device.leave_on and device.ref in gone:
            yield stop(
                "leave_on",
                f"{called(device)} is marked to be left on: "
                f"“{device.leave_on}”. Settle that first.",
                PRACTICE,
            )


def medical(case: Case) -> Iterator[Reason]:
    """Medical equipment or a care alarm loses its supply."""
    off = case.wires.live() - case.wires.live(case.used)
    gone = [p for p in case.record.points if p.ref in off]
    if found := [p for p in gone if {"medical", "care_alarm"} & {*p.care}]:
        yield stop(
            "medical",
            f"Someone depends on {named(found)}. Arrange another supply with them "
            "before anything is switched.",
            GUIDES,
        )


def condition(case: Case) -> Iterator[Reason]:
    """Something in the intake looks hot, broken, wet, leaking or loose."""
    if found := bad_ones(case.record.intake):
        yield stop("condition", f"{wrong_with(found)} {KEEP_AWAY}", MEMORY)


def board_condition(case: Case) -> Iterator[Reason]:
    """A board that would be worked on or switched looks hot, broken, wet or loose."""
    switched = {d.board for d in case.record.devices if d.ref in case.used}
    refs = switched | {board.ref for board in case.aim.boards}
    boards = (board for board in case.record.boards if board.ref in refs)
    if found := bad_ones(boards):
        yield stop("board_condition", f"{wrong_with(found)} {KEEP_AWAY}", MEMORY)


def point_condition(case: Case) -> Iterator[Reason]:
    """A point of the work, or a switch among the points, looks the like."""
    switched = (p for p in case.record.points if p.ref in case.used)
    if found := bad_ones(dict.fromkeys((*case.aim.points, *switched))):
        yield stop(
            "point_condition",
            f"{wrong_with(found)} Do not use or open it, and call an electrician.",
            MEMORY,
        )


def chooses(case: Case) -> Iterator[Reason]:
    """A changeover switch stands before the work; it is no isolation."""
    behind = case.wires.leads_to(case.targets)
    items = (case.record.by_ref.get(ref) for ref in sorted(behind))
    found = [
        i
        for i in items
        if isinstance(i, Device | IntakeItem) and i.kind == "changeover"
    ]
    if lacking := [item for item in found if not _both_feeds(case, item)]:
        yield stop(
            "chooses",
            f"Not both supplies of {named(lacking)} are recorded. It joins one or the "
            "other, and is not used to isolate.",
            MEMORY,
        )


def _both_feeds(case: Case, item: Device | IntakeItem) -> bool:
    board = case.record.find(Board, getattr(item, "board", None))
    first = item.fed_from or (board.fed_from if board else None)
    both = (first, item.second_feed)
    return all(case.record.by_ref.get(ref or "") for ref in both)


def unidentified(case: Case) -> Iterator[Reason]:
    """What is worked on has not been identified."""
    if found := [p for p in case.aim.points if p.kind == "unknown"]:
        yield stop(
            "unidentified",
            f"What these are is not known: {named(found)}. Unknown counts as live.",
            PRACTICE,
        )


def polarity(case: Case) -> Iterator[Reason]:
    """Line and neutral were found swapped on the way to the work."""
    above = {ref for each in case.aim.circuits for ref in upstream(case.net, each)}
    refs = {*case.aim.circuits, *above}
    items = [item for item in case.record.items() if item.ref in refs]
    found = [called(i) for i in items if polarity_wrong(case.record, i.ref)]
    if polarity_wrong(case.record, None):
        found.append("the supply")
    if found:
        yield stop(
            "polarity",
            f"A paper says that the polarity is not correct: {listed(found)}. A switch "
            "may part the neutral and leave the line live. Leave it to an electrician.",
            WIRING_TESTED,
        )


STOPS: tuple[Rule, ...] = (
    nothing_to_work_on,
    source_unanswered,
    source_unplaced,
    feed_unknown,
    unidentified,
    not_parted,
    battery_feeds,
    dc_side,
    seen_live,
    whose,
    board_itself,
    head_leaves_neutral,
    chooses,
    leave_on,
    medical,
    condition,
    board_condition,
    point_condition,
    polarity,
)
