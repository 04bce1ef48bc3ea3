"""The test button of an RCD has not been pressed for as long as it asks.

Looks at:
    The day on which the test button of each RCD was last pressed, and how often it or
    its notice asks for that.
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

from app.domain.buttons import last_pressed, months_of, rcds_of
from app.domain.days import in_words, later
from app.domain.failed import failed_rcds
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="test-button-due", rank="knowing", group="papers")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the RCDs whose button waits, and those of which no day is known.

    One that failed has a remark of its own.
    """
    rcds = rcds_of(sight.record)
    days = {rcd.ref: last_pressed(sight.record, rcd) for rcd in rcds}
    for rcd in rcds:
        pressed, (months, _) = days[rcd.ref], months_of(rcd)
        if pressed and later(pressed, months, "month") < sight.today:
            yield Found(
                (rcd.ref,),
                f"{sight.name(rcd.ref)}: last pressed on {in_words(pressed)}.",
            )
    failed = failed_rcds(sight.net)
    undated = refs_of(r for r in rcds if days[r.ref] is None and r.ref not in failed)
    if undated:
        yield lacking(undated, "the day its test button was last pressed")
