"""Copies of the record: the last good one, making one, a folder of one's own."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from flask import Blueprint, current_app, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from flask_wtf import FlaskForm
from wtforms import StringField

from app.config import Config
from app.errors import AppError, InvalidError
from app.services.copies import (
    Keeper,
    Places,
    is_on_the_same_disk,
    is_there,
    make,
    not_there,
    places_of,
)
from app.services.copies import choose as choose_folder
from app.store.copies import (
    ASKED,
    BEFORE,
    DAILY,
    DAMAGED,
    LACKING,
    Copy,
    copies_in,
    last_good,
)
from app.store.settings import copies_folder
from app.web.command import command_line
from app.web.session import change, let_go, read
from app.web.words import file_size, minute

bp = Blueprint("copies", __name__, url_prefix="/copies")

MOST_SHOWN = 40
KINDS = {
    DAILY: "Of the day",
    ASKED: "Asked for",
    LACKING: "Lacks photographs or papers",
    DAMAGED: "Damaged, put aside",
}
BEFORE_WHAT = {
    f"{BEFORE}upgrade": "Before an upgrade",
    f"{BEFORE}restore": "Before an older one was put in its place",
    f"{BEFORE}removal": "Before homes deleted long ago went for good",
}


class FolderForm(FlaskForm):  # type: ignore[misc]
    """Asks for a folder that copies go to as well."""

    folder = StringField(
        "Folder on another disk",
        filters=[lambda text: (text or "").strip()],
        description="Its whole path, such as /media/stick. Left empty: none.",
        render_kw={"autocomplete": "off", "spellcheck": "false"},
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class CopyRow:
    """A copy as the page lists it.

    Attributes:
        when: The day and minute it was made.
        kind: Why it was made.
        size: How large it is, without its photographs and papers.
        back: What to type to go back to it.
    """

    when: str
    kind: str
    size: str
    back: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CopiesPage:
    """The copies.

    Attributes:
        title: Heading.
        last: The last good copy, in a sentence for each place.
        troubles: Why the last try was not what it should be.
        rows: The copies, the newest first.
        more: How many are there beside those listed.
        form: The folder of one's own.
        demo: Whether this is the demo, of which nothing is kept.
        made: Whether a copy was just made.
    """

    title: str
    last: tuple[str, ...]
    troubles: tuple[str, ...]
    rows: tuple[CopyRow, ...]
    more: int
    form: FolderForm
    demo: bool
    made: bool


@bp.get("/")
def index() -> ResponseReturnValue:
    """Show the last good copy, and the others."""
    return _page(FolderForm(data={"folder": copies_folder(read())}))


@bp.post("/make")
def create() -> ResponseReturnValue:
    """Make a copy now, in each place."""
    places = _places()
    let_go()
    try:
        make(_config(), places)
    except AppError as error:
        form = FolderForm(formdata=None, data={"folder": copies_folder(read())})
        return _page(form, (error.sentence,)), 503
    _settle()
    return redirect(url_for(".index", made=1), 303)


@bp.post("/folder")
def choose() -> ResponseReturnValue:
    """Keep the folder that copies go to as well, and put one there."""
    form = FolderForm()
    if not form.validate_on_submit():
        return _page(form), 422
    try:
        with change() as connection:
            choose_folder(_config(), connection, form.folder.data or "")
    except InvalidError as error:
        form.folder.errors = [error.sentence]
        return _page(form), 422
    _settle()
    if not form.folder.data:
        return redirect(url_for(".index"), 303)
    return create()


def _settle() -> None:
    """Let the keeper look anew at what was in its way."""
    if keeper := _keeper():
        keeper.settle()


def _keeper() -> Keeper | None:
    keeper: Keeper | None = current_app.extensions.get("keeper")
    return keeper


def _page(form: FolderForm, troubles: tuple[str, ...] = ()) -> str:
    places = _places()
    found = sorted((c for f in places.every for c in copies_in(f)), reverse=True)
    keeper = _keeper()
    page = CopiesPage(
        title="Copies of the record",
        last=_last(places),
        troubles=troubles or (keeper.troubles if keeper else ()),
        rows=tuple(filter(None, map(_row, found[:MOST_SHOWN]))),
        more=max(len(found) - MOST_SHOWN, 0),
        form=form,
        demo=_config().demo,
        made=bool(request.args.get("made")),
    )
    return render_template("pages/copies.html", page=page)


def _last(places: Places) -> tuple[str, ...]:
    return tuple(_said_of(places, folder) for folder in places.every)


def _said_of(places: Places, folder: Path) -> str:
    """Say what the newest good copy in a place is, and whether a newer one lacks."""
    if not is_there(places, folder):
        return not_there(places)
    now, found = datetime.now(UTC), copies_in(folder)
    where = places.chosen if folder == places.apart else "this computer"
    copy = last_good(found, now)
    if copy is None:
        said = f"There is no good copy on {where} yet."
    else:
        said = f"Your last good copy on {where} is from {minute(copy.made_at)}."
    lacking = [c for c in found if c.note == LACKING and c.made_at <= now]
    if lacking and (copy is None or lacking[0] > copy):
        said += " A newer one lacks photographs or papers."
    if folder == places.apart and is_on_the_same_disk(places):
        said += (
            " It seems to be on the same disk as the record: if that fails, both go."
        )
    return said


def _row(copy: Copy) -> CopyRow | None:
    try:
        size = copy.path.stat().st_size
    except FileNotFoundError:
        # It has gone since, for a newer one stands for it.
        return None
    return CopyRow(
        when=minute(copy.made_at),
        kind=_kind(copy),
        size=file_size(size),
        back=command_line("restore", str(copy.path), "--data", str(_config().data)),
    )


def _kind(copy: Copy) -> str:
    for start, words in BEFORE_WHAT.items():
        if copy.note.startswith(start):
            return words
    return KINDS.get(copy.note, "A copy")


def _places() -> Places:
    return places_of(_config(), read())


def _config() -> Config:
    config: Config = current_app.extensions["config"]
    return config
