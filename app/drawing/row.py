"""A row of an outline: the symbol of a thing on its line, and words beside it.

The street and the chain are outlines: one row a thing, read from top to bottom, on a
sheet that a phone shows whole.  A branch moves to a lane of its own, further in.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from app.drawing.ink import (
    FINE,
    HEAVY,
    LEADING,
    LIT,
    PLAIN,
    STRONG,
    text_width,
    wrapped,
)
from app.drawing.scene import Box, Frame, Part, Stroke, Symbol, Text, Thing

SHEET, MARGIN = 360.0, 8.0
BOX, BAND, GAP = 36.0, 10.0, 10.0
_FIRST, _STEP, _LANES = 38.0, 34.0, 4


@dataclass(frozen=True, slots=True)
class Fact:
    """A line of words beside a thing.

    Attributes:
        text: What it says.
        framed: Whether it stands in a frame of its own, such as for hours.
        grade: A grade, drawn as a tally before the words.
        pointed: Whether an arrowhead stands before it.
    """

    text: str
    framed: bool = False
    grade: str | None = None
    pointed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """What is drawn of one thing.

    Attributes:
        owner: Code of its owner, for the band; None draws none.
        dashed: Whether something that should be printed on it is not known.
    """

    ref: str
    symbol: str
    title: str
    facts: tuple[Fact, ...] = ()
    owner: str | None = None
    dashed: bool = False
    lit: bool = False
    href: str | None = None


def lane_x(lane: int) -> float:
    """Return where a lane's line runs; beyond the last, lanes lie on each other."""
    return _FIRST + _STEP * min(lane, _LANES)


def words_x(lane: int) -> float:
    """Return where the words of a lane begin."""
    return lane_x(lane) + BOX / 2 + GAP


def draw_row(row: Row, lane: int, y: float) -> Thing:
    """Draw a row in a lane; its symbol's frame begins at y."""
    parts = [*_frame(row, lane_x(lane) - BOX / 2, y), *_words(row, words_x(lane), y)]
    texts = [part.box.bottom for part in parts if isinstance(part, Text)]
    left = lane_x(lane) - BOX / 2
    bottom = max([y + BOX, *texts]) + 4
    said = [row.title.rstrip("."), *(fact.text for fact in row.facts)]
    return Thing(
        ref=row.ref,
        title=". ".join([*said, "This one"] if row.lit else said),
        box=Box(left, y - 4, SHEET - left, bottom - y + 4),
        parts=tuple(parts),
        href=row.href,
        lit=row.lit,
    )


def plain_words(
    text: str, x: float, y: float, *, bold: bool = False, most: int = 3
) -> tuple[list[Part], float]:
    """Lay out words from y downwards to the sheet's edge; return where they end."""
    return _lines(text, x, y, size=PLAIN, bold=bold, most=most)


def tally(grade: str, x: float, y: float) -> Iterator[Part]:
    """Draw a grade: a stroke for each of the first four, a sheet for a document."""
    top, bottom = y - 10, y + 1
    if grade == "5":
        sheet = ((4, top), (11, top), (15, top + 4), (15, bottom), (4, bottom))
        yield Stroke(places=tuple((x + dx, at) for dx, at in (*sheet, sheet[0])))
        yield Stroke(places=((x + 7, bottom - 4), (x + 12, bottom - 4)), weight=FINE)
    elif grade in ("1", "2", "3", "4"):
        for stroke in range(int(grade)):
            at = x + 1 + 5 * stroke
            yield Stroke(places=((at, bottom), (at + 3, top)))
    else:
        yield Stroke(places=((x, y - 4), (x + 19, y - 4)), dashes="3 4")


def _frame(row: Row, x: float, y: float) -> Iterator[Part]:
    yield Frame(
        box=Box(x, y, BOX, BOX),
        weight=LIT if row.lit else 1.5,
        dashed=row.dashed,
        lit=row.lit,
        corner=2,
    )
    if row.lit:
        yield Frame(box=Box(x + 4, y + 4, BOX - 8, BOX - 8), weight=FINE)
    yield Symbol(x=x + 6, y=y + 6, drawn=row.symbol)


def _words(row: Row, x: float, y: float) -> list[Part]:
    pointed = (Fact("This one", pointed=True),) if row.lit else ()
    parts, y = _lines(row.title, x, y - 1, size=STRONG, bold=True, most=2)
    for fact in (*pointed, *row.facts):
        more, y = _fact(fact, x, y)
        parts += more
    return parts


def _fact(fact: Fact, x: float, y: float) -> tuple[list[Part], float]:
    base = y + PLAIN
    if fact.grade is not None:
        parts, end = _lines(fact.text, x + 26, y, size=PLAIN, bold=False, most=2)
        return [*tally(fact.grade, x, base), *parts], end
    if fact.pointed:
        head = ((x, base - 9), (x + 9, base - 4.5), (x, base))
        text, end = _lines(fact.text, x + 14, y, size=PLAIN, bold=True, most=1)
        return [Stroke(places=head, filled=True), *text], end
    if fact.framed:
        return _framed(fact.text, x, y)
    return _lines(fact.text, x, y, size=PLAIN, bold=False, most=3)


def _framed(text: str, x: float, y: float) -> tuple[list[Part], float]:
    parts, end = _lines(text, x + 6, y + 3, size=PLAIN, bold=False, most=1)
    widest = max(text_width(p.text, PLAIN) for p in parts if isinstance(p, Text))
    return [Frame(box=Box(x, y + 2, widest + 12, 19), corner=9), *parts], end + 4


def _lines(
    text: str, x: float, y: float, *, size: float, bold: bool, most: int
) -> tuple[list[Part], float]:
    room = SHEET - MARGIN - x
    broken = wrapped(text, room, size, most=most, bold=bold) or ("",)
    cut = any(line.endswith("…") for line in broken) and not text.endswith("…")
    parts: list[Part] = []
    for line in broken:
        base = y + size
        parts.append(
            Text(
                x=x,
                y=base,
                text=line,
                size=size,
                bold=bold,
                whole=text if cut else None,
            )
        )
        y += size * LEADING
    return parts, y


def change_of_hands(
    above: str, below: str, lane: int, y: float
) -> tuple[list[Part], float]:
    """Draw two bars across a lane, and the words that say whose either side is."""
    x = lane_x(lane)
    bars: list[Part] = [
        Stroke(places=((x - BOX / 2 - BAND - 2, at), (x + BOX / 2, at)), weight=HEAVY)
        for at in (y + 14, y + 20)
    ]
    unsure = "not known" in f"{above} {below}"
    title = "May change hands here" if unsure else "Changes hands here"
    x = words_x(lane)
    said, y = plain_words(title, x, y, bold=True)
    sides = (f"above: {above}", f"below: {below}")
    together = " · ".join(sides)
    fits = text_width(together, PLAIN) <= SHEET - MARGIN - x
    for line in (together,) if fits else sides:
        more, y = plain_words(line, x, y)
        said += more
    return [*bars, *said], y
