"""What was changed last, and taking a change back."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from app.errors import InvalidError
from app.services.homes import undo as take_back
from app.store.changes import latest_changes
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
        undone: Whether it was taken back, or itself takes one back.
    """

    key: int
    when: str
    sentence: str
    undone: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangesPage:
    """The latest changes.

    Attributes:
        title: Heading.
        changes: The changes, the newest first.
        undo: Address that takes one back.
    """

    title: str
    changes: tuple[ChangeView, ...]
    undo: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Show the latest changes."""
    found = latest_changes(read(), opened(home).key, MOST_SHOWN)
    back = {c.undoes for c in found}
    page = ChangesPage(
        title="Changes",
        changes=tuple(
            ChangeView(
                key=c.key,
                when=f"{day(c.at.astimezone())}, {c.at.astimezone():%H:%M}",
                sentence=c.sentence,
                undone=c.key in back,
            )
            for c in found
        ),
        undo=url_for(".undo", home=home),
    )
    return render_template("pages/changes.html", page=page)


@bp.post("/undo")
def undo(home: str) -> ResponseReturnValue:
    """Take a change back."""
    token = request.form.get("token", "")
    if not (token.isascii() and token.isdigit() and len(token) <= 12):
        raise InvalidError("Say which change is to be undone.")
    with change() as connection:
        start = opened_to_change(connection, home)
        record = take_back(connection, start, int(token))
    return redirect(url_for(".index", home=record.home.ref), 303)
