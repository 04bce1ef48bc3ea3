"""Adding, editing, moving and deleting: the same for every sort of item."""

from __future__ import annotations

from typing import Any

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from sqlalchemy import Connection

from app.domain.edits import added, moved, new_ref, removed, replaced
from app.domain.named import in_a_sentence
from app.domain.record import SORTS, Item, Record, Reminder, specs
from app.domain.reminders import wrong_with
from app.errors import InvalidError, NotFoundError
from app.services.homes import OpenHome, digest, save
from app.store.changes import Change, change_sent_as
from app.web.addresses import item_url, list_url, with_done
from app.web.fields import tidy
from app.web.forms import (
    SPARE_BOXES,
    ItemForm,
    defaults_of,
    sent_once,
    values_of,
)
from app.web.guesses import guesses
from app.web.item_pages import delete_mark, delete_page, kind_page, show_form
from app.web.session import change, opened, opened_to_change

bp = Blueprint("items", __name__, url_prefix="/homes/<home>")

BY_PLURAL = {cls.plural: cls for cls in SORTS.values() if cls.by_form}
# The field that says what feeds an item, where a circle would be closed.
FEED_FIELD = {
    "intake": "fed_from",
    "board": "fed_from",
    "device": "fed_from",
    "circuit": "ways",
    "tie": "tied_to",
}
ASK_KIND_FIRST = ("intake", "device")
MOST_GIVEN = 4


@bp.get("/new/<plural>")
def new(home: str, plural: str) -> ResponseReturnValue:
    """Show the form of a new item, or ask for its kind first."""
    cls, record = _sort(plural), opened(home).record
    given = _given(cls)
    if cls.sort in ASK_KIND_FIRST and not {"kind", "copy"} & set(request.args):
        return render_template("pages/items/kind.html", page=kind_page(cls, record))
    values = _start(cls, record, given)
    offered = str(values["ref"])
    form = ItemForm(cls, record, values, mark=offered, kind=values.get("kind"))
    return show_form(record, form, None)


@bp.post("/new/<plural>")
def create(home: str, plural: str) -> ResponseReturnValue:
    """Add an item."""
    cls = _sort(plural)
    with change() as connection:
        start = opened_to_change(connection, home)
        if again := _sent_before(connection, start, cls):
            return redirect(again, 303)
        form = ItemForm(cls, start.record, _sent_boxes(cls), kind=_sent_kind())
        _offer_anew(form, start.record)
        if _good(form, start.record):
            item = form.item()
            record = added(start.record, item, after=request.args.get("after"))
            sentence = f"Added {_said(record, item)}."
            done = _saved(connection, start, form, record, sentence)
            if form.form.errors == {}:
                return redirect(_after(record, item, done), 303)
    return show_form(start.record, form, None), 422


@bp.get("/<plural>/<ref>/edit")
def edit(home: str, plural: str, ref: str) -> ResponseReturnValue:
    """Show the form of an item as it stands."""
    record = opened(home).record
    item = _find(record, _sort(plural), ref)
    form = ItemForm(
        type(item), record, values_of(item), mark=digest(item), kind=_kind(item)
    )
    return show_form(record, form, item)


@bp.post("/<plural>/<ref>/edit")
def update(home: str, plural: str, ref: str) -> ResponseReturnValue:
    """Change an item; a stale form is shown again beside what stands now."""
    cls = _sort(plural)
    status = 422
    with change() as connection:
        start = opened_to_change(connection, home)
        again = _sent_before(connection, start, cls)
        if again and start.record.find(cls, ref) is None:
            return redirect(again, 303)
        old = _find(start.record, cls, ref)
        form = ItemForm(cls, start.record, _sent_boxes(cls), kind=_sent_kind())
        if _good(form, start.record, old):
            item = form.item()
            if form.form.mark.data != digest(old) and item != old:
                status = 409
            else:
                record = replaced(start.record, ref, item)
                sentence = f"Changed {_said(record, item)}."
                renamed = item.ref != ref
                done = _saved(connection, start, form, record, sentence, once=renamed)
                if form.form.errors == {}:
                    return redirect(_after(record, item, done), 303)
    return show_form(start.record, form, old, stale=status == 409), status


@bp.get("/<plural>/<ref>/delete")
def delete(home: str, plural: str, ref: str) -> ResponseReturnValue:
    """Ask before an item is deleted, saying what goes with it."""
    record = opened(home).record
    item = _find(record, _sort(plural), ref)
    return render_template("pages/items/delete.html", page=delete_page(record, item))


@bp.post("/<plural>/<ref>/delete")
def destroy(home: str, plural: str, ref: str) -> ResponseReturnValue:
    """Delete an item; the change can be undone."""
    with change() as connection:
        start = opened_to_change(connection, home)
        item = _find(start.record, _sort(plural), ref)
        if request.form.get("mark") != delete_mark(start.record, item):
            page = delete_page(start.record, item, stale=True)
            return render_template("pages/items/delete.html", page=page), 409
        record = removed(start.record, ref)
        sentence = f"Deleted {_said(start.record, item)}."
        done = save(connection, start, record, sentence)
    return redirect(list_url(record, item, done), 303)


