"""Reading a PDF that was made here: its text, places, fonts and marks."""

from __future__ import annotations

import io
from collections.abc import Iterator
from contextlib import closing, contextmanager
from typing import Any

import pdfplumber
import pypdfium2
from pdfminer.pdftypes import resolve1

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
    with closing(pypdfium2.PdfDocument(made)) as document:
        pages = [page.get_textpage().get_text_range() for page in document]
    # A hyphen at the end of a line is given as a sign of its own.
    return "".join("".join(pages).split()).replace("\ufffe", "-")


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
    """Return the names of the fonts that a page has at hand."""
    fonts = resolve1(page.page_obj.resources.get("Font")) or {}
    return {resolve1(font)["BaseFont"].name for font in fonts.values()}
