"""What a reference table is, and looking a value up without leaving its range."""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from types import ModuleType

from app.errors import AppError

BASES = {
    "confirmed": "two independent sources, or one and a derivation",
    "one source": "one source was seen",
    "derived": "worked out by a formula",
    "from memory": "no page was seen",
    "from memory, agrees": "no page was seen; a formula or a scaling agrees",
}
EDITION = "BS 7671:2018+A2:2022"
NEWER = (
    "Amendment 4 (2026) is in force since 15 October 2026; its tables were not "
    "available. The values are those of BS 7671:2018+A2:2022 unless another edition "
    "is named."
)
Cell = str | None


class OutsideTableError(AppError):
    """A value was asked for that the table does not hold; it is never stretched."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """A table as it stands in the code: every cell a text, exact, with its basis.

    Attributes:
        code: Its name in addresses; never changed.
        title: What it holds.
        unit: Unit of its values.
        conditions: When they hold.
        standard: Standard and table, with the edition.
        columns: Heading of each column; the first names the row.
        rows: Cells; None where the table has no value.
        basis: Basis of each row, in order: words of :data:`BASES`, some with more.
        notes: What has to be known to use it.
    """

    code: str
    title: str
    unit: str
    conditions: str
    standard: str
    columns: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]
    basis: tuple[str, ...]
    notes: tuple[str, ...] = ()

    def value(self, row: Decimal | int | str, column: str) -> Decimal:
        """Return one value.

        Raises:
            OutsideTableError: The table has no such row, or no value there.
        """
        place = self.columns.index(column)
        for cells in self.rows:
            if _same(cells[0], row):
                cell = cells[place]
                if cell is not None:
                    return Decimal(cell)
        raise OutsideTableError(
            f"{self.title} ({self.standard}) has no value for {row}, {column}."
        )

    def basis_of(self, row: Decimal | int | str) -> str:
        """Return the basis of a row.

        Raises:
            OutsideTableError: There is no such row.
        """
        for cells, basis in zip(self.rows, self.basis, strict=True):
            if _same(cells[0], row):
                return basis
        raise OutsideTableError(f"{self.title} ({self.standard}) has no row {row}.")

    def numbers(self) -> Iterator[Decimal]:
        """Yield the numbers that name its rows, in order."""
        for cells in self.rows:
            yield Decimal(cells[0] or 0)


def _same(cell: Cell, row: Decimal | int | str) -> bool:
    if isinstance(row, str):
        return cell == row
    return cell is not None and Decimal(cell) == row


def tables_in(package: ModuleType) -> dict[str, Table]:
    """Return the tables of a folder by code: each module holds ``TABLE``."""
    found = {}
    for info in pkgutil.iter_modules(package.__path__):
        if not info.name.startswith("_"):
            module = importlib.import_module(f"{package.__name__}.{info.name}")
            table: Table = module.TABLE
            found[table.code] = table
    return found