@bp.post("/<plural>/<ref>/move")
def move(home: str, plural: str, ref: str) -> ResponseReturnValue:
    """Move an item one place up or down its list."""
    steps = {"up": -1, "down": 1}.get(request.form.get("way", ""))
    if steps is None:
        raise InvalidError("Say whether it moves up or down.")
    with change() as connection:
        start = opened_to_change(connection, home)
        item = _find(start.record, _sort(plural), ref)
        record = moved(start.record, ref, steps)
        sentence = f"Moved {_said(record, item)}."
        done = save(connection, start, record, sentence)
    return redirect(list_url(record, item, done), 303)


def _said(record: Record, item: Item) -> str:
    return f"{item.noun.lower()} {in_a_sentence(record, item)}"


def _sort(plural: str) -> type[Item]:
    if plural not in BY_PLURAL:
        raise NotFoundError("There is no such list in a record.")
    return BY_PLURAL[plural]


def _find(record: Record, cls: type[Item], ref: str) -> Item:
    item = record.find(cls, ref)
    if item is None:
        raise NotFoundError(
            f"There is no {cls.noun.lower()} “{ref}” in this home; "
            "perhaps it was deleted, or its reference changed."
        )
    return item


def _given(cls: type[Item]) -> dict[str, Any]:
    """Return what the address says of a new item, where a form can begin with it."""
    given: dict[str, Any] = {}
    for spec in specs(cls):
        values = [tidy(value) for value in request.args.getlist(spec.name)]
        if values and spec.type == "refs":
            given[spec.name] = tuple(values[:MOST_GIVEN])
        elif values and spec.type in ("choice", "ref", "text"):
            given[spec.name] = values[0]
    return given


def _sent_before(
    connection: Connection, start: OpenHome, cls: type[Item]
) -> str | None:
    """Return where a form led when it was sent before; None when it was not."""
    earlier = change_sent_as(connection, start.key, sent_once())
    if earlier is None:
        return None
    item = _find(start.record, cls, _made_by(earlier, cls))
    return _after(start.record, item, earlier.key)


def _made_by(earlier: Change, cls: type[Item]) -> str:
    """Return what a form made or called anew; others may have changed along."""
    items = [(e.before, e.after) for e in earlier.entries if e.sort == cls.sort]
    own = [new.ref for old, new in items if new and (not old or old.ref != new.ref)]
    return own[0] if own else request.form.get("ref", "").strip()


def _start(cls: type[Item], record: Record, given: dict[str, Any]) -> dict[str, Any]:
    """Return the values that the form of a new item begins with."""
    copied = record.find(cls, request.args.get("copy"))
    values = values_of(copied) if copied else defaults_of(cls, ())
    own = {} if copied else guesses(cls, record, given)
    return values | own | given | {"ref": new_ref(record, cls)}


def _kind(item: Item) -> str | None:
    return getattr(item, "kind", None)


def _sent_kind() -> str | None:
    return request.form.get("kind")


def _sent_boxes(cls: type[Item]) -> dict[str, Any]:
    """Return lists of references that give as many boxes as the form sent has."""
    lists = [spec.name for spec in specs(cls) if spec.type == "refs"]
    sent = {n: [k for k in request.form if k.startswith(f"{n}_")][:50] for n in lists}
    return {name: tuple(boxes[SPARE_BOXES:]) for name, boxes in sent.items()}


def _offer_anew(form: ItemForm, record: Record) -> None:
    """Let a new item whose reference was offered, not chosen, have the next free one.

    Someone else may have taken it while the form was open.
    """
    ref = form.form.ref
    if ref.data == form.form.mark.data and (ref.data or "").upper() in {
        other.upper() for other in record.by_ref
    }:
        ref.data = form.form.mark.data = new_ref(record, form.cls)


def _good(form: ItemForm, record: Record, old: Item | None = None) -> bool:
    return form.valid() and _free(form, record, old) and _sensible(form, record)


def _sensible(form: ItemForm, record: Record) -> bool:
    """Return whether it is no reminder of what cannot be done."""
    item = form.item()
    found = tuple(wrong_with(record, item)) if isinstance(item, Reminder) else ()
    for name, sentence in found:
        form.refuse(name, sentence)
    return not found


def _free(form: ItemForm, record: Record, old: Item | None = None) -> bool:
    """Return whether the reference is free in this home."""
    ref = form.form.ref.data
    taken = {other.upper(): other for other in record.by_ref}
    holder = taken.get(ref.upper())
    if holder is None or (old is not None and holder == old.ref):
        return True
    form.refuse("ref", f"{holder} is in use already. Enter another reference.")
    return False


def _saved(
    connection: Connection,
    start: OpenHome,
    form: ItemForm,
    record: Record,
    sentence: str,
    *,
    once: bool = True,
) -> int | None:
    """Save; what the record cannot be is said beside the field at fault.

    A change that keeps its item's reference needs no counting: sent again, it finds the
    item as it made it.
    """
    key = sent_once() if once else None
    try:
        return save(connection, start, record, sentence, once=key)
    except InvalidError as error:
        for problem in error.problems:
            form.refuse(FEED_FIELD.get(form.cls.sort, "ref"), problem.reason)
        return None


def _after(record: Record, item: Item, done: int | None) -> str:
    """Return where to go after a save: on to the next like it, back, or to the item."""
    home = record.home.ref
    if request.form.get("then") == "another":
        return url_for(
            "items.new", home=home, plural=item.plural, copy=item.ref, done=done
        )
    back = request.args.get("back")
    if back and back in record.by_ref:
        return with_done(item_url(home, record.by_ref[back]), done)
    return with_done(item_url(home, item), done)
