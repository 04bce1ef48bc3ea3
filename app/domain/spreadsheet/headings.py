"""Which row holds the headings, and what each column then seems to hold: guesses."""

from __future__ import annotations

import re

from app.domain.record._field import Model, field
from app.domain.spreadsheet.shapes import Sheet
from app.domain.spreadsheet.targets import TARGETS, Target
from app.domain.spreadsheet.values import plain, tidied

# How far down headings are looked for.
LOOKED_AT = 30
# Rows above the headings that may name a column left open in them.
ABOVE = 2
BRACKETS = re.compile(r"\([^)]*\)|\[[^\]]*\]")


class Match(Model):
    """What the columns of a sheet hold, as a person has said.

    ``columns`` has a code of `TARGETS` for each column, or nothing; a column beyond
    them is left out.
    """

    row: int = field("Row of the headings", 1)
    columns: tuple[str, ...] = field("What each column holds", ())


def heading_row(sheet: Sheet, kind: str) -> int:
    """Return the row, from 1, that looks most like headings; 0 for an empty sheet."""
    best, most = 0, -1
    for number, cells in enumerate(sheet.rows[:LOOKED_AT], 1):
        filled = [cell for cell in cells if tidied(cell)]
        if not filled:
            continue
        codes = _guess(kind, [plain_heading(cell) for cell in cells])
        score = sum(map(bool, codes)) * 10 + (len(filled) > 1)
        if score > most:
            best, most = number, score
    return best


def headings(sheet: Sheet, row: int) -> tuple[str, ...]:
    """Return the words above each column; one left open takes what stands above it."""
    width = max((len(cells) for cells in sheet.rows), default=0)
    first = max(row - ABOVE, 1)
    levels = [sheet.rows[n - 1] for n in range(row, first - 1, -1) if n >= 1]
    found = []
    for index in range(width):
        words = (tidied(cells[index]) for cells in levels if index < len(cells))
        found.append(next(filter(None, words), ""))
    return tuple(found)


def guessed(sheet: Sheet, row: int, kind: str) -> Match:
    """Return what the columns seem to hold by their headings; no thing twice."""
    words = [plain_heading(text) for text in headings(sheet, row)]
    return Match(row=row, columns=tuple(_guess(kind, words)))


def plain_heading(text: str) -> str:
    """Return a heading without its case, its marks and what stands in brackets."""
    return plain(BRACKETS.sub(" ", text)).rstrip(".").strip()


def same_headings(words: tuple[str, ...]) -> str:
    """Return the headings as one text, the same for files that have the same."""
    return "\n".join(plain(word) for word in words)


def _guess(kind: str, words: list[str]) -> list[str]:
    """Return a code for each heading: those that fit best are given away first."""
    offers = sorted(
        (_fit(target, word), order, index, target.code)
        for index, word in enumerate(words)
        for order, target in enumerate(TARGETS[kind])
        if _fit(target, word) < NO_FIT
    )
    found = [""] * len(words)
    given: set[str] = set()
    for _fits, _order, index, code in offers:
        if not found[index] and code not in given:
            found[index] = code
            given.add(code)
    return found


NO_FIT = 99


def _fit(target: Target, word: str) -> int:
    """Return how well a heading fits, lower is better: its own word, or one near."""
    if not word:
        return NO_FIT
    own = plain(target.label)
    bare = plain(target.spec.label) if target.spec else own
    if word in (own, bare, plain(target.code)):
        return 0
    if word in target.words:
        return 1 + target.words.index(word)
    without_unit = re.sub(r" (a|ma|ka|mm2|m|w|kw)$", "", word)
    if without_unit != word and without_unit in (bare, *target.words):
        return 30
    return NO_FIT
