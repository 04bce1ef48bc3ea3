"""Long lists: filtered by what is typed, sorted by the column that is chosen."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from flask import request

from app.domain.record import Item


@dataclass(frozen=True, slots=True, kw_only=True)
class ListView:
    """A list as a page shows it.

    Attributes:
        heads: Heading of each column.
        rows: Its rows: each cell a text, a text with an address, or None.
        numbers: Columns that hold numbers.
        total: How many rows there are without the filter.
        filter: What was typed to filter by.
        sort: Number of the column sorted by, or -1.
    """

    heads: tuple[str, ...]
    rows: tuple[tuple[Any, ...], ...]
    numbers: tuple[int, ...]
    total: int
    filter: str
    sort: int


def list_view(
    heads: Sequence[str],
    rows: Iterable[tuple[Any, ...]],
    numbers: tuple[int, ...] = (),
) -> ListView:
    """Return a list filtered and sorted as the address asks: ``filter``, ``sort``."""
    everything = list(rows)
    wanted = request.args.get("filter", "").strip()[:100]
    kept = [row for row in everything if _holds(row, wanted.casefold())]
    column = request.args.get("sort", "")
    sort = int(column) if column in {str(n) for n in range(len(heads))} else -1
    if sort >= 0:
        kept.sort(key=lambda row: _order(row[sort]))
    return ListView(
        heads=tuple(heads),
        rows=tuple(kept),
        numbers=numbers,
        total=len(everything),
        filter=wanted,
        sort=sort,
    )


def _text(cell: Any) -> str:
    if cell is None:
        return "not known"
    return str(cell[0] if isinstance(cell, tuple) else cell)


def _holds(row: tuple[Any, ...], wanted: str) -> bool:
    line = " ".join(_text(cell) for cell in row).casefold()
    return all(word in line for word in wanted.split())


def _order(cell: Any) -> tuple[bool, float, str]:
    """Numbers by size, words by their letters, what is not known last."""
    text = _text(cell)
    number = float(text) if text.isascii() and text.isdigit() else 0.0
    return cell is None, number, text.casefold()


def groups_of(
    groups: Iterable[tuple[str, Sequence[Item]]],
) -> tuple[tuple[str, tuple[tuple[str, str], ...]], ...]:
    """Return what may be chosen, group by group: each reference and its words."""
    return tuple(
        (name, tuple((i.ref, f"{i.title} ({i.ref})") for i in items))
        for name, items in groups
        if items
    )
