"""What was changed last, and taking a change back."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from app.domain.record import Record, Room
from app.errors import InvalidError
from app.services.homes import undo as take_back
from app.store.changes import latest_changes, undone_by
from app.web.session import change, opened, opened_to_change, read
from app.web.words import day

bp = Blueprint("changes", __name__, url_prefix="/homes/<home>/changes")
MOST_SHOWN = 100


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeView:
    """A change as the page shows it.

    Attributes:
        key: Its number.
        when: Day and time.
        sentence: What was done.
        made_by: Name of the phone that it was done from; empty when none.
        undone: Whether it was taken back, or itself takes one back.
    """

    key: int
    when: str
    sentence: str
    made_by: str
    undone: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangesPage:
    """The latest changes.

    Attributes:
        title: Heading.
        changes: The changes, the newest first.
        undo: Address that takes one back.
        older: Address of the changes before these, if there may be any.
    """

    title: str
    changes: tuple[ChangeView, ...]
    undo: str
    older: str | None


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Show the latest changes."""
    key, before = opened(home).key, _number(request.args.get("before", ""))
    found = latest_changes(read(), key, MOST_SHOWN, before=before)
    oldest = found[-1].key if len(found) == MOST_SHOWN else None
    page = ChangesPage(
        title="Changes",
        changes=tuple(
            ChangeView(
                key=c.key,
                when=f"{day(c.at.astimezone())}, {c.at.astimezone():%H:%M}",
                sentence=c.sentence,
                made_by=c.made_by,
                undone=undone_by(read(), key, c.key) is not None,
            )
            for c in found
        ),
        undo=url_for(".undo", home=home),
        older=url_for(".index", home=home, before=oldest) if oldest else None,
    )
    return render_template("pages/changes.html", page=page)


@bp.post("/undo")
def undo(home: str) -> ResponseReturnValue:
    """Take a change back."""
    number = _number(request.form.get("token", ""))
    if number is None:
        raise InvalidError("Say which change is to be undone.")
    with change() as connection:
        start = opened_to_change(connection, home)
        record = take_back(connection, start, number)
    return redirect(_back(record, request.form.get("walk")), 303)


def _back(record: Record, walking: str | None) -> str:
    """Return where to go after an undo: who is on the walk stays in the room."""
    home = record.home.ref
    if walking is None:
        return url_for(".index", home=home)
    if record.find(Room, walking) is None:
        return url_for("walk.rooms", home=home)
    return url_for("walk.room", home=home, ref=walking)


def _number(text: str) -> int | None:
    """Return the number of a change that an address or a form names."""
    whole = text.isascii() and text.isdigit() and len(text) <= 12
    return int(text) if whole else None
