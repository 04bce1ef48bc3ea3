"""What a person has in a spreadsheet already, turned into things of the record.

Rows in, a changed record out: with every cell that cannot be taken named by its row and
column, and nothing filled in that no cell says.
"""

from __future__ import annotations

from app.domain.spreadsheet.headings import (
    Match,
    guessed,
    heading_row,
    headings,
)
from app.domain.spreadsheet.likeness import likeness
from app.domain.spreadsheet.made import Asked, CellFault, Made, MadeRow, made_of
from app.domain.spreadsheet.rows import There
from app.domain.spreadsheet.shapes import Sheet, Workbook
from app.domain.spreadsheet.targets import KINDS, TARGETS, Kind, Target
from app.domain.spreadsheet.typed_list import made_of_list

__all__ = [
    "KINDS",
    "TARGETS",
    "Asked",
    "CellFault",
    "Kind",
    "Made",
    "MadeRow",
    "Match",
    "Sheet",
    "Target",
    "There",
    "Workbook",
    "guessed",
    "heading_row",
    "headings",
    "likeness",
    "made_of",
    "made_of_list",
]
