"""The record of one home, whole."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from functools import cached_property
from typing import TypeVar

from app.domain.record._field import Model, field
from app.domain.record.aside import Aside
from app.domain.record.board import Board, Device
from app.domain.record.circuit import Circuit
from app.domain.record.files import Attachment, Spot
from app.domain.record.home import Home, Room, Source
from app.domain.record.intake import IntakeItem
from app.domain.record.items import Control, Item, Tie
from app.domain.record.point import Point
from app.domain.record.reminder import Occasion, Reminder
from app.domain.record.result import Result
from app.domain.record.survey import Reading, Round
from app.domain.record.trip import Trip
from app.domain.record.work import Paper, Work

SORTS: dict[str, type[Item]] = {
    cls.sort: cls
    for cls in (
        Room,
        Source,
        IntakeItem,
        Board,
        Device,
        Circuit,
        Point,
        Tie,
        Control,
        Round,
        Reading,
        Aside,
        Work,
        Paper,
        Result,
        Reminder,
        Occasion,
        Trip,
        Attachment,
        Spot,
    )
}
I = TypeVar("I", bound=Item)  # noqa: E741
K = TypeVar("K")


class Record(Model):
    """A home and its items; the order of each list is the order on the wall or walk.

    References may dangle or run in a circle here: whatever computes from a record
    reports that as a fault of the record.
    """

    home: Home = field("Home", ...)
    rooms: tuple[Room, ...] = field("Rooms", ())
    sources: tuple[Source, ...] = field("Sources", ())
    intake: tuple[IntakeItem, ...] = field("Intake, from the street", ())
    boards: tuple[Board, ...] = field("Boards", ())
    devices: tuple[Device, ...] = field("Devices, in their order on the board", ())
    circuits: tuple[Circuit, ...] = field("Circuits", ())
    points: tuple[Point, ...] = field("Points", ())
    ties: tuple[Tie, ...] = field("Ties", ())
    controls: tuple[Control, ...] = field("Controls", ())
    rounds: tuple[Round, ...] = field("Rounds of switching off", ())
    readings: tuple[Reading, ...] = field("Readings", ())
    asides: tuple[Aside, ...] = field("Remarks set aside", ())
    works: tuple[Work, ...] = field("Work, planned and done", ())
    papers: tuple[Paper, ...] = field("Papers", ())
    results: tuple[Result, ...] = field("Test results", ())
    reminders: tuple[Reminder, ...] = field("Reminders", ())
    occasions: tuple[Occasion, ...] = field("Times that something was done", ())
    trips: tuple[Trip, ...] = field("Times that something tripped", ())
    attachments: tuple[Attachment, ...] = field("Files", ())
    spots: tuple[Spot, ...] = field("Spots on pictures", ())

    def having(self, **lists: object) -> Record:
        """Return the record with some of its lists, or its home, replaced.

        Made anew rather than copied: a copy would carry what was worked out before.
        """
        values = {name: getattr(self, name) for name in type(self).model_fields}
        return Record.model_construct(**(values | lists))

    def of(self, cls: type[I]) -> tuple[I, ...]:
        """Return all items of a sort, in order."""
        items: tuple[I, ...] = getattr(self, cls.plural)
        return items

    def items(self) -> Iterator[Item]:
        """Yield every item but the home, sort by sort."""
        for cls in SORTS.values():
            yield from self.of(cls)

    @cached_property
    def by_ref(self) -> dict[str, Item]:
        """Every item but the home, by its reference."""
        return {item.ref: item for item in self.items()}

    def find(self, cls: type[I], ref: str | None) -> I | None:
        """Return the item of a sort with this reference, or None."""
        item = self.by_ref.get(ref or "")
        return item if isinstance(item, cls) else None

    def points_among(self, refs: Iterable[str]) -> tuple[Point, ...]:
        """Return the points among some things, in their order."""
        places = self._places_of_points
        found = {places[ref] for ref in refs if ref in places}
        return tuple(self.points[place] for place in sorted(found))

    def ties_to(self, ref: str) -> tuple[Tie, ...]:
        """Return what is tied to a thing."""
        return self._ties_by_thing.get(ref, ())

    def fed_from(self, ref: str) -> tuple[Board | IntakeItem | Device, ...]:
        """Return what names a thing as what feeds it."""
        return self._fed_by_name.get(ref, ())

    def fed_second_from(self, ref: str) -> tuple[IntakeItem | Device, ...]:
        """Return what names a thing as its second feed."""
        return self._fed_second.get(ref, ())

    def devices_of(self, board: str) -> tuple[Device, ...]:
        """Return a board's devices from left to right."""
        return self._devices_by_board.get(board, ())

    def points_of(self, room: str | None) -> tuple[Point, ...]:
        """Return a room's points; None: those that have no room."""
        return self._points_by_room.get(room, ())

    def ties_of(self, point: str) -> tuple[Tie, ...]:
        """Return what a point is tied to."""
        return self._ties_by_point.get(point, ())

    def circuits_of(self, way: str) -> tuple[Circuit, ...]:
        """Return the circuits wired to a way."""
        return self._circuits_by_way.get(way, ())

    def controllers_of(self, ref: str) -> tuple[Control, ...]:
        """Return what says that a thing is switched by another."""
        return self._controls_by_controlled.get(ref, ())

    def readings_of(self, round_ref: str) -> tuple[Reading, ...]:
        """Return what was seen in a round, in the order it was sent."""
        return self._readings_by_round.get(round_ref, ())

    def attachments_of(self, ref: str | None) -> tuple[Attachment, ...]:
        """Return the files of a thing, then pictures with a spot that shows it.

        None: those that belong to the home alone.
        """
        if ref is None:
            return tuple(a for a in self.attachments if not a.of)
        return self._attachments_by_thing.get(ref, ())

    def spots_of(self, attachment: str) -> tuple[Spot, ...]:
        """Return the spots that are marked on a picture."""
        return self._spots_by_picture.get(attachment, ())

    @cached_property
    def _attachments_by_thing(self) -> dict[str, tuple[Attachment, ...]]:
        found: dict[str, dict[str, Attachment]] = {}
        for attachment in self.attachments:
            for ref in attachment.of:
                found.setdefault(ref, {})[attachment.ref] = attachment
        for spot in self.spots:
            picture = self.find(Attachment, spot.attachment)
            if spot.about is not None and picture is not None:
                found.setdefault(spot.about, {})[picture.ref] = picture
        return {ref: tuple(files.values()) for ref, files in found.items()}

    @cached_property
    def _spots_by_picture(self) -> dict[str, tuple[Spot, ...]]:
        return _grouped(self.spots, lambda spot: spot.attachment)

    @cached_property
    def _places_of_points(self) -> dict[str, int]:
        return {point.ref: place for place, point in enumerate(self.points)}

    @cached_property
    def _ties_by_thing(self) -> dict[str, tuple[Tie, ...]]:
        return _grouped(self.ties, lambda tie: tie.tied_to)

    @cached_property
    def _fed_by_name(self) -> dict[str | None, tuple[Board | IntakeItem | Device, ...]]:
        return _grouped(
            (*self.boards, *self.intake, *self.devices), lambda item: item.fed_from
        )

    @cached_property
    def _fed_second(self) -> dict[str | None, tuple[IntakeItem | Device, ...]]:
        return _grouped((*self.intake, *self.devices), lambda item: item.second_feed)

    @cached_property
    def _devices_by_board(self) -> dict[str, tuple[Device, ...]]:
        return _grouped(self.devices, lambda device: device.board)

    @cached_property
    def _points_by_room(self) -> dict[str | None, tuple[Point, ...]]:
        return _grouped(self.points, lambda point: point.room)

    @cached_property
    def _ties_by_point(self) -> dict[str, tuple[Tie, ...]]:
        return _grouped(self.ties, lambda tie: tie.point)

    @cached_property
    def _circuits_by_way(self) -> dict[str, tuple[Circuit, ...]]:
        found: dict[str, tuple[Circuit, ...]] = {}
        for circuit in self.circuits:
            for way in circuit.ways:
                found[way] = (*found.get(way, ()), circuit)
        return found

    @cached_property
    def _controls_by_controlled(self) -> dict[str, tuple[Control, ...]]:
        return _grouped(self.controls, lambda control: control.controlled)

    @cached_property
    def _readings_by_round(self) -> dict[str, tuple[Reading, ...]]:
        return _grouped(self.readings, lambda reading: reading.round)


def _grouped(items: Iterable[I], key: Callable[[I], K]) -> dict[K, tuple[I, ...]]:
    """Return the items of each key, in their order."""
    found: dict[K, list[I]] = {}
    for item in items:
        found.setdefault(key(item), []).append(item)
    return {name: tuple(group) for name, group in found.items()}
