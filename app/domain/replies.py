"""What comes back from somebody who read the record: differences, one by one.

Nothing of it is taken by itself.  What was kept back when the record was handed over is
not missing in what comes back, so it is never taken for a difference.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Collection, Iterator
from datetime import date

from app.domain.days import in_words
from app.domain.edits import Entry, added, entries_between, new_ref, removed, replaced
from app.domain.fault import links_of
from app.domain.record import (
    LONG,
    SHORT,
    SORTS,
    Circuit,
    Home,
    Item,
    Paper,
    Record,
    Tie,
    specs,
)
from app.domain.record._field import LongText, Model, Ref, ShortText, field
from app.errors import InvalidError

# Files are compared by nobody: a pack holds other bytes than the home does.
LEFT_ALONE = ("attachment", "spot", "aside")
DOCUMENT_GRADE, TOLD_GRADE = "5", "2"
OTHER = "other"
_FEEDS = re.compile(r"^(it )?feeds($| )", re.IGNORECASE)
_NOT = re.compile(r"\b(not|never|nothing|no longer)\b", re.IGNORECASE)


class Correction(Model):
    """What somebody says of one thing in their own words."""

    ref: Ref = field("Reference", ...)
    feeds: LongText = field("What it feeds, or what is to be put right", ...)


class Reply(Model):
    """A reply as the pack's page saves it, or as it is typed from paper."""

    by: ShortText = field("By whom", "", private="names")
    paper: ShortText = field("Paper that says so", "")
    dated: date | None = field("Its date")
    ways: tuple[Correction, ...] = field("Corrections", ())
    other: LongText = field("Anything else", "")

    @property
    def document(self) -> str:
        """Which paper says so, and of which day; no name, so that none is stored."""
        day = in_words(self.dated) if self.dated else ""
        return ", ".join(part for part in (self.paper, day) if part) or "a reply"

    @property
    def source(self) -> str:
        """Who says so, by which paper, of which day."""
        day = in_words(self.dated) if self.dated else ""
        parts = (self.by, self.paper, day)
        return ", ".join(part for part in parts if part) or "an electrician"


def key_of(entry: Entry) -> str:
    """Return what a difference is known by while nobody has dealt with it."""
    item = entry.after or entry.before
    text = item.model_dump_json() if item else ""
    ref = item.ref if item else ""
    gone = "" if entry.after else "gone."
    digest = hashlib.sha256(text.encode()).hexdigest()[:12]
    return f"{entry.sort}.{ref}.{gone}{digest}"


def differences(
    record: Record, returned: Record, turned_down: Collection[str] = ()
) -> tuple[Entry, ...]:
    """Return what a returned record says otherwise, without what was turned down."""
    theirs = _as_if_whole(record, returned)
    found = entries_between(record, theirs)
    return tuple(
        entry
        for entry in found
        if entry.before != entry.after
        and entry.sort not in LEFT_ALONE
        and key_of(entry) not in turned_down
    )


def with_needed(
    record: Record, entry: Entry, every: Collection[Entry]
) -> tuple[Entry, ...]:
    """Return a difference with those without which it would name what is not there."""
    new = {e.after.ref: e for e in every if e.after is not None and e.before is None}
    needed: dict[str, Entry] = {}
    waiting = [entry]
    while waiting:
        now = waiting.pop()
        item = now.after
        if item is None:
            continue
        for _, ref, _ in links_of(item) if not isinstance(item, Home) else ():
            if ref in new and ref not in record.by_ref and ref not in needed:
                needed[ref] = new[ref]
                waiting.append(new[ref])
    others = [e for e in needed.values() if e is not entry]
    return (*reversed(others), entry)


def accepted(record: Record, entries: Collection[Entry], reply: Reply) -> Record:
    """Return the record with differences taken; ties then stand in a document."""
    for entry in entries:
        record = _taken(record, entry, reply)
    return record


def with_paper(record: Record, reply: Reply) -> Record:
    """Return the record with the paper of a reply, written down once."""
    if not reply.paper:
        return record
    for paper in record.papers:
        if (paper.number, paper.dated) == (reply.paper, reply.dated):
            return record
    own = Paper(
        ref=new_ref(record, Paper),
        kind="other",
        number=reply.paper,
        dated=reply.dated,
        by=reply.by,
    )
    return added(record, own)


def open_corrections(
    record: Record, reply: Reply, turned_down: Collection[str] = ()
) -> tuple[Correction, ...]:
    """Return what is said in words and nobody has dealt with."""
    return tuple(
        each
        for each in reply.ways
        if correction_key(each) not in turned_down and not _is_in(record, each, reply)
    )


def correction_key(correction: Correction) -> str:
    """Return what a correction in words is known by."""
    digest = hashlib.sha256(correction.feeds.encode()).hexdigest()[:12]
    return f"words.{correction.ref}.{digest}"


