"""A room of the house: its lines one under another, its points hung on them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Literal

from app.domain.kinds import POINT_KINDS
from app.drawing.house import NOT_FED, Block, Group, Hung
from app.drawing.ink import (
    DASHES,
    FINE,
    HEAVY,
    LIT,
    PLAIN,
    SMALL,
    STRONG,
    shortened,
    wrapped,
)
from app.drawing.line import TAG, drawn_line, drawn_tag, tag_width
from app.drawing.scene import Box, Frame, Linker, Part, Scene, Stroke, Symbol, Text
from app.drawing.scene import Thing as Touched
from app.drawing.symbols import symbol_of

WIDTH = 360.0
_EDGE, _SPINE, _ROOM, _ACROSS = 12.0, 22.0, 318.0, 3
_DROP, _BOX, _LEADING = 10.0, 30.0, 15.0
_FIRST = 32.0
UNSURE = "not sure"
Ink = Literal["plain", "lit", "faint"]


@dataclass(frozen=True, slots=True)
class Lit:
    """What is brought forward: a line, a room or nothing.

    Attributes:
        ref: Its reference; empty for nothing.
    """

    ref: str = ""

    def of_group(self, block: Block, group: Group) -> Ink:
        """Return the ink of a line in a room."""
        if not self.ref:
            return "plain"
        own = group.line is not None and group.line.ref == self.ref
        return "lit" if own or block.code == self.ref else "faint"

    def of_point(self, block: Block, hung: Hung) -> Ink:
        """Return the ink of a point, which may be on the line in part."""
        if not self.ref:
            return "plain"
        forward = self.ref in hung.lines or block.code == self.ref
        return "lit" if forward else "faint"


@dataclass(slots=True)
class _Sheet:
    block: Block
    link: Linker
    lit: Lit
    y: float
    parts: list[Part | Touched] = field(default_factory=list)


def room_scene(block: Block, link: Linker, lit: Lit, *, ident: str) -> Scene:
    """Return the drawing of a room.

    Args:
        block: The room, from `app.drawing.house`.
        link: Address of a room, circuit, source or point, or None.
        lit: What is brought forward.
        ident: Begins the ids in the drawing.
    """
    sheet = _Sheet(block, link, lit, 8.0)
    sheet.parts.append(_heading(sheet))
    for group in block.groups:
        _draw_group(sheet, group)
    if not block.groups:
        _say_empty(sheet)
    height = sheet.y + 6
    return Scene(
        ident=ident,
        title=block.title,
        description=_description(block),
        width=WIDTH,
        height=height,
        parts=(_wall(block, lit, height), *sheet.parts),
    )


def line_title(group: Group) -> str:
    """Return what a line is called, or that it is not known."""
    return group.line.title if group.line else NOT_FED


def _wall(block: Block, lit: Lit, height: float) -> Frame:
    forward = bool(lit.ref) and block.code == lit.ref
    box = Box(2, 2, WIDTH - 4, height - 4)
    faint = bool(lit.ref) and not forward
    weight = LIT if forward else FINE
    return Frame(box=box, weight=weight, lit=forward, faint=faint, corner=3)


def _heading(sheet: _Sheet) -> Touched | Text:
    block, top = sheet.block, sheet.y
    lines = wrapped(block.title, WIDTH - 2 * _EDGE, STRONG, most=2, bold=True)
    texts = []
    for line in lines:
        whole = block.title if line.endswith("…") else None
        texts.append(
            Text(
                x=_EDGE, y=sheet.y + 14, text=line, whole=whole, size=STRONG, bold=True
            )
        )
        sheet.y += 20
    if block.room is None:
        sheet.parts += texts[1:]
        return texts[0]
    forward = sheet.lit.ref == block.code
    box = Box(_EDGE - 4, top - 2, WIDTH - 2 * _EDGE + 8, sheet.y - top + 4)
    return Touched(
        ref=block.code,
        title=f"{block.title}. Brought forward" if forward else block.title,
        box=box,
        parts=tuple(texts),
        href=sheet.link(block.code),
        lit=forward,
    )


def _say_empty(sheet: _Sheet) -> None:
    room = sheet.block.room
    looked = room is not None and room.looked_at == "all"
    said = "No points here, by the record" if looked else "No points recorded yet"
    box = Box(_EDGE, sheet.y + 6, WIDTH - 2 * _EDGE, 26)
    sheet.parts += [] if looked else [Frame(box=box, dashed=True, corner=2)]
    sheet.parts.append(Text(x=_EDGE + 8, y=sheet.y + 23, text=said, size=SMALL))
    sheet.y += 36


def _draw_group(sheet: _Sheet, group: Group) -> None:
    ink = sheet.lit.of_group(sheet.block, group)
    sheet.y += 8
    head = _group_heading(sheet, group, ink)
    top = sheet.y
    across = _across(len(group.hung))
    rows = [group.hung[at : at + across] for at in range(0, len(group.hung), across)]
    rails, touched = [], []
    for row in rows:
        rails.append(sheet.y + 8)
        sheet.y += 8
        touched += _draw_row(sheet, row, _ROOM / across, known=group.line is not None)
    sheet.parts += [*_rails(group, top, rails, ink), *_stubs(touched), *head, *touched]


def _group_heading(sheet: _Sheet, group: Group, ink: Ink) -> Sequence[Part | Touched]:
    """Draw the tag and the name of a line, as one that may be touched."""
    top, line = sheet.y, group.line
    tag = line.tag if line else "?"
    x = _EDGE + tag_width(tag) + 8
    lit, faint = ink == "lit", ink == "faint"
    parts: list[Part] = [*drawn_tag(tag, _EDGE, top, lit=lit, faint=faint)]
    name = line_title(group)
    lines = wrapped(name, WIDTH - _EDGE - x, PLAIN, most=2, bold=lit) or ("",)
    for at, text in enumerate(lines):
        whole = name if text.endswith("…") else None
        y = top + 14.5 + at * 17
        parts.append(Text(x=x, y=y, text=text, whole=whole, size=PLAIN, bold=lit))
    sheet.y = top + TAG + 17 * (len(lines) - 1)
    if line is None:
        return parts
    said = f"{line.tag}: {name}" + (". Brought forward" if lit else "")
    box = Box(_EDGE - 2, top - 2, WIDTH - 2 * _EDGE + 4, sheet.y - top + 4)
    href = sheet.link(line.ref)
    return [
        Touched(
            ref=line.ref, title=said, box=box, parts=tuple(parts), href=href, lit=lit
        )
    ]


def _rails(
    group: Group, top: float, rails: Sequence[float], ink: Ink
) -> Iterator[Stroke]:
    """Draw a line from its tag down and along each row of points."""
    right = WIDTH - _EDGE
    lit, faint = ink == "lit", ink == "faint"
    weight = HEAVY if lit else FINE if faint else 1.5
    dashes = None if group.line else DASHES
    spine = ((_SPINE, top), (_SPINE, rails[-1]))
    yield Stroke(places=spine, weight=weight, dashes=dashes, lit=lit, faint=faint)
    for y in rails:
        along = ((_SPINE, y), (right, y))
        if group.line is None:
            yield Stroke(places=along, weight=weight, dashes=dashes, faint=faint)
        else:
            yield from drawn_line(along, group.line.marks, lit=lit, faint=faint)


def _across(points: int) -> int:
    """Return how many points stand in a row: two have more room for their names."""
    return 2 if points in (1, 2, 4) else _ACROSS


def _draw_row(
    sheet: _Sheet, row: Sequence[Hung], cell: float, *, known: bool
) -> list[Touched]:
    """Draw points side by side below a rail at the sheet's place."""
    top = sheet.y + _DROP
    cells = [
        _draw_point(sheet, hung, Box(_FIRST + at * cell, top, cell, 0), known=known)
        for at, hung in enumerate(row)
    ]
    sheet.y = max(each.box.bottom for each in cells) + 2
    return cells


