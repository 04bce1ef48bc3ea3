"""An inspection is recommended.

Looks at:
    The day of the last inspection report, in the record of the home or among its
    papers, the day it recommends, and who lives in the home.
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

from app.domain.days import in_words
from app.domain.inspection import LET, NATION, Inspection, inspection_of
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="inspection-due", rank="knowing", group="papers")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield that the day has come, or that none is known."""
    home, found = sight.record.home, inspection_of(sight.record)
    if found.last_on is None and found.by is None:
        yield lacks(sight.home, _report(home.tenure))
    elif found.by is None:
        yield lacks(sight.home, "who lives in it")
    elif found.by <= sight.today:
        yield Found((sight.home,), _sentence(found, found.by, home.tenure))


def _report(tenure: str) -> str:
    if tenure in LET:
        return "the inspection report that a let home has to have, with its day"
    return "the day of the last inspection report"


def _sentence(found: Inspection, by: date, tenure: str) -> str:
    if found.duty:
        return (
            f"For a home that is let, a new report was to be there by {in_words(by)}."
        )
    said = f"A new inspection report was recommended by {in_words(by)}."
    return f"{said} {NATION}." if tenure in LET else said
