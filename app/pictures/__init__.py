"""Pictures: what a file is by its content, and what of a picture is shown."""

from __future__ import annotations

from app.pictures.content import MOST_BYTES, SUFFIXES, media_type_of
from app.pictures.shown import MOST_PIXELS, SIZES, Shown, shown_of, size_of

__all__ = [
    "MOST_BYTES",
    "MOST_PIXELS",
    "SIZES",
    "SUFFIXES",
    "Shown",
    "media_type_of",
    "shown_of",
    "size_of",
]
