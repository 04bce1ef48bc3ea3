"""Ask: the three questions, each begun from a list to choose from."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from app.domain.record import Record
from app.errors import NotFoundError
from app.web.addresses import item_url
from app.web.lists import groups_of
from app.web.session import opened

bp = Blueprint("ask", __name__, url_prefix="/homes/<home>/ask")


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One of the questions.

    Attributes:
        id: Name for the page.
        text: The question.
        button: What its button says.
        groups: What may be chosen: heading, then reference and title of each.
    """

    id: str
    text: str
    button: str
    groups: tuple[tuple[str, tuple[tuple[str, str], ...]], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AskPage:
    """The questions.

    Attributes:
        title: Heading.
        questions: The questions.
        go: Address that leads to an answer.
    """

    title: str
    questions: tuple[Question, ...]
    go: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Show the three questions."""
    record = opened(home).record
    page = AskPage(
        title="Ask the record",
        questions=(_of_point(record), _of_way(record), _of_room(record)),
        go=url_for(".go", home=home),
    )
    return render_template("pages/ask.html", page=page)


@bp.get("/go")
def go(home: str) -> ResponseReturnValue:
    """Lead to the page that answers."""
    record = opened(home).record
    item = record.by_ref.get(request.args.get("ref", ""))
    if item is None:
        raise NotFoundError("Choose something from one of the lists, then ask.")
    return redirect(item_url(home, item))


def _of_point(record: Record) -> Question:
    rooms = [(r.name, record.points_of(r.ref)) for r in record.rooms]
    groups = [*rooms, ("No room recorded", record.points_of(None))]
    return Question(
        id="point",
        text="What feeds this point, whose is each piece, what protects it?",
        button="Ask about the point",
        groups=groups_of(groups),
    )


def _of_way(record: Record) -> Question:
    return Question(
        id="way",
        text="What does this way feed?",
        button="Ask about the way",
        groups=groups_of([(b.name, record.devices_of(b.ref)) for b in record.boards]),
    )


def _of_room(record: Record) -> Question:
    return Question(
        id="room",
        text="Which ways serve this room?",
        button="Ask about the room",
        groups=groups_of([("Rooms", record.rooms)]),
    )
