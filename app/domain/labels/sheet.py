"""Sheets of labels: a grid on A4 paper, in millimetres.

The sheets offered are named by their geometry. Their margins centre the grid on the
sheet, with 2.5 mm between columns and none between rows: common practice, no source.
Measure your own sheet; a sheet that differs is added beside them.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from app.domain.record._field import Model, Number, field

PAPER_WIDE, PAPER_TALL = 210.0, 297.0


class LabelSheet(Model):
    """A sheet of equal labels in rows and columns."""

    columns: int = field("Labels across", ..., low=1, high=20)
    rows: int = field("Labels down", ..., low=1, high=40)
    width_mm: Number = field("Width of a label", ..., unit="mm", low=10, high=210)
    height_mm: Number = field("Height of a label", ..., unit="mm", low=6, high=297)
    left_mm: Number = field("Left margin", ..., unit="mm", low=0, high=100)
    top_mm: Number = field("Top margin", ..., unit="mm", low=0, high=100)
    gap_x_mm: Number = field(
        "Gap between columns", Decimal(0), unit="mm", low=0, high=50
    )
    gap_y_mm: Number = field("Gap between rows", Decimal(0), unit="mm", low=0, high=50)

    @property
    def name(self) -> str:
        """Its geometry, such as "3 × 7, 63.5 × 38.1 mm"."""
        return f"{self.columns} × {self.rows}, {self.width_mm} × {self.height_mm} mm"

    @property
    def count(self) -> int:
        """How many labels it holds."""
        return self.columns * self.rows

    def over_the_edge(self) -> tuple[str, str]:
        """Return how far the grid leaves A4 paper, across and down; empty: not."""
        wide = _extent(self.left_mm, self.columns, self.width_mm, self.gap_x_mm)
        tall = _extent(self.top_mm, self.rows, self.height_mm, self.gap_y_mm)
        across = f"Across it comes to {wide:g} mm; A4 paper is 210 mm wide."
        down = f"Down it comes to {tall:g} mm; A4 paper is 297 mm tall."
        return (
            across if wide > PAPER_WIDE else "",
            down if tall > PAPER_TALL else "",
        )


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a label lies: its page from nought, and its top left corner."""

    page: int
    x: float
    y: float


def spots(sheet: LabelSheet, start: int) -> Iterator[Spot]:
    """Yield where one label after another lies, row by row, from the start-th on."""
    place = start - 1
    step_x = float(sheet.width_mm + sheet.gap_x_mm)
    step_y = float(sheet.height_mm + sheet.gap_y_mm)
    while True:
        page, here = divmod(place, sheet.count)
        row, column = divmod(here, sheet.columns)
        x = float(sheet.left_mm) + column * step_x
        yield Spot(page, x, float(sheet.top_mm) + row * step_y)
        place += 1


def centred(columns: int, rows: int, width: str, height: str, gap: str) -> LabelSheet:
    """Return a sheet whose grid lies in the middle of A4 paper."""
    wide, tall, between = Decimal(width), Decimal(height), Decimal(gap)
    return LabelSheet(
        columns=columns,
        rows=rows,
        width_mm=wide,
        height_mm=tall,
        left_mm=(210 - columns * wide - (columns - 1) * between) / 2,
        top_mm=(297 - rows * tall) / 2,
        gap_x_mm=between,
    )


def plain_paper(width_mm: Decimal, height_mm: Decimal) -> LabelSheet:
    """Return as many labels of a size as plain A4 paper holds, to be cut apart."""
    columns, rows = max(1, int(190 / width_mm)), max(1, int(277 / height_mm))
    return centred(columns, rows, str(width_mm), str(height_mm), "0")


def _extent(margin: Decimal, count: int, size: Decimal, gap: Decimal) -> float:
    return float(margin + count * size + (count - 1) * gap)


SHEETS: tuple[LabelSheet, ...] = (
    centred(3, 7, "63.5", "38.1", "2.5"),
    centred(2, 7, "99.1", "38.1", "2.5"),
    centred(3, 8, "63.5", "33.9", "2.5"),
    centred(4, 10, "48.5", "25.4", "0"),
    centred(5, 13, "38.1", "21.2", "2.5"),
)
