"""A record that things are added to one by one, and how they are found in it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import TypeVar

from app.domain.record import (
    SORTS,
    Board,
    Circuit,
    Device,
    Item,
    Point,
    Record,
    Room,
    Source,
)
from app.domain.spreadsheet.rows import There
from app.domain.spreadsheet.values import UnreadableError, plain

I = TypeVar("I", bound=Item)  # noqa: E741
# “way 3”, “B1/3”: a text that says how it is meant.
NAMES_A_WAY = re.compile(r"\bway\b|\w[/:]\s?\w{1,6}\Z", re.IGNORECASE)
LAST_WORD = re.compile(r"\w{1,6}\Z")
WAY_WORD = re.compile(r"(?:way|no|position)?[\s.:#]*(?P<way>[\w.]{1,8})", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What a person asks for beside the sheet.

    Attributes:
        file: Name of the file, for the notes of what comes from it.
        board: Board of ways that name none.
        make_devices: Whether ways that are not there are made, and open facts of those
            that are there filled in.
        make_rooms: Whether rooms that are not there are made.
        kind_unsaid: Kind of a device where the sheet says none.
        only_new: Whether rows of what is there already are left out.
    """

    file: str = ""
    board: str | None = None
    make_devices: bool = False
    make_rooms: bool = False
    kind_unsaid: str = "unknown"
    only_new: bool = False


class Growing:
    """A record that grows: lists to add to, and references that are free."""

    def __init__(self, record: Record) -> None:
        self._start = record
        self._lists = {cls: list(record.of(cls)) for cls in SORTS.values()}
        self._used = {ref.upper() for ref in record.by_ref}
        self._next: dict[type[Item], int] = {}

    def new_ref(self, cls: type[Item]) -> str:
        """Return the next free reference of a sort, and hold it."""
        number = self._next.get(cls, len(self._lists[cls]) + 1)
        while f"{cls.prefix}{number}" in self._used:
            number += 1
        self._next[cls] = number + 1
        ref = f"{cls.prefix}{number}"
        self._used.add(ref)
        return ref

    def hold(self, ref: str) -> bool:
        """Hold a reference that was asked for; False if it is not free."""
        free = ref.upper() not in self._used
        self._used.add(ref.upper())
        return free

    def of(self, cls: type[I]) -> tuple[I, ...]:
        """Return the items of a sort, those added too."""
        return tuple(i for i in self._lists[cls] if isinstance(i, cls))

    def add(self, item: Item) -> None:
        """Add an item at the end of its list."""
        self._lists[type(item)].append(item)

    def put(self, item: Item) -> None:
        """Put an item in the place of the one with its reference."""
        items = self._lists[type(item)]
        items[[i.ref for i in items].index(item.ref)] = item

    def record(self) -> Record:
        """Return the record as it has grown."""
        lists = {cls.plural: tuple(items) for cls, items in self._lists.items()}
        return self._start.having(**lists)


@dataclass(slots=True, kw_only=True)
class Making:
    """What a sheet is made into.

    Attributes:
        record: The record as it is.
        growing: The record as it grows.
        asked: What is asked for beside the sheet.
        notes: Sentences about what is not taken.
        seen: Ways of the sheet by board and name, with their row.
        there: Rows of what is there already.
        named: References of that.
        alike: Of each class, what its things are told apart by, and which they are.
        to_come: References that the sheet asks for, by themselves in small letters.
    """

    record: Record
    growing: Growing
    asked: Asked
    notes: list[str] = field(default_factory=list)
    seen: dict[tuple[str, str], int] = field(default_factory=dict)
    there: list[There] = field(default_factory=list)
    named: set[str] = field(default_factory=set)
    alike: dict[type[Item], dict[object, list[str]]] = field(default_factory=dict)
    to_come: dict[str, str] = field(default_factory=dict)

    def note(self, sentence: str) -> None:
        """Note once what is not taken."""
        if sentence not in self.notes:
            self.notes.append(sentence)

    def leaves_out(self, row: int, ref: str | None) -> bool:
        """Note that a row names what is there; return whether it is left out for it."""
        if ref is None:
            return False
        self.named.add(ref)
        self.there.append(There(row=row, ref=ref, what=self.record.by_ref[ref].title))
        return self.asked.only_new


def find_board(making: Making, text: str) -> Board:
    """Return the board that a text names.

    Raises:
        UnreadableError: There is none, or there are several.
    """
    boards = making.growing.of(Board)
    word = plain(text)
    numbered = re.fullmatch(r"(?:board|db|cu|b) ?([0-9]{1,2})", word)
    found = [b for b in boards if word in (plain(b.name), plain(b.ref))]
    if not found and numbered:
        ref = f"b{int(numbered[1])}"
        found = [b for b in boards if b.ref.casefold() == ref]
    return _only(found, "board")


