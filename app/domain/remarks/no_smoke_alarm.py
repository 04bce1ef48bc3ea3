"""No smoke alarm is recorded.

Looks at:
    Smoke and heat alarms among the points, once every room was looked at.
Why it matters:
    Most who die in a fire at home were not woken.
What to do:
    Fit one on each storey; the fire service will often advise, or fit them. A record
    holds wired alarms and may not hold those on batteries only.
Source:
    Common practice, no source. In Scotland interlinked alarms are asked of every home
    since February 2022 (from memory); rented homes have rules of their own.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="no-smoke-alarm", rank="knowing", group="points")

ALARMS = ("smoke_alarm", "heat_alarm")
LOOKED = ("all",)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield that there is none, if all rooms were looked at."""
    if any(point.kind in ALARMS for point in sight.record.points):
        return
    away = refs_of(r for r in sight.record.rooms if r.looked_at not in LOOKED)
    if away or not sight.record.rooms:
        yield lacking(away or (sight.home,), "a look for alarms")
    else:
        yield Found((sight.home,), "No smoke or heat alarm is recorded in any room.")
