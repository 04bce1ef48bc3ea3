"""What a reference table is, and how a figure is taken from it.

A table answers only for the rows that are printed in it: nothing between two rows is
worked out, and nothing beyond the last is supposed.  Whoever asks for more is refused
with a sentence, by one exception everywhere.
"""

from __future__ import annotations

import importlib
import pkgutil
from dataclasses import dataclass
from decimal import Decimal
from types import ModuleType
from typing import Literal

from app.errors import AppError

Basis = Literal["C", "S", "D", "M", "MD"]
Cell = Decimal | str | None

EDITION = "BS 7671:2018+A2:2022"
BASES: dict[Basis, str] = {
    "C": "two sources or more agree",
    "S": "one source",
    "D": "worked out by a formula",
    "M": "from memory",
    "MD": "from memory, and a formula agrees",
}
FROM_MEMORY = frozenset({"M", "MD"})
AMENDMENT = (
    "Amendment 4 (2026) is in force. Its tables were not available: these are the "
    "figures of the edition that each table names."
)


class OutsideTableError(AppError):
    """A figure was asked for that its table does not give."""


@dataclass(frozen=True, slots=True)
class Value:
    """A figure taken from a table, with where it stands and how well it is known."""

    value: Decimal
    unit: str
    source: str
    basis: Basis

    @property
    def known(self) -> str:
        """How well it is known, in words."""
        return BASES[self.basis]


@dataclass(frozen=True, slots=True)
class Row:
    """A line of a table: its cells, and how each is known."""

    cells: tuple[Cell, ...]
    bases: tuple[Basis, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """A reference table.

    Attributes:
        slug: Its name in an address.
        title: Heading.
        unit: Unit of its figures, where all have one.
        conditions: What the figures hold for.
        standard: The standard or guide that prints it.
        number: Its number there.
        edition: The edition that the figures are of.
        columns: Heads; the first names what a row is for.
        rows: Its lines.
        notes: What else must be known to use it.
    """

    slug: str
    title: str
    unit: str
    conditions: str
    standard: str
    number: str
    edition: str = EDITION
    columns: tuple[str, ...]
    rows: tuple[Row, ...]
    notes: tuple[str, ...] = ()

    @property
    def source(self) -> str:
        """Where it is printed, in one line."""
        standard = "" if self.edition.startswith(self.standard) else self.standard
        return " ".join(part for part in (standard, self.edition, self.number) if part)

    @property
    def from_memory(self) -> bool:
        """Whether any of its figures stands here from memory."""
        return any(FROM_MEMORY & set(row.bases) for row in self.rows)

    @property
    def keys(self) -> tuple[Cell, ...]:
        """What its rows are for, in order."""
        return tuple(row.cells[0] for row in self.rows)

    def at(self, key: Decimal | str, column: str | None = None) -> Value:
        """Return one figure; without a column, that of the second.

        Raises:
            OutsideTableError: There is no such row, or no figure in it.
        """
        keys = (key,) if isinstance(key, Decimal) else (key, _cell(key))
        row = next((row for row in self.rows if row.cells[0] in keys), None)
        if row is None:
            raise OutsideTableError(f"{self.source} has no row for {key}.")
        place = self.columns.index(column) if column else 1
        value = row.cells[place]
        if not isinstance(value, Decimal):
            where = f"{key}, {self.columns[place]}"
            raise OutsideTableError(f"{self.source} gives no figure for {where}.")
        return Value(value, self.unit_of(place), self.source, row.bases[place])

    def next_at(self, key: Decimal, column: str | None = None) -> tuple[Decimal, Value]:
        """Return the first row that is not below a number, with its figure.

        For factors that only fall from row to row, so that this is the cautious side.

        Raises:
            OutsideTableError: The number is beyond the last row.
        """
        above = [k for k in self.keys if isinstance(k, Decimal) and k >= key]
        if not above:
            raise OutsideTableError(
                f"{self.source} ends at {self.keys[-1]}: not {key}."
            )
        return min(above), self.at(min(above), column)

    def unit_of(self, place: int) -> str:
        """Return the unit of a column: its own in brackets, else the table's."""
        head = self.columns[place]
        return head.partition("(")[2].rstrip(")") if head.endswith(")") else self.unit


def line(bases: str, *cells: str | None) -> Row:
    """Return a row from plain text: numbers become exact, a dash is no figure.

    Args:
        bases: A code for every cell, or one for each.
        cells: What stands in the row.
    """
    codes = bases.split()
    every = codes if len(codes) > 1 else codes * len(cells)
    if len(every) != len(cells):
        raise ValueError(f"{len(cells)} cells, {len(every)} codes")
    return Row(tuple(_cell(c) for c in cells), tuple(_basis(code) for code in every))


def found_in(package: ModuleType) -> dict[str, Table]:
    """Return the tables of a folder by slug, in the order of their modules."""
    names = sorted(m.name for m in pkgutil.iter_modules(package.__path__))
    found: dict[str, Table] = {}
    for name in names:
        if not name.startswith("_"):
            table = importlib.import_module(f"{package.__name__}.{name}").TABLE
            found[table.slug] = table
    return found


def _cell(text: str | None) -> Cell:
    if text is None or text == "-":
        return None
    try:
        return Decimal(text)
    except ArithmeticError:
        return text


def _basis(code: str) -> Basis:
    for known in BASES:
        if known == code:
            return known
    raise ValueError(f"no such basis: {code}")