def noted(record: Record, correction: Correction, reply: Reply) -> Record:
    """Return the record with what was said added to the note of the thing.

    Raises:
        InvalidError: The thing has no note, or none that holds so much.
    """
    item = record.by_ref[correction.ref]
    own = getattr(item, "note", None)
    note = "\n".join(part for part in (own, _line(correction, reply)) if part)
    if own is None or len(note) > LONG:
        raise InvalidError(
            f"The note of {item.title} does not hold that. Write it down by hand, then "
            "turn it down here."
        )
    return replaced(record, item.ref, item.model_copy(update={"note": note}))


def in_home_notes(record: Record, reply: Reply) -> Record:
    """Return the record with what else was said in the notes of the home.

    Raises:
        InvalidError: They do not hold so much.
    """
    notes = "\n".join(p for p in (record.home.notes, _other(reply)) if p)
    if len(notes) > LONG:
        raise InvalidError(
            "The notes of the home do not hold that. Shorten them first."
        )
    return record.having(home=record.home.model_copy(update={"notes": notes}))


def other_is_open(record: Record, reply: Reply, turned_down: Collection[str]) -> bool:
    """Return whether what else was said has not been dealt with."""
    if not reply.other or OTHER in turned_down:
        return False
    return _other(reply) not in record.home.notes


def named(record: Record, correction: Correction) -> Record:
    """Return the record with what was said as the name of the one circuit there."""
    circuit, name = circuit_of(record, correction.ref), name_of(correction)
    if circuit is None or not name:
        return record
    return replaced(record, circuit.ref, circuit.model_copy(update={"name": name}))


def name_of(correction: Correction) -> str:
    """Return what was said as a name; empty where it makes none.

    “feeds the shed, not the garage.” names the shed; what something does not feed, and
    what is too long, is no name.
    """
    said = " ".join(correction.feeds.split())
    name = _FEEDS.sub("", said.partition(", not ")[0]).rstrip(". ")
    return "" if _NOT.search(name) or len(name) > SHORT else name


def circuit_of(record: Record, ref: str) -> Circuit | None:
    """Return the one circuit that a way feeds, or the circuit itself."""
    if isinstance(item := record.by_ref.get(ref), Circuit):
        return item
    found = record.circuits_of(ref)
    return found[0] if len(found) == 1 else None


def _is_in(record: Record, correction: Correction, reply: Reply) -> bool:
    item = record.by_ref.get(correction.ref)
    circuit, name = circuit_of(record, correction.ref), name_of(correction)
    if circuit is not None and name and circuit.name == name:
        return True
    return _line(correction, reply) in str(getattr(item, "note", ""))


def _line(correction: Correction, reply: Reply) -> str:
    return f"{reply.document}: {correction.feeds}"


def _other(reply: Reply) -> str:
    return f"{reply.document}: {reply.other}"


def _taken(record: Record, entry: Entry, reply: Reply) -> Record:
    after = entry.after
    if after is None:
        gone = entry.before.ref if entry.before else ""
        return removed(record, gone) if gone in record.by_ref else record
    if isinstance(after, Home):
        return record.having(home=after)
    if isinstance(after, Tie) and not _is_same_tie(entry.before, after):
        stated = DOCUMENT_GRADE if reply.paper else min(after.grade, TOLD_GRADE)
        known = {"seen_by": reply.document[:SHORT], "seen_on": reply.dated}
        after = after.model_copy(update={"grade": stated, **known})
    here = record.by_ref.get(after.ref)
    if here is not None and here.sort != after.sort:
        raise InvalidError(
            f"{after.ref} is a {here.noun.lower()} here and a {after.noun.lower()} in "
            "what came back. Give one of them another reference first."
        )
    if here is not None:
        return replaced(record, after.ref, after)
    return added(record, after, after=entry.follows_after)


def _as_if_whole(record: Record, returned: Record) -> Record:
    """Return what came back, with what was never handed over put in again."""
    lists: dict[str, tuple[Item, ...]] = {}
    for cls in SORTS.values():
        ours = {item.ref: item for item in record.of(cls)}
        if cls.sort in LEFT_ALONE:
            lists[cls.plural] = record.of(cls)
            continue
        lists[cls.plural] = tuple(
            _whole(ours.get(item.ref), item) for item in returned.of(cls)
        )
    home = _whole(record.home, returned.home)
    home = home.model_copy(update={"ref": record.home.ref})
    return record.having(**lists, home=home)


def _whole(ours: Item | None, theirs: Item) -> Item:
    if ours is None:
        return theirs
    kept = dict(_kept(ours, theirs))
    if isinstance(theirs, Tie) and _is_same_tie(ours, theirs):
        # How it is known is known here; a paper that says otherwise names another tie.
        kept |= {n: getattr(ours, n) for n in ("grade", "seen_by", "seen_on")}
    return theirs.model_copy(update=kept)


def _is_same_tie(one: Item | None, other: Tie) -> bool:
    if not isinstance(one, Tie):
        return False
    ours, theirs = ((t.point, t.tied_to, t.role) for t in (one, other))
    return ours == theirs


def _kept(ours: Item, theirs: Item) -> Iterator[tuple[str, object]]:
    for spec in specs(type(ours)):
        if spec.private and getattr(theirs, spec.name) == spec.default:
            yield spec.name, getattr(ours, spec.name)
