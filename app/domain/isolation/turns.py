"""Rules that turn the advice from the nearest set to the wide one.

Each looks at one thing and yields at most one reason, with where it comes from.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from app.domain.feedback import can_feed_back
from app.domain.isolation.case import WEAK_GRADES, Case
from app.domain.isolation.labels import labels_first
from app.domain.isolation.names import called, listed, named
from app.domain.isolation.outcome import CARRIERS, breaks_neutral
from app.domain.isolation.rounds import seen_otherwise, told
from app.domain.isolation.shapes import Advice, Reason
from app.domain.network import feeders_of, points_on
from app.domain.phases import TWO_GUARD_ONE, each_its_own, may_be_phased
from app.domain.record import Circuit, Point, Room, Source

PRACTICE = "Common practice, no source."
MEMORY = "From memory."
GUIDES = "After HSE GS38 (2015) and HSG85 (2013), read in part; our own words."
WIRING = "BS 7671:2018+A2:2022, sections 462 and 537, read in part."
WAYS = "BS 7671:2018+A2:2022, 314.4 and 433.1, from memory."


def turns(case: Case) -> tuple[Reason, ...]:
    """Return every reason to take the wide set instead of the nearest."""
    return tuple(reason for rule in TURNS for reason in rule(case))


def reason(code: str, sentence: str, basis: str, advice: Advice = "wide") -> Reason:
    """Return one reason."""
    return Reason(code=code, advice=advice, sentence=sentence, basis=basis)


def weak_tie(case: Case) -> Iterator[Reason]:
    """Nobody has seen a point go off with its circuit."""
    weak = [tie for tie in case.ties() if tie.grade in WEAK_GRADES]
    points = (case.record.find(Point, tie.point) for tie in weak)
    if names := named(dict.fromkeys(p for p in points if p)):
        yield reason(
            "weak_tie",
            f"Nobody has seen these go off with their way: {names}. "
            "A label, a memory or a paper may be wrong.",
            PRACTICE,
        )


def rounds_differ(case: Case) -> Iterator[Reason]:
    """A round showed something else of what is on the circuits of the work."""
    on = {p for c in case.aim.circuits for p in points_on(case.net, c)}
    on |= {point.ref for point in case.aim.points}
    found = [s for s in seen_otherwise(case.net) if s.point.ref in on]
    parts = [
        f"{words}: {told(seen, case.net)}"
        for what, words in (("live", "stayed live"), ("dead", "went off"))
        if (seen := [s for s in found if s.seen == what])
    ]
    if parts:
        yield reason(
            "rounds_differ",
            f"Rounds showed what the record does not say. These {listed(parts)}. "
            "What feeds them is not as recorded, or not all of it, or a mark is wrong.",
            PRACTICE,
        )


def work_since(case: Case) -> Iterator[Reason]:
    """Work was done there after a point was seen to go off."""
    aged = [tie for tie in case.ties() if tie.ref in case.net.aged]
    points = (case.record.find(Point, tie.point) for tie in aged)
    if names := named(dict.fromkeys(p for p in points if p)):
        yield reason(
            "work_since",
            f"Work was done there since it was seen what feeds these: {names}. "
            "It may have changed.",
            PRACTICE,
        )


def not_looked_at(case: Case) -> Iterator[Reason]:
    """A room of the work has not been looked at whole."""
    rooms = (case.record.find(Room, ref) for ref in case.aim.rooms)
    if open_rooms := [room for room in rooms if room and room.looked_at != "all"]:
        yield reason(
            "not_looked_at",
            f"Not all of it has been looked at: {named(open_rooms)}. "
            "There may be points that the record does not know.",
            PRACTICE,
        )


def two_circuits(case: Case) -> Iterator[Reason]:
    """Conductors of more than one circuit stand in a box."""
    net = case.net

    def there(point: Point) -> set[str]:
        ties = case.record.ties_of(point.ref)
        present = {t.tied_to for t in ties if t.role == "present"}
        return {*net.circuits_at.get(point.ref, ()), *present}

    if found := [point for point in case.aim.points if len(there(point)) > 1]:
        yield reason(
            "two_circuits",
            f"More than one supply is in the box of {named(found)}. "
            "Every one of them must be off.",
            MEMORY,
        )


def two_ways(case: Case) -> Iterator[Reason]:
    """A circuit of the work is on more ways than one, and not as phases of a supply."""
    ways = {ref: tuple(feeders_of(case.net, ref)) for ref in case.aim.circuits}
    found = [
        ref
        for ref, feeders in ways.items()
        if len(feeders) > 1 and not _on_a_phase_each(case, ref, feeders)
    ]
    by_ref = case.record.by_ref
    if found:
        feeding = dict.fromkeys(way for ref in found for way in ways[ref])
        yield reason(
            "two_ways",
            f"More than one way feeds {named(by_ref[ref] for ref in found)}: "
            f"{named(by_ref[way] for way in feeding)}. If these are no phases of one "
            f"supply, the record is wrong, or {TWO_GUARD_ONE}",
            WAYS,
        )


def _on_a_phase_each(case: Case, circuit: str, ways: Iterable[str]) -> bool:
    phased = may_be_phased(case.record.find(Circuit, circuit))
    return phased and each_its_own(case.record, ways)


def neutral_elsewhere(case: Case) -> Iterator[Reason]:
    """Line and neutral of a point belong to different circuits."""
    circuits = (case.record.find(Circuit, ref) for ref in case.borrowed)
    if found := [circuit for circuit in circuits if circuit]:
        yield reason(
            "neutral_elsewhere",
            f"These circuits share a neutral: {named(found)}. Parted under your hands, "
            "it becomes live when someone uses the other circuit.",
            PRACTICE,
        )


def lighting(case: Case) -> Iterator[Reason]:
    """Lights: a shared neutral that nobody knows of cannot be excluded."""
    if case.lighting:
        yield reason(
            "lighting",
            "There are lights or their wires in this work. A neutral shared with "
            "another lighting circuit shows nothing on the tester until it is parted, "
            "so one way off is not enough.",
            PRACTICE,
        )


def earthing(case: Case) -> Iterator[Reason]:
    """With an earth rod, or nobody knows, the neutral is to be parted too."""
    if "tt" in case.earthings:
        said = "The earthing is TT, an earth rod: the neutral must be parted as well."
    elif "unknown" in case.earthings:
        said = f"{_not_known(case)}, so the neutral must be parted as well."
    else:
        return
    yield reason("earthing", said, WIRING)


def _not_known(case: Case) -> str:
    """Say whose earthing is not known: the home's, a board's, or another source's."""
    if "unknown" in case.earthings_of_network:
        boards = [board for board in case.near_boards if board.earthing == "unknown"]
        if case.record.home.earthing == "unknown" or not boards:
            return "The earthing is not known"
        return f"The earthing of what {named(boards)} feeds is not answered"
    return (
        f"Another source can feed this: {named(case.beside_network)}. Whether the "
        "neutral is earthed then is not recorded"
    )


