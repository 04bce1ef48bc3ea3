"""The record as a document: out of this program, and in again."""

from __future__ import annotations

from contextlib import closing
from dataclasses import dataclass

from flask import Blueprint, Response, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from werkzeug.datastructures import FileStorage

from app.errors import AppError, InvalidError, Problem
from app.interchange import document_from, to_document
from app.interchange.document import Document
from app.services.documents import HereAlready, here_already, take_in
from app.services.files import Sent, keep
from app.services.history import whole_history
from app.services.homes import free_home_ref
from app.services.pack_in import is_pack, unpacked
from app.web.files_view import folder
from app.web.session import change, opened, read

bp = Blueprint("documents", __name__)
MOST_BYTES = 9 * 2**20


@dataclass(frozen=True, slots=True, kw_only=True)
class DocumentPage:
    """The document of one home.

    Attributes:
        title: Heading.
        download: Address of the document.
        bring: Address where one is brought in.
    """

    title: str
    download: str
    bring: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ImportPage:
    """Bringing a document in.

    Attributes:
        title: Heading.
        refusal: Why the last one was not taken; empty before one was sent.
        problems: The reasons, one by one, with their places.
        here: Homes that are taken for the one that was sent: name, address, what
            differs, and where that is looked at one by one; empty where nothing does.
        beside: Reference that it would have as a home of its own.
    """

    title: str
    refusal: str = ""
    problems: tuple[Problem, ...] = ()
    here: tuple[tuple[str, str, str, str], ...] = ()
    beside: str = ""


@bp.get("/homes/<home>/document")
def show(home: str) -> ResponseReturnValue:
    """Say what the document is, and offer it."""
    opened(home)
    page = DocumentPage(
        title="The record as a document",
        download=url_for(".download", home=home),
        bring=url_for(".bring"),
    )
    return render_template("pages/document.html", page=page)


@bp.get("/homes/<home>/document.json")
def download(home: str) -> ResponseReturnValue:
    """Give the document."""
    own = opened(home)
    wanted = request.args.get("history") == "yes"
    history = whole_history(read(), own) if wanted else None
    text = to_document(own.record, history)
    response = Response(text, mimetype="application/json")
    name = f"{opened(home).record.home.ref}.json"
    response.headers["Content-Disposition"] = f'attachment; filename="{name}"'
    response.headers["Cache-Control"] = "no-store"
    return response


def _read(file: FileStorage) -> tuple[Document, tuple[Sent, ...]]:
    """Return what was sent: a document, or all that a pack holds."""
    with closing(file):
        head = file.read(4)
        if is_pack(head):
            pack = unpacked(head + file.read())
            return pack.document, pack.files
        return document_from(head + file.read(MOST_BYTES)), ()


@bp.get("/import")
def bring() -> ResponseReturnValue:
    """Ask for a document."""
    return render_template(
        "pages/import.html", page=ImportPage(title="Bring in a home")
    )


@bp.post("/import")
def take() -> ResponseReturnValue:
    """Take a document whole, as a home of its own, or not at all."""
    file = request.files.get("document")
    try:
        if file is None or not file.filename:
            raise InvalidError("Choose a document first.")
        document, files = _read(file)
        record, history = document.record, document.history
        with change() as connection:
            ref = free_home_ref(connection, record.home.ref)
            here = here_already(connection, record)
            if here and request.form.get("beside") != "yes":
                return _ask(record.home.name, here, ref), 422
            for sent in files:
                keep(folder(), sent)
            take_in(connection, record, as_ref=ref, history=history)
    except AppError as error:
        page = ImportPage(
            title="The document was not taken",
            refusal=error.sentence,
            problems=error.problems,
        )
        return render_template("pages/import.html", page=page), 422
    return redirect(url_for("homes.show", home=ref), 303)


def _ask(name: str, here: tuple[HereAlready, ...], beside: str) -> str:
    """Ask whether a home that is here already is to be here once more."""
    page = ImportPage(
        title=f"{name} is here already",
        here=tuple(_here(each) for each in here),
        beside=beside,
    )
    return render_template("pages/import.html", page=page)


def _here(found: HereAlready) -> tuple[str, str, str, str]:
    ref, number = found.home.ref, found.differs
    differs = "1 thing differs" if number == 1 else f"{number} things differ"
    return (
        f"{found.home.name} ({ref})",
        url_for("homes.show", home=ref),
        differs if number else "nothing differs",
        url_for("replies.index", home=ref) if number else "",
    )
