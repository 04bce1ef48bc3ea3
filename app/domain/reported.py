"""What the latest report of an inspection says, wherever it was written down."""

from __future__ import annotations

from datetime import date

from app.domain.inspection import inspection_of
from app.domain.record import Home, Record
from app.domain.to_come import without_days_to_come

# Papers that work gets, each of which may put right what a report asks for.
OF_WORK = ("installation_certificate", "minor_works", "compliance", "completion")


def home_as_reported(record: Record, today: date) -> Home:
    """Return the facts of a home with the latest report, and the day of the next.

    A report may stand in the home, among its papers, or be written down as done.
    """
    found = inspection_of(without_days_to_come(record, today))
    said = {"inspected_on": found.last_on, "inspect_again_by": found.by}
    return record.home.model_copy(update=said)


def put_right_since(record: Record) -> date | None:
    """Return since when the latest report asks for something to be put right.

    Work that was done since, or a paper of such work, puts it right as far as the
    record can tell.
    """
    asked = [
        time.done_on
        for time in record.occasions
        if time.kind == "inspection" and time.outcome == "put_right"
    ]
    latest = max(asked, default=None)
    if latest is None or latest != inspection_of(record).last_on:
        return None
    since = (
        *(work.done_on for work in record.works if work.state == "done"),
        *(paper.dated for paper in record.papers if paper.kind in OF_WORK),
    )
    return None if any(day and day >= latest for day in since) else latest
