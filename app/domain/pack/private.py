"""What may stay at home when the record is handed over.

A pack is made from a record that no longer holds what is kept back: no page, table or
file of it can then say it.
"""

from __future__ import annotations

from collections.abc import Collection
from typing import TypeVar

from app.domain.record import SORTS, Home, Item, Record, Tie, specs
from app.domain.record._field import PRIVATE

M = TypeVar("M", Home, Item)

# What can be kept back, with its words; all of it is, unless somebody asks for it.
PARTS = {
    **PRIVATE,
    "photos": "Photographs and other files",
    "originals": "Photographs as they came, with what the camera wrote: place and time",
    "history": "The log of changes",
}
KEPT_BACK = "Kept back."


def kept_back(record: Record, parts: Collection[str]) -> Record:
    """Return the record without some of its parts, codes of `PARTS`.

    A file that is marked as private is never handed over.
    """
    private = {
        a.ref for a in record.attachments if "photos" in parts or a.private == "yes"
    }
    private |= {spot.ref for spot in record.spots if spot.attachment in private}
    lists = {
        cls.plural: tuple(
            _blanked(item, parts) for item in record.of(cls) if item.ref not in private
        )
        for cls in SORTS.values()
    }
    return record.having(**lists, home=_blanked(record.home, parts))


def holding(record: Record, code: str) -> int | None:
    """Return how many items of a record hold some of a part, one of `PARTS`.

    Of the log of changes, which is no part of a record, that is None.
    """
    if code == "history":
        return None
    if code in ("photos", "originals"):
        files = [file for file in record.attachments if file.private != "yes"]
        return sum(code == "photos" or file.is_picture for file in files)
    changed = kept_back(record, (code,))
    there = changed.by_ref
    items = sum(item != there[item.ref] for item in record.items() if item.ref in there)
    return items + (record.home != changed.home)


def _blanked(item: M, parts: Collection[str]) -> M:
    changes = {
        spec.name: KEPT_BACK if spec.required else spec.default
        for spec in specs(type(item))
        if spec.private in parts and getattr(item, spec.name)
    }
    if isinstance(item, Tie) and item.grade == "5":
        # The name of a document, without which the grade says nothing.
        changes.pop("seen_by", None)
    return item.model_copy(update=changes) if changes else item