def single_pole(case: Case) -> Iterator[Reason]:
    """A switch leaves the neutral connected where both poles have to be parted."""
    next_before = case.parting(case.near)
    leaves = [switch for switch in next_before if not breaks_neutral(switch)]
    if case.both_poles and leaves:
        yield reason(
            "single_pole",
            "Line and neutral both have to be parted here, and by the record these do "
            f"not open the neutral, or it is not known: {named(leaves)}.",
            WIRING,
        )


def label(case: Case) -> Iterator[Reason]:
    """The label of a way that is relied on is wrong, doubtful or missing."""
    if first := labels_first(case.net, case.near_devices):
        ways = listed(called(f.way) for f in first)
        yield reason(
            "label",
            f"The label is wrong, doubtful or missing at {ways}. "
            "Label before you rely on a single way.",
            PRACTICE,
        )


def carrier(case: Case) -> Iterator[Reason]:
    """A fuse carrier is touched only with its main switch off."""
    if found := [d for d in case.near_devices if d.kind in CARRIERS]:
        yield reason(
            "carrier",
            f"Fuse carriers are touched only after their main switch is off: "
            f"{named(found)}.",
            PRACTICE,
        )


def fed_back(case: Case) -> Iterator[Reason]:
    """A source can push the supply back into what is worked on."""
    refs = [*case.aim.circuits, *(point.ref for point in case.aim.points)]
    sources = (case.record.find(Source, r) for r in can_feed_back(case.net, refs))
    if found := [source for source in sources if source]:
        yield reason(
            "fed_back",
            f"These can feed back into the same wires: {named(found)}. "
            "Their own switches, as far as recorded, are in the wide set.",
            MEMORY,
        )


Rule = Callable[[Case], Iterator[Reason]]
TURNS: tuple[Rule, ...] = (
    weak_tie,
    rounds_differ,
    work_since,
    label,
    not_looked_at,
    two_circuits,
    two_ways,
    neutral_elsewhere,
    lighting,
    earthing,
    single_pole,
    carrier,
    fed_back,
)
