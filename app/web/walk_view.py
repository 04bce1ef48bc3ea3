"""The pages of the walk, as their templates get them."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import Any

from flask import url_for

from app.domain.kinds import POINT_KINDS
from app.domain.record import Point, Record, Room
from app.domain.record.choices import LOOKED_AT, ROOM_KINDS, STOREYS
from app.domain.usual import (
    PLACES,
    forgotten_kinds,
    forgotten_places,
    not_listed,
    rooms_for,
    stands,
    usual_kinds,
    usual_places,
)
from app.domain.walk import beside
from app.web.addresses import Link, item_url
from app.web.walk_form import AddForm, Mark, facts_of_point, marks_of

# At the end of a room: how far it was looked at, as a button says it.
LOOKED_MARKS = {
    "all": "All of it",
    "part": "In part",
    "no_access": "Could not get in",
}
MOST_ROOMS_OFFERED = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class KindChoice:
    """A kind that may be touched.

    Attributes:
        code: Its code.
        label: What it is called.
        stands: Whereabouts it usually stands.
        here: How many of it are listed in the room.
        chosen: Whether it is chosen.
    """

    code: str
    label: str
    stands: str
    here: int
    chosen: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkedPoint:
    """A point as the walk shows it.

    Attributes:
        ref: Its reference.
        title: What it is called.
        facts: What the walk notes of it.
        marks: What one touch changes: for each group its head and its buttons.
        url: Address that takes a mark.
        another: Its kind and the address where another of it is begun.
        show: Address of its own page.
        opened: Whether its marks are unfolded.
    """

    ref: str
    title: str
    facts: str
    marks: tuple[tuple[str, tuple[Mark, ...]], ...]
    url: str
    another: Link
    show: str
    opened: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomPage:
    """One room of the walk.

    Attributes:
        title: Its name.
        where: Its number in the walk, its storey, how far it was looked at.
        form: The form that adds a point.
        add: Address that takes it.
        kinds: The kinds offered first.
        others: The other kinds.
        places: For each whereabouts: its code, and the places offered.
        points: What is listed, the newest first.
        offered: Kinds that such a room often has, not listed yet: label, address.
        offered_in: The kind of room, as a sentence has it.
        looked: Address that takes how far it was looked at.
        looked_marks: What it takes: code, word, whether it is so marked.
        photograph: Address that takes a photograph.
        things: What it may be of: the room, then its points; reference, title.
        back: The room before: name, address.
        onward: The room after: name, address.
        ref: Its reference.
    """

    title: str
    where: str
    form: AddForm
    add: str
    kinds: tuple[KindChoice, ...]
    others: tuple[KindChoice, ...]
    places: tuple[tuple[str, tuple[str, ...]], ...]
    points: tuple[WalkedPoint, ...]
    offered: tuple[Link, ...]
    offered_in: str
    looked: str
    looked_marks: tuple[tuple[str, str, bool], ...]
    photograph: str
    things: tuple[Link, ...]
    back: Link
    onward: Link
    ref: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomsPage:
    """All rooms of the walk.

    Attributes:
        title: Heading.
        rooms: For each room: its name and address, how far looked at, how many points.
        forgotten: Places often forgotten: code, name, what is often there.
        kinds: Kinds often forgotten: label, and rooms where one may be added.
        add: Address that adds a forgotten place.
        list: Address of the quick table of rooms.
    """

    title: str
    rooms: tuple[tuple[Link, str, str], ...]
    forgotten: tuple[tuple[str, str, str], ...]
    kinds: tuple[tuple[str, tuple[Link, ...]], ...]
    add: str
    list: str


def room_page(
    record: Record, room: Room, form: AddForm, opened: str | None = None
) -> RoomPage:
    """Return the page of a room; the marks of one point are unfolded."""
    home, points = record.home.ref, record.points_of(room.ref)
    if opened is None and points:
        opened = points[-1].ref
    first = usual_kinds(room.kind)
    others = tuple(code for code in POINT_KINDS if code not in first)
    choices = _choices(points, form.form.kind.data)
    before, after = beside(record, room)
    return RoomPage(
        title=room.name,
        where=_where(record, room),
        form=form,
        add=url_for("walk.add", home=home, ref=room.ref),
        kinds=tuple(choices[code] for code in first),
        others=tuple(choices[code] for code in others),
        places=tuple((where, usual_places(room.kind, where)) for where in PLACES),
        points=tuple(_walked(record, room, p, opened) for p in reversed(points)),
        offered=tuple(_begun(record, room, kind) for kind in not_listed(record, room)),
        offered_in=_offered_in(room),
        looked=url_for("walk.looked", home=home, ref=room.ref),
        looked_marks=tuple(
            (code, word, room.looked_at == code) for code, word in LOOKED_MARKS.items()
        ),
        photograph=url_for("uploads.create", home=home),
        things=tuple((item.ref, item.title) for item in (room, *reversed(points))),
        back=_step(record, before),
        onward=_step(record, after),
        ref=room.ref,
    )


def rooms_page(record: Record) -> RoomsPage:
    """Return the page of all rooms."""
    home = record.home.ref
    return RoomsPage(
        title="All rooms",
        rooms=tuple(
            (
                _step(record, room),
                LOOKED_AT[room.looked_at].lower(),
                _how_many(record, room),
            )
            for room in record.rooms
        ),
        forgotten=tuple((p.code, p.name, p.why) for p in forgotten_places(record)),
        kinds=tuple(
            (POINT_KINDS[kind].label, links)
            for kind in forgotten_kinds(record)
            if (links := _where_to_begin(record, kind))
        ),
        add=url_for("walk.add_room", home=home),
        list=url_for("rooms.quick", home=home),
    )


def answer(record: Record, room: Room, url: str) -> dict[str, Any]:
    """Return a room as data: its list as it now is, and where a page would go."""
    points = record.points_of(room.ref)
    return {
        "room": room.ref,
        "url": url,
        "points": [
            {"ref": p.ref, "title": p.title, "facts": facts_of_point(p)} for p in points
        ],
    }


def _choices(points: tuple[Point, ...], chosen: str | None) -> dict[str, KindChoice]:
    counts: Counter[str] = Counter()
    for point in points:
        counts[point.kind] += point.count
    return {
        code: KindChoice(
            code=code,
            label=kind.label,
            stands=stands(code),
            here=counts[code],
            chosen=code == chosen,
        )
        for code, kind in POINT_KINDS.items()
    }


def _where(record: Record, room: Room) -> str:
    number = record.rooms.index(room) + 1
    storey = "storey not known" if room.storey == "unknown" else STOREYS[room.storey]
    looked_at = LOOKED_AT[room.looked_at].lower()
    return f"{number} of {len(record.rooms)}. {storey}. Looked at: {looked_at}."


def _offered_in(room: Room) -> str:
    if room.kind in ("other", "unknown"):
        return "in a room"
    word = ROOM_KINDS[room.kind].lower()
    return f"in an {word}" if word[0] in "aeiou" else f"in a {word}"


def _walked(
    record: Record, room: Room, point: Point, opened: str | None
) -> WalkedPoint:
    home = record.home.ref
    kind = POINT_KINDS[point.kind].label
    return WalkedPoint(
        ref=point.ref,
        title=point.title,
        facts=facts_of_point(point),
        marks=marks_of(point),
        url=url_for("walk.mark", home=home, ref=point.ref),
        another=(kind, _begun(record, room, point.kind)[1]),
        show=item_url(home, point),
        opened=point.ref == opened,
    )


def _begun(record: Record, room: Room, kind: str) -> Link:
    """Return a kind with the address where it is chosen already."""
    url = url_for("walk.room", home=record.home.ref, ref=room.ref, kind=kind)
    return POINT_KINDS[kind].label, url


def _step(record: Record, room: Room | None) -> Link:
    home = record.home.ref
    if room is None:
        return "All rooms", url_for("walk.rooms", home=home)
    return room.name, url_for("walk.room", home=home, ref=room.ref)


def _how_many(record: Record, room: Room) -> str:
    count = len(record.points_of(room.ref))
    return f"{count} point" if count == 1 else f"{count} points"


def _where_to_begin(record: Record, kind: str) -> tuple[Link, ...]:
    rooms = rooms_for(record, kind)[:MOST_ROOMS_OFFERED]
    return tuple((room.name, _begun(record, room, kind)[1]) for room in rooms)
