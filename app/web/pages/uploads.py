"""Adding a photograph or a paper: by its own page, and from the walk."""

from __future__ import annotations

from contextlib import closing
from dataclasses import dataclass, replace
from typing import Any

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from flask_wtf import FlaskForm
from werkzeug.datastructures import FileStorage
from wtforms import FileField, HiddenField

from app.domain.record import Attachment, Record, Room, specs
from app.errors import AppError, DatabaseError
from app.pictures import MOST_BYTES
from app.services.files import Attached, Sent, attach, looked_at
from app.web.addresses import item_url
from app.web.fields import field_for
from app.web.files_view import folder
from app.web.paired import phone
from app.web.session import change, opened, opened_to_change

bp = Blueprint("uploads", __name__, url_prefix="/homes/<home>/files")
ACCEPT = "image/*,application/pdf,.heic"
HINT = (
    f"JPEG, PNG, WebP, HEIC or PDF, up to {MOST_BYTES // 2**20} MB. "
    "It is sent at once: while the program cannot be reached, it is not kept."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class UploadPage:
    """The form that adds a file.

    Attributes:
        title: Heading.
        form: The form.
        back: Address to go back to.
    """

    title: str
    form: UploadForm
    back: str


class UploadForm:
    """The form that adds a file, and the file that was sent with it.

    Attributes:
        form: The bound form.
        sent: The file, once it was looked at and may be taken.
    """

    def __init__(self, record: Record, of: str = "") -> None:
        by_name = {spec.name: spec for spec in specs(Attachment)}
        whose = replace(by_name["of"], type="ref", default=None, hint="")
        fields: dict[str, Any] = {
            "file": FileField(
                "Photograph or PDF", description=HINT, render_kw={"accept": ACCEPT}
            ),
            "caption": field_for(by_name["caption"], record),
            "of": field_for(whose, record),
            "then": HiddenField(),
        }
        form_class = type("UploadForm", (FlaskForm,), fields)
        self.form: Any = form_class(data={"of": of if of in record.by_ref else ""})
        self.form.of.choices[0].label = "The home"
        self.sent: Sent | None = None

    def read(self) -> None:
        """Look at the file that was sent; a sentence stands beside it when refused."""
        file = request.files.get("file")
        if file is None or not file.filename:
            self.form.file.errors = ["Choose a photograph or a PDF."]
            return
        try:
            self.sent = _looked_at(file)
        except AppError as error:
            self.form.file.errors = [error.sentence]

    def valid(self) -> bool:
        """Return whether it can be taken."""
        wrong = list(self.form.file.errors)
        fits = self.form.validate()
        self.form.file.errors = wrong
        return bool(fits) and self.sent is not None


@bp.get("/new")
def new(home: str) -> ResponseReturnValue:
    """Ask for a photograph or a paper."""
    record = opened(home).record
    form = UploadForm(record, request.args.get("of", ""))
    return render_template("pages/files/new.html", page=_page(record, form))


@bp.post("/new")
def create(home: str) -> ResponseReturnValue:
    """Take a photograph or a paper, or say why not."""
    form = UploadForm(opened(home).record)
    # Before the transaction: others may write while a picture is made smaller.
    form.read()
    status = 422
    if form.valid() and form.sent:
        try:
            return redirect(_taken(home, form, form.sent), 303)
        except DatabaseError as error:
            form.form.file.errors = [error.sentence]
            status = 503
    page = _page(opened(home).record, form)
    return render_template("pages/files/new.html", page=page), status


def _taken(home: str, form: UploadForm, sent: Sent) -> str:
    """Keep a file; return where to go."""
    of, own = form.form.of.value(), phone()
    with change() as connection:
        start = opened_to_change(connection, home)
        made = attach(
            connection,
            start,
            folder(),
            sent,
            of=(of,) if of else (),
            caption=form.form.caption.value(),
            added_by=own.name if own else "",
        )
        return _after(start.record, of, form, made)


def _looked_at(file: FileStorage) -> Sent:
    with closing(file):
        return looked_at(file.read(MOST_BYTES + 1), file.filename or "")


def _after(record: Record, of: str | None, form: UploadForm, made: Attached) -> str:
    """Return where to go: to the picture, or on with the walk."""
    home, there = record.home.ref, record.by_ref.get(of or "")
    walked = getattr(there, "room", of) if there else None
    if form.form.then.data == "walk" and record.find(Room, walked):
        return url_for("walk.room", home=home, ref=walked, done=made.done)
    here = "yes" if made.was_here else None
    url = url_for("attachments.show", home=home, ref=made.ref, here=here)
    return url if made.done is None else f"{url}{'&' if here else '?'}done={made.done}"


def _page(record: Record, form: UploadForm) -> UploadPage:
    home = record.home.ref
    item = record.by_ref.get(form.form.of.data or "")
    back = item_url(home, item) if item else url_for("attachments.index", home=home)
    title = f"Add a photograph or PDF{f': {item.title}' if item else ''}"
    return UploadPage(title=title, form=form, back=back)
