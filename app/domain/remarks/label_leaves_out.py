"""A way feeds a point where nobody would look for it.

Looks at:
    Ways that feed a point in another place than most of what hangs on them.
Why it matters:
    The label names the usual place, and the point elsewhere stays live when that
    place's own way is off.
What to do:
    Add the place of that point to the label, and to the chart.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record import Device
from app.domain.remarks._kind import Found, Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(
    code="label-leaves-out",
    rank="record",
    group="labels",
    always_tells="Only points with a circuit are compared.",
)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each way that feeds an odd one out."""
    odd: dict[str, list[str]] = {}
    for one in sight.odd:
        for circuit in sight.circuits_at.get(one.point, ()):
            for way in sight.ways(circuit):
                odd.setdefault(way.ref, []).append(one.point)
    for ref, points in odd.items():
        found = sight.record.find(Device, ref)
        label = found.label_found if found else None
        words = f"says “{label}” and" if label else "also"
        yield Found(
            (ref, *dict.fromkeys(points)),
            f"{sight.name(ref)} {words} feeds {sight.names(points)}.",
        )