def the_board(making: Making, text: str) -> Board:
    """Return the board that a cell names; without one, the one that was chosen.

    Raises:
        UnreadableError: There is none, or it is not said which.
    """
    boards = making.growing.of(Board)
    if text:
        return find_board(making, text)
    if making.asked.board:
        found = [board for board in boards if board.ref == making.asked.board]
        return _only(found, "board")
    if len(boards) == 1:
        return boards[0]
    if not boards:
        raise UnreadableError("cannot be found: there is no board yet. Add it first")
    raise UnreadableError("may be on any of several boards: say on which")


def find_way(
    making: Making, text: str, board_text: str = ""
) -> Device | tuple[str, str]:
    """Return the way that a text names; where it is not there, its board and name.

    Raises:
        UnreadableError: It names none, or several.
    """
    by_ref = [
        d for d in making.growing.of(Device) if d.ref.casefold() == text.casefold()
    ]
    if by_ref and not board_text:
        return by_ref[0]
    if not board_text and (split := _with_board(making, text)):
        board, way = split
    else:
        board = the_board(making, board_text)
        word = WAY_WORD.fullmatch(text)
        way = word["way"] if word else text
    named = list(_ways_called(making, board, way, text))
    if named:
        return _only(named, "way")
    if not re.fullmatch(r"[\w.]{1,8}", way):
        raise UnreadableError(f"is no way of {board.name}")
    return board.ref, way


def find_circuit(making: Making, text: str) -> Circuit:
    """Return the circuit that a text names: itself, or by its way.

    Raises:
        UnreadableError: There is none, or there are several.
    """
    word = plain(text)
    bare = word.removeprefix("circuit ").removeprefix("cct ")
    circuits = making.record.circuits
    for names in (_ref, _name, _number):
        found = [c for c in circuits if names(c) and names(c) in (word, bare)]
        if found:
            return _only(found, "circuit")
    way = find_way(making, text) if NAMES_A_WAY.search(text) else None
    if isinstance(way, Device):
        return _only(list(making.record.circuits_of(way.ref)), "circuit of that way")
    raise UnreadableError(
        "is no circuit of this home. Bring the circuits in first, or leave it open"
    )


def find_feeder(making: Making, text: str) -> tuple[str, str]:
    """Return what a point is tied to: its reference and what it is called.

    A circuit is named in any way; a point or a source by its reference, and a point may
    stand further down the sheet.

    Raises:
        UnreadableError: There is none, or there are several.
    """
    try:
        circuit = find_circuit(making, text)
    except UnreadableError:
        ref = text.casefold()
        things = (*making.growing.of(Point), *making.growing.of(Source))
        for item in things:
            if item.ref.casefold() == ref:
                return item.ref, f"{item.title} ({item.ref})"
        if ref in making.to_come:
            return making.to_come[ref], making.to_come[ref]
        raise
    return circuit.ref, f"{circuit.title} ({circuit.ref})"


def find_rooms(making: Making, text: str) -> list[Room]:
    """Return the rooms that a text names, by name or reference."""
    word = plain(text)
    rooms = making.growing.of(Room)
    return [r for r in rooms if word in (plain(r.name), plain(r.ref))]


def _ref(circuit: Circuit) -> str:
    return plain(circuit.ref)


def _name(circuit: Circuit) -> str:
    return plain(circuit.name)


def _number(circuit: Circuit) -> str:
    return plain(circuit.number)


def _with_board(making: Making, text: str) -> tuple[Board, str] | None:
    """Return the board and the way of a text that names both, as “board 1 way 7”."""
    hit = LAST_WORD.search(text)
    before = text[: hit.start()].rstrip(" ,;:/.-#") if hit else ""
    word = before.rpartition(" ")
    if plain(word[2]) in ("way", "w", "no"):
        before = word[0].rstrip(" ,;:/.-#")
    try:
        return (find_board(making, before), hit[0]) if hit and before else None
    except UnreadableError:
        return None


def _ways_called(making: Making, board: Board, way: str, text: str) -> Iterator[Device]:
    here = [d for d in making.growing.of(Device) if d.board == board.ref]
    by_way = [d for d in here if d.way and plain(d.way) == plain(way)]
    by_label = [
        d for d in here if d.label_found and plain(d.label_found) == plain(text)
    ]
    by_ref = [d for d in here if d.ref.casefold() == way.casefold()]
    yield from by_way or by_label or by_ref


def _only(found: list[I], noun: str) -> I:
    if not found:
        raise UnreadableError(f"is no {noun} of this home")
    if len(found) > 1:
        refs = ", ".join(item.ref for item in found[:6])
        raise UnreadableError(f"may be any of several: {refs}. Write the reference")
    return found[0]
