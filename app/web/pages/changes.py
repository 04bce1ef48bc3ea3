"""What was changed, by day and by item, and taking a change back."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from app.domain.record import SORTS, Record, Room
from app.domain.told import HOME, noun_of
from app.errors import InvalidError, NotFoundError
from app.services.history import changes_of, happened, known_ref
from app.services.homes import undo as take_back
from app.services.undoing import InTheWayError, Later, taken_back
from app.store.changes import Change, find_change, undone_by
from app.store.history import find_changes
from app.store.settings import computer_name
from app.web.addresses import Link, item_url
from app.web.changes_view import (
    DayView,
    ItemView,
    by_day,
    day_and_time,
    day_of,
    from_where,
    item_views,
    time_of,
)
from app.web.paired import HERE, from_here
from app.web.session import change, opened, opened_to_change, read

bp = Blueprint("changes", __name__, url_prefix="/homes/<home>/changes")
MOST_SHOWN = 40
MOST_TYPED = 100


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangesPage:
    """The changes of a home.

    Attributes:
        title: Heading.
        days: The changes by day, the newest first.
        sorts: The sorts of item to choose from: code, words.
        sort: The sort that was chosen; empty: all.
        text: The words that were typed.
        sifted: Whether the list holds only what was asked for.
        undo: Address that takes one back.
        older: Address of the changes before these, if there may be any.
        newest: Address of the newest, if these are not.
        signed: What changes made on this computer are signed with.
        sign: Address where that is set; None on a phone.
    """

    title: str
    days: tuple[DayView, ...]
    sorts: tuple[Link, ...]
    sort: str
    text: str
    sifted: bool
    undo: str
    older: str | None
    newest: str | None
    signed: str
    sign: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemChangesPage:
    """The history of one item.

    Attributes:
        title: Heading.
        days: Its changes by day, the newest first.
        item: Label and address of the item; None when it is gone.
        undo: Address that takes a change back.
        older: Address of the changes before these, if there may be any.
    """

    title: str
    days: tuple[DayView, ...]
    item: Link | None
    undo: str
    older: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangePage:
    """One change.

    Attributes:
        title: Heading.
        key: Its number.
        when: Day and time, and where it was made from.
        items: What it did to each item.
        undoes: The change that it took back, label and address.
        undone_by: The change that took it back.
        refusal: Why it cannot be undone; empty when it can.
        later: The later changes that stand in the way.
        refused: Whether undoing it was just refused.
        undo: Address that takes it back.
        then: Address of the record as it stood when that minute had gone.
        back: Address of the changes.
    """

    title: str
    key: int
    when: str
    items: tuple[ItemView, ...]
    undoes: Link | None
    undone_by: Link | None
    refusal: str
    later: tuple[Link, ...]
    refused: bool
    undo: str
    then: str
    back: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Show the latest changes, or those that are asked for."""
    own = opened(home)
    before = _number(request.args.get("before", ""))
    sort = request.args.get("sort", "")
    sort = sort if sort in (HOME, *SORTS) else ""
    text = request.args.get("text", "").strip()[:MOST_TYPED]
    found = find_changes(
        read(), own.key, MOST_SHOWN, before=before, sort=sort, text=text
    )
    asked: dict[str, Any] = {"home": home, "sort": sort or None, "text": text or None}
    oldest = found[-1].key if len(found) == MOST_SHOWN else None
    page = ChangesPage(
        title="Changes",
        days=by_day(home, happened(read(), own, found)),
        sorts=tuple((code, noun_of(code)) for code in (HOME, *SORTS)),
        sort=sort,
        text=text,
        sifted=bool(sort or text or before),
        undo=url_for(".undo", home=home),
        older=url_for(".index", **asked, before=oldest) if oldest else None,
        newest=url_for(".index", **asked) if before else None,
        signed=computer_name(read()) or HERE,
        sign=url_for("phones.index", _anchor="this-computer") if from_here() else None,
    )
    return render_template("pages/changes/index.html", page=page)


@bp.get("/of/<ref>")
def of_item(home: str, ref: str) -> ResponseReturnValue:
    """Show the history of one item, of one that is gone too."""
    own = opened(home)
    known_ref(read(), own, ref)
    before = _number(request.args.get("before", ""))
    found, former = changes_of(read(), own, ref, MOST_SHOWN, before)
    item = own.record.by_ref.get(ref)
    oldest = found[-1].key if len(found) == MOST_SHOWN else None
    older = url_for(".of_item", home=home, ref=former, before=oldest)
    page = ItemChangesPage(
        title=f"History of {f'{item.title} ({ref})' if item else ref}",
        days=by_day(home, happened(read(), own, found)),
        item=(item.title, item_url(home, item)) if item else None,
        undo=url_for(".undo", home=home),
        older=older if oldest else None,
    )
    return render_template("pages/changes/item.html", page=page)


@bp.get("/<int:number>")
def show(home: str, number: int) -> ResponseReturnValue:
    """Show one change, with what it did and whether it can be taken back."""
    return render_template("pages/changes/show.html", page=_page(home, number))


@bp.post("/undo")
def undo(home: str) -> ResponseReturnValue:
    """Take a change back; what stands in the way is shown with its links."""
    number = _number(request.form.get("token", ""))
    if number is None:
        raise InvalidError("Say which change is to be undone.")
    try:
        with change() as connection:
            start = opened_to_change(connection, home)
            record = take_back(connection, start, number)
    except InTheWayError:
        page = _page(home, number, refused=True)
        return render_template("pages/changes/show.html", page=page), 409
    return redirect(_back(record, request.form.get("walk")), 303)


def _page(home: str, number: int, *, refused: bool = False) -> ChangePage:
    own = opened(home)
    found = find_change(read(), own.key, number)
    if found is None:
        raise NotFoundError("There is no such change.")
    (told,) = happened(read(), own, (found,))
    refusal, later = _refusal(own.key, own.record, found)
    when = f"{day_of(told.at)}, {time_of(told.at)}"
    return ChangePage(
        title=found.sentence,
        key=number,
        when=f"{when}, {from_where(found.made_by)}",
        items=item_views(home, told.items),
        undoes=_link(home, found.undoes),
        undone_by=_link(home, told.undone_by),
        refusal=refusal,
        later=tuple(
            (each.sentence, url_for(".show", home=home, number=each.key))
            for each in later
        ),
        refused=refused,
        undo=url_for(".undo", home=home),
        then=url_for("past.index", home=home, **day_and_time(told.at)),
        back=url_for(".index", home=home),
    )


def _refusal(key: int, record: Record, found: Change) -> tuple[str, tuple[Later, ...]]:
    """Return why a change cannot be taken back, and what stands in the way."""
    if undone_by(read(), key, found.key):
        return "", ()
    try:
        taken_back(read(), key, record, found)
    except InTheWayError as error:
        return error.sentence, error.later
    return "", ()


def _link(home: str, number: int | None) -> Link | None:
    found = number and find_change(read(), opened(home).key, number)
    if not found:
        return None
    return found.sentence, url_for(".show", home=home, number=found.key)


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
