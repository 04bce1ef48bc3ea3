"""The reference tables, each in full, with how well every figure is known."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from flask import Blueprint, render_template, url_for
from flask.typing import ResponseReturnValue

from app.domain.tables import AMENDMENT, BASES, TABLES, Basis, Cell, Row, Table
from app.errors import NotFoundError

bp = Blueprint("tables", __name__, url_prefix="/help/tables")
MARKS: dict[Basis, str] = {"C": "", "S": "†", "D": "‡", "M": "*", "MD": "**"}
NO_FIGURE = "no figure"


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexPage:
    """The list of tables.

    Attributes:
        title: Heading.
        edition: Which edition the figures are of.
        rows: Title with address, where it is printed, whether any is from memory.
    """

    title: str
    edition: str
    rows: tuple[tuple[object, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TablePage:
    """One table.

    Attributes:
        title: Heading.
        source: Where it is printed.
        unit: Unit of its figures; may be empty.
        conditions: What the figures hold for.
        from_memory: Whether any figure stands here from memory.
        marks: Mark and words for how a figure is known.
        heads: Its heads.
        rows: Its lines.
        notes: What else must be known.
        edition: Which edition the figures are of.
        back: Address of the list.
    """

    title: str
    source: str
    unit: str
    conditions: str
    from_memory: bool
    marks: tuple[tuple[str, str], ...]
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    notes: tuple[str, ...]
    edition: str
    back: str


@bp.get("/")
def index() -> ResponseReturnValue:
    """List the tables."""
    page = IndexPage(
        title="Reference tables",
        edition=AMENDMENT,
        rows=tuple(
            (
                (table.title, url_for(".show", slug=table.slug)),
                table.source,
                "some or all from memory"
                if table.from_memory
                else "seen or worked out",
            )
            for table in sorted(TABLES.values(), key=lambda table: table.title)
        ),
    )
    return render_template("pages/tables/index.html", page=page)


@bp.get("/<slug>")
def show(slug: str) -> ResponseReturnValue:
    """Show one table."""
    table = TABLES.get(slug)
    if table is None:
        raise NotFoundError(f"There is no table “{slug}”.")
    page = TablePage(
        title=table.title,
        source=table.source,
        unit=table.unit,
        conditions=table.conditions,
        from_memory=table.from_memory,
        marks=_marks(table),
        heads=table.columns,
        rows=tuple(_row(row) for row in table.rows),
        notes=table.notes,
        edition=AMENDMENT,
        back=url_for(".index"),
    )
    return render_template("pages/tables/show.html", page=page)


def _marks(table: Table) -> tuple[tuple[str, str], ...]:
    used = {basis for row in table.rows for basis in row.bases[1:]}
    return tuple(
        (MARKS[basis] or "no mark", words)
        for basis, words in BASES.items()
        if basis in used
    )


def _row(row: Row) -> tuple[str, ...]:
    first = _plain(row.cells[0])
    pairs = zip(row.cells[1:], row.bases[1:], strict=True)
    return (first, *(_marked(cell, basis) for cell, basis in pairs))


def _marked(cell: Cell, basis: Basis) -> str:
    if cell is None:
        return NO_FIGURE
    mark = MARKS[basis]
    return f"{_plain(cell)} {mark}" if mark else _plain(cell)


def _plain(cell: Cell) -> str:
    return f"{cell:f}" if isinstance(cell, Decimal) else str(cell or NO_FIGURE)
