"""By when an inspection is recommended, or, for a home that is let, asked for by law.

Own home: ten years or on a change of hands, as a charity for electrical safety advises.
Let: five years at most, or sooner where the report says so; SI 2020/312 in England, the
2022 fitness regulations in Wales, the 2006 Act in Scotland, NISR 2024/201 in Northern
Ireland.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from app.domain.days import later
from app.domain.record import Home, Record

OWN_YEARS, LET_YEARS = 10, 5
LET = ("let", "rents")
LAWS = {
    "england": "SI 2020/312, England: five years at most",
    "wales": "Fitness for human habitation regulations 2022, Wales: five years at most",
    "scotland": "Housing (Scotland) Act 2006: five years at most",
    "northern_ireland": "NISR 2024/201, Northern Ireland: five years at most",
}
OWN = "Ten years for a home of one's own, or on a change of hands: advice, no duty"
NATION = (
    "The nation decides which law asks for it, and is not recorded; each says five "
    "years at most for a home that is let"
)
TENURE = (
    "Whether it is let decides, and is not recorded: ten years for a home of one's "
    "own, as advice; five at most for one that is let"
)
NAMED = "The day that the report names"
UNDATED = "The day that a report without a date names; which report is later is open"


@dataclass(frozen=True, slots=True, kw_only=True)
class Inspection:
    """What is known of inspections.

    Attributes:
        last_on: Day of the latest report; None when not known.
        by: Day by which another is recommended; None when not known.
        duty: Whether a law asks for it.
        basis: Where the day comes from.
    """

    last_on: date | None
    by: date | None
    duty: bool
    basis: str


def inspection_of(record: Record) -> Inspection:
    """Return the latest inspection and the day of the next.

    Of the reports of one day, and of those without one that name a day after it, the
    soonest day counts: nobody can tell which is the later.
    """
    home, reports = record.home, _reports(record)
    last_on = max((on for on, _ in reports if on), default=None)
    own = [by for on, by in reports if by and on == last_on and on]
    open_ones = [by for on, by in reports if by and not on]
    undated = [by for by in open_ones if last_on is None or by > last_on]
    said = min((*own, *undated), default=None)
    limit = _limit(home, last_on)
    duty = home.tenure in LET and home.nation in LAWS
    if said and (limit is None or home.tenure not in LET or said <= limit):
        basis = NAMED if said in own else UNDATED
        return Inspection(last_on=last_on, by=said, duty=duty, basis=basis)
    return Inspection(last_on=last_on, by=limit, duty=duty, basis=_basis(home))


def _basis(home: Home) -> str:
    if home.tenure in LET:
        return LAWS.get(home.nation, NATION)
    return OWN if home.tenure == "owner" else TENURE


def _reports(record: Record) -> list[tuple[date | None, date | None]]:
    """Return the day of each report, with the day that it recommends.

    An inspection that came to nothing left no report.
    """
    home = record.home
    return [
        (home.inspected_on, home.inspect_again_by),
        *(
            (paper.dated, paper.inspect_again_by)
            for paper in record.papers
            if paper.kind == "condition_report"
        ),
        *(
            (o.done_on, None)
            for o in record.occasions
            if o.kind == "inspection" and o.outcome != "failed"
        ),
    ]


def _limit(home: Home, last_on: date | None) -> date | None:
    if last_on is None or home.tenure in ("other", "unknown"):
        return None
    return later(last_on, LET_YEARS if home.tenure in LET else OWN_YEARS, "year")
