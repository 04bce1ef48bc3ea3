"""A circuit without a 30 mA RCD whose cable may be hidden in a wall.

Looks at:
    Every RCD before points that are no sockets and no lights, and how the cable of
    their circuit is laid.
Why it matters:
    A nail or a screw that meets a cable less than 50 mm deep makes its point live.
What to do:
    Do not drill above, below or beside the points of this circuit. Ask an electrician
    when the board is next worked on.
Source:
    BS 7671:2018+A2:2022, 522.6.202 and 522.6.203 (one source seen).
Not retrospective:
    Asked of new cables since 1 July 2008.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record import Circuit, Point
from app.domain.remarks._cover import by_circuit, found_bare, is_bare, rule_of
from app.domain.remarks._kind import CannotTell, Need, Outcome, RemarkKind
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="hidden-cable-without-30-ma", rank="knowing", group="rcd")

HIDDEN = ("A", "102", "103")
OPEN = ("B", "D", "E")
GUARDED = ("armoured", "mineral")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the circuits with such cables."""
    points = [
        p for p in sight.record.points
        if rule_of(sight, p) == "others" and is_bare(sight, p)
    ]  # fmt: skip
    open_ones: list[str] = []
    points_of_open: list[str] = []
    for subject, group in by_circuit(sight, points):
        circuit = sight.record.find(Circuit, subject)
        if circuit and (circuit.method in OPEN or circuit.cable in GUARDED):
            yield _visible(circuit, group)
        elif circuit and circuit.method in HIDDEN:
            yield found_bare(sight, subject, group)
        else:
            open_ones.append(subject)
            points_of_open += refs_of(group)
    if open_ones:
        needs = tuple(
            Need(ref=r, what="whether its cable is hidden in a wall") for r in open_ones
        )
        yield CannotTell(tuple(dict.fromkeys((*open_ones, *points_of_open))), needs)


def _visible(circuit: Circuit, points: tuple[Point, ...]) -> Outcome:
    """A cable that is armoured or in view may still end in points without one."""
    refs = refs_of(points)
    need = Need(ref=circuit.ref, what="what the makers of the fixed equipment ask for")
    return CannotTell((circuit.ref, *refs), (need,))
