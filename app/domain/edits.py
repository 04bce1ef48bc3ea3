"""Changes of a record as pure functions: a record in, the changed record out."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from typing import Any, Self, TypeVar

from app.domain.fault import links_of
from app.domain.record import SORTS, Device, Home, Item, Point, Record, specs

I = TypeVar("I", bound=Item)  # noqa: E741


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One item before and after a change; the home too is an item here.

    Attributes:
        sort: Sort of the item, or ``home``.
        before: The item as it was; None when it is new.
        after: The item as it became; None when it is gone.
        follows_before: Reference of the one before it in its list, as it was.
        follows_after: The same, as it became.
    """

    sort: str
    before: Item | None
    after: Item | None
    follows_before: str | None = None
    follows_after: str | None = None

    def reversed(self) -> Entry:
        """Return the entry that takes this one back."""
        return Entry(
            sort=self.sort,
            before=self.after,
            after=self.before,
            follows_before=self.follows_after,
            follows_after=self.follows_before,
        )

    def as_json(self) -> dict[str, Any]:
        """Return it as values that JSON can hold."""
        return {
            "sort": self.sort,
            "before": self.before and self.before.model_dump(mode="json"),
            "after": self.after and self.after.model_dump(mode="json"),
            "follows_before": self.follows_before,
            "follows_after": self.follows_after,
        }

    @classmethod
    def from_json(cls, values: Mapping[str, Any]) -> Self:
        """Read it back; a field that the program no longer has is left out."""
        return cls(
            sort=values["sort"],
            before=_item(values["sort"], values["before"]),
            after=_item(values["sort"], values["after"]),
            follows_before=values["follows_before"],
            follows_after=values["follows_after"],
        )


def added(record: Record, item: Item, *, after: str | None = None) -> Record:
    """Return the record with an item more, at the end of its list or after another."""
    items = list(record.of(type(item)))
    refs = [other.ref for other in items]
    items.insert(refs.index(after) + 1 if after in refs else len(items), item)
    return _with(record, type(item), items)


def replaced(record: Record, ref: str, item: Item) -> Record:
    """Return the record with an item changed; a new reference is followed."""
    if isinstance(item, Home):
        return record.having(home=item)
    kept = [item if other.ref == ref else other for other in record.of(type(item))]
    changed = _with(record, type(item), kept)
    return changed if item.ref == ref else _pointed(changed, {ref: item.ref})


def removed(record: Record, ref: str) -> Record:
    """Return the record without an item and what cannot be without it.

    A board takes its devices with it, a point its ties, controls and readings, a device
    the rounds in which it was off, a circuit its results; a picture goes with the last
    thing that it belongs to.  Whatever else names what goes, names nothing afterwards:
    its feed is then not recorded.
    """
    going = removal(record, ref)
    kept = {
        cls.plural: tuple(i for i in record.of(cls) if i.ref not in going)
        for cls in SORTS.values()
    }
    return _pointed(record.having(**kept), dict.fromkeys(going))


def removal(record: Record, ref: str) -> frozenset[str]:
    """Return the references of everything that goes when an item goes."""
    going = {ref}
    growing = True
    while growing:
        more = {
            item.ref
            for item in record.items()
            if item.ref not in going and _goes(item, going)
        }
        going |= more
        growing = bool(more)
    return frozenset(going)


def loosened(record: Record, ref: str) -> tuple[Item, ...]:
    """Return the items that stay, but name something that goes with an item."""
    going = removal(record, ref)
    return tuple(
        item
        for item in record.items()
        if item.ref not in going and any(r in going for _, r, _ in links_of(item))
    )


def moved(record: Record, ref: str, steps: int) -> Record:
    """Return the record with an item some places further down its list, or up.

    A device moves among those of its board, a point among those of its room.
    """
    item = record.by_ref[ref]
    fellows = [i for i in record.of(type(item)) if _place(i) == _place(item)]
    index = fellows.index(item)
    target = min(max(index + steps, 0), len(fellows) - 1)
    order = [i for i in fellows if i is not item]
    order.insert(target, item)
    queue = iter(order)
    items = [
        next(queue) if _place(i) == _place(item) else i for i in record.of(type(item))
    ]
    return _with(record, type(item), items)


def new_ref(record: Record, cls: type[Item], taken: Iterable[str] = ()) -> str:
    """Return the first free reference of a sort, such as P17."""
    used = {ref.upper() for ref in record.by_ref} | {ref.upper() for ref in taken}
    number = len(record.of(cls)) + 1
    while f"{cls.prefix}{number}" in used:
        number += 1
    return f"{cls.prefix}{number}"


def entries_between(old: Record, new: Record) -> tuple[Entry, ...]:
    """Return what differs between two records, item by item, in order."""
    found = []
    if old.home != new.home:
        found.append(Entry(sort="home", before=old.home, after=new.home))
    for cls in SORTS.values():
        found += _entries_of(cls, old, new)
    return tuple(found)


def with_entries(record: Record, entries: Iterable[Entry]) -> Record | None:
    """Return the record with entries carried out; None when one does not fit.

    An entry fits when its item still is as it was before it.  The order of the entries
    does not count.
    """
    entries = tuple(entries)
    lists = {cls.sort: list(record.of(cls)) for cls in SORTS.values()}
    home = record.home
    for entry in entries:
        if entry.sort == "home":
            if home != entry.before or not isinstance(entry.after, Home):
                return None
            home = entry.after
        elif not _taken_out(lists[entry.sort], entry):
            return None
    for sort, items in lists.items():
        if not _put_in(items, [e for e in entries if e.sort == sort and e.after]):
            return None
    values = {cls.plural: tuple(lists[sort]) for sort, cls in SORTS.items()}
    return record.having(**values, home=home)


