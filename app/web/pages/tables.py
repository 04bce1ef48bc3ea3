"""The reference tables in full, each value with its basis."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, render_template, url_for
from flask.typing import ResponseReturnValue

from app.domain.tables import BASES, NEWER, TABLES, Table
from app.errors import NotFoundError

bp = Blueprint("tables", __name__, url_prefix="/tables")


@dataclass(frozen=True, slots=True, kw_only=True)
class TablesPage:
    """The list of tables.

    Attributes:
        title: Heading.
        newer: Which edition the values are of.
        tables: Title, standard and address of each.
        bases: What the bases mean: word and meaning.
    """

    title: str
    newer: str
    tables: tuple[tuple[str, str, str], ...]
    bases: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TablePage:
    """One table in full.

    Attributes:
        title: Heading.
        table: The table.
        heads: Headings, the basis last.
        rows: Cells, the basis last; a cell that the table leaves open is named so.
        newer: Which edition the values are of.
        index: Address of the list.
    """

    title: str
    table: Table
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    newer: str
    index: str


@bp.get("/")
def index() -> ResponseReturnValue:
    """List the tables."""
    page = TablesPage(
        title="Reference tables",
        newer=NEWER,
        tables=tuple(
            (table.title, table.standard, url_for(".show", code=code))
            for code, table in sorted(TABLES.items(), key=lambda pair: pair[1].title)
        ),
        bases=tuple(BASES.items()),
    )
    return render_template("pages/tables/index.html", page=page)


@bp.get("/<code>")
def show(code: str) -> ResponseReturnValue:
    """Show one table."""
    table = TABLES.get(code)
    if table is None:
        raise NotFoundError("There is no such table.")
    page = TablePage(
        title=table.title,
        table=table,
        heads=(*table.columns, "Basis"),
        rows=tuple(
            (*(cell or "left open" for cell in cells), basis)
            for cells, basis in zip(table.rows, table.basis, strict=True)
        ),
        newer=NEWER,
        index=url_for(".index"),
    )
    return render_template("pages/tables/show.html", page=page)
