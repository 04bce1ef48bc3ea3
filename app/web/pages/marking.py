"""One round, step by step: before, marking, after."""

from __future__ import annotations

import secrets
from dataclasses import dataclass
from datetime import UTC, datetime

from flask import (
    Blueprint,
    jsonify,
    redirect,
    render_template,
    request,
    session,
    url_for,
)
from flask.typing import ResponseReturnValue
from sqlalchemy import Connection

from app.domain.edits import removed
from app.domain.record import Point, Record, Round
from app.domain.record.choices import HOW_SEEN, SEEN
from app.domain.trace.rounds import at_stage, marked
from app.errors import InvalidError, NotFoundError
from app.services.homes import save
from app.web.rounds_view import (
    MarkRoom,
    Missed,
    how_choices,
    missed,
    person,
    restart,
    rooms,
    switches,
    turn_on_first,
)
from app.web.session import change, opened, opened_to_change, supply
from app.web.wants_json import wants_json

bp = Blueprint("marking", __name__, url_prefix="/homes/<home>/rounds/<ref>")
MOST_NAME = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadyPage:
    """Before anything is switched off.

    Attributes:
        title: Heading.
        baseline: Whether nothing is to be switched off.
        switches: What to switch off: reference and name.
        missed: What is missed while it lasts.
        first: What to turn on first.
        person: What this browser's person is called.
        how: How points may be seen to be live: code and words.
        how_chosen: The way chosen.
        stage_url: Address that goes on.
        delete_url: Address that deletes the round.
    """

    title: str
    baseline: bool
    switches: tuple[tuple[str, str], ...]
    missed: tuple[Missed, ...]
    first: tuple[str, ...]
    person: str
    how: tuple[tuple[str, str], ...]
    how_chosen: str
    stage_url: str
    delete_url: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MarksPage:
    """Marking the points.

    Attributes:
        title: Heading.
        off: What is off, in words; empty for a baseline.
        rooms: The points by room.
        done: How many this browser's person has marked.
        total: How many there are to mark.
        key: Makes each form of this page count once.
        seen: The three marks: code and words.
        mark_url: Address that takes a mark.
        back_url: Address of the next step.
        ended: Whether the round was ended already.
    """

    title: str
    off: str
    rooms: tuple[MarkRoom, ...]
    done: int
    total: int
    key: str
    seen: tuple[tuple[str, str], ...]
    mark_url: str
    back_url: str
    ended: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class BackPage:
    """Putting everything back on.

    Attributes:
        title: Heading.
        switches: What to switch back on: reference and name.
        restart: What to see to afterwards.
        stage_url: Address that ends the round.
        marks_url: Address of the marks.
    """

    title: str
    switches: tuple[tuple[str, str], ...]
    restart: tuple[str, ...]
    stage_url: str
    marks_url: str


@bp.get("/ready")
def ready(home: str, ref: str) -> ResponseReturnValue:
    """Say what to switch off and what that takes away, before it is done."""
    each = _round(opened(home).record, ref)
    net = supply(home)
    page = ReadyPage(
        title="Before the baseline" if not each.off else "Before you switch off",
        baseline=not each.off,
        switches=switches(net, each),
        missed=missed(net, each),
        first=turn_on_first(net.record, each),
        person=person(),
        how=how_choices(),
        how_chosen=each.how,
        stage_url=url_for(".stage", home=home, ref=ref),
        delete_url=url_for(".delete", home=home, ref=ref),
    )
    return render_template("pages/rounds/ready.html", page=page)


@bp.get("/marks")
def marks(home: str, ref: str) -> ResponseReturnValue:
    """Show the points to mark, room by room."""
    each = _round(opened(home).record, ref)
    net = supply(home)
    groups = rooms(net, each)
    listed = [mark for group in groups for mark in group.marks]
    page = MarksPage(
        title=each.title,
        off=", ".join(name for _, name in switches(net, each)),
        rooms=groups,
        done=sum(1 for mark in listed if mark.seen),
        total=len(listed),
        key=secrets.token_hex(8),
        seen=tuple(SEEN.items()),
        mark_url=url_for(".mark", home=home, ref=ref),
        back_url=url_for(".back", home=home, ref=ref),
        ended=each.stage in ("done", "stopped"),
    )
    return render_template("pages/rounds/marks.html", page=page)


