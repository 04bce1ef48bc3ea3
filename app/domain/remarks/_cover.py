"""Points without an RCD of 30 mA or less, by the rule that asks for one."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from app.domain.kinds import POINT_KINDS
from app.domain.record import Circuit, Point
from app.domain.remarks._kind import Found, Outcome, lacking
from app.domain.remarks._sight import (
    Sight,
    feeds_people,
    is_outdoors,
    is_socket,
    is_wet_room,
    refs_of,
)

RULES = ("outdoors", "bathroom", "sockets", "lights", "others")


def rule_of(sight: Sight, point: Point) -> str:
    """Return which rule of `RULES` a point falls under, the strictest first."""
    outdoors = is_outdoors(sight, point)
    room = sight.room(point)
    if outdoors and is_socket(point):
        return "outdoors"
    if room is not None and is_wet_room(room):
        return "bathroom"
    if is_socket(point):
        return "sockets"
    group = POINT_KINDS[point.kind].group
    return "lights" if group == "lights" else "others"


def without_cover(sight: Sight, rule: str) -> Iterator[Outcome]:
    """Yield, circuit by circuit, the points of a rule that lack a 30 mA RCD.

    Points of which that is not known are yielded apart, as not to be told.
    """
    points = [p for p in sight.record.points if rule_of(sight, p) == rule]
    bare = [p for p in points if is_bare(sight, p)]
    for subject, group in by_circuit(sight, bare):
        yield found_bare(sight, subject, group)
    open_ones = [p for p in points if sight.covers[p.ref] == "unknown"]
    for _, group in by_circuit(sight, open_ones):
        yield lacking(
            refs_of(group), "what feeds it and the IΔn of every RCD before it"
        )


def is_bare(sight: Sight, point: Point) -> bool:
    """Return whether a circuit feeds a point without such an RCD before it.

    One of two circuits without it is enough; the d.c. side of an inverter is none.
    """
    cover = sight.covers[point.ref]
    several = len(sight.circuits_at.get(point.ref, ())) > 1
    return cover == "no" or (cover == "some" and several)


def by_circuit(
    sight: Sight, points: Iterable[Point]
) -> list[tuple[str, tuple[Point, ...]]]:
    """Return the points under the circuit that feeds them, else each by itself."""
    groups: dict[str, list[Point]] = {}
    for point in points:
        circuits = sight.circuits_at.get(point.ref, ())
        subject = circuits[0].ref if circuits else point.ref
        groups.setdefault(subject, []).append(point)
    return [(subject, tuple(group)) for subject, group in groups.items()]


def found_bare(sight: Sight, subject: str, points: tuple[Point, ...]) -> Found:
    """Return the remark on a circuit's points, with the ways and what RCD there is."""
    circuit = sight.record.find(Circuit, subject)
    ways = refs_of(sight.ways(circuit)) if circuit else ()
    larger = {
        step.ref: step.residual_current_ma
        for point in points
        for step in sight.rcds(point.ref)
        if step.residual_current_ma and not feeds_people(step)
    }
    refs = refs_of(points)
    on = f"On {sight.name(subject)}: " if circuit else ""
    also = "".join(
        f" {sight.name(ref)} stands before, at {ma} mA or delayed: it guards against "
        "fire, not a person."
        for ref, ma in larger.items()
    )
    return Found(
        tuple(dict.fromkeys((subject, *refs, *ways, *larger))),
        f"{on}{sight.names(refs)}.{also}",
    )
