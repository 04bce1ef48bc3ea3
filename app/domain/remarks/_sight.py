"""One look at a record for all remarks: what several of them need, worked out once."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from functools import cached_property

from app.domain.answers import Cover
from app.domain.chain import Chain, Step, chains, is_overcurrent, is_rcd
from app.domain.circuits import CircuitAnswer, Subject, circuit_figures
from app.domain.circuits.guard import Guard, as_guard
from app.domain.fault import Fault
from app.domain.faults import faults
from app.domain.kinds import DEVICE_KINDS
from app.domain.load import Load, loads_of
from app.domain.network import Network, downstream, goes_off, network
from app.domain.odd import Odd, odd_ones_out
from app.domain.protection import PEOPLE_MA, cover
from app.domain.record import (
    SORTS,
    Board,
    Circuit,
    Device,
    IntakeItem,
    Item,
    Point,
    Record,
    Room,
    Source,
)
from app.domain.to_come import without_days_to_come

MOST_NAMED = 5
# Nominal voltage, BS 7671:2018+A2:2022, 313.1; SI 1994/3021.
VOLTS = Decimal(230)


@dataclass(frozen=True)
class Sight:
    """A record in one order, whatever order it came in, and what follows from it.

    Attributes:
        record: The record, each list in the order of its references.
        today: The day of the look.
        written: The record as it is written, with days that are still to come.
    """

    record: Record
    today: date
    written: Record

    @cached_property
    def net(self) -> Network:
        """The supply network."""
        return network(self.record)

    @cached_property
    def home(self) -> str:
        """Reference by which remarks on the home itself are about it."""
        return self.record.home.ref

    @cached_property
    def _chains(self) -> dict[str, tuple[Chain, ...]]:
        return {}

    def chains(self, ref: str) -> tuple[Chain, ...]:
        """Return every chain to a thing, read once."""
        if ref not in self._chains:
            known = ref in self.record.by_ref
            self._chains[ref] = chains(self.net, ref) if known else ()
        return self._chains[ref]

    def before(self, ref: str) -> tuple[Step, ...]:
        """Return every step before a thing, each once, the nearest to it first."""
        steps = {s.ref: s for chain in self.chains(ref) for s in chain.steps[-2::-1]}
        return tuple(steps.values())

    def rcds(self, ref: str) -> tuple[Step, ...]:
        """Return the RCDs before a thing."""
        return tuple(step for step in self.before(ref) if is_rcd(step))

    def overcurrent(self, ref: str) -> Step | None:
        """Return the nearest fuse or circuit-breaker before a thing."""
        found = next((s for s in self.before(ref) if is_overcurrent(s)), None)
        return as_guard(self.record, found) if found else None

    def guard(self, circuit: Circuit) -> Guard | None:
        """Return what guards a circuit against overload, if that can be told."""
        return Subject(self.net, circuit).guard

    @cached_property
    def covers(self) -> dict[str, Cover]:
        """Whether an RCD of 30 mA or less stands before each point."""
        return {p.ref: cover(p, self.chains(p.ref)) for p in self.record.points}

    @cached_property
    def faults(self) -> tuple[Fault, ...]:
        """Where the record contradicts itself or stops short."""
        return faults(self.written, self.today)

    @cached_property
    def odd(self) -> tuple[Odd, ...]:
        """The points that are not where one would look for them."""
        return odd_ones_out(self.net)

    @cached_property
    def _below(self) -> dict[str, frozenset[str]]:
        return {}

    def below(self, ref: str) -> frozenset[str]:
        """Return everything that a thing feeds."""
        if ref not in self._below:
            self._below[ref] = downstream(self.net, ref)
        return self._below[ref]

    def off_with(self, ref: str) -> frozenset[str]:
        """Return everything that goes off when a thing is opened."""
        return goes_off(self.net, ref)

    def points_on(self, circuit: Circuit) -> tuple[Point, ...]:
        """Return the points of a circuit, in order."""
        return self.record.points_among(self.net.points_at.get(circuit.ref, ()))

    @cached_property
    def circuits_at(self) -> dict[str, tuple[Circuit, ...]]:
        """The circuits of each point, in order."""
        found: dict[str, list[Circuit]] = {}
        for circuit in self.record.circuits:
            for ref in self.net.points_at.get(circuit.ref, ()):
                found.setdefault(ref, []).append(circuit)
        return {ref: tuple(circuits) for ref, circuits in found.items()}

    @cached_property
    def loads(self) -> tuple[Load, ...]:
        """What each circuit draws."""
        return loads_of(self.net)

    @cached_property
    def _figures(self) -> dict[str, CircuitAnswer]:
        return {}

    def figures(self, circuit: Circuit) -> CircuitAnswer:
        """Return the arithmetic of a circuit, worked out once."""
        if circuit.ref not in self._figures:
            self._figures[circuit.ref] = circuit_figures(self.net, circuit)
        return self._figures[circuit.ref]

    def ways(self, circuit: Circuit) -> tuple[Device, ...]:
        """Return the devices that a circuit is wired to."""
        found = (self.record.find(Device, ref) for ref in circuit.ways)
        return tuple(device for device in found if device)

    def circuits_below(self, ref: str) -> tuple[Circuit, ...]:
        """Return the circuits that a thing feeds, cables to other boards left out."""
        fed = self.below(ref)
        return tuple(
            c for c in self.record.circuits if c.ref in fed and not is_supply(c)
        )

    def points_below(self, ref: str) -> tuple[Point, ...]:
        """Return the points that a thing feeds."""
        return self.record.points_among(self.below(ref))

    def heads(self, board: Board) -> tuple[Device, ...]:
        """Return the devices of a board that none of its other devices feeds."""
        devices = self.record.devices_of(board.ref)
        own = {device.ref for device in devices}
        return tuple(d for d in devices if d.kind != "blank" and d.fed_from not in own)

    def first_boards(self) -> tuple[Board, ...]:
        """Return the boards with no other board between them and the intake."""
        return tuple(b for b in self.record.boards if not self._behind_board(b))

    def _behind_board(self, board: Board) -> bool:
        return any(s.board for d in self.heads(board) for s in self.before(d.ref))

    def room(self, point: Point | Board | IntakeItem) -> Room | None:
        """Return where a thing stands."""
        return self.record.find(Room, point.room)

    def intake_of(self, *kinds: str) -> tuple[IntakeItem, ...]:
        """Return the intake items of some kinds."""
        return tuple(item for item in self.record.intake if item.kind in kinds)

    def sources(self) -> tuple[Source, ...]:
        """Return the sources that are there, the network left out."""
        return tuple(
            s for s in self.record.sources if s.present == "yes" and s.kind != "network"
        )

    def name(self, ref: str) -> str:
        """Return how a sentence names a thing: its title and its reference."""
        item = self.record.by_ref.get(ref)
        if item is None:
            return self.record.home.name if ref == self.home else ref
        return item.title if ref in item.title.split() else f"{item.title} ({ref})"

    def names(self, refs: Iterable[str]) -> str:
        """Return how a sentence names several things, some by their number only."""
        every = list(dict.fromkeys(refs))
        shown = [self.name(ref) for ref in every[:MOST_NAMED]]
        if len(every) > MOST_NAMED:
            return f"{', '.join(shown)} and {len(every) - MOST_NAMED} more"
        if len(shown) < 2:
            return "".join(shown) or "nothing"
        return f"{', '.join(shown[:-1])} and {shown[-1]}"


def sight(record: Record, today: date) -> Sight:
    """Return the look at a record on a day, its lists put in one order.

    What is still to come counts as no day of what was done.
    """
    lists = {cls.plural: _in_one_order(record.of(cls)) for cls in SORTS.values()}
    written = record.having(**lists)
    return Sight(without_days_to_come(written, today), today, written)


def _in_one_order(items: tuple[Item, ...]) -> tuple[Item, ...]:
    """Return items by their references; twins, which no kept record has, by content."""
    if len({item.ref for item in items}) < len(items):
        items = tuple(sorted(items, key=lambda item: item.model_dump_json()))
    return tuple(sorted(items, key=_place))


def _place(item: Item) -> tuple[object, ...]:
    """Return what an item is ordered by: P2 before P10."""
    parts = re.split(r"([0-9]+)", item.ref)
    return (*((int(p), "") if p.isdecimal() else (-1, p) for p in parts),)


def counted(number: int, noun: str) -> str:
    """Return a number with its noun: 1 point, 2 points."""
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"


def refs_of(items: Iterable[Item]) -> tuple[str, ...]:
    """Return the references of things."""
    return tuple(item.ref for item in items)


def is_supply(circuit: Circuit) -> bool:
    """Return whether a circuit only carries the supply to another board."""
    return "distribution" in (circuit.use, circuit.arrangement)


def is_socket(point: Point) -> bool:
    """Return whether a thing can be plugged into a point."""
    return point.kind in SOCKETS


def is_mains(point: Point) -> bool:
    """Return whether a point is not said to run on something else than mains."""
    return point.current not in ("dc", "extra_low")


def is_outdoors(sight: Sight, point: Point) -> bool | None:
    """Return whether a point is outdoors; None where that is not known."""
    room = sight.room(point)
    if point.outdoor == "yes" or point.kind == "outdoor_socket":
        return True
    if room is not None and (room.kind == "outside" or room.storey == "outside"):
        return point.outdoor != "no"
    if point.outdoor == "no" or (room is not None and room.kind != "unknown"):
        return False
    return None


def is_wet_room(room: Room) -> bool | None:
    """Return whether a room has a bath or a shower; None where that is not known."""
    if "yes" in (room.has_bath, room.has_shower) or room.kind in WET_ROOMS:
        return True
    return None if room.kind == "unknown" and room.has_bath == "unknown" else False


def in_wet_rooms(sight: Sight) -> Iterator[Point]:
    """Yield the points in rooms with a bath or a shower."""
    for point in sight.record.points:
        room = sight.room(point)
        if room is not None and is_wet_room(room):
            yield point


def water_digit(printed: str) -> int | None:
    """Return the second digit of an IP code, against water; None where none is read."""
    code = re.search(r"IP\s*[0-6X]\s*([0-9])", printed.upper())
    return int(code[1]) if code else None


def protective(device: Device) -> bool:
    """Return whether a device is a fuse or a circuit-breaker of a way."""
    kind = DEVICE_KINDS[device.kind]
    return kind.outgoing and "overload" in kind.protects


def feeds_people(step: Step) -> bool:
    """Return whether an RCD counts as guarding people: 30 mA or less, not delayed."""
    ma = step.residual_current_ma
    return bool(ma and ma <= PEOPLE_MA and step.time_delayed != "yes")


def year_of(text: str) -> int | None:
    """Return the last year that stands in a text; 1980s reads as 1980."""
    years = [int(y) for y in re.findall(r"\b(1[89][0-9]{2}|20[0-9]{2})", text)]
    return max(years, default=None)


SOCKETS = frozenset(
    {"double_socket", "single_socket", "socket", "outdoor_socket"}
    | {"cooker_outlet_socket"}
)
EARTHING = frozenset(
    {"earthing_terminal", "earthing_conductor", "main_bonding", "earth_electrode"}
)
WET_ROOMS = frozenset({"bathroom", "shower_room", "bedroom_with_shower"})
