"""Each circuit's own line: marks along it, a tag at its head; never a colour.

The marks stand on a line that is itself unbroken, for a broken line says "not known".
Marks come in three lengths; a circuit's place among the lines says which of them form
its group, so that no two are alike, however many there are.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from app.domain.record import Circuit, Record
from app.drawing.ink import FINE, HEAVY, LINE, MARKS, SMALL, shortened, text_width
from app.drawing.joins import source_title
from app.drawing.scene import Box, Frame, Stroke, Text

TAG, TAG_ROOM = 20.0, 84.0
_LENGTHS = (2.0, 7.0, 14.0)
_BETWEEN, _APART = 3.0, 20.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A line of a drawing: what it stands for, and how it is told from the others.

    Attributes:
        ref: Reference of the circuit or source.
        tag: What stands at its head; no two lines of a home have the same.
        title: What it is called.
        marks: Lengths of its marks, in order; none for the plain line.
    """

    ref: str
    tag: str
    title: str
    marks: tuple[float, ...]


def lines_of(record: Record) -> Mapping[str, Line]:
    """Return the line of every circuit, and of every source, by reference."""
    tags = tags_of(record)
    items = (*record.circuits, *record.sources)
    return {
        item.ref: Line(
            ref=item.ref,
            tag=tags[item.ref],
            title=source_title(item),
            marks=marks_at(place),
        )
        for place, item in enumerate(items)
    }


def tags_of(record: Record) -> Mapping[str, str]:
    """Return a tag for each circuit and source: its number, if no other has it."""
    numbers = {c.ref: c.number.strip() for c in record.circuits}
    count = Counter([*numbers.values(), *(i.ref for i in record.items())])
    return {
        item.ref: number
        if (number := numbers.get(item.ref, "")) and count[number] == 1
        else item.ref
        for item in (*record.circuits, *record.sources)
    }


def marks_at(place: int) -> tuple[float, ...]:
    """Return the marks of the line at a place, counted from 0: each place its own."""
    marks: list[float] = []
    while place:
        place, left = divmod(place - 1, len(_LENGTHS))
        marks.append(_LENGTHS[left])
    return tuple(reversed(marks))


def drawn_line(
    places: tuple[tuple[float, float], ...],
    marks: tuple[float, ...],
    *,
    lit: bool = False,
    faint: bool = False,
) -> Iterator[Stroke]:
    """Draw a line with its marks."""
    weight = HEAVY if lit else FINE if faint else LINE
    yield Stroke(places=places, weight=weight, lit=lit, faint=faint)
    if marks:
        yield Stroke(
            places=places, weight=MARKS, dashes=_dashes(marks), lit=lit, faint=faint
        )


def tag_width(tag: str) -> float:
    """Return how wide the frame of a tag is."""
    return min(TAG_ROOM, max(TAG, text_width(tag, SMALL, bold=True) + 10))


def drawn_tag(
    tag: str, x: float, y: float, *, lit: bool = False, faint: bool = False
) -> tuple[Frame, Text]:
    """Draw a tag, its top left corner given; a tag too long for it is shortened."""
    width = tag_width(tag)
    text = shortened(tag, width - 6, SMALL, bold=True)
    weight = HEAVY if lit else FINE if faint else LINE
    box = Box(x, y, width, TAG)
    return (
        Frame(box=box, weight=weight, corner=9, lit=lit, faint=faint),
        Text(
            x=x + width / 2,
            y=y + 14.5,
            text=text,
            whole=tag if text != tag else None,
            size=SMALL,
            bold=True,
            anchor="middle",
        ),
    )


def way_of(record: Record, circuit: Circuit) -> str | None:
    """Return the first way of a circuit that is in the record."""
    return next((ref for ref in circuit.ways if ref in record.by_ref), None)


def _dashes(marks: tuple[float, ...]) -> str:
    gaps = [_BETWEEN] * (len(marks) - 1) + [_APART]
    pairs = zip(marks, gaps, strict=True)
    return " ".join(f"{mark:g} {gap:g}" for mark, gap in pairs)