def stepped_back(record: Record, entries: Iterable[Entry]) -> Record | None:
    """Return the record as it was before a change; None when it does not lead here."""
    return with_entries(record, [entry.reversed() for entry in reversed([*entries])])


def record_from_json(text: str) -> Record:
    """Read a record as it once stood; a field that is no more is left out."""
    values = json.loads(text)
    kept: dict[str, Any] = {"home": _known(Home, values["home"])}
    for cls in SORTS.values():
        kept[cls.plural] = [_known(cls, each) for each in values.get(cls.plural, ())]
    return Record.model_validate_json(json.dumps(kept))


def _taken_out(items: list[Item], entry: Entry) -> bool:
    if entry.before is None:
        return True
    ref = entry.before.ref
    place = next((n for n, item in enumerate(items) if item.ref == ref), None)
    if place is None or items[place] != entry.before:
        return False
    del items[place]
    return True


def _put_in(items: list[Item], waiting: list[Entry]) -> bool:
    """Put each item behind the one that it follows, which may have to come first."""
    while waiting:
        refs = [None, *(item.ref for item in items)]
        entry = next((e for e in waiting if e.follows_after in refs), waiting[0])
        waiting.remove(entry)
        if entry.after is None or entry.after.ref in refs:
            return False
        follows = entry.follows_after
        place = refs.index(follows) if follows in refs else len(items)
        items.insert(place, entry.after)
    return True


def _entries_of(cls: type[Item], old: Record, new: Record) -> list[Entry]:
    before, after = old.of(cls), new.of(cls)
    was, became = _followed(before), _followed(after)
    common = [i.ref for i in before if i.ref in became]
    shuffled = common != [i.ref for i in after if i.ref in was]
    gone = [_entry(cls, i, None, was, became) for i in before if i.ref not in became]
    old_of = {i.ref: i for i in before}
    kept = [
        _entry(cls, old_of.get(i.ref), i, was, became)
        for i in after
        if old_of.get(i.ref) != i or (shuffled and was[i.ref] != became[i.ref])
    ]
    found = [*gone, *kept]
    if not shuffled or _is_exact(found, before, after):
        return found
    return [*gone, *(_entry(cls, old_of.get(i.ref), i, was, became) for i in after)]


def _is_exact(
    entries: list[Entry], before: tuple[Item, ...], after: tuple[Item, ...]
) -> bool:
    """Return whether entries lead from one list to the other, and back."""
    back = [entry.reversed() for entry in entries]
    for start, way, end in ((before, entries, after), (after, back, before)):
        items = list(start)
        for entry in way:
            _taken_out(items, entry)
        if not _put_in(items, [e for e in way if e.after]) or tuple(items) != end:
            return False
    return True


def _entry(
    cls: type[Item],
    before: Item | None,
    after: Item | None,
    was: Mapping[str, str | None],
    became: Mapping[str, str | None],
) -> Entry:
    return Entry(
        sort=cls.sort,
        before=before,
        after=after,
        follows_before=was.get(before.ref) if before else None,
        follows_after=became.get(after.ref) if after else None,
    )


def _followed(items: Iterable[Item]) -> dict[str, str | None]:
    found: dict[str, str | None] = {}
    last = None
    for item in items:
        found[item.ref] = last
        last = item.ref
    return found


def _goes(item: Item, going: AbstractSet[str]) -> bool:
    """Return whether an item cannot be without what goes.

    A round without one of the devices that were off would say that another had done it.
    """
    required = {spec.name for spec in specs(type(item)) if spec.required}
    needed = {*required, *item.cannot_lose}
    if any(ref in going for name, ref, _ in links_of(item) if name in needed):
        return True
    held = set(getattr(item, item.goes_with, ()))
    return bool(held) and held <= going


def _pointed(record: Record, renamed: Mapping[str, str | None]) -> Record:
    """Return the record with every naming of some references changed, or let go."""
    values = {
        cls.plural: tuple(_repointed(item, renamed) for item in record.of(cls))
        for cls in SORTS.values()
    }
    return record.having(**values)


def _repointed(item: I, renamed: Mapping[str, str | None]) -> I:
    names = {name for name, ref, _ in links_of(item) if ref in renamed}
    changes: dict[str, Any] = {}
    for name in names:
        value = getattr(item, name)
        if isinstance(value, tuple):
            new = (renamed.get(ref, ref) for ref in value)
            changes[name] = tuple(ref for ref in new if ref is not None)
        else:
            changes[name] = renamed[value]
    return item.model_copy(update=changes) if changes else item


def _place(item: Item) -> str | None:
    if isinstance(item, Device):
        return item.board
    return item.room if isinstance(item, Point) else None


def _with(record: Record, cls: type[Item], items: Iterable[Item]) -> Record:
    return record.having(**{cls.plural: tuple(items)})


def _item(sort: str, values: Mapping[str, Any] | None) -> Item | None:
    if values is None:
        return None
    cls = Home if sort == "home" else SORTS[sort]
    return cls.model_validate_json(json.dumps(_known(cls, values)))


def _known(cls: type[Item], values: Mapping[str, Any]) -> dict[str, Any]:
    return {name: v for name, v in values.items() if name in cls.model_fields}
