"""Spots on a picture: touched, then named; changed and deleted."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, redirect, render_template, request
from flask.typing import ResponseReturnValue

from app.domain.edits import added, new_ref, removed, replaced
from app.domain.record import Attachment, Record, Spot
from app.errors import ConflictError, NotFoundError
from app.services.homes import digest, save
from app.web.addresses import item_url, with_done
from app.web.files_view import NOT_HERE, find_file
from app.web.forms import ItemForm, defaults_of, sent_once, values_of
from app.web.item_pages import delete_mark, delete_page
from app.web.marked import Box, MarkedPicture, boxes, marked_picture, touched
from app.web.session import change, opened, opened_to_change

bp = Blueprint("spots", __name__, url_prefix="/homes/<home>/spots")
ASKED = ("words", "about", "across", "down")
MOST_ON_ONE = 100


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotPage:
    """The form of a spot: a picture to touch, and what is there.

    Attributes:
        title: Heading.
        form: The form.
        picture: The picture with the other spots.
        boxes: The picture to touch, in each size.
        at: Where the spot is, in units of the drawing; None before it was touched.
        back: Address to go back to.
    """

    title: str
    form: ItemForm
    picture: MarkedPicture
    boxes: tuple[Box, ...]
    at: tuple[int, int] | None
    back: str


@bp.get("/on/<ref>")
def new(home: str, ref: str) -> ResponseReturnValue:
    """Show a picture to touch."""
    record, picture = opened(home).record, find_file(home, ref)
    return _show(record, picture, _form(record, _begun(record, picture)), None)


@bp.post("/on/<ref>")
def create(home: str, ref: str) -> ResponseReturnValue:
    """Mark a spot; where only the picture was touched, ask what is there."""
    with change() as connection:
        start = opened_to_change(connection, home)
        picture, record = find_file(home, ref), start.record
        form = _form(record, _begun(record, picture))
        if _moved(record, picture, form):
            return _show(record, picture, form, None)
        if form.valid():
            if len(record.spots_of(ref)) >= MOST_ON_ONE:
                raise ConflictError(f"A picture has {MOST_ON_ONE} spots at the most.")
            item = form.item()
            sentence = f"Marked {item.title} ({item.ref}) on {picture.title} ({ref})."
            once = sent_once()
            done = save(connection, start, added(record, item), sentence, once=once)
            return redirect(with_done(item_url(home, picture), done), 303)
    return _show(record, picture, form, None), 422


@bp.get("/<ref>/edit")
def edit(home: str, ref: str) -> ResponseReturnValue:
    """Show the form of a spot."""
    record = opened(home).record
    spot, picture = _find(record, ref)
    return _show(record, picture, _form(record, spot), spot)


@bp.post("/<ref>/edit")
def update(home: str, ref: str) -> ResponseReturnValue:
    """Change a spot, or move it to where the picture was touched."""
    status = 422
    with change() as connection:
        start = opened_to_change(connection, home)
        record = start.record
        spot, picture = _find(record, ref)
        form = _form(record, spot)
        if _moved(record, picture, form):
            return _show(record, picture, form, spot)
        if form.valid():
            item = form.item()
            if form.form.mark.data == digest(spot) or item == spot:
                sentence = f"Changed spot {item.title} ({ref}) on {picture.title}."
                new_record = replaced(record, ref, item)
                done = save(connection, start, new_record, sentence)
                return redirect(with_done(item_url(home, picture), done), 303)
            form.refuse("words", STALE.format(spot.title))
            form.form.mark.data = digest(spot)
            status = 409
    return _show(record, picture, form, spot), status


@bp.get("/<ref>/delete")
def delete(home: str, ref: str) -> ResponseReturnValue:
    """Ask before a spot is deleted."""
    record = opened(home).record
    page = delete_page(record, _find(record, ref)[0])
    return render_template("pages/items/delete.html", page=page)


@bp.post("/<ref>/delete")
def destroy(home: str, ref: str) -> ResponseReturnValue:
    """Delete a spot; it can be undone."""
    with change() as connection:
        start = opened_to_change(connection, home)
        spot, picture = _find(start.record, ref)
        if request.form.get("mark") != delete_mark(start.record, spot):
            page = delete_page(start.record, spot, stale=True)
            return render_template("pages/items/delete.html", page=page), 409
        sentence = f"Deleted spot {spot.title} ({ref}) on {picture.title}."
        done = save(connection, start, removed(start.record, ref), sentence)
    return redirect(with_done(item_url(home, picture), done), 303)


STALE = "It was changed meanwhile: it is now “{}”. Save again to have it as here."


def _find(record: Record, ref: str) -> tuple[Spot, Attachment]:
    spot = record.find(Spot, ref)
    picture = record.find(Attachment, spot.attachment) if spot else None
    if spot is None or picture is None:
        raise NotFoundError(f"There is no spot “{ref}” on a picture of this home.")
    return spot, picture


def _begun(record: Record, picture: Attachment) -> dict[str, object]:
    own = [("ref", new_ref(record, Spot)), ("attachment", picture.ref)]
    return defaults_of(Spot, own)


def _form(record: Record, of: Spot | dict[str, object]) -> ItemForm:
    if isinstance(of, Spot):
        return ItemForm(Spot, record, values_of(of), mark=digest(of), asked=ASKED)
    return ItemForm(Spot, record, of, asked=ASKED)


def _moved(record: Record, picture: Attachment, form: ItemForm) -> bool:
    """Return whether the picture was touched; the form then says where."""
    drawn = _drawn(record, picture)
    where = touched(request.form, (drawn.width, drawn.height))
    if where is None:
        return False
    for name, value in zip(("across", "down"), where, strict=True):
        form.form[name].data, form.form[name].raw_data = value, None
        form.form[name].process_errors = []
    return True


def _drawn(record: Record, picture: Attachment) -> MarkedPicture:
    drawn = marked_picture(record, picture)
    if drawn is None:
        raise NotFoundError(NOT_HERE)
    return drawn


def _show(
    record: Record, picture: Attachment, form: ItemForm, spot: Spot | None
) -> str:
    drawn = _drawn(record, picture)
    across, down = form.form.across.data, form.form.down.data
    given = isinstance(across, int) and isinstance(down, int)
    page = SpotPage(
        title=f"Change spot {spot.title}" if spot else "Mark a spot",
        form=form,
        picture=drawn,
        boxes=boxes((drawn.width, drawn.height)),
        at=(across * drawn.width // 1000, down * drawn.height // 1000)
        if given
        else None,
        back=item_url(record.home.ref, picture),
    )
    return render_template("pages/files/spot.html", page=page)
