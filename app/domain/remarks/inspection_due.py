"""An inspection is recommended.

Looks at:
    The day of the last inspection report, the day it recommends, and who lives in the
    home.
Why it matters:
    Terminals loosen and cables age where nobody sees it.
What to do:
    Have an inspection report made. For a home that is let, the landlord has a duty to
    have one; for your own home it is a recommendation.
Source:
    Own home: ten years, or on a change of hands, as a charity for electrical safety
    advises. Let: five years, by SI 2020/312 in England, the 2022 fitness regulations in
    Wales, the 2006 Act in Scotland, NISR 2024/201 in Northern Ireland.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from app.domain.record import Home
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="inspection-due", rank="knowing", group="papers")

OWN_YEARS, LET_YEARS = 10, 5
LET = ("let", "rents")
NATIONS = ("england", "wales", "scotland", "northern_ireland")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield that the day has come, or that none is known."""
    home = sight.record.home
    if home.inspected_on is None and home.inspect_again_by is None:
        yield lacks(sight.home, _report(home.tenure))
        return
    if home.tenure in ("other", "unknown") and home.inspect_again_by is None:
        yield lacks(sight.home, "who lives in it")
        return
    by = home.inspect_again_by or _years_on(home)
    if by <= sight.today:
        yield Found((sight.home,), _sentence(home, by))


def _report(tenure: str) -> str:
    if tenure in LET:
        return "the inspection report that a let home has to have, with its day"
    return "the day of the last inspection report"


def _years_on(home: Home) -> date:
    start, years = home.inspected_on, LET_YEARS if home.tenure in LET else OWN_YEARS
    if start is None:
        return date.max
    later = min(start.year + years, date.max.year)
    return start.replace(year=later, day=min(start.day, 28))


def _sentence(home: Home, by: date) -> str:
    day = f"{by.day} {by:%B %Y}"
    if home.tenure in LET and home.nation in NATIONS:
        return f"For a home that is let, a new report was to be there by {day}."
    return f"A new inspection report was recommended by {day}."
