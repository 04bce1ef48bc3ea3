"""What no text from outside may hold: halves of letters, and controls nobody sees.

Controls of the upper range (U+0080 to U+009F, ISO 6429) are orders to some consoles,
and no page may hold them (HTML Living Standard, "control-character-in-input-stream").
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from app.errors import Problem

_HALF = re.compile("[\ud800-\udfff]")
_UNSEEN = re.compile("[\x80-\x9f\ufdd0-\ufdef\ufffe\uffff]")


def unwritable(value: Any, place: str = "") -> Iterator[Problem]:
    """Yield where a value, parsed from JSON, holds what cannot be shown anywhere.

    Args:
        value: Texts, numbers, lists and objects, not nested deeper than Python goes.
        place: Where it stands.
    """
    if isinstance(value, str):
        if reason := _why(value):
            yield Problem(place.lstrip(".") or "the document", reason)
    elif isinstance(value, dict):
        for key, part in value.items():
            yield from unwritable(key, place)
            yield from unwritable(part, f"{place}.{key}")
    elif isinstance(value, list):
        for index, part in enumerate(value):
            yield from unwritable(part, f"{place}[{index}]")


def _why(text: str) -> str:
    if _HALF.search(text):
        return "It holds half a character."
    return "It holds a control character." if _UNSEEN.search(text) else ""
