"""Board face: the enclosure as it is on the wall, its devices in order and width."""

from __future__ import annotations

from collections.abc import Sequence

from app.domain.network import Network, network
from app.domain.record import Board, Device, Record, Room
from app.domain.record.choices import ENCLOSURES, OWNERS
from app.drawing.apart import feeds_apart, hours_of
from app.drawing.face import (
    EDGE,
    MODULE,
    Column,
    Face,
    draw_face,
    face_height,
    label_of,
    words_length,
)
from app.drawing.feeds import feeds_of
from app.drawing.ink import PLAIN, SMALL, STRONG, wrapped
from app.drawing.phrase import joined
from app.drawing.rcd_group import LEVEL, Bracket, brackets, draw_bracket
from app.drawing.render import render
from app.drawing.scene import Box, Frame, Linker, Part, Scene, Text, Thing

ROW, ONE_ROW = 12, 14
_PAD, _CAPTION, _LEAST, _ON, _LINE = 16.0, 28.0, 320.0, 20.0, 17.0


def draw_board(
    record: Record,
    board_ref: str,
    link: Linker,
    lit: frozenset[str] = frozenset(),
    *,
    id_prefix: str | None = None,
) -> str:
    """Return the drawing of a board's face as SVG.

    Args:
        record: The home.
        board_ref: The board; one that is not in the record is drawn as not there.
        link: Address of the page of a reference, or None.
        lit: References of devices to bring forward.
        id_prefix: Begins the ids in the drawing; left out, the board's reference does.
    """
    return render(board_scene(record, board_ref, link, lit, id_prefix=id_prefix))


def board_scene(
    record: Record,
    board_ref: str,
    link: Linker,
    lit: frozenset[str] = frozenset(),
    *,
    id_prefix: str | None = None,
) -> Scene:
    """Return what `draw_board` draws, before it is SVG."""
    board = record.find(Board, board_ref)
    net = network(record)
    faces = [_face(net, d, link, lit) for d in record.devices_of(board_ref) if board]
    rows = _rows(faces)
    widest = max((sum(f.modules for f in row) for row in rows), default=0)
    width = max(_LEAST, widest * MODULE + 2 * _PAD)
    caption, y = _caption(net, board, width)
    parts, y = _draw_rows(faces, rows, y)
    said = [part.title for part in parts if isinstance(part, Thing)]
    apart = list(feeds_apart(net, board)) if board else []
    below, y = _written(apart, y, width)
    said += apart
    return Scene(
        ident=id_prefix or f"board-{board_ref}",
        title=f"Face of {board.title}" if board else "A board that is not recorded",
        description="From left to right: " + "; ".join(said) if said else _EMPTY,
        width=width,
        height=y,
        parts=(_case(board, width, y), *caption, *parts, *below),
        fits=False,
    )


_EMPTY = "No devices are recorded on this board."


def _face(net: Network, device: Device, link: Linker, lit: frozenset[str]) -> Face:
    return Face(
        device=device,
        feeds=feeds_of(net, device),
        label=label_of(device),
        href=link(device.ref),
        lit=device.ref in lit,
    )


def _rows(faces: Sequence[Face]) -> list[list[Face]]:
    rows: list[list[Face]] = []
    total, room = sum(face.modules for face in faces), 0
    for face in faces:
        if face.modules > room:
            rows.append([])
            room = total if total <= ONE_ROW else ROW
        rows[-1].append(face)
        room -= face.modules
    return rows


def _draw_rows(
    faces: Sequence[Face], rows: Sequence[Sequence[Face]], y: float
) -> tuple[list[Part | Thing], float]:
    starts = [sum(len(row) for row in rows[:at]) for at in range(len(rows))]
    found = brackets([face.device for face in faces], frozenset(starts))
    parts: list[Part | Thing] = []
    for start, row in zip(starts, rows, strict=True):
        if start:
            parts.append(Text(x=_PAD, y=y + SMALL, text="goes on:", size=SMALL))
            y += _ON
        over = [b for b in found if start <= b.first < start + len(row)]
        columns = _columns(row, y, levels=max((b.level + 1 for b in over), default=0))
        parts += [draw_face(f, c) for f, c in zip(row, columns, strict=True)]
        for bracket in over:
            parts += draw_bracket(bracket, _above(bracket, columns, start))
        y = columns[0].bottom + _PAD
    if not rows:
        parts.append(Text(x=_PAD, y=y + 16, text=_EMPTY, size=SMALL))
    return parts, y if rows else y + 40


def _columns(row: Sequence[Face], y: float, *, levels: int) -> list[Column]:
    """Place a row's faces; brackets have their levels between words and faces."""
    foot = y + max(words_length(face.feeds, face) for face in row) + EDGE
    top = foot + levels * LEVEL + EDGE + (10 if any(face.lit for face in row) else 0)
    below = max(words_length(face.label, face) for face in row)
    tall = face_height(row)
    bottom = top + tall + 2 * EDGE + below
    columns: list[Column] = []
    x = _PAD
    for face in row:
        box = Box(x, top, face.modules * MODULE, tall)
        columns.append(Column(face=box, top=y, foot=foot, bottom=bottom))
        x = box.right
    return columns


def _above(bracket: Bracket, columns: Sequence[Column], start: int) -> Box:
    first, last = columns[bracket.first - start], columns[bracket.last - start]
    y = first.foot + EDGE
    deepest = (first.face.y - y) // LEVEL - 1
    top = y + max(0, deepest - bracket.level) * LEVEL
    return Box(first.face.x, top, last.face.right - first.face.x, LEVEL)


def _case(board: Board | None, width: float, height: float) -> Frame:
    known = board is not None and board.enclosure != "unknown"
    box = Box(4, 4, width - 8, height - 8)
    return Frame(box=box, dashed=not known, corner=6)


def _caption(
    net: Network, board: Board | None, width: float
) -> tuple[list[Text], float]:
    title = board.title if board else "This board is not in the record"
    about = _about(net.record, board) if board else ""
    times = hours_of(net, board.fed_from) if board else ""
    texts: list[Text] = []
    y = _CAPTION
    said = ((title, STRONG), (about, PLAIN), (times, PLAIN))
    for text, size in (each for each in said if each[0]):
        bold = size == STRONG
        for line in wrapped(text, width - 2 * _PAD, size, most=2, bold=bold):
            whole = text if line.endswith("…") else None
            texts.append(
                Text(x=_PAD, y=y, text=line, whole=whole, size=size, bold=bold)
            )
            y += size + 5
    return texts, y - 6


def _written(
    sentences: Sequence[str], y: float, width: float
) -> tuple[list[Text], float]:
    """Write sentences below the rows, from y downwards."""
    texts: list[Text] = []
    for text in sentences:
        for line in wrapped(text, width - 2 * _PAD, SMALL, most=4):
            y += _LINE
            whole = text if line.endswith("…") else None
            texts.append(Text(x=_PAD, y=y, text=line, whole=whole, size=SMALL))
    return texts, y + _PAD if texts else y


def _about(record: Record, board: Board) -> str:
    room = record.find(Room, board.room)
    known = board.enclosure != "unknown"
    case = ENCLOSURES[board.enclosure].lower() if known else "enclosure not known"
    where = f"in {room.title}" if room else "where it is: not recorded"
    year = f"about {board.year}" if board.year else ""
    return joined([OWNERS[board.owner], case, year, where])
