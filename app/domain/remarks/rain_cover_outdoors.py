"""A fitting outdoors has no cover against rain.

Looks at:
    Points outdoors, and the IP code printed on them.
Why it matters:
    Rain gets in; the RCD trips, or the case becomes live.
What to do:
    Ask an electrician for one made for outdoors.
Source:
    BS 7671:2018+A2:2022, 522.3 asks that it suits the place (from memory); IPX4 is
    common practice.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, is_mains, is_outdoors, water_digit

KIND = RemarkKind(code="rain-cover-outdoors", rank="electrician", group="points")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each fitting outdoors that says too little, and those not read."""
    unread = []
    for point in sight.record.points:
        if is_outdoors(sight, point) is not True or not is_mains(point):
            continue
        digit = water_digit(point.ip)
        if digit is None:
            unread.append(point.ref)
        elif digit < 4:
            yield Found((point.ref,), f"{sight.name(point.ref)} says {point.ip}.")
    if unread:
        yield lacking(tuple(unread), "the IP code printed on it")
