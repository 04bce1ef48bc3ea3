"""Test results: copied from a paper in a grid, and shown over the years."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial
from typing import Any

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from flask_wtf import FlaskForm
from wtforms import SelectField, StringField
from wtforms.fields.choices import SelectChoice  # type: ignore[attr-defined]

from app.domain.edits import added, new_ref
from app.domain.network import network
from app.domain.record import SHORT, Board, Paper, Record, Result
from app.domain.record.choices import PAPER_KINDS
from app.domain.results import (
    COLUMNS,
    Sheet,
    copied,
    earthing_at,
    longest_at,
    newest_first,
    questions_of,
    results_of,
    sheet_of,
)
from app.domain.results.sheet import tested_on
from app.services.homes import save
from app.web.addresses import Link, delete_url, edit_url, links_to, with_done
from app.web.fields import DayField, fits, has_come, options, tidy
from app.web.forms import sent_before, sent_once
from app.web.result_rows import HEADS, measured, result_rows
from app.web.result_sheet import NEW, Grid, as_it_stands, as_sent, mark_of
from app.web.session import change, needed, opened, opened_to_change
from app.web.words import Facts, facts_of

bp = Blueprint("results", __name__, url_prefix="/homes/<home>/results")
# Nobody has said what the paper is: a condition report would count as an inspection.
KINDS = {"unknown": PAPER_KINDS["unknown"], **PAPER_KINDS}
COPIED = (
    "Results of this board are copied from this paper already. Put them right from the "
    "page of the paper, or choose another one here."
)
# What the sentence on a result's page says already.
MEASURED = tuple(name for c in COLUMNS for name in (c.name, c.sign) if name)


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultsPage:
    """The test results of a home, board by board.

    Attributes:
        title: Heading.
        heads: Heads of the tables.
        boards: Name of each board, address of its empty sheet, and its rows.
        supply: What was measured at the supply.
        others: What was measured at anything else: a device, an item of the intake,
            a circuit without a way.
        new: Address of the form of one result.
    """

    title: str
    heads: tuple[str, ...]
    boards: tuple[tuple[str, str, tuple[tuple[object, ...], ...]], ...]
    supply: tuple[tuple[object, ...], ...]
    others: tuple[tuple[object, ...], ...]
    new: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultPage:
    """One test result.

    Attributes:
        title: Heading.
        measured: All that was measured, in words.
        about: What was tested; none for the supply.
        paper: The paper that it is copied from; none where none is named.
        questions: What a slip of the pen would explain, with where its figure stands.
        facts: What else is recorded.
        edit: Address of its form.
        delete: Address where deleting is asked about.
        back: Address of the list.
    """

    title: str
    measured: str
    about: tuple[Link, ...]
    paper: tuple[Link, ...]
    questions: tuple[tuple[str, str], ...]
    facts: Facts
    edit: str
    delete: str
    back: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CopyPage:
    """The grid in which a board's results are copied.

    Attributes:
        title: Heading.
        form: From which paper, and when.
        again: Name of the paper whose copy is put right; empty for a new one.
        shown: The paper that it was shown with; empty for a new one.
        grid: The grid.
        mark: How what was copied stood when it was shown.
        changed: Whether it was changed since.
        back: Address to go back to.
    """

    title: str
    form: HeadForm
    again: str
    shown: str
    grid: Grid
    mark: str
    changed: bool
    back: str


class HeadForm(FlaskForm):  # type: ignore[misc]
    """From which paper results are, and when they were measured."""

    paper = SelectField("From which paper")
    kind = SelectField("What the new paper is", choices=options(KINDS))
    number = StringField("Its number", validators=[fits(SHORT)])
    by = StringField("Signed by", description="Private.", validators=[fits(SHORT)])
    tested_on = DayField("Tested on", validators=[has_come])


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Show every result, board by board."""
    record = opened(home).record
    by_board = [(board, _at(record, board)) for board in record.boards]
    shown = {result.ref for _, own in by_board for result in own}
    others = [r for r in record.results if r.about and r.ref not in shown]
    page = ResultsPage(
        title="Test results",
        heads=HEADS,
        boards=tuple(_board(record, board, own) for board, own in by_board),
        supply=result_rows(record, results_of(record, None), of=True),
        others=result_rows(record, newest_first(others), of=True),
        new=url_for("items.new", home=home, plural="results"),
    )
    return render_template("pages/results/index.html", page=page)


@bp.get("/<ref>/")
def show(home: str, ref: str) -> ResponseReturnValue:
    """Show one result, whatever it is of and from which paper."""
    record = opened(home).record
    result = needed(record, Result, ref)
    page = ResultPage(
        title=result.title,
        measured=measured(result),
        about=links_to(record, (result.about,)),
        paper=links_to(record, (result.paper,)),
        questions=tuple((q.sentence, q.source) for q in questions_of(record, result)),
        facts=facts_of(result, record, skip=("about", "paper", *MEASURED)),
        edit=edit_url(home, result),
        delete=delete_url(home, result),
        back=url_for(".index", home=home),
    )
    return render_template("pages/results/show.html", page=page)


