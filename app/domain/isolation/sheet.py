"""A plan as lines to read: the same for page, saved file, paper and console."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from app.domain.isolation.names import listed
from app.domain.isolation.shapes import (
    ADVICE,
    Affected,
    HouseOff,
    Outcome,
    Plan,
    Step,
    Switch,
)
from app.domain.isolation.steps import care_lines, household, switch_name

TAILS = (
    "The wires from the meter, and the incoming side of every main switch, stay live. "
    "Covers stay on."
)
NO_PROOF = (
    "What the record says, not what is so. Off at the board is no proof: prove the "
    "tester, prove dead where you will touch, prove the tester again."
)
GOES_OFF = "Goes off as well"
MAY_GO_OFF = "May go off, or stay live"
FEW = 10
POLES = {
    "line": "opens the line only",
    "line_and_neutral": "opens line and neutral",
    "three_line": "opens three lines only",
    "three_line_and_neutral": "opens three lines and neutral",
    "unknown": "which poles it opens is not recorded",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class SwitchLine:
    """One switch, as it is looked for at the board.

    Attributes:
        number: Its place in the order.
        ref: Its reference.
        name: What it is called, its label in quotation marks.
        where: Its board and room.
        note: Which poles it opens, and what to heed.
    """

    number: int
    ref: str
    name: str
    where: str
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """Everything that a plan says, in the order that a person needs it.

    Attributes:
        title: What it is for.
        home: Name of the home.
        advice: What is advised, in a few words.
        stops: Reasons to stop and find out first.
        reasons: Reasons for the wide set.
        labels: Ways to label before relying on them.
        set_name: What the switches are called together.
        switches: What to switch off, in order.
        instead: Other sets, with what they would leave or take.
        still_live: What stays live where the work is, and behind the switches.
        unknown: What is not known there, and so counts as live.
        care: What goes off that someone will miss.
        off_head: What the lists of what goes off are headed.
        others_off: What else goes off, room by room.
        rooms_off: The same in one line, counted where it is long.
        partly: What loses one supply and keeps another.
        before: What the household does first.
        sources: Sources besides the network.
        cautions: What to bear in mind.
        steps: The steps of the work.
        stop_when: When to stop.
        call: Whom to call.
        no_proof: What none of this proves.
    """

    title: str
    home: str
    advice: str
    stops: tuple[str, ...]
    reasons: tuple[str, ...]
    labels: tuple[str, ...]
    set_name: str
    switches: tuple[SwitchLine, ...]
    instead: tuple[str, ...]
    still_live: tuple[str, ...]
    unknown: tuple[str, ...]
    care: tuple[str, ...]
    off_head: str
    others_off: tuple[str, ...]
    rooms_off: str
    partly: tuple[str, ...]
    before: tuple[str, ...]
    sources: tuple[str, ...]
    cautions: tuple[str, ...]
    steps: tuple[Step, ...]
    stop_when: tuple[str, ...]
    call: tuple[str, ...]
    no_proof: str = NO_PROOF


def sheet_of(plan: Plan) -> Sheet:
    """Return a plan as lines; the sentences are those of the plan."""
    used = plan.used
    return Sheet(
        title=f"Isolation: {listed(item.title for item in plan.aim) or 'nothing'}",
        home=plan.home_name,
        advice=ADVICE[plan.advised],
        stops=tuple(r.sentence for r in plan.reasons if r.advice == "stop"),
        reasons=tuple(r.sentence for r in plan.reasons if r.advice == "wide"),
        labels=tuple(f"{f.board}: {f.sentence}" for f in _by_way(plan)),
        set_name="nearest set" if plan.advised == "nearest" else "wide set",
        switches=switch_lines(used.switches),
        instead=_instead(plan),
        still_live=_still_live(used),
        unknown=tuple(
            f"{name}: what feeds it is not recorded." for name in _unknown(used)
        ),
        care=care_lines((*used.goes_off, *used.work_off)),
        off_head=MAY_GO_OFF if _source_open(plan) else GOES_OFF,
        others_off=by_room(used.goes_off),
        rooms_off=in_short(used.goes_off),
        partly=tuple(
            f"{place(point)} keeps another supply." for point in used.partly_off
        ),
        before=household(used),
        sources=_sources(plan),
        cautions=tuple(c.sentence for c in plan.cautions if c.code != "tails"),
        steps=plan.steps,
        stop_when=plan.stop_when,
        call=plan.call,
    )


def house_sheet(found: HouseOff) -> Sheet:
    """Return how the whole home is taken off as lines."""
    items = (
        f"{item.title} ({item.ref}){f', {item.room}' if item.room else ''}: {item.why}"
        for item in found.still_live
    )
    return Sheet(
        title="Whole house off",
        home=found.home_name,
        advice=ADVICE["stop"] if found.stops or found.may_stay else "",
        stops=(*found.stops, *found.unknown, *filter(None, [found.may_stay])),
        reasons=(),
        labels=(),
        set_name="every switch of the home",
        switches=switch_lines(found.switches),
        instead=(),
        still_live=(TAILS, *found.behind, *items),
        unknown=(),
        care=care_lines(found.goes_off),
        off_head=MAY_GO_OFF if found.may_stay else GOES_OFF,
        others_off=by_room(found.goes_off),
        rooms_off=in_short(found.goes_off),
        partly=(),
        before=household(Outcome(goes_off=found.goes_off)),
        sources=tuple(
            f"{s.title}: {s.sentence}" for s in found.sources if s.known == "yes"
        ),
        cautions=(
            *found.leave,
            *(caution.sentence for caution in found.not_main),
            *found.batteries,
        ),
        steps=(),
        stop_when=found.stop_when,
        call=found.call,
    )


def switch_lines(switches: Iterable[Switch]) -> tuple[SwitchLine, ...]:
    """Return switches as they are looked for, in order."""
    return tuple(_line(number, switch) for number, switch in enumerate(switches, 1))


def by_room(points: Iterable[Affected]) -> tuple[str, ...]:
    """Return points in one line a room."""
    rooms: dict[str, list[str]] = {}
    for point in points:
        rooms.setdefault(point.room or "No room recorded", []).append(point.title)
    return tuple(f"{room}: {', '.join(titles)}." for room, titles in rooms.items())


def in_short(points: tuple[Affected, ...]) -> str:
    """Return points in one line: by name, or where they are many how many a room."""
    if len(points) <= FEW:
        return listed((place(point) for point in points), FEW)
    rooms = Counter(point.room or "no room recorded" for point in points)
    counted = (f"{room} ({number})" for room, number in rooms.items())
    return f"Points by room: {', '.join(counted)}."


def place(point: Affected) -> str:
    """Return a point with its reference and its room."""
    where = f", {point.room}" if point.room else ""
    return f"{point.title} ({point.ref}){where}"


def _line(number: int, switch: Switch) -> SwitchLine:
    where = (switch.board.title if switch.board else "", switch.room or "")
    note = POLES[switch.poles]
    if switch.carrier:
        note += ". A fuse carrier: only after its main switch"
    return SwitchLine(
        number=number,
        ref=switch.ref,
        name=switch_name(switch),
        where=", ".join(filter(None, where)) or "Where it is, is not recorded",
        note=f"{note[0].upper()}{note[1:]}.",
    )


def _by_way(plan: Plan) -> list[_WayLabel]:
    found: dict[str, _WayLabel] = {}
    for label in plan.labels_first:
        before = found.get(label.way.ref)
        said = (
            f"{before.sentence} {label.sentence}"
            if before
            else (f"{label.way.title}: {label.sentence}")
        )
        found[label.way.ref] = _WayLabel(label.board, said)
    return list(found.values())


@dataclass(frozen=True, slots=True)
class _WayLabel:
    """Everything that is wrong with one way's label, in one line."""

    board: str
    sentence: str


