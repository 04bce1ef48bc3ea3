"""A new home begun from another of the same type: its layout, and nothing known.

What is alike in two houses of one builder is where the rooms, boards and points are.
What was read, measured, seen or written there is no knowledge of the house here.
"""

from __future__ import annotations

from app.domain.edits import removed
from app.domain.record import (
    SORTS,
    Board,
    Circuit,
    Device,
    Home,
    Item,
    Point,
    Record,
    Room,
    Source,
    Tie,
)

NOTE = "Taken from another home, not looked at here."
# All else of them is left out: it begins as not known.
KEPT: dict[type[Item], tuple[str, ...]] = {
    Room: ("ref", "name", "storey", "kind"),
    Board: ("ref", "name", "room", "fed_from"),
    Device: ("ref", "board", "kind", "way", "fed_from", "second_feed", "modules"),
    Circuit: ("ref", "name", "number", "ways", "use"),
    Point: ("ref", "room", "kind", "place", "count"),
    Tie: ("ref", "point", "tied_to", "role"),
}


def likeness(record: Record, home: Home) -> Record:
    """Return a new home with the layout of another, and every tie not known.

    A name of a point is left out, for it may name a person; those of rooms, boards and
    circuits come along, since nothing else says which is which.
    """
    alike = _without_others(record)
    lists = {cls.plural: tuple(_alike(item) for item in alike.of(cls)) for cls in KEPT}
    mains = Source(ref=_free(alike), kind="network", name="The network in the street")
    return Record(home=home).having(**lists, sources=(mains,))


def _without_others(record: Record) -> Record:
    """Return the record without what is not copied, and every naming of that."""
    others = [cls for cls in SORTS.values() if cls not in KEPT]
    for cls in others:
        for item in record.of(cls):
            if item.ref in record.by_ref:
                record = removed(record, item.ref)
    return record


def _alike(item: Item) -> Item:
    values = {name: getattr(item, name) for name in KEPT[type(item)]}
    noted = {} if isinstance(item, Room) else {"note": NOTE}
    return type(item).model_validate({**values, **noted})


def _free(record: Record) -> str:
    number = 1
    while f"S{number}" in record.by_ref:
        number += 1
    return f"S{number}"
