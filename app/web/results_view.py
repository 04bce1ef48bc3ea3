"""The test results of one thing, on the page of that thing."""

from __future__ import annotations

from dataclasses import dataclass

from flask import url_for

from app.domain.record import IntakeItem, Item, Record
from app.domain.results import results_of
from app.web.addresses import Link, item_url
from app.web.result_rows import day_of, measured


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultsView:
    """What was measured at one thing.

    Attributes:
        of: What the thing is called.
        links: What was measured, the newest first, each with the page of that result.
        new: Address of the form of one result more; None where none is offered.
    """

    of: str
    links: tuple[Link, ...]
    new: str | None


def results_at(record: Record, item: Item) -> ResultsView:
    """Return what was measured at a thing, and where one more is written down.

    Nothing in the intake is offered to be measured.
    """
    home = record.home.ref
    new = url_for(
        "items.new", home=home, plural="results", about=item.ref, back=item.ref
    )
    return ResultsView(
        of=item.title,
        links=tuple(
            (f"{day_of(result)}: {measured(result)}", item_url(home, result))
            for result in results_of(record, item.ref)
        ),
        new=None if isinstance(item, IntakeItem) else new,
    )