def _unknown(used: Outcome) -> list[str]:
    return [place(point) for point in used.unknown_here]


def _source_open(plan: Plan) -> bool:
    """Return whether a source may feed what is said to go off: nobody knows where."""
    codes = {reason.code for reason in plan.reasons}
    return not codes.isdisjoint(("source_unanswered", "source_unplaced"))


def _still_live(used: Outcome) -> tuple[str, ...]:
    cannot = (f"{place(p)} cannot be made dead from here." for p in used.cannot)
    here = (f"{place(p)} stays live." for p in used.live_here)
    intake = (f"{i.title} ({i.ref}) is in the room: live." for i in used.intake_here)
    return (*cannot, *here, *intake, *used.behind, TAILS)


def _sources(plan: Plan) -> tuple[str, ...]:
    known = (s for s in plan.sources if s.known == "yes")
    found = tuple(f"{s.title}: {s.sentence}" for s in known)
    if not found and plan.sources_answered:
        return ("Every other source is answered with no in the record or on the day.",)
    return found


def _instead(plan: Plan) -> tuple[str, ...]:
    others = list(plan.alternatives)
    said = []
    if plan.advised != "nearest" and plan.nearest.switches:
        names = listed(switch_name(switch) for switch in plan.nearest.switches)
        said.append(f"Nearest set, not advised here: {names}.")
    elif plan.wide.switches:
        names = listed(switch_name(switch) for switch in plan.wide.switches)
        said.append(f"Wide set: {names}.")
    for other in others:
        if {s.ref for s in other.switches} == {s.ref for s in plan.used.switches}:
            continue
        more = len(other.goes_off) - len(plan.nearest.goes_off)
        points = "point" if more == 1 else "points"
        name = switch_name(other.switches[0])
        said.append(f"One switch instead: {name}; {more} {points} more go off.")
    return tuple(said)
