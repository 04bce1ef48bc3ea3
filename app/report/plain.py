"""Data without what no font can show: control characters, halves of letters."""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping, Sequence

Plain = str | int | float | bool | None | Sequence["Plain"] | Mapping[str, "Plain"]

MARK = "\u25a1"
# Controls; halves and private letters; letters that do not exist (yet).
_DROPPED, _MARKED = frozenset({"Cc", "Cf", "Zl", "Zp"}), frozenset({"Cs", "Co", "Cn"})
# The joiner and the non-joiner shape letters in several scripts.
_KEPT = frozenset("\n\u200c\u200d\u00ad")


def plain(value: Plain) -> Plain:
    """Return the data with every text cleaned, however deep it lies."""
    if isinstance(value, str):
        return "".join(map(_letter, value))
    if isinstance(value, Mapping):
        return {key: plain(each) for key, each in value.items()}
    if isinstance(value, Sequence):
        return [plain(each) for each in value]
    return value


def _letter(letter: str) -> str:
    if letter in _KEPT:
        return letter
    kind = unicodedata.category(letter)
    if kind in _DROPPED:
        return " " if letter in "\t\v\f\r\u2028\u2029" else ""
    return MARK if kind in _MARKED else letter
