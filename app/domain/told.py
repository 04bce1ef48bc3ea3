"""Changes told in sentences: what became of each item, field by field."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Any, Literal

from app.domain.edits import Entry
from app.domain.record import SORTS, FieldSpec, Home, Item, Record, specs
from app.domain.record._field import Model, field
from app.domain.words import value_in_words

NameOf = Callable[[str], str]
HOME = "home"
NOT_IN_A_LIST = ("ref", "name")


class Told(Model):
    """What a change did to one item.

    Of an item that was added or removed, `sentences` says all that was recorded of it.
    """

    sort: str = field("Sort of the item, or home", ...)
    ref: str = field("Its reference, the later one if it changed", ...)
    title: str = field("What it is called", ...)
    what: Literal["added", "removed", "changed", "moved"] = field("What it met", ...)
    sentences: tuple[str, ...] = field("What differs, a sentence a field", ())

    @property
    def name(self) -> str:
        """What sort of thing it is, what it is called, and its reference."""
        noun = noun_of(self.sort)
        own = f"{noun} {self.ref}"
        return own if self.title == own else f"{noun} {self.title} ({self.ref})"


def noun_of(sort: str) -> str:
    """Return what a sort of item is called, the home too."""
    return "Home" if sort == HOME else SORTS[sort].noun


def told(entries: Iterable[Entry], *records: Record) -> tuple[Told, ...]:
    """Return what a change did, item by item.

    Args:
        entries: Each item before and after.
        records: Where the titles of what is named are looked up, after the entries.
    """
    known = tuple(entries)
    name_of = _names(known, records)
    former = former_refs(known)
    gone = set(former.values())
    old = {e.before.ref: e.before for e in known if e.before and not e.after}
    found = []
    for entry in known:
        after = entry.after
        if after is not None and entry.before is None and after.ref in former:
            found.append(_changed(entry, old[former[after.ref]], after, name_of))
        elif after is not None or (entry.before and entry.before.ref not in gone):
            found.append(_told(entry, name_of))
    return tuple(found)


def former_refs(entries: Iterable[Entry]) -> Mapping[str, str]:
    """Return the former reference of each item whose reference a change changed.

    The log holds that as one item gone and another new.  They are the same when nothing
    but the reference differs, or when they are the only two of their sort and stand at
    the same place.
    """
    known = tuple(entries)
    found: dict[str, str] = {}
    for sort in dict.fromkeys(entry.sort for entry in known):
        gone = [e for e in known if e.sort == sort and e.before and not e.after]
        new = [e for e in known if e.sort == sort and e.after and not e.before]
        for fresh in new:
            only = len(gone) == len(new) == 1
            old = next((e for e in gone if _is_same(e, fresh, only=only)), None)
            if old and old.before and fresh.after:
                gone.remove(old)
                found[fresh.after.ref] = old.before.ref
    return found


def facts(item: Item, name_of: NameOf) -> tuple[str, ...]:
    """Return what is recorded of an item, a sentence a field."""
    shown = (spec for spec in specs(type(item)) if spec.name not in NOT_IN_A_LIST)
    words = ((s, value_in_words(s, getattr(item, s.name), name_of)) for s in shown)
    return tuple(f"{spec.label}: {text}" for spec, text in words if text)


def name_in(*records: Record) -> NameOf:
    """Return the function that names a thing by its title in the first that has it."""
    return _names((), records)


def _is_same(old: Entry, new: Entry, *, only: bool) -> bool:
    before, after = old.before, new.after
    if before is None or after is None:
        return False
    alone = only and old.follows_before == new.follows_after
    return alone or before.model_copy(update={"ref": after.ref}) == after


def _told(entry: Entry, name_of: NameOf) -> Told:
    before, after = entry.before, entry.after
    if before is None and after is not None:
        return _of(entry, after, "added", facts(after, name_of))
    if after is None and before is not None:
        return _of(entry, before, "removed", facts(before, name_of))
    if before is None or after is None:
        raise ValueError("an entry holds an item before or after")
    if before == after:
        places = (
            _place(ref, name_of) for ref in (entry.follows_before, entry.follows_after)
        )
        return _of(entry, after, "moved", (f"Place: {' → '.join(places)}",))
    return _changed(entry, before, after, name_of)


def _changed(entry: Entry, before: Item, after: Item, name_of: NameOf) -> Told:
    return _of(entry, after, "changed", tuple(_differing(before, after, name_of)))


def _of(entry: Entry, item: Item, what: Any, sentences: tuple[str, ...]) -> Told:
    return Told(
        sort=entry.sort,
        ref=item.ref,
        title=item.title,
        what=what,
        sentences=sentences,
    )


def _differing(before: Item, after: Item, name_of: NameOf) -> Iterator[str]:
    for spec in specs(type(after)):
        old, new = getattr(before, spec.name), getattr(after, spec.name)
        if old != new:
            words = (_said(spec, value, name_of) for value in (old, new))
            yield f"{spec.label}: {' → '.join(words)}"


def _said(spec: FieldSpec, value: Any, name_of: NameOf) -> str:
    words = value_in_words(spec, value, name_of)
    if words is None:
        holds_nothing = spec.type in ("text", "long", "choices", "refs")
        return "nothing" if holds_nothing or spec.blank else "not known"
    return f"“{words}”" if value and spec.type in ("text", "long") else words


def _place(follows: str | None, name_of: NameOf) -> str:
    return f"after {name_of(follows)}" if follows else "first"


def _names(entries: tuple[Entry, ...], records: tuple[Record, ...]) -> NameOf:
    own = {i.ref: i for e in entries for i in (e.before, e.after) if i}

    def name_of(ref: str) -> str:
        found = (record.by_ref.get(ref) for record in records)
        item = own.get(ref) or next(filter(None, found), None)
        return f"{item.title} ({ref})" if item and not isinstance(item, Home) else ref

    return name_of
