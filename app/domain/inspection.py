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
    """Return the latest inspection and the day of the next."""
    home = record.home
    last_on, said = max(_reports(record), key=lambda report: report[0] or date.min)
    duty = home.tenure in LET and home.nation in LAWS
    limit = _limit(home, last_on)
    if said and (limit is None or not duty or said <= limit):
        return Inspection(
            last_on=last_on, by=said, duty=duty, basis="The day that the report names"
        )
    basis = LAWS[home.nation] if duty else OWN
    return Inspection(last_on=last_on, by=limit, duty=duty, basis=basis)


def _reports(record: Record) -> list[tuple[date | None, date | None]]:
    """Return the day of each report, with the day that it recommends."""
    home = record.home
    return [
        (home.inspected_on, home.inspect_again_by),
        *(
            (paper.dated, paper.inspect_again_by)
            for paper in record.papers
            if paper.kind == "condition_report" and paper.dated
        ),
        *((o.done_on, None) for o in record.occasions if o.kind == "inspection"),
    ]


def _limit(home: Home, last_on: date | None) -> date | None:
    if last_on is None or home.tenure in ("other", "unknown"):
        return None
    return later(last_on, LET_YEARS if home.tenure in LET else OWN_YEARS, "year")