@bp.post("/marks")
def mark(home: str, ref: str) -> ResponseReturnValue:
    """Take one mark; the same one sent twice counts once."""
    with change() as connection:
        start = opened_to_change(connection, home)
        each = _round(start.record, ref)
        point = _marked_point(start.record)
        seen = request.form.get("seen", "")
        if seen not in SEEN:
            raise InvalidError("Say whether it went dead, stayed live or was not seen.")
        new, _ = marked(
            start.record,
            {
                "round": each.ref,
                "point": point.ref,
                "seen": seen,
                "how": _how(each),
                "seen_at": _made_at(),
                "seen_by": _by(),
            },
        )
        sentence = f"{each.title}: {point.title}, {SEEN[seen].lower()}."
        once = request.form.get("key", "")[:64]
        save(connection, start, new, sentence, once=f"{once}:{point.ref}:{seen}")
    if wants_json():
        return jsonify(saved=True, point=point.ref, seen=seen)
    return redirect(
        url_for(".marks", home=home, ref=ref, _anchor=f"point-{point.ref}"), 303
    )


@bp.get("/back")
def back(home: str, ref: str) -> ResponseReturnValue:
    """Say what to put back on, and what to see to."""
    each = _round(opened(home).record, ref)
    net = supply(home)
    page = BackPage(
        title="Put everything back on" if each.off else "End the baseline",
        switches=switches(net, each),
        restart=restart(net, each) if each.off else (),
        stage_url=url_for(".stage", home=home, ref=ref),
        marks_url=url_for(".marks", home=home, ref=ref),
    )
    return render_template("pages/rounds/back.html", page=page)


@bp.post("/stage")
def stage(home: str, ref: str) -> ResponseReturnValue:
    """Go on to the next step of a round."""
    wanted = request.form.get("stage", "")
    if wanted not in ("marking", "done", "stopped"):
        raise InvalidError("A round goes on to marking, or is ended.")
    _remember_person()
    with change() as connection:
        start = opened_to_change(connection, home)
        each = _round(start.record, ref)
        how = request.form.get("how", each.how)
        changed = each.model_copy(update={"how": how if how in HOW_SEEN else each.how})
        new = at_stage(start.record, changed, wanted)
        words = {"marking": "under way", "done": "ended", "stopped": "stopped early"}
        done = save(connection, start, new, f"{each.title} is {words[wanted]}.")
    if wanted == "marking":
        return redirect(url_for(".marks", home=home, ref=ref), 303)
    return redirect(url_for("findings.index", home=home, done=done), 303)


@bp.post("/delete")
def delete(home: str, ref: str) -> ResponseReturnValue:
    """Delete a round with its readings; it can be undone."""
    with change() as connection:
        done = _deleted(connection, home, ref)
    return redirect(url_for("rounds.index", home=home, done=done), 303)


def _deleted(connection: Connection, home: str, ref: str) -> int | None:
    start = opened_to_change(connection, home)
    each = _round(start.record, ref)
    count = len(start.record.readings_of(ref))
    sentence = f"Deleted {each.title} with {count} marks."
    return save(connection, start, removed(start.record, ref), sentence)


def _round(record: Record, ref: str) -> Round:
    each = record.find(Round, ref)
    if each is None:
        raise NotFoundError("There is no such round; perhaps it was deleted.")
    return each


def _marked_point(record: Record) -> Point:
    point = record.find(Point, request.form.get("point", ""))
    if point is None:
        raise NotFoundError("There is no such point; perhaps it was deleted.")
    return point


def _how(each: Round) -> str:
    how = request.form.get("how", each.how)
    return how if how in HOW_SEEN else each.how


def _by() -> str:
    """Return whose mark it is: as it was when the mark was made, on that phone."""
    return request.form.get("by", person()).strip()[:MOST_NAME] or person()


def _made_at() -> str:
    """Return when a mark was made: by the phone's clock if it waited, else now."""
    now = datetime.now(UTC)
    try:
        made = datetime.fromisoformat(request.form.get("made_at", ""))
    except ValueError:
        made = now
    if made.tzinfo is None or made > now:
        made = now
    return made.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")


def _remember_person() -> None:
    name = " ".join(request.form.get("person", "").split())[:MOST_NAME]
    if name and name.isprintable():
        session["person"] = name
        session.permanent = True
