"""Several drawings on one sheet: blocks in columns, one band under another.

On a page the blocks of a band are drawings of their own, which stand beside each other
as far as there is room.  In a file they are put on one sheet here.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from app.drawing.ink import HEAVY, PLAIN, wrapped
from app.drawing.scene import Box, Frame, Part, Scene, Stroke, Text, Thing

_EDGE, _GAP, _HEAD, _TITLE = 12.0, 16.0, 17.0, 22.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """Blocks that belong together, such as the rooms of a storey.

    Attributes:
        code: Name for addresses and ids.
        title: Its heading.
        blocks: Its drawings, in order, all of one width.
    """

    code: str
    title: str
    blocks: tuple[Scene, ...]


def one_sheet(
    bands: Sequence[Band], *, ident: str, title: str, said: str, columns: int = 3
) -> Scene:
    """Return one scene with every band.

    Args:
        bands: The bands, from the top.
        ident: Begins every id.
        title: Title of the drawing, which heads it.
        said: Line below the title.
        columns: How many blocks may stand beside each other.
    """
    block = max((b.width for band in bands for b in band.blocks), default=360.0)
    widest = max((len(band.blocks) for band in bands), default=1)
    columns = max(1, min(columns, widest))
    width = 2 * _EDGE + columns * block + (columns - 1) * _GAP
    parts, y = _headed(title, said, width)
    for band in bands:
        more, y = _banded(band, y, width, columns)
        parts += more
    return Scene(
        ident=ident,
        title=title,
        description=" ".join(_described(bands)) or said,
        width=width,
        height=y + _EDGE,
        parts=tuple(parts),
        fits=False,
    )


def moved(part: Part | Thing, dx: float, dy: float) -> Part | Thing:
    """Return a part or a thing elsewhere on the sheet."""
    if isinstance(part, Thing):
        inner = tuple(moved_part(each, dx, dy) for each in part.parts)
        return replace(part, box=_box(part.box, dx, dy), parts=inner)
    return moved_part(part, dx, dy)


def moved_part(part: Part, dx: float, dy: float) -> Part:
    """Return a part elsewhere on the sheet."""
    if isinstance(part, Frame):
        return replace(part, box=_box(part.box, dx, dy))
    if isinstance(part, Stroke):
        return replace(part, places=tuple((x + dx, y + dy) for x, y in part.places))
    return replace(part, x=part.x + dx, y=part.y + dy)


def in_columns(heights: Sequence[float], columns: int) -> list[int]:
    """Return the column of each block, in order, the columns about as tall.

    A column takes blocks until one would end more below the fair share than above it.
    """
    share = sum(heights) / columns if columns else 0.0
    places: list[int] = []
    column, filled = 0, 0.0
    for height in heights:
        over = filled + height / 2 > share * (column + 1)
        if over and filled and column < columns - 1 and column in places:
            column += 1
        places.append(column)
        filled += height
    return places


def _headed(title: str, said: str, width: float) -> tuple[list[Part | Thing], float]:
    parts: list[Part | Thing] = []
    y = _EDGE
    for text, size in ((title, _TITLE), (said, PLAIN)):
        bold = size == _TITLE
        for line in wrapped(text, width - 2 * _EDGE, size, most=4, bold=bold):
            parts.append(Text(x=_EDGE, y=y + size, text=line, size=size, bold=bold))
            y += size * 1.35
    return parts, y


def _banded(
    band: Band, y: float, width: float, columns: int
) -> tuple[list[Part | Thing], float]:
    y += _GAP
    rule = ((_EDGE, y), (width - _EDGE, y))
    parts: list[Part | Thing] = [Stroke(places=rule, weight=HEAVY)]
    for line in wrapped(band.title, width - 2 * _EDGE, _HEAD, most=2, bold=True):
        y += _HEAD + 8
        whole = band.title if line.endswith("…") else None
        parts.append(Text(x=_EDGE, y=y, text=line, whole=whole, size=_HEAD, bold=True))
    more, y = _placed(band.blocks, y + 12, columns)
    return [*parts, *more], y


def _placed(
    blocks: Sequence[Scene], y: float, columns: int
) -> tuple[list[Part | Thing], float]:
    places = in_columns([block.height + _GAP for block in blocks], columns)
    feet = [y] * columns
    parts: list[Part | Thing] = []
    for block, column in zip(blocks, places, strict=True):
        x = _EDGE + column * (block.width + _GAP)
        parts += [moved(part, x, feet[column]) for part in block.parts]
        feet[column] += block.height + _GAP
    return parts, max(feet) - _GAP if blocks else y


def _described(bands: Sequence[Band]) -> Iterator[str]:
    for band in bands:
        yield f"{band.title}:"
        for block in band.blocks:
            yield f"{block.title}. {block.description}"


def _box(box: Box, dx: float, dy: float) -> Box:
    return Box(box.x + dx, box.y + dy, box.width, box.height)