@bp.get("/board/<ref>/copy")
def copy(home: str, ref: str) -> ResponseReturnValue:
    """Show a board's sheet: empty, or as a paper was copied before."""
    record = opened(home).record
    board = needed(record, Board, ref)
    paper = _paper(record, request.args.get("paper", ""))
    sheet = sheet_of(record, board, paper.ref if paper else None)
    given: dict[str, Any] = {"paper": paper.ref if paper else NEW}
    given |= {"kind": "unknown", "tested_on": tested_on(sheet.results)}
    if paper and not sheet.results:
        given["tested_on"] = paper.dated
    form = _head(record, **given)
    return _show(record, board, form, as_it_stands(sheet), paper)


@bp.post("/board/<ref>/copy")
def keep(home: str, ref: str) -> ResponseReturnValue:
    """Keep a board's sheet, all of it or none; what is odd is asked about first."""
    status = 422
    with change() as connection:
        start = opened_to_change(connection, home)
        record, board = start.record, needed(start.record, Board, ref)
        if done := sent_before(connection, start.key):
            return redirect(with_done(url_for(".index", home=home), done), 303)
        form = _head(record)
        paper = _paper(record, form.paper.data or "")
        sheet = sheet_of(record, board, paper.ref if paper else None)
        earthing = earthing_at(record, board.ref)
        longest = partial(_longest_at, record)
        grid = as_sent(sheet, earthing, longest)
        if _fits(form, paper, sheet) and not grid.problems:
            if request.form.get("mark", mark_of(sheet)) == mark_of(sheet) or not paper:
                new = _kept(record, form, paper, grid)
                sentence = f"Copied test results of {board.title} ({ref})."
                done = save(connection, start, new, sentence, once=sent_once())
                return redirect(with_done(url_for(".index", home=home), done), 303)
            status = 409
    page = _show(record, board, form, grid, paper, changed=status == 409)
    return page, status


def _fits(form: HeadForm, paper: Paper | None, sheet: Sheet) -> bool:
    """Return whether the head may stay; a paper copied before is put right as shown."""
    fits: bool = form.validate()
    if paper and sheet.results and request.form.get("shown", paper.ref) != paper.ref:
        form.paper.errors = [COPIED]
        return False
    return fits


def _kept(record: Record, form: HeadForm, paper: Paper | None, grid: Grid) -> Record:
    by = paper.by if paper else tidy(form.by.data or "")
    head = {"tested_on": form.tested_on.data, "paper": paper.ref if paper else None}
    if by:
        head["tested_by"] = by
    if paper is None and form.paper.data == NEW:
        paper = Paper(
            ref=new_ref(record, Paper),
            kind=form.kind.data or "unknown",
            number=tidy(form.number.data or ""),
            by=by,
            dated=form.tested_on.data,
        )
        record, head["paper"] = added(record, paper), paper.ref
    return copied(record, grid.sheet, grid.values, head)


def _head(record: Record, **given: Any) -> HeadForm:
    form = HeadForm(**given)
    form.paper.choices = [
        SelectChoice(NEW, "A new paper, named below"),
        *(SelectChoice(p.ref, f"{p.title} ({p.ref})") for p in record.papers),
        SelectChoice("", "No paper"),
    ]
    return form


def _show(
    record: Record,
    board: Board,
    form: HeadForm,
    grid: Grid,
    paper: Paper | None,
    *,
    changed: bool = False,
) -> str:
    stands = paper.ref if paper else ""
    shown = request.form.get("shown", stands)
    page = CopyPage(
        title=f"Copy test results of {board.title}",
        form=form,
        again=paper.title if paper and shown and grid.sheet.results else "",
        shown=shown,
        grid=grid,
        mark=mark_of(grid.sheet),
        changed=changed,
        back=url_for(".index", home=record.home.ref),
    )
    return render_template("pages/results/copy.html", page=page)


def _at(record: Record, board: Board) -> list[Result]:
    """Return the results of a board and its circuits, in the order of its sheet."""
    rows = sheet_of(record, board, None).rows
    return [result for row in rows for result in results_of(record, row.ref)]


def _board(
    record: Record, board: Board, own: list[Result]
) -> tuple[str, str, tuple[tuple[object, ...], ...]]:
    url = url_for(".copy", home=record.home.ref, ref=board.ref)
    return board.title, url, result_rows(record, own, of=True)


def _longest_at(record: Record, ref: str) -> int | None:
    return longest_at(network(record), ref)


def _paper(record: Record, ref: str) -> Paper | None:
    return record.find(Paper, ref)
