"""Fit what a label says into its box: smaller, then wrapped, never cut.

Sizes in millimetres. The smallest letters are 5.5 pt, about what is printed on devices:
common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from app.domain.labels.label import Label
from app.domain.labels.width import width

SMALLEST, LARGEST, STEP = 1.94, 6.0, 0.25
PAD, LEADING, GAP = 1.2, 1.25, 2.0
# Narrower than this a label has its number above the name rather than beside it.
BESIDE = 32.0
TWO_DIGITS = "00"
SEE_CHART = "See the chart"


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A line of text: where its base line begins within the label, and its size."""

    x: float
    y: float
    text: str
    size: float
    bold: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitted:
    """A label's lines, and what had no room on it."""

    lines: tuple[Line, ...]
    left_out: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Block:
    """Text of one look: its size is a share of the name's."""

    text: str
    share: float = 1.0
    bold: bool = False

    def size(self, name: float) -> float:
        return max(SMALLEST, name * self.share)


def fit(label: Label, wide: float, tall: float) -> Fitted:
    """Return the lines of a label in a box of this width and height.

    What has no room even in the smallest letters is left out as a whole, the rooms
    first, and is named; the label then points to the chart.
    """
    for blocks, left_out in _choices(label):
        largest = min(LARGEST, max(SMALLEST, tall / 3))
        steps = int((largest - SMALLEST) / STEP) + 1
        for size in (*(largest - STEP * n for n in range(steps)), SMALLEST):
            lines = _placed(label.number, blocks, wide, tall, size)
            if lines is not None:
                return Fitted(lines=lines, left_out=left_out)
    return Fitted(lines=(), left_out=("everything",))


def _choices(label: Label) -> Iterator[tuple[tuple[_Block, ...], tuple[str, ...]]]:
    """Yield what may be printed, the most first."""
    name = _Block(text=label.text, bold=True)
    device = _Block(text=label.printed, share=0.72)
    rooms = _Block(text=", ".join(label.rooms), share=0.72)
    chart = _Block(text=SEE_CHART, share=0.72)
    yield (name, device, rooms), ()
    yield (name, device, chart), ("its rooms",)
    yield (name, chart), ("its rooms", "what is printed on the device")
    yield (chart,), ("everything but its number",)


def _placed(
    number: str, blocks: tuple[_Block, ...], wide: float, tall: float, size: float
) -> tuple[Line, ...] | None:
    """Return the lines at one size, or None where they do not fit."""
    beside = bool(number) and wide >= BESIDE
    large = size * 1.4
    # Names begin on one line down a sheet, whether their numbers have one digit or two.
    column = max(width(text, large, bold=True) for text in (number, TWO_DIGITS))
    left = PAD + (column + GAP if beside else 0)
    over = (_Block(text=number, share=1.2, bold=True),) if number and not beside else ()
    room = wide - PAD - left
    lines: list[tuple[str, float, bool]] = []
    for block in (*over, *blocks):
        here = block.size(size)
        broken = wrap(
            block.text, room, here, bold=block.bold, anywhere=size == SMALLEST
        )
        if broken is None:
            return None
        lines += [(text, here, block.bold) for text in broken]
    height = sum(here * LEADING for _, here, _ in lines)
    if max(height, large if beside else 0) > tall - 2 * PAD or room <= 0:
        return None
    head = (_number(number, large, tall),) if beside else ()
    return (*head, *_stacked(lines, left, (tall - height) / 2))


def _number(number: str, size: float, tall: float) -> Line:
    return Line(x=PAD, y=tall / 2 + size * 0.36, text=number, size=size, bold=True)


def _stacked(
    lines: list[tuple[str, float, bool]], left: float, top: float
) -> Iterator[Line]:
    for text, size, bold in lines:
        yield Line(x=left, y=top + size * 0.98, text=text, size=size, bold=bold)
        top += size * LEADING


def wrap(
    text: str, room: float, size: float, *, bold: bool, anywhere: bool
) -> list[str] | None:
    """Break a text at its spaces; within words only if it may break anywhere.

    None: a word is wider than the room, or a letter is.
    """
    lines: list[str] = []
    for word in text.split(" ") if text else ():
        longer = f"{lines[-1]} {word}" if lines else word
        if width(longer, size, bold=bold) <= room:
            lines[-1:] = [longer]
        elif width(word, size, bold=bold) <= room:
            lines.append(word)
        elif not anywhere or width("W", size, bold=bold) > room:
            return None
        else:
            lines += _pieces(word, room, size, bold=bold)
    return lines


def _pieces(word: str, room: float, size: float, *, bold: bool) -> list[str]:
    pieces = [""]
    for letter in word:
        if width(pieces[-1] + letter, size, bold=bold) > room:
            pieces.append("")
        pieces[-1] += letter
    return pieces
