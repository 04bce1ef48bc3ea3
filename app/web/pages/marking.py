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
from app.domain.record.choices import HOW_SEEN
from app.domain.trace.rounds import at_stage, marked
from app.errors import InvalidError, NotFoundError
from app.services.homes import save
from app.web.fields import tidy
from app.web.rounds_view import (
    MarkRoom,
    Missed,
    fuses_off,
    how_choices,
    left_on,
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
WORDS = {"marking": "under way", "done": "ended", "stopped": "stopped early"}


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadyPage:
    """What a round takes away, before anything is switched off.

    Attributes:
        title: Heading.
        switches: What will be switched off, in words.
        missed: What is missed while it lasts.
        left_on: What is to be left on: its name, and why.
        next_url: Address of the next step.
        delete_url: Address that deletes the round.
    """

    title: str
    switches: tuple[str, ...]
    missed: tuple[Missed, ...]
    left_on: tuple[tuple[str, str], ...]
    next_url: str
    delete_url: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PreparePage:
    """Getting ready to see what goes dead.

    Attributes:
        title: Heading.
        first_look: Whether nothing is to be switched off.
        first: What to turn on first.
        person: What this browser's person is called.
        how: How points may be seen to be live: code and words.
        how_chosen: The way chosen.
        stage_url: Address that goes on.
        delete_url: Address that deletes a first look.
    """

    title: str
    first_look: bool
    first: tuple[str, ...]
    person: str
    how: tuple[tuple[str, str], ...]
    how_chosen: str
    stage_url: str
    delete_url: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MarksPage:
    """Switching off, marking the points, and putting all back on.

    It is one page, for there may be no other to be had until the supply is back.

    Attributes:
        title: Heading.
        off: What is off, in words; empty for a first look.
        switches: What to switch off, and later on again: reference and name.
        fuses: Which of these are fuses, to be drawn.
        restart: What to see to once all is back on.
        rooms: The points by room.
        done: How many anyone has marked.
        total: How many there are to mark.
        key: Makes each form of this page count once.
        by: Whose marks they are.
        how: How points may be seen to be live: code and words.
        how_chosen: The way that the next marks are seen.
        seen: The three marks: code and words.
        mark_url: Address that takes a mark.
        stage_url: Address that ends the round.
        ready_url: Address of what comes before.
        results_url: Address of what the rounds have shown.
        ended: Whether the round was ended already.
    """

    title: str
    off: str
    switches: tuple[tuple[str, str], ...]
    fuses: tuple[str, ...]
    restart: tuple[str, ...]
    rooms: tuple[MarkRoom, ...]
    done: int
    total: int
    key: str
    by: str
    how: tuple[tuple[str, str], ...]
    how_chosen: str
    seen: tuple[tuple[str, str], ...]
    mark_url: str
    stage_url: str
    ready_url: str
    results_url: str
    ended: bool


@bp.get("/ready")
def ready(home: str, ref: str) -> ResponseReturnValue:
    """Say what a round takes away, before it is done."""
    each = _round(opened(home).record, ref)
    if not each.off:
        return redirect(url_for(".prepare", home=home, ref=ref))
    net = supply(home)
    page = ReadyPage(
        title="Before you switch off",
        switches=tuple(name for _, name in switches(net, each)),
        missed=missed(net, each),
        left_on=left_on(net.record),
        next_url=url_for(".prepare", home=home, ref=ref),
        delete_url=url_for(".delete", home=home, ref=ref),
    )
    return render_template("pages/rounds/ready.html", page=page)


@bp.get("/prepare")
def prepare(home: str, ref: str) -> ResponseReturnValue:
    """Say what to turn on first, and ask how it will be seen."""
    record = opened(home).record
    each = _round(record, ref)
    page = PreparePage(
        title="Get ready to look" if each.off else "First look, everything on",
        first_look=not each.off,
        first=turn_on_first(record, each),
        person=person(),
        how=how_choices(),
        how_chosen=each.how,
        stage_url=url_for(".stage", home=home, ref=ref),
        delete_url=url_for(".delete", home=home, ref=ref),
    )
    return render_template("pages/rounds/prepare.html", page=page)


@bp.get("/marks")
def marks(home: str, ref: str) -> ResponseReturnValue:
    """Show what to switch, and the points to mark, room by room."""
    each = _round(opened(home).record, ref)
    return render_template("pages/rounds/marks.html", page=_marks_page(home, each))


def _marks_page(home: str, each: Round) -> MarksPage:
    net = supply(home)
    groups, off = rooms(net, each), switches(net, each)
    listed = [mark for group in groups for mark in group.marks]
    how = request.args.get("how", "")
    return MarksPage(
        title=each.title,
        off="; ".join(name for _, name in off),
        switches=off,
        fuses=fuses_off(net.record, each),
        restart=restart(net, each) if off else (),
        rooms=groups,
        done=sum(1 for mark in listed if mark.seen or mark.others),
        total=len(listed),
        key=secrets.token_hex(8),
        by=person(),
        how=how_choices(),
        how_chosen=how if how in HOW_SEEN else each.how,
        seen=tuple(each.seen_words.items()),
        mark_url=url_for(".mark", home=home, ref=each.ref),
        stage_url=url_for(".stage", home=home, ref=each.ref),
        ready_url=url_for(".ready", home=home, ref=each.ref),
        results_url=url_for("findings.index", home=home),
        ended=each.stage in ("done", "stopped"),
    )


@bp.post("/marks")
def mark(home: str, ref: str) -> ResponseReturnValue:
    """Take one mark; the same one sent twice counts once."""
    with change() as connection:
        start = opened_to_change(connection, home)
        each = _round(start.record, ref)
        point = _marked_point(start.record)
        seen = request.form.get("seen", "")
        if seen not in each.seen_words:
            words = "; ".join(each.seen_words.values())
            raise InvalidError(f"Say what you saw. It may be: {words}.")
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
        sentence = f"{each.title}: {point.title}, {each.seen_words[seen].lower()}."
        once = request.form.get("key", "")[:64]
        save(connection, start, new, sentence, once=f"{once}:{point.ref}:{seen}")
    if wants_json():
        return jsonify(saved=True, point=point.ref, seen=seen)
    how = _how(each)
    return redirect(
        url_for(
            ".marks",
            home=home,
            ref=ref,
            how=how if how != each.how else None,
            _anchor=f"point-{point.ref}",
        ),
        303,
    )


@bp.post("/stage")
def stage(home: str, ref: str) -> ResponseReturnValue:
    """Go on to the next step of a round."""
    wanted = request.form.get("stage", "")
    if wanted not in WORDS:
        raise InvalidError("A round goes on to marking, or is ended.")
    _remember_person()
    with change() as connection:
        start = opened_to_change(connection, home)
        each = _round(start.record, ref)
        new = at_stage(
            start.record, each.model_copy(update={"how": _how(each)}), wanted
        )
        sentence = f"{each.title} is {WORDS[wanted]}."
        key = request.form.get("key")
        once = f"{key[:64]}:{wanted}" if key else None
        done = save(connection, start, new, sentence, once=once)
    if wanted == "marking":
        panel = "switch-off" if each.off else "marks"
        return redirect(url_for(".marks", home=home, ref=ref, _anchor=panel), 303)
    onward = url_for("findings.index", home=home, done=done)
    return jsonify(saved=True, next=onward) if wants_json() else redirect(onward, 303)


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
    marks = "1 mark" if count == 1 else f"{count} marks"
    sentence = f"Deleted {each.title} with {marks}."
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
    return tidy(request.form.get("by", person()))[:MOST_NAME] or person()


def _made_at() -> str:
    """Return when a mark was made: by the phone's clock if it waited, else now."""
    now = datetime.now(UTC)
    try:
        made = datetime.fromisoformat(request.form.get("made_at", ""))
        made = min(made.astimezone(UTC), now) if made.tzinfo else now
    except (ValueError, OverflowError):
        made = now
    return made.strftime("%Y-%m-%dT%H:%M:%SZ")


def _remember_person() -> None:
    name = " ".join(request.form.get("person", "").split())[:MOST_NAME]
    if name and name.isprintable():
        session["person"] = name
        session.permanent = True
