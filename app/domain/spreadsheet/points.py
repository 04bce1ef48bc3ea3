"""One row of a sheet of points."""

from __future__ import annotations

import re
from typing import Any

from app.domain.record import Point, Room, Tie, specs
from app.domain.record.choices import GRADES, STOREYS, TIE_ROLES
from app.domain.spreadsheet.circuits import wanted_ref
from app.domain.spreadsheet.growing import Making, find_feeder, find_rooms
from app.domain.spreadsheet.rows import MadeRow, RowIn, facts_of
from app.domain.spreadsheet.there import point_there
from app.domain.spreadsheet.values import UnreadableError, plain, words_of

# A sheet is something told, or on paper: nobody has seen the point go off by it.
GRADE = "2"
SEVERAL = re.compile(r"\s*[;&+,]\s*")
ROLE = re.compile(r"(?P<what>.*\S)\s*\((?P<role>[^()]+)\)")
# The reference of what a point is tied to, what that is called, what the tie is.
Tied = tuple[str, str, str]
ROOM_NAME = next(spec for spec in specs(Room) if spec.name == "name")
# Common practice, no source.
STOREY_WORDS = {
    "g": "ground", "gf": "ground", "0": "ground", "ground": "ground",
    "downstairs": "ground", "1": "first", "1st": "first", "1st floor": "first",
    "ff": "first", "first": "first", "upstairs": "first", "2": "second",
    "2nd": "second", "2nd floor": "second", "second": "second", "loft": "loft",
    "attic": "loft", "cellar": "cellar", "basement": "cellar", "outside": "outside",
    "garden": "outside", "outdoors": "outside",
}  # fmt: skip


def make_point(row: RowIn, making: Making) -> MadeRow | None:
    """Make the point of a row, its room if that is asked for, and its ties."""
    values, by = row.said("point")
    values.setdefault("kind", "unknown")
    tied = _tied(row, making)
    room, room_said = _room(row, making)
    there = None if row.faults else point_there(making, values, room)
    if making.leaves_out(row.number, there):
        return None
    ref = wanted_ref(row, making, Point, values)
    fields: dict[str, Any] = {**values, "ref": ref, "room": room}
    point = None if row.faults else row.built(Point, fields, by)
    if point is None:
        return None
    making.growing.add(point)
    ties = [_tie(row, making, point, one) for one in tied]
    return MadeRow(
        row=row.number,
        ref=point.ref,
        what=point.title,
        facts=facts_of(point, "kind", "place", "name"),
        beside=(*room_said, *ties),
    )


def _room(row: RowIn, making: Making) -> tuple[str | None, tuple[str, ...]]:
    name, storey = row.text("room"), _storey(row)
    if not name:
        return None, ("Room not recorded.",)
    found = find_rooms(making, name)
    fitting = [r for r in found if storey in ("unknown", r.storey)]
    loose = [r for r in found if r.storey == "unknown"]
    rooms = fitting or loose
    if len(rooms) == 1:
        return rooms[0].ref, (f"In {rooms[0].name} ({rooms[0].ref}).",)
    if rooms:
        refs = ", ".join(room.ref for room in rooms)
        row.fault("room", f"may be any of several rooms: {refs}. Write the reference")
        return None, ()
    return _new_room(row, making, name, storey)


def _new_room(
    row: RowIn, making: Making, name: str, storey: str
) -> tuple[str | None, tuple[str, ...]]:
    if not making.asked.make_rooms:
        at = f" on that storey ({STOREYS[storey]})" if storey != "unknown" else ""
        row.fault(
            "room", f"is no room of this home{at}. Add it first, or have rooms made"
        )
        return None, ()
    if len(name) > ROOM_NAME.max_length:
        row.fault("room", f"is longer than {ROOM_NAME.max_length} characters")
    if row.faults:
        return None, ()
    ref = making.growing.new_ref(Room)
    room = row.built(Room, {"ref": ref, "name": name, "storey": storey}, {})
    if room is None:
        return None, ()
    making.growing.add(room)
    return ref, (f"Makes the room {name} ({ref}).",)


def _storey(row: RowIn) -> str:
    text = row.text("storey")
    word = plain(text)
    words = {plain(words): code for code, words in STOREYS.items()}
    code = {**words, **STOREY_WORDS}.get(word) if text else "unknown"
    if code is None:
        some = ", ".join(w for c, w in STOREYS.items() if c != "unknown")
        row.fault("storey", f"is no storey. There are: {some}")
    return code or "unknown"


def _tied(row: RowIn, making: Making) -> list[Tied]:
    """Return what a row ties its point to: one thing, or several."""
    text = row.text("circuit")
    if not text:
        return []
    try:
        return [_one(making, text)]
    except UnreadableError as error:
        parts = list(filter(None, SEVERAL.split(text)))
        reason = str(error)
    try:
        found = [_one(making, part) for part in parts if len(parts) > 1]
    except UnreadableError:
        found = []
    if not found:
        row.fault("circuit", reason)
    return list(dict.fromkeys(found))


def _one(making: Making, text: str) -> Tied:
    """Return what a text names, and what the tie is, as in “C2 (neutral)”."""
    said = ROLE.fullmatch(text)
    role = words_of("tie", "role").get(plain(said["role"])) if said else None
    try:
        return (*find_feeder(making, text), "feeds")
    except UnreadableError:
        if said is None or role is None:
            raise
    return (*find_feeder(making, said["what"]), role)


def _tie(row: RowIn, making: Making, point: Point, tied: Tied) -> str:
    ref, called, role = tied
    of = f"of “{making.asked.file}”" if making.asked.file else "of a sheet"
    tie = Tie(
        ref=making.growing.new_ref(Tie),
        point=point.ref,
        tied_to=ref,
        role=role,
        grade=GRADE,
        note=f"From row {row.number} {of}.",
    )
    making.growing.add(tie)
    known = GRADES[GRADE].lower()
    how = "" if role == "feeds" else f"{TIE_ROLES[role].lower()}, "
    return f"Tied to {called}: {how}{known}."
