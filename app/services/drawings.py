"""Drawings as files: what may be drawn, and the file of each."""

from __future__ import annotations

from app.domain.record import Board, Circuit, Record, Room, Source
from app.drawing.board import board_scene
from app.drawing.file import as_file
from app.drawing.one_line import one_line_scene
from app.drawing.street import street_scene
from app.drawing.whole_house import house_scene
from app.errors import InvalidError, NotFoundError
from app.services.answers import find


def house_file(record: Record, lit: str = "") -> str:
    """Return the house by circuit as an SVG file.

    Args:
        record: The home.
        lit: The circuit, room or source to bring forward; empty for none.

    Raises:
        NotFoundError: There is no such thing to bring forward.
    """
    return as_file(house_scene(record, _nowhere, checked_lit(record, lit)))


def one_line_file(record: Record) -> str:
    """Return the one-line diagram as an SVG file."""
    return as_file(one_line_scene(record, _nowhere))


def street_file(record: Record) -> str:
    """Return the drawing from the street to the boards as an SVG file."""
    return as_file(street_scene(record, _nowhere))


def board_file(record: Record, ref: str | None) -> str:
    """Return a board's face as an SVG file.

    Args:
        record: The home.
        ref: The board; None for the only one that there is.

    Raises:
        NotFoundError: There is no such board, or none at all.
        InvalidError: There are several, and none was named.
    """
    if ref is None and len(record.boards) > 1:
        names = ", ".join(board.ref for board in record.boards)
        raise InvalidError(f"There are several boards: say which, --board {names}.")
    if ref is None and not record.boards:
        raise NotFoundError("There is no board in this home yet.")
    board = record.boards[0] if ref is None else find(record, (Board,), ref)
    return as_file(board_scene(record, board.ref, _nowhere))


def checked_lit(record: Record, lit: str) -> str:
    """Return a reference if it may be brought forward in the house.

    Raises:
        NotFoundError: It names no circuit, room or source of this home.
    """
    if lit and not isinstance(record.by_ref.get(lit), Circuit | Room | Source):
        raise NotFoundError(f"There is no circuit or room “{lit}” in this home.")
    return lit


def _nowhere(_ref: str) -> str | None:
    """A file may be opened anywhere, so nothing in it leads anywhere."""
    return None