def _draw_point(sheet: _Sheet, hung: Hung, cell: Box, *, known: bool) -> Touched:
    """Draw a point in a cell that is as high as it has to be."""
    ink = sheet.lit.of_point(sheet.block, hung)
    lit, faint = ink == "lit", ink == "faint"
    width, y = cell.width - 6, cell.y
    middle = cell.x + width / 2
    frame = Frame(
        box=Box(middle - _BOX / 2, y, _BOX, _BOX),
        weight=LIT if lit else FINE,
        dashed=not known or not hung.seen,
        lit=lit,
        faint=faint,
        corner=2,
    )
    drawn = symbol_of("point", hung.point.kind)
    symbol = Symbol(x=middle - 12, y=y + 3, drawn=drawn, faint=faint)
    texts = [*_point_words(hung, middle, y + _BOX + 13, width - 4)]
    foot = max([y + _BOX, *(text.box.bottom for text in texts)]) + 2
    return Touched(
        ref=hung.point.ref,
        title=_spoken(hung, known=known, lit=lit),
        box=Box(cell.x, y, width, foot - y),
        parts=(frame, symbol, *texts),
        href=sheet.link(hung.point.ref),
        lit=lit,
    )


def _point_words(hung: Hung, middle: float, y: float, room: float) -> Iterator[Text]:
    title = name_of(hung)
    lines = [(line, title) for line in wrapped(title, room, SMALL, most=4)]
    for said in hung.said:
        lines += [(f, said) for f in wrapped(said, room, SMALL, most=2)]
    if not hung.seen and hung.lines:
        lines.append((UNSURE, UNSURE))
    for at, (line, whole) in enumerate(lines):
        yield Text(
            x=middle,
            y=y + at * _LEADING,
            text=shortened(line, room, SMALL),
            whole=whole if line.endswith("…") else None,
            size=SMALL,
            anchor="middle",
        )


def _stubs(cells: Sequence[Touched]) -> Iterator[Stroke]:
    """Draw the drop from the rail to each point, as its frame is drawn."""
    for cell in cells:
        frame = next(part for part in cell.parts if isinstance(part, Frame))
        x, foot = frame.box.x + frame.box.width / 2, frame.box.y
        yield Stroke(
            places=((x, foot - _DROP), (x, foot)),
            weight=HEAVY if frame.lit else FINE if frame.faint else 1.5,
            dashes=DASHES if frame.dashed else None,
            lit=frame.lit,
            faint=frame.faint,
        )


def name_of(hung: Hung) -> str:
    """Return what a point is called, and how many alike it stands for."""
    many = f" ×\xa0{hung.point.count}" if hung.point.count > 1 else ""
    return f"{hung.point.title}{many}"


def _spoken(hung: Hung, *, known: bool, lit: bool) -> str:
    kind = POINT_KINDS[hung.point.kind].label
    name = name_of(hung)
    said = [name] if name.startswith(kind) else [name, kind]
    said += hung.said
    said += [] if known else ["What feeds it is not known"]
    said += ["How its feed is known is not recorded"] if known and not hung.seen else []
    return ". ".join([*said, "Brought forward"] if lit else said)


def _description(block: Block) -> str:
    groups = [_group_said(group) for group in block.groups]
    return "; ".join(groups) or "No points."


def _group_said(group: Group) -> str:
    names = ", ".join(name_of(hung) for hung in group.hung)
    tag = f"{group.line.tag}, {group.line.title}" if group.line else NOT_FED
    return f"{tag}: {names}"
