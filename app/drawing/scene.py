"""A scene: what is where on the sheet, before it is SVG text."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Literal

from app.drawing.ink import LINE, PLAIN, text_width

Linker = Callable[[str], str | None]
Anchor = Literal["start", "middle", "end"]


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle on the sheet, its top left corner first."""

    x: float
    y: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """Where it ends."""
        return self.x + self.width

    @property
    def bottom(self) -> float:
        """Where it ends below."""
        return self.y + self.height

    def overlaps(self, other: Box) -> bool:
        """Return whether the two have more than an edge in common."""
        return (
            self.x < other.right - 0.01
            and other.x < self.right - 0.01
            and self.y < other.bottom - 0.01
            and other.y < self.bottom - 0.01
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """A drawn rectangle, hatched or clear."""

    box: Box
    weight: float = LINE
    dashed: bool = False
    lit: bool = False
    faint: bool = False
    hatch: str | None = None
    corner: float = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Stroke:
    """A line through several places; closed and filled, a mark."""

    places: tuple[tuple[float, float], ...]
    weight: float = LINE
    dashes: str | None = None
    lit: bool = False
    faint: bool = False
    filled: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """A line of text; ``whole`` is what it says before it was shortened."""

    x: float
    y: float
    text: str
    whole: str | None = None
    size: float = PLAIN
    bold: bool = False
    anchor: Anchor = "start"
    turned: bool = False

    @property
    def box(self) -> Box:
        """About where it stands; its place is on the base line."""
        width = text_width(self.text, self.size, bold=self.bold)
        back = {"start": 0.0, "middle": width / 2, "end": width}[self.anchor]
        up, height = self.size * 0.8, self.size
        if self.turned:
            return Box(self.x - up, self.y - width + back, height, width)
        return Box(self.x - back, self.y - up, width, height)


@dataclass(frozen=True, slots=True, kw_only=True)
class Symbol:
    """A kind's symbol, from its top left corner, in a box of 24 by 24."""

    x: float
    y: float
    drawn: str
    faint: bool = False


Part = Frame | Stroke | Text | Symbol


@dataclass(frozen=True, slots=True, kw_only=True)
class Thing:
    """What stands for one item of the record: it may be touched, and is read out."""

    ref: str
    title: str
    box: Box
    parts: tuple[Part, ...]
    href: str | None = None
    lit: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """One drawing.

    Attributes:
        ident: Begins every id in it, so that two on one page never clash.
        fits: Whether it may be made as narrow as the page; else it keeps its size.
    """

    ident: str
    title: str
    description: str
    width: float
    height: float
    parts: tuple[Part | Thing, ...]
    fits: bool = True

    def things(self) -> tuple[Thing, ...]:
        """Return what stands for an item, in order."""
        return tuple(part for part in self.parts if isinstance(part, Thing))

    def strokes(self) -> Iterator[Part]:
        """Yield every part, those of things too."""
        for part in self.parts:
            if isinstance(part, Thing):
                yield from part.parts
            else:
                yield part

    def texts(self) -> tuple[Text, ...]:
        """Return every line of text."""
        return tuple(part for part in self.strokes() if isinstance(part, Text))
