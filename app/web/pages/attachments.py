"""Photographs and papers: the list, one with its spots, two beside each other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from app.domain.edits import removed, replaced
from app.domain.record import Attachment, Record
from app.domain.record.choices import MEDIA_TYPES
from app.services.files import is_here
from app.services.homes import digest, save
from app.web.addresses import Link, delete_url, edit_url, item_url, list_url, with_done
from app.web.files_view import Thumb, find_file, folder, picture_url, thumbs
from app.web.forms import Difference, ItemForm, differences, values_of
from app.web.item_pages import delete_mark, delete_page
from app.web.marked import MarkedPicture, marked_picture
from app.web.paired import from_here
from app.web.session import change, opened, opened_to_change
from app.web.words import Facts, day, facts_of, file_size

bp = Blueprint("attachments", __name__, url_prefix="/homes/<home>/files")
# So many a page, whatever there are: each is one more request.
ON_A_PAGE = 48
ASKED = ("caption", "of", "taken_on", "private", "note")
KEPT_BESIDE = ("caption", "of", "sha256", "media_type", "size", "added_at")


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexPage:
    """The list of photographs and papers.

    Attributes:
        title: Heading.
        thumbs: Those of this page, the newest first.
        shown: Which of how many, in words.
        total: How many the home has.
        filter: What was typed to filter by.
        of: The thing whose files are shown, with its address, if it is one's.
        of_ref: Its reference.
        before: Address of the page with newer ones.
        after: Address of the page with older ones.
        add: Address where one is added.
    """

    title: str
    thumbs: tuple[Thumb, ...]
    shown: str
    total: int
    filter: str
    of: Link | None
    of_ref: str
    before: str | None
    after: str | None
    add: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FilePage:
    """One photograph or paper.

    Attributes:
        title: Its caption, or its name.
        of: The things that it belongs to, with addresses.
        picture: The picture with its spots; None for a PDF, or when it is not here.
        here: Whether its file is here.
        was_here: Whether it was just sent again.
        what: Its type, its size, when it was added.
        facts: What is recorded of it.
        mark: Address where a spot is marked; None where none can be.
        original: Address of the file as it came; None where it is not given out.
        is_picture: Whether it is a picture.
        compare: Address where it stands beside another one.
        again: Address where its file is added again, or another one.
        edit: Address of its form.
        delete: Address where deleting is asked about.
    """

    title: str
    of: tuple[Link, ...]
    picture: MarkedPicture | None
    here: bool
    was_here: bool
    what: str
    facts: Facts
    mark: str | None
    original: str | None
    is_picture: bool
    compare: str
    again: str
    edit: str
    delete: str


@dataclass(frozen=True, slots=True, kw_only=True)
class EditPage:
    """The form of a photograph or paper.

    Attributes:
        title: Heading.
        form: The form.
        back: Address to go back to.
        differences: For a stale save: what was changed meanwhile.
    """

    title: str
    form: ItemForm
    back: str
    differences: tuple[Difference, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ComparePage:
    """Two pictures beside each other.

    Attributes:
        title: Heading.
        choices: Reference and words of each picture that may be chosen.
        before: Reference of the one on the left.
        after: Reference of the one on the right.
        pair: For each: what it is called, its page, its picture, its day.
        back: Address to go back to.
    """

    title: str
    choices: tuple[Link, ...]
    before: str
    after: str
    pair: tuple[Thumb, ...]
    back: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """List the photographs and papers, the newest first."""
    page = _index(opened(home).record)
    return render_template("pages/files/index.html", page=page)


@bp.get("/compare")
def compare(home: str) -> ResponseReturnValue:
    """Show two pictures beside each other, such as before and after."""
    record = opened(home).record
    pictures = [a for a in record.attachments if a.is_picture]
    chosen = [request.args.get(name, "") for name in ("before", "after")]
    found = [a for ref in chosen for a in pictures if a.ref == ref]
    page = ComparePage(
        title="Two pictures beside each other",
        choices=tuple((a.ref, _in_list(record, a)) for a in pictures),
        before=chosen[0],
        after=chosen[1],
        pair=tuple(_large(record, a) for a in found) if len(found) == 2 else (),
        back=url_for(".index", home=home),
    )
    return render_template("pages/files/compare.html", page=page)


@bp.get("/<ref>/")
def show(home: str, ref: str) -> ResponseReturnValue:
    """Show one, with the spots that are marked on it."""
    page = _page(opened(home).record, find_file(home, ref))
    return render_template("pages/files/show.html", page=page)


@bp.get("/<ref>/edit")
def edit(home: str, ref: str) -> ResponseReturnValue:
    """Show the form of one."""
    item = find_file(home, ref)
    form = _form(opened(home).record, item)
    return render_template("pages/files/edit.html", page=_edit_page(home, item, form))


@bp.post("/<ref>/edit")
def update(home: str, ref: str) -> ResponseReturnValue:
    """Change what is said of one."""
    with change() as connection:
        start = opened_to_change(connection, home)
        old, status = find_file(home, ref), 422
        form = _form(start.record, old, sent=True)
        if form.valid():
            item = form.item()
            if form.form.mark.data == digest(old) or item == old:
                record = replaced(start.record, ref, item)
                sentence = f"Changed file {item.title} ({ref})."
                done = save(connection, start, record, sentence)
                return redirect(with_done(item_url(home, item), done), 303)
            status = 409
    found = differences(start.record, form, old) if status == 409 else ()
    if found:
        form.form.mark.data = digest(old)
    page = _edit_page(home, old, form, found)
    return render_template("pages/files/edit.html", page=page), status


@bp.get("/<ref>/delete")
def delete(home: str, ref: str) -> ResponseReturnValue:
    """Ask before one is deleted."""
    page = delete_page(opened(home).record, find_file(home, ref))
    return render_template("pages/items/delete.html", page=page)


@bp.post("/<ref>/delete")
def destroy(home: str, ref: str) -> ResponseReturnValue:
    """Delete one with its spots; its bytes are kept, so that this can be undone."""
    with change() as connection:
        start = opened_to_change(connection, home)
        item = find_file(home, ref)
        if request.form.get("mark") != delete_mark(start.record, item):
            page = delete_page(start.record, item, stale=True)
            return render_template("pages/items/delete.html", page=page), 409
        record = removed(start.record, ref)
        done = save(connection, start, record, f"Deleted file {item.title} ({ref}).")
    return redirect(list_url(record, item, done), 303)


def _index(record: Record) -> IndexPage:
    home, of = record.home.ref, record.by_ref.get(request.args.get("of", ""))
    wanted = request.args.get("filter", "").strip()[:100]
    every = record.attachments_of(of.ref) if of else record.attachments
    words = wanted.casefold().split()
    found = [a for a in reversed(every) if _holds(record, a, words)]
    number = request.args.get("page", "")
    first = (
        (int(number) - 1) * ON_A_PAGE if number.isascii() and number.isdigit() else 0
    )
    first = first if 0 <= first < len(found) else 0
    own: dict[str, Any] = {"home": home, "filter": wanted or None}
    own["of"] = of.ref if of else None
    at = first // ON_A_PAGE + 1
    last = first + ON_A_PAGE >= len(found)
    return IndexPage(
        title="Photographs and papers",
        thumbs=thumbs(record, found[first : first + ON_A_PAGE]),
        shown=_shown(first, found),
        total=len(record.attachments),
        filter=wanted,
        of=(of.title, item_url(home, of)) if of else None,
        of_ref=of.ref if of else "",
        before=url_for(".index", page=at - 1, **own) if first else None,
        after=None if last else url_for(".index", page=at + 1, **own),
        add=url_for("uploads.new", home=home, of=of.ref if of else None),
    )


def _shown(first: int, found: Sequence[Attachment]) -> str:
    if len(found) <= ON_A_PAGE:
        return "1 shown." if len(found) == 1 else f"{len(found)} shown."
    return f"{first + 1} to {min(first + ON_A_PAGE, len(found))} of {len(found)} shown."


def _holds(record: Record, attachment: Attachment, words: list[str]) -> bool:
    if not words:
        return True
    titles = [i.title for ref in attachment.of if (i := record.by_ref.get(ref))]
    own = (attachment.ref, attachment.caption, attachment.file_name, attachment.note)
    line = " ".join((*own, *titles, str(attachment.taken_on or ""))).casefold()
    return all(word in line for word in words)


def _page(record: Record, item: Attachment) -> FilePage:
    home, here = record.home.ref, is_here(folder(), item)
    picture = marked_picture(record, item) if here and item.is_picture else None
    given = here and (from_here() or not item.is_picture)
    return FilePage(
        title=item.title,
        of=tuple(
            (thing.title, item_url(home, thing))
            for ref in item.of
            if (thing := record.by_ref.get(ref))
        ),
        picture=picture,
        here=here,
        was_here=bool(request.args.get("here")),
        what=_what(item),
        facts=facts_of(item, record, skip=KEPT_BESIDE),
        mark=url_for("spots.new", home=home, ref=item.ref) if picture else None,
        original=url_for("pictures.original", home=home, ref=item.ref)
        if given
        else None,
        is_picture=item.is_picture,
        compare=url_for(".compare", home=home, before=item.ref),
        again=url_for("uploads.new", home=home, of=item.of[0] if item.of else None),
        edit=edit_url(home, item),
        delete=delete_url(home, item),
    )


def _what(item: Attachment) -> str:
    said = f"{MEDIA_TYPES[item.media_type]}, {file_size(item.size)}"
    if item.added_at is None:
        return f"{said}."
    return f"{said}, added on {day(datetime.fromisoformat(item.added_at).date())}."


def _form(record: Record, item: Attachment, *, sent: bool = False) -> ItemForm:
    values = values_of(item)
    if sent:
        boxes = [name for name in request.form if name.startswith("of_")][:50]
        values["of"] = tuple(boxes[2:])
    return ItemForm(Attachment, record, values, mark=digest(item), asked=ASKED)


def _edit_page(
    home: str, item: Attachment, form: ItemForm, found: tuple[Difference, ...] = ()
) -> EditPage:
    return EditPage(
        title=f"Change {item.title}",
        form=form,
        back=item_url(home, item),
        differences=found,
    )


def _in_list(record: Record, item: Attachment) -> str:
    titles = [i.title for ref in item.of if (i := record.by_ref.get(ref))]
    when = f", {item.taken_on.isoformat()}" if item.taken_on else ""
    return f"{item.title}{when}{f' ({titles[0]})' if titles else ''}"


def _large(record: Record, item: Attachment) -> Thumb:
    [thumb] = thumbs(record, [item])
    shows = picture_url(record.home.ref, item, "large") if thumb.small else None
    return Thumb(
        title=thumb.title,
        url=thumb.url,
        small=shows,
        word=thumb.word,
        about=thumb.about,
    )
