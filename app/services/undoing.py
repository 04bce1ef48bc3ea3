"""Whether a change can be taken back, and which later ones stand in the way."""

from __future__ import annotations

from dataclasses import dataclass

from sqlalchemy import Connection

from app.domain.circles import circles
from app.domain.edits import Entry, stepped_back
from app.domain.fault import links_of
from app.domain.links import broken_links, places
from app.domain.network import network
from app.domain.record import Item, Record
from app.errors import ConflictError
from app.store import changes, history
from app.store.changes import Change

NAMED = 3
HOME = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Later:
    """A later change that stands in the way of taking one back."""

    key: int
    sentence: str


class InTheWayError(ConflictError):
    """A change cannot be taken back, for what it did is built on since."""

    def __init__(self, sentence: str, later: tuple[Later, ...]) -> None:
        super().__init__(sentence)
        self.later = later


def taken_back(
    connection: Connection, home: int, record: Record, change: Change
) -> Record:
    """Return the record without what a change did.

    Raises:
        InTheWayError: What it did was changed again, something else needs it, or what
            it would bring back needs what is gone since.
    """
    back = stepped_back(record, change.entries)
    if back is None:
        refs = _changed_again(record, change.entries)
        later = _in_force_after(connection, home, change, refs)
        raise InTheWayError(
            _sentence("what it changed has been changed again since", later), later
        )
    problems = broken_links(back)
    if not problems:
        return back
    if gone := _missing(back) - _named_by(record):
        later = _in_force_after(connection, home, change, gone)
        raise InTheWayError(
            _sentence("what it would bring back needs what is gone since", later), later
        )
    at_fault = {problem.place.partition(".")[0] for problem in problems}
    holders = {ref for place, ref in places(back) if place in at_fault}
    holders |= {ref for circle in circles(network(back)) for ref in circle}
    later = _in_force_after(connection, home, change, frozenset(holders))
    later = _that_made_it_needed(connection, home, later, back)
    raise InTheWayError(_sentence("something else needs what it did", later), later)


def _changed_again(record: Record, entries: tuple[Entry, ...]) -> frozenset[str]:
    """Return the items that are not as a change left them; the home is named empty."""
    found = set()
    for entry in entries:
        item = entry.after or entry.before
        if item is None:
            continue
        home = entry.sort == "home"
        now: Item | None = record.home if home else record.by_ref.get(item.ref)
        if now != entry.after:
            found.add(HOME if home else item.ref)
    return frozenset(found)


def _in_force_after(
    connection: Connection, home: int, change: Change, refs: frozenset[str]
) -> tuple[Later, ...]:
    """Return the later changes of items, without those that were taken back."""
    found, lifted = [], set()
    for key, sentence, undoes in history.touching_after(
        connection, home, change.key, refs
    ):
        if key in lifted:
            continue
        if undoes is not None:
            lifted.add(undoes)
        if undoes is None or undoes <= change.key:
            found.append(Later(key=key, sentence=sentence))
    return tuple(found)


def _that_made_it_needed(
    connection: Connection, home: int, later: tuple[Later, ...], back: Record
) -> tuple[Later, ...]:
    """Keep those that made something name what would be gone, if there are any."""
    missing = _missing(back)
    kept = tuple(
        each
        for each in later
        if (change := changes.find_change(connection, home, each.key))
        and any(_names_anew(entry, missing) for entry in change.entries)
    )
    return kept or later


def _missing(record: Record) -> frozenset[str]:
    """Return what is named in a record and is not in it."""
    return _named_by(record) - record.by_ref.keys()


def _named_by(record: Record) -> frozenset[str]:
    return frozenset(ref for item in record.items() for _, ref, _ in links_of(item))


def _names_anew(entry: Entry, refs: frozenset[str]) -> bool:
    return bool((_named(entry.after) - _named(entry.before)) & refs)


def _named(item: Item | None) -> set[str]:
    if item is None or item.sort == "home":
        return set()
    return {ref for _, ref, _ in links_of(item)}


def _sentence(why: str, later: tuple[Later, ...]) -> str:
    start = f"This cannot be undone: {why}."
    if not later:
        return f"{start} Change it by hand."
    names = "; ".join(f"“{each.sentence.rstrip('.')}”" for each in later[:NAMED])
    more = len(later) - NAMED
    rest = f"; and {more} more" if more > 0 else ""
    which = "change" if len(later) == 1 else "changes, the newest"
    return f"{start} Undo the later {which} first, or change it by hand: {names}{rest}."
