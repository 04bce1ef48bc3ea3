"""Where each label lies on the paper, and its lines: one plan for page and print."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated

from app.domain.labels.fit import Fitted, fit
from app.domain.labels.label import Label
from app.domain.labels.sheet import LabelSheet, Spot, plain_paper, spots
from app.domain.record import OneOf
from app.domain.record._field import Model, Number, field

MANNERS = {
    "plain": "Plain paper, to be cut apart",
    "sheet": "A sheet of labels",
    "strip": "Strips as wide as the devices",
}
# A module is 17.5 mm wide: common practice, no source. What is measured goes first.
MODULE_MM = Decimal("17.5")
STRIP_LEFT, STRIP_TOP, STRIP_WIDE, STRIP_FOOT, STRIP_APART = (
    15.0,
    20.0,
    180.0,
    285.0,
    8.0,
)


class Choice(Model):
    """How labels are to be printed."""

    manner: Annotated[str, OneOf(MANNERS)] = field("Print on", "plain")
    width_mm: Number = field("Width", Decimal(60), unit="mm", low=15, high=190)
    height_mm: Number = field("Height", Decimal(20), unit="mm", low=8, high=100)
    start: int = field("Start at label", 1, low=1, high=800)
    module_mm: Number = field(
        "Width of a module",
        MODULE_MM,
        hint="Usually 17.5. Measure ten devices of one module, and take a tenth.",
        unit="mm",
        low=10,
        high=30,
    )
    strip_mm: Number = field(
        "Height of the strip", Decimal(18), unit="mm", low=8, high=60
    )
    right_mm: Number = field("Move right by", Decimal(0), unit="mm", low=-20, high=20)
    down_mm: Number = field("Move down by", Decimal(0), unit="mm", low=-20, high=20)


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """A place on the paper, and the label in it; none where a device is left out."""

    page: int
    x: float
    y: float
    width: float
    height: float
    label: Label | None
    fitted: Fitted


def laid_out(
    labels: Iterable[Label], chosen: frozenset[str], choice: Choice, sheet: LabelSheet
) -> tuple[Cell, ...]:
    """Return the cells of the chosen labels.

    Args:
        labels: All labels of the board, in order.
        chosen: References of the devices whose labels are wanted.
        choice: How they are to be printed.
        sheet: The sheet, where they go on a sheet of labels.
    """
    if choice.manner == "strip":
        return tuple(_moved(c, choice) for c in _strip(tuple(labels), chosen, choice))
    grid = sheet
    if choice.manner == "plain":
        grid = plain_paper(choice.width_mm, choice.height_mm)
    wanted = [label for label in labels if label.ref in chosen]
    wide, tall = float(grid.width_mm), float(grid.height_mm)
    places = spots(grid, choice.start if choice.manner == "sheet" else 1)
    cells = (
        _cell(label, spot, wide, tall)
        for label, spot in zip(wanted, places, strict=False)
    )
    return tuple(_moved(cell, choice) for cell in cells)


def _cell(label: Label | None, spot: Spot, wide: float, tall: float) -> Cell:
    return Cell(
        page=spot.page,
        x=spot.x,
        y=spot.y,
        width=wide,
        height=tall,
        label=label,
        fitted=fit(label, wide, tall) if label else Fitted(lines=()),
    )


def _moved(cell: Cell, choice: Choice) -> Cell:
    return Cell(
        page=cell.page,
        x=cell.x + float(choice.right_mm),
        y=cell.y + float(choice.down_mm),
        width=cell.width,
        height=cell.height,
        label=cell.label,
        fitted=cell.fitted,
    )


def _strip(
    labels: tuple[Label, ...], chosen: frozenset[str], choice: Choice
) -> Iterator[Cell]:
    """Yield the devices side by side; a row ends where the next has no room.

    One left out keeps its width, so that the strip lies true to the board.
    """
    module, tall = float(choice.module_mm), float(choice.strip_mm)
    page, x, y = 0, STRIP_LEFT, STRIP_TOP
    for label in labels:
        wide = min(label.modules * module, STRIP_WIDE)
        if x + wide > STRIP_LEFT + STRIP_WIDE + 0.01:
            x, y = STRIP_LEFT, y + tall + STRIP_APART
        if y + tall > STRIP_FOOT:
            page, x, y = page + 1, STRIP_LEFT, STRIP_TOP
        wanted = label if label.ref in chosen else None
        yield _cell(wanted, Spot(page, x, y), wide, tall)
        x += wide
