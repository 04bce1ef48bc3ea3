"""A label names one thing where the way feeds several.

Looks at:
    Labels that name one appliance, against the points of the way.
Why it matters:
    Whoever switches it off, or leaves it on for the freezer, does not know of the rest.
What to do:
    Write the place, and the one thing after it.
Source:
    Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from app.domain.kinds import DEVICE_KINDS
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="label-names-one-thing", rank="knowing", group="labels")

ONE_THING = re.compile(
    r"\b(freezer|fridge|boiler|router|dryer|washer)\b", re.IGNORECASE
)
NOT_COUNTED = ("fused_connection_unit", "appliance_switch", "switch", "junction_box")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each way that says one appliance and feeds several points."""
    for device in sight.record.devices:
        word = ONE_THING.search(device.label_found or "")
        if not word or not DEVICE_KINDS[device.kind].outgoing:
            continue
        points = [
            p for p in sight.points_below(device.ref) if p.kind not in NOT_COUNTED
        ]
        if len(points) > 1:
            yield Found(
                (device.ref, *refs_of(points)),
                f"{sight.name(device.ref)} feeds {len(points)} points: "
                f"{sight.names(refs_of(points))}.",
            )
        elif not points:
            yield lacks(device.ref, "the points that hang on it")
