"""Test results: copied from a paper in a grid, and shown over the years."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from flask_wtf import FlaskForm
from wtforms import SelectField, StringField
from wtforms.fields.choices import SelectChoice  # type: ignore[attr-defined]
from wtforms.validators import ValidationError

from app.domain.edits import added, new_ref
from app.domain.record import SHORT, Board, Paper, Record
from app.domain.record.choices import PAPER_KINDS
from app.domain.results import copied, results_of, sheet_of
from app.domain.results.sheet import tested_on
from app.errors import NotFoundError
from app.services.homes import save
from app.web.addresses import with_done
from app.web.fields import DayField, options, tidy
from app.web.forms import sent_once
from app.web.papers import today
from app.web.result_rows import HEADS, result_rows
from app.web.result_sheet import NEW, Grid, as_it_stands, as_sent, mark_of
from app.web.session import change, opened, opened_to_change

bp = Blueprint("results", __name__, url_prefix="/homes/<home>/results")
Link = tuple[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultsPage:
    """The test results of a home, board by board.

    Attributes:
        title: Heading.
        heads: Heads of the tables.
        boards: Name of each board, address of its empty sheet, and its rows.
        supply: What was measured at the supply.
    """

    title: str
    heads: tuple[str, ...]
    boards: tuple[tuple[str, str, tuple[tuple[object, ...], ...]], ...]
    supply: tuple[tuple[object, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CopyPage:
    """The grid in which a board's results are copied.

    Attributes:
        title: Heading.
        form: From which paper, and when.
        again: Name of the paper whose copy is put right; empty for a new one.
        grid: The grid.
        mark: How what was copied stood when it was shown.
        changed: Whether it was changed since.
        back: Address to go back to.
    """

    title: str
    form: HeadForm
    again: str
    grid: Grid
    mark: str
    changed: bool
    back: str


class HeadForm(FlaskForm):  # type: ignore[misc]
    """From which paper results are, and when they were measured."""

    paper = SelectField("From which paper")
    kind = SelectField("What the new paper is", choices=options(PAPER_KINDS))
    number = StringField("Its number")
    by = StringField("Signed by", description="Private.")
    tested_on = DayField("Tested on")

    def validate_tested_on(self, field: DayField) -> None:
        """Take a day that has come."""
        if field.data and field.data > today():
            raise ValidationError("That day is still to come. Enter when it was done.")

    def validate_number(self, field: StringField) -> None:
        """Take what fits on a line."""
        if len(tidy(field.data or "")) > SHORT:
            raise ValidationError(f"Enter {SHORT} characters at most.")

    validate_by = validate_number


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Show every result, board by board."""
    record = opened(home).record
    page = ResultsPage(
        title="Test results",
        heads=HEADS,
        boards=tuple(_board(record, board) for board in record.boards),
        supply=result_rows(record, results_of(record, None), of=True),
    )
    return render_template("pages/results/index.html", page=page)


@bp.get("/board/<ref>/copy")
def copy(home: str, ref: str) -> ResponseReturnValue:
    """Show a board's sheet: empty, or as a paper was copied before."""
    record = opened(home).record
    board, paper = _find(record, ref), _paper(record, request.args.get("paper", ""))
    sheet = sheet_of(record, board, paper.ref if paper else None)
    given: dict[str, Any] = {"paper": paper.ref if paper else NEW}
    given |= {"kind": "condition_report", "tested_on": tested_on(sheet.results)}
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
        record, board = start.record, _find(start.record, ref)
        form = _head(record)
        paper = _paper(record, form.paper.data or "")
        sheet = sheet_of(record, board, paper.ref if paper else None)
        grid = as_sent(sheet, _earthing(record, board))
        if form.validate() and not grid.problems:
            if request.form.get("mark", mark_of(sheet)) == mark_of(sheet) or not paper:
                new = _kept(record, form, paper, grid)
                sentence = f"Copied test results of {board.title} ({ref})."
                done = save(connection, start, new, sentence, once=sent_once())
                return redirect(with_done(url_for(".index", home=home), done), 303)
            status = 409
    page = _show(record, board, form, grid, paper, changed=status == 409)
    return page, status


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
    page = CopyPage(
        title=f"Copy test results of {board.title}",
        form=form,
        again=paper.title if paper and grid.sheet.results else "",
        grid=grid,
        mark=mark_of(grid.sheet),
        changed=changed,
        back=url_for(".index", home=record.home.ref),
    )
    return render_template("pages/results/copy.html", page=page)


def _board(
    record: Record, board: Board
) -> tuple[str, str, tuple[tuple[object, ...], ...]]:
    rows = sheet_of(record, board, None).rows
    own = [result for row in rows for result in results_of(record, row.ref)]
    url = url_for(".copy", home=record.home.ref, ref=board.ref)
    return board.title, url, result_rows(record, own, of=True)


def _earthing(record: Record, board: Board) -> str:
    return record.home.earthing if board.earthing == "supply" else board.earthing


def _paper(record: Record, ref: str) -> Paper | None:
    return record.find(Paper, ref)


def _find(record: Record, ref: str) -> Board:
    board = record.find(Board, ref)
    if board is None:
        raise NotFoundError(f"There is no board {ref} in this home.")
    return board
