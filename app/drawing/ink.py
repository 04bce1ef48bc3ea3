"""The pen: line widths, letter sizes, and how much room words take.

SVG text does not wrap, so lines are broken and shortened here, by an estimate that is
on the generous side for the sans-serif faces of the common systems.
"""

from __future__ import annotations

from functools import cache, lru_cache

FINE, LINE, HEAVY, LIT, MARKS = 1.0, 1.5, 3.0, 3.0, 8.0
DASHES = "4 4"
SMALL, PLAIN, STRONG = 12.0, 13.0, 15.0
LEADING = 1.35

# Advance widths in parts of the letter size, from memory of wide system faces.
_NARROW = frozenset("iljI.,:;'|!()[]‘’")
_SLIM = frozenset(" \xa0ftr-·/")
_WIDE = frozenset("mwMW@%—…Ω")
_SHARE = {"narrow": 0.4, "slim": 0.42, "wide": 1.0, "capital": 0.73, "plain": 0.63}
_BOLD = 1.1


@lru_cache(maxsize=16_384)
def text_width(text: str, size: float, *, bold: bool = False) -> float:
    """Return about how wide a line of text is, rather too much than too little."""
    return sum(map(_share, text)) * size * (_BOLD if bold else 1.0)


def shortened(text: str, width: float, size: float, *, bold: bool = False) -> str:
    """Return the text, cut and ended with an ellipsis where it would not fit."""
    if text_width(text, size, bold=bold) <= width:
        return text
    room = width - text_width("…", size, bold=bold)
    kept = ""
    for letter in text:
        room -= text_width(letter, size, bold=bold)
        if room < 0:
            break
        kept += letter
    return f"{kept.rstrip()}…"


def wrapped(
    text: str, width: float, size: float, *, most: int, bold: bool = False
) -> tuple[str, ...]:
    """Break a text into lines at its spaces; the last line is shortened if need be.

    A space that does not break keeps a figure with its unit.
    """
    lines: list[str] = []
    words = text.replace("\n", " ").split(" ")
    while words and len(lines) < most - 1:
        line = words.pop(0)
        while words and text_width(f"{line} {words[0]}", size, bold=bold) <= width:
            line = f"{line} {words.pop(0)}"
        lines.append(line)
    lines += [" ".join(words)] if words else []
    return tuple(shortened(line, width, size, bold=bold) for line in lines)


@cache
def _share(letter: str) -> float:
    if letter in _NARROW:
        return _SHARE["narrow"]
    if letter in _SLIM:
        return _SHARE["slim"]
    if letter in _WIDE or (ord(letter) > 0x2FF and letter not in "“”–"):
        return _SHARE["wide"]
    return _SHARE["capital" if letter.isupper() else "plain"]
