"""The test button of an RCD has not been pressed for six months.

Looks at:
    The day on which the test button of each RCD was last pressed.
Why it matters:
    An RCD that is never moved can stick, and then guards nobody.
What to do:
    Press it when nobody minds the interruption. It proves only the RCD itself. If it
    does not trip, call an electrician. The maker may ask for another interval.
Source:
    BS 7671:2018+A2:2022, 514.12.2: six months, three in editions before 2018 (from
    memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.kinds import DEVICE_KINDS
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="test-button-due", rank="knowing", group="papers")

MOST_DAYS = 183


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the RCDs whose button waits, and those of which no day is known."""
    rcds = [
        d for d in sight.record.devices
        if d.residual_current_ma or "earth_leakage" in DEVICE_KINDS[d.kind].protects
    ]  # fmt: skip
    undated = refs_of(d for d in rcds if d.button_pressed_on is None)
    for rcd in rcds:
        pressed = rcd.button_pressed_on
        if pressed and (sight.today - pressed).days > MOST_DAYS:
            yield Found(
                (rcd.ref,),
                f"{sight.name(rcd.ref)}: last pressed on {pressed.day} "
                f"{pressed:%B %Y}.",
            )
    if undated:
        yield lacking(undated, "the day its test button was last pressed")
