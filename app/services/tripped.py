"""The sheet to hang by the board, as PDF."""

from __future__ import annotations

from dataclasses import asdict
from datetime import date

from app.domain.network import Network
from app.domain.tripped import if_it_trips
from app.report import Paper, as_pdf


def sheet_pdf(net: Network, day: date) -> bytes:
    """Return the sheet of a home, on one page of A4 if its letters may be small enough.

    Args:
        net: The supply network.
        day: The day that the paper carries.
    """
    sheet = if_it_trips(net)
    title = f"If it trips, {sheet.home}"
    return as_pdf(Paper(template="tripped", title=title, day=day, data=asdict(sheet)))
