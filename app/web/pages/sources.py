"""Sources: everything that can feed the home, each answered yes, no or not known."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from app.domain.edits import added, new_ref, replaced
from app.domain.record import Record, Source
from app.domain.record.choices import SOURCE_KINDS, YES_NO
from app.domain.unknowns import ASKED, unanswered_sources
from app.errors import ConflictError, InvalidError
from app.services.homes import save
from app.web.addresses import delete_url, edit_url
from app.web.files_view import FilesView, files_of
from app.web.session import change, opened, opened_to_change
from app.web.words import Facts, facts_of

bp = Blueprint("sources", __name__, url_prefix="/homes/<home>/sources")


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceView:
    """One source as the page shows it.

    Attributes:
        ref: Its reference, and its anchor on the page.
        title: What it is called.
        present: Whether there is one, in words; None when not known.
        facts: What is recorded of it.
        files: Its photographs and papers.
        edit: Address of its form.
        delete: Address where deleting is asked about.
    """

    ref: str
    title: str
    present: str | None
    facts: Facts
    files: FilesView
    edit: str
    delete: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SourcesPage:
    """The sources.

    Attributes:
        title: Heading.
        answer: Which are not answered, in one sentence.
        sources: Those that are there, or may be.
        absent: Those answered no: title, and address of the form.
        questions: Kinds not answered yet: code and words.
        answer_url: Address that takes an answer.
        new: Address of the form of a source.
    """

    title: str
    answer: str
    sources: tuple[SourceView, ...]
    absent: tuple[tuple[str, str], ...]
    questions: tuple[tuple[str, str], ...]
    answer_url: str
    new: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Show the sources, and ask about those not answered."""
    record = opened(home).record
    unanswered = unanswered_sources(record)
    page = SourcesPage(
        title="Sources",
        answer=_answer(len(unanswered)),
        sources=tuple(_view(record, s) for s in record.sources if s.present != "no"),
        absent=tuple(
            (s.title, edit_url(home, s)) for s in record.sources if s.present == "no"
        ),
        questions=tuple((kind, SOURCE_KINDS[kind]) for kind in unanswered),
        answer_url=url_for(".answer", home=home),
        new=url_for("items.new", home=home, plural="sources"),
    )
    return render_template("pages/sources.html", page=page)


@bp.post("/answer")
def answer(home: str) -> ResponseReturnValue:
    """Take yes or no for one kind of source."""
    kind, present = request.form.get("kind", ""), request.form.get("present", "")
    if kind not in ASKED or present not in ("yes", "no"):
        raise InvalidError("Answer yes or no for one of the sources asked about.")
    with change() as connection:
        start = opened_to_change(connection, home)
        source, new = _answered(start.record, kind, present)
        sentence = f"Answered: {SOURCE_KINDS[kind].lower()}, {present}."
        done = save(connection, start, new, sentence)
    if present == "yes":
        return redirect(edit_url(home, source), 303)
    return redirect(url_for(".index", home=home, done=done), 303)


def _answered(record: Record, kind: str, present: str) -> tuple[Source, Record]:
    """Return the source answered for, and the record with it; an answer counts once."""
    of_kind = [source for source in record.sources if source.kind == kind]
    for old in of_kind:
        if old.present == present:
            return old, record
        if old.present == "unknown":
            source = old.model_copy(update={"present": present})
            return source, replaced(record, old.ref, source)
    if of_kind:
        raise ConflictError("This has been answered already. Change it in the list.")
    source = Source(ref=new_ref(record, Source), kind=kind, present=present)
    return source, added(record, source)


def _view(record: Record, source: Source) -> SourceView:
    home = record.home.ref
    return SourceView(
        ref=source.ref,
        title=source.title,
        present=None if source.present == "unknown" else YES_NO[source.present],
        facts=facts_of(source, record, skip=("ref", "name", "kind", "present")),
        files=files_of(record, source),
        edit=edit_url(home, source),
        delete=delete_url(home, source),
    )


def _answer(unanswered: int) -> str:
    if not unanswered:
        return "Every kind of source is answered."
    what = (
        "One kind of source is"
        if unanswered == 1
        else (f"{unanswered} kinds of source are")
    )
    return (
        f"{what} not answered. Until then, nothing here can say that a thing is fed "
        "by the network alone."
    )
