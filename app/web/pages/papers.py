"""Papers: certificates, reports, invoices; each with what was copied from it."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, render_template, url_for
from flask.typing import ResponseReturnValue

from app.domain.days import in_words
from app.domain.record import Paper, Record
from app.domain.record.choices import PAPER_KINDS
from app.web.addresses import Link, delete_url, edit_url, item_url, links_to
from app.web.files_view import FilesView, files_of
from app.web.result_rows import HEADS, result_rows
from app.web.session import needed, opened
from app.web.words import Facts, facts_of

bp = Blueprint("papers", __name__, url_prefix="/homes/<home>/papers")


@dataclass(frozen=True, slots=True, kw_only=True)
class PapersPage:
    """The papers of a home.

    Attributes:
        title: Heading.
        rows: Name with its address, what it is, its day, what was copied from it.
        new: Address of the form of a paper.
    """

    title: str
    rows: tuple[tuple[Link, str, str, str], ...]
    new: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperPage:
    """One paper.

    Attributes:
        title: What it is called.
        facts: What is recorded of it.
        about: What it is about.
        heads: Heads of the table of results.
        results: What was copied from it.
        files: Its pictures and scans.
        sheets: Each board, with the address of its sheet for this paper.
        edit: Address of its form.
        delete: Address where deleting is asked about.
        back: Address of the list.
    """

    title: str
    facts: Facts
    about: tuple[Link, ...]
    heads: tuple[str, ...]
    results: tuple[tuple[object, ...], ...]
    files: FilesView
    sheets: tuple[Link, ...]
    edit: str
    delete: str
    back: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """List the papers."""
    record = opened(home).record
    page = PapersPage(
        title="Papers",
        rows=tuple(_row(record, paper) for paper in record.papers),
        new=url_for("items.new", home=home, plural=Paper.plural),
    )
    return render_template("pages/papers/index.html", page=page)


@bp.get("/<ref>/")
def show(home: str, ref: str) -> ResponseReturnValue:
    """Show one paper, and what was copied from it."""
    record = opened(home).record
    paper = needed(record, Paper, ref)
    about = (paper.work, *paper.about) if paper.work else paper.about
    own = [result for result in record.results if result.paper == ref]
    page = PaperPage(
        title=paper.title,
        facts=facts_of(paper, record, skip=("name", "about", "work")),
        about=links_to(record, about),
        heads=HEADS,
        results=result_rows(record, own, of=True),
        files=files_of(record, paper),
        sheets=tuple(
            (
                board.title,
                url_for("results.copy", home=home, ref=board.ref, paper=ref),
            )
            for board in record.boards
        ),
        edit=edit_url(home, paper),
        delete=delete_url(home, paper),
        back=url_for(".index", home=home),
    )
    return render_template("pages/papers/show.html", page=page)


def _row(record: Record, paper: Paper) -> tuple[Link, str, str, str]:
    number = sum(result.paper == paper.ref for result in record.results)
    return (
        (paper.title, item_url(record.home.ref, paper)),
        PAPER_KINDS[paper.kind],
        in_words(paper.dated) if paper.dated else "",
        f"{number} {'row' if number == 1 else 'rows'} of results"
        if number
        else "nothing copied",
    )
