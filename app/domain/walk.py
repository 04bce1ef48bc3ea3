"""The walk: which room comes before and after, and where one stopped."""

from __future__ import annotations

from collections.abc import Iterable

from app.domain.edits import Entry
from app.domain.record import Point, Record, Room

DONE_WITH = ("all", "no_access")


def beside(record: Record, room: Room) -> tuple[Room | None, Room | None]:
    """Return the rooms before and after one, in walking order."""
    rooms = record.rooms
    at = rooms.index(room)
    before = rooms[at - 1] if at else None
    after = rooms[at + 1] if at + 1 < len(rooms) else None
    return before, after


def stopped_in(record: Record, newest_first: Iterable[Iterable[Entry]]) -> Room | None:
    """Return the room to go on in; None when the home has none.

    That is the room last worked in; if it was marked as done with last, the next one
    that is not.  It is read off the changes, so that any phone goes on where another
    stopped.
    """
    for entries in newest_first:
        for item in (entry.after or entry.before for entry in entries):
            if isinstance(item, Point) and (room := record.find(Room, item.room)):
                return room
            if isinstance(item, Room) and (room := record.find(Room, item.ref)):
                return _first_open(record, room)
    return _first_open(record, record.rooms[0]) if record.rooms else None


def _first_open(record: Record, room: Room) -> Room:
    """Return the room, or the first in the order from there not done with."""
    at = record.rooms.index(room)
    order = (*record.rooms[at:], *record.rooms[:at])
    return next((r for r in order if r.looked_at not in DONE_WITH), room)
