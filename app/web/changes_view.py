"""Changes as pages show them: by day, each with what it did in sentences."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from itertools import groupby
from typing import Any

from flask import url_for

from app.domain.history import Happened
from app.domain.told import Told
from app.domain.uk_time import uk_time
from app.domain.words import day
from app.web.paired import HERE

MOST_LINES = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemView:
    """What a change did to one item.

    Attributes:
        title: The item, and what it met.
        url: Address of the item’s history; None for the home.
        sentences: What differs, a sentence a field.
        all_of_it: Whether the sentences say what was recorded, not what differs.
    """

    title: str
    url: str | None
    sentences: tuple[str, ...]
    all_of_it: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeView:
    """A change as a list shows it.

    Attributes:
        key: Its number.
        url: Address of its own page.
        time: The time of day.
        sentence: What was done.
        made_by: Where it was done from.
        undone: Whether it was taken back since.
        lines: What it changed, the first few.
        more: How many lines more its own page has.
    """

    key: int
    url: str
    time: str
    sentence: str
    made_by: str
    undone: bool
    lines: tuple[str, ...]
    more: int


@dataclass(frozen=True, slots=True, kw_only=True)
class DayView:
    """The changes of one day, the newest first."""

    label: str
    changes: tuple[ChangeView, ...]


def by_day(home: str, found: Iterable[Happened], ref: str = "") -> tuple[DayView, ...]:
    """Return changes by day, in the order given.

    Args:
        home: Reference of the home.
        found: The changes.
        ref: The item that they are shown for; empty: all that they did is shown.
    """
    grouped = groupby(found, key=lambda each: day(_local(each.at)))
    return tuple(
        DayView(label=label, changes=tuple(_view(home, each, ref) for each in changes))
        for label, changes in grouped
    )


def item_views(home: str, items: Iterable[Told]) -> tuple[ItemView, ...]:
    """Return what was done to items, each with the way to its history."""
    return tuple(
        ItemView(
            title=f"{item.name}: {item.what}",
            url=_history_url(home, item),
            sentences=item.sentences,
            all_of_it=item.what in ("added", "removed"),
        )
        for item in items
    )


def time_of(at: str) -> str:
    """Return the time of day of a moment, as clocks in the United Kingdom showed it."""
    return f"{_local(at):%H:%M}"


def day_of(at: str) -> str:
    """Return the day of a moment in the United Kingdom."""
    return day(_local(at))


def day_and_time(at: str) -> dict[str, Any]:
    """Return a moment as the boxes of the past take it: ``day`` and ``time``."""
    local = _local(at)
    return {"day": local.date().isoformat(), "time": f"{local:%H:%M}"}


def from_where(made_by: str) -> str:
    """Return where a change was made, as a sentence says it."""
    return f"from {made_by}" if made_by else f"on {HERE}"


def _view(home: str, change: Happened, ref: str) -> ChangeView:
    items = [item for item in change.items if ref in ("", item.ref)]
    lines = [line for item in items for line in _lines(item, named=len(items) > 1)]
    return ChangeView(
        key=change.number,
        url=url_for("changes.show", home=home, number=change.number),
        time=time_of(change.at),
        sentence=change.sentence,
        made_by=from_where(change.made_by),
        undone=change.undone_by is not None,
        lines=tuple(lines[:MOST_LINES]),
        more=max(len(lines) - MOST_LINES, 0),
    )


def _lines(item: Told, *, named: bool) -> list[str]:
    """Return the fields that differ; of what is new or gone, that it is."""
    if item.what in ("added", "removed"):
        return [f"{item.name}: {item.what}"] if named else []
    return [f"{item.name}. {said}" if named else said for said in item.sentences]


def _history_url(home: str, item: Told) -> str | None:
    if item.sort == "home":
        return None
    return url_for("changes.of_item", home=home, ref=item.ref)


def _local(at: str) -> datetime:
    return uk_time(datetime.fromisoformat(at))
