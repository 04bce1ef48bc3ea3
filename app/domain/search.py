"""Find things of a record by words: their names, labels, notes, and what they serve."""

from __future__ import annotations

import re

from app.domain.record import FieldSpec, Item, Record, specs

SKIPPED_SORTS = (
    "tie",
    "control",
    "round",
    "reading",
    "aside",
    "result",
    "occasion",
    "spot",
)
NUMBER = re.compile(r"[0-9]+(\.[0-9]+)?")


def find_items(record: Record, query: str) -> list[Item]:
    """Return the items that hold every word, those named by it first.

    Words are looked for in every text and choice of an item, and in the name of its
    room; case and order do not matter. A number counts as a whole: 2 is not in B32.
    """
    words = query.casefold().split()
    if not words:
        return []
    scored = [(_score(record, item, words), item) for item in record.items()]
    found = [(score, item) for score, item in scored if score]
    found.sort(key=lambda pair: -pair[0])
    return [item for _, item in found]


def _score(record: Record, item: Item, words: list[str]) -> int:
    """Return 3 for a reference, 2 for a title, 1 for anything else that holds it."""
    if item.sort in SKIPPED_SORTS:
        return 0
    if item.ref.casefold() == " ".join(words):
        return 3
    title = item.title.casefold()
    if all(_holds(title, word) for word in words):
        return 2
    text = f"{title} {_text(record, item)}".casefold()
    return int(all(_holds(text, word) for word in words))


def _holds(text: str, word: str) -> bool:
    if not NUMBER.fullmatch(word):
        return word in text
    return re.search(rf"(?<![\w.]){re.escape(word)}(?!\.?[0-9])", text) is not None


def _text(record: Record, item: Item) -> str:
    room = record.by_ref.get(getattr(item, "room", None) or "")
    parts = [item.ref, item.noun, room.title if room else ""]
    parts += [_words(spec, getattr(item, spec.name)) for spec in specs(type(item))]
    return " ".join(parts)


def _words(spec: FieldSpec, value: object) -> str:
    if value is None or value == "unknown" or spec.type in ("ref", "refs"):
        return ""
    if isinstance(value, tuple):
        return " ".join(spec.choices[code] for code in value)
    return spec.choices.get(str(value), str(value))
