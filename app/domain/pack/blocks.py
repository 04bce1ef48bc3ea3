"""What a pack is made of: sections of text, lists, tables and pictures.

The same blocks become a page in a browser and a PDF, so that both say the same.
"""

from __future__ import annotations

from datetime import date
from typing import Literal

from app.domain.record._field import Model, field

Row = tuple[str, ...]


class Head(Model):
    """A heading within a section."""

    block: Literal["head"] = "head"
    text: str = field("Words", ...)


class Text(Model):
    """A paragraph; a caution stands out."""

    block: Literal["text"] = "text"
    text: str = field("Words", ...)
    caution: bool = field("Whether nobody must miss it", default=False)


class Lines(Model):
    """A list of sentences; ``otherwise`` stands where there are none."""

    block: Literal["lines"] = "lines"
    lines: tuple[str, ...] = field("Sentences", ())
    otherwise: str = field("What to say where there are none", "")


class Table(Model):
    """A table; the first cell of a row names it, ``widths`` are shares of the line."""

    block: Literal["table"] = "table"
    caption: str = field("Caption", ...)
    heads: Row = field("Heads", ...)
    widths: tuple[int, ...] = field("Widths, in shares", ...)
    rows: tuple[Row, ...] = field("Rows", ())
    otherwise: str = field("What to say where there are none", "None is recorded.")


class Picture(Model):
    """A drawing or a photograph, by the name under which it is kept beside the text."""

    block: Literal["picture"] = "picture"
    name: str = field("Name", ...)
    photo: bool = field("Whether it is a photograph", default=False)
    wide: bool = field("Whether it may take a page of its own", default=False)
    alt: str = field("What it shows", ...)
    caption: str = field("Caption", "")


class Pictures(Model):
    """A drawing in parts beside each other, by the name of all of them."""

    block: Literal["pictures"] = "pictures"
    name: str = field("Name", ...)
    said: str = field("What they show", ...)


Block = Head | Text | Lines | Table | Picture | Pictures


class Section(Model):
    """A section, with its place in the contents."""

    code: str = field("Code", ...)
    title: str = field("Title", ...)
    blocks: tuple[Block, ...] = field("Blocks", ())


class Pack(Model):
    """Everything that is handed over, in the order of its reader."""

    title: str = field("Title", ...)
    day: date = field("Day that it was made on", ...)
    lede: tuple[str, ...] = field("What it is, and what it is not", ())
    kept_back: tuple[str, ...] = field("What was left out", ())
    sections: tuple[Section, ...] = field("Sections", ())
