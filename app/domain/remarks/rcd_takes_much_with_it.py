"""One RCD takes off several things that would be missed.

Looks at:
    What is marked as missed if it goes off, boilers and alarms, behind each RCD that
    several circuits share.
Why it matters:
    A damp appliance anywhere on that RCD takes all of them off, perhaps while nobody is
    at home.
What to do:
    Look at them after a trip. Ask an electrician about an RCBO for each of these when
    the board is next worked on.
Source:
    BS 7671:2018+A2:2022, 314.1 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record import Point
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="rcd-takes-much-with-it", rank="knowing", group="rcd")

MISSED = {
    "medical", "care_alarm", "stairlift", "alarm", "freezer", "heating", "water",
    "livestock", "router",
}  # fmt: skip
BY_KIND = {"boiler": "heating", "smoke_alarm": "alarm", "heat_alarm": "alarm"}


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each shared RCD with several things behind it that matter."""
    for rcd in sight.record.devices:
        if rcd.kind != "rcd" or len(sight.circuits_below(rcd.ref)) < 2:
            continue
        points = sight.points_below(rcd.ref)
        missed = {p.ref: cared_for(p) for p in points if cared_for(p)}
        if len(set().union(*missed.values())) > 1:
            yield Found(
                (rcd.ref, *missed),
                f"{sight.name(rcd.ref)} takes off together: {sight.names(missed)}.",
            )
        elif not points:
            yield lacks(rcd.ref, "the points that hang on the circuits")


def cared_for(point: Point) -> set[str]:
    """Return what would be missed with a point, by its marks and its kind."""
    own = {BY_KIND[point.kind]} if point.kind in BY_KIND else set()
    return own | (MISSED & set(point.care))
