"""Reading a PDF that was made here: its text, places, fonts and marks."""

from __future__ import annotations

import io
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import pdfplumber

MM = 72 / 25.4


@contextmanager
def opened(made: bytes) -> Iterator[Any]:
    with pdfplumber.open(io.BytesIO(made)) as document:
        yield document


def text_of(made: bytes) -> str:
    with opened(made) as document:
        return "\n".join(page.extract_text() or "" for page in document.pages)


def letters_of(made: bytes) -> str:
    """Return every letter in the order it was set, without spaces."""
    with opened(made) as document:
        letters = (char["text"] for page in document.pages for char in page.chars)
        return "".join("".join(letters).split())


def assert_accessible(made: bytes, title: str) -> None:
    """Tagged, titled, in British English, every font inside."""
    with opened(made) as document:
        catalog = document.doc.catalog
        assert catalog["MarkInfo"]["Marked"] is True
        assert catalog["StructTreeRoot"]
        assert catalog["Lang"].decode() == "en-GB"
        assert document.metadata["Title"] == title
        metadata = catalog["Metadata"].resolve().get_data().decode()
        assert "<pdfuaid:part>1</pdfuaid:part>" in metadata
        fonts = {name for page in document.pages for name in fonts_of(page)}
        assert fonts
        assert all("+" in name for name in fonts), "a subset is embedded"


def fonts_of(page: Any) -> set[str]:
    return {char["fontname"] for char in page.chars}
