"""The walk: room by room, each point by what it is and where, with two touches."""

from __future__ import annotations

from flask import Blueprint, jsonify, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from sqlalchemy import Connection

from app.domain.edits import added, new_ref, replaced
from app.domain.record import Point, Record, Room
from app.domain.record.choices import LOOKED_AT
from app.domain.usual import PLACES_FORGOTTEN
from app.domain.walk import beside, stopped_in
from app.errors import InvalidError, NotFoundError
from app.services.homes import OpenHome, save
from app.store.changes import latest_changes
from app.web.forms import sent_once
from app.web.session import change, needed, opened, opened_to_change, read
from app.web.walk_form import AddForm, marked, when_made
from app.web.walk_view import answer, room_page, rooms_page
from app.web.wants_json import wants_json

bp = Blueprint("walk", __name__, url_prefix="/homes/<home>/walk")
# So many changes are looked through for the room last worked in.
LOOKED_BACK = 50


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Go on where one stopped."""
    start = opened(home)
    changes = latest_changes(read(), start.key, LOOKED_BACK)
    room = stopped_in(start.record, (found.entries for found in changes))
    return redirect(_room_url(start.record, room))


@bp.get("/rooms")
def rooms(home: str) -> ResponseReturnValue:
    """List the rooms in walking order, and what is often forgotten."""
    return render_template(
        "pages/walk/rooms.html", page=rooms_page(opened(home).record)
    )


@bp.post("/rooms")
def add_room(home: str) -> ResponseReturnValue:
    """Add one of the places that are often forgotten, and go there."""
    places = {place.code: place for place in PLACES_FORGOTTEN}
    place = places.get(request.form.get("place", ""))
    if place is None:
        raise InvalidError("Go back, and choose one of the places on the page.")
    with change() as connection:
        start = opened_to_change(connection, home)
        new = Room(
            ref=new_ref(start.record, Room),
            name=place.name,
            kind=place.kind,
            storey=place.storey,
        )
        sentence = f"Added room {new.name} ({new.ref})."
        record = added(start.record, new)
        done = save(connection, start, record, sentence, once=sent_once())
        now = opened_to_change(connection, home).record
    # Sent again, the place is there under the reference that it got the first time.
    there = [r for r in now.rooms if r.kind == place.kind and r.name == place.name]
    return redirect(_room_url(now, there[-1] if there else None, done), 303)


@bp.get("/rooms/<ref>")
def room(home: str, ref: str) -> ResponseReturnValue:
    """Show a room, what is listed in it, and the form that lists more."""
    record = opened(home).record
    shown = needed(record, Room, ref)
    form = AddForm(record, request.args.get("kind", ""))
    page = room_page(record, shown, form, request.args.get("at"))
    return render_template("pages/walk/room.html", page=page)


@bp.post("/rooms/<ref>")
def add(home: str, ref: str) -> ResponseReturnValue:
    """Add a point: what was touched, and where."""
    with change() as connection:
        start = opened_to_change(connection, home)
        here = needed(start.record, Room, ref)
        form = AddForm(start.record)
        point = form.point(start.record, here)
        if point is not None:
            record = added(start.record, point)
            said = f"Added {point.title} in {here.name} ({point.ref}).{when_made()}"
            done = save(connection, start, record, said, once=sent_once())
            return _taken(connection, home, here, done)
    if wants_json():
        sentences = [each for some in form.errors.values() for each in some]
        return jsonify(errors=form.errors, sentence=" ".join(sentences)), 422
    page = room_page(start.record, here, form)
    return render_template("pages/walk/room.html", page=page), 422


@bp.post("/points/<ref>")
def mark(home: str, ref: str) -> ResponseReturnValue:
    """Mark a point with one touch."""
    with change() as connection:
        start = opened_to_change(connection, home)
        point = start.record.find(Point, ref)
        here = start.record.find(Room, point.room) if point else None
        if point is None or here is None:
            raise NotFoundError(f"There is no point “{ref}” in a room of this home.")
        changed, sentence = marked(point, request.form.get("mark", ""))
        record = replaced(start.record, ref, changed)
        done = save(connection, start, record, sentence)
        return _taken(connection, home, here, done, ref)


@bp.post("/rooms/<ref>/looked")
def looked(home: str, ref: str) -> ResponseReturnValue:
    """Mark how far a room was looked at, and go on to the next."""
    looked_at = request.form.get("looked_at", "")
    if looked_at not in LOOKED_AT:
        raise InvalidError("Say whether all of it was looked at, or a part.")
    with change() as connection:
        start = opened_to_change(connection, home)
        here = needed(start.record, Room, ref)
        new = here.model_copy(update={"looked_at": looked_at})
        sentence = f"{here.name}, looked at: {LOOKED_AT[looked_at].lower()}."
        done = save(connection, start, replaced(start.record, ref, new), sentence)
    _, after = beside(start.record, here)
    url = _room_url(start.record, after, done)
    return jsonify(url=url) if wants_json() else redirect(url, 303)


def _taken(
    connection: Connection, home: str, here: Room, done: int | None, at: str = ""
) -> ResponseReturnValue:
    """Answer a change in a room: as data when asked, else the room again."""
    now: OpenHome = opened_to_change(connection, home)
    newest = now.record.points_of(here.ref)[-1:]
    anchor = f"point-{at}" if at and at not in {p.ref for p in newest} else None
    url = url_for(
        ".room", home=home, ref=here.ref, done=done, at=at or None, _anchor=anchor
    )
    if wants_json():
        return jsonify(answer(now.record, here, url))
    return redirect(url, 303)


def _room_url(record: Record, there: Room | None, done: int | None = None) -> str:
    """Return the address of a room of the walk, or of all rooms when there is none."""
    home = record.home.ref
    if there is None:
        return url_for(".rooms", home=home, done=done)
    return url_for(".room", home=home, ref=there.ref, done=done)
