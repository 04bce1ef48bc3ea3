"""A spreadsheet brought in: choose it, match its columns, look, take all or nothing."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import closing
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from flask import Blueprint, current_app, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from flask_wtf import FlaskForm

from app.domain.record import Board, Record
from app.domain.spreadsheet import KINDS, Made, There, Workbook
from app.domain.spreadsheet.values import tidied
from app.errors import AppError, InvalidError, Problem
from app.interchange.spreadsheet import MOST_BYTES, workbook_from
from app.services.spreadsheets import (
    Waiting,
    begin,
    carry_out,
    counted,
    finished,
    first_match,
    go_on,
    matched,
    outcome,
    usable,
)
from app.store.changes import change_sent_as
from app.web.addresses import item_url
from app.web.session import change, opened, opened_to_change, read
from app.web.spreadsheet_form import ColumnsForm, ColumnView, kind_field

bp = Blueprint("spreadsheets", __name__, url_prefix="/homes/<home>/spreadsheet")
# What a person may choose where some of a file is here already.
TAKES = ("others", "all")
LISTS = {"circuits": "circuits.index", "points": "points.index"}
MOST_HEADING_ROWS = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoosePage:
    """Choosing a spreadsheet.

    Attributes:
        title: Heading.
        form: What it holds.
        boards: Boards whose ways may be typed as a list: name and address.
        add_board: Address of the form of a board.
        refusal: Why the last file was not taken; empty before one was sent.
        problems: The reasons, one by one, with their places.
    """

    title: str
    form: Any
    boards: tuple[tuple[str, str], ...]
    add_board: str
    refusal: str = ""
    problems: tuple[Problem, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ColumnsPage:
    """Matching the columns of a spreadsheet.

    Attributes:
        title: Heading.
        name: Name of the file.
        read_as: How its letters and columns were read.
        kind: What it holds, in words.
        form: The bound form.
        columns: Each column with its question.
        further: Names of the other questions.
        remembered: Whether the match is that of an earlier file.
        sheets: Number and name of each sheet; empty where there is one.
        sheet: Number of the one shown.
        rows: Numbers of the rows that may hold the headings, with their first words.
        row: The one that is taken to.
        again: Address where another file is chosen.
        problems: Each question to be put right: its id, and the sentence.
        refusal: Why the sheet cannot be used; empty where it can.
    """

    title: str
    name: str
    read_as: str
    kind: str
    form: Any
    columns: tuple[ColumnView, ...]
    further: tuple[str, ...]
    remembered: bool
    sheets: tuple[tuple[int, str], ...]
    sheet: int
    rows: tuple[tuple[int, str], ...]
    row: int
    again: str
    problems: tuple[tuple[str, str], ...] = ()
    refusal: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PreviewPage:
    """What a spreadsheet would make.

    Attributes:
        title: Heading.
        name: Name of the file.
        made: What it would make, with its faults.
        count: How many things of each sort, in words.
        there: Rows of what is here already: number, what with its address.
        again: Whether these can be made once more.
        others: How many things the other rows make, in words; empty where they make
            none, or cannot be taken.
        asked: Whether to choose is all that is missing.
        rows: Row, what, facts, what is beside it.
        columns: Address of the match.
        another: Address where another file is chosen.
    """

    title: str
    name: str
    made: Made
    count: tuple[str, ...]
    there: tuple[tuple[int, str, str], ...]
    again: bool
    others: tuple[str, ...]
    asked: bool
    rows: tuple[tuple[str, str, str, str], ...]
    columns: str
    another: str


@bp.get("")
def index(home: str) -> ResponseReturnValue:
    """Ask for a spreadsheet."""
    return _choose(opened(home).record)


@bp.post("")
def take(home: str) -> ResponseReturnValue:
    """Keep a spreadsheet waiting, if it can be read."""
    record = opened(home).record
    file = request.files.get("table")
    kind = request.form.get("kind", "")
    try:
        if kind not in KINDS:
            raise InvalidError("Choose what the file holds.")
        if kind == "ways" and not record.boards:
            raise InvalidError("There is no board yet. Add the board first.")
        if file is None or not file.filename:
            raise InvalidError("Choose a file first.")
        with closing(file):
            workbook = workbook_from(file.read(MOST_BYTES + 1), file.filename)
    except AppError as error:
        return _choose(record, error), 422
    token = begin(_folder(), _waiting(record, kind, workbook), _now())
    return redirect(url_for(".columns", home=home, token=token), 303)


@bp.get("/<token>/columns")
def columns(home: str, token: str) -> ResponseReturnValue:
    """Ask what each column holds."""
    record = opened(home).record
    file = go_on(_folder(), token, home, _now())
    return _columns(record, file)


@bp.post("/<token>/columns")
def match(home: str, token: str) -> ResponseReturnValue:
    """Take what each column holds, and remember it for the next file like it."""
    with change() as connection:
        record = opened_to_change(connection, home).record
        file = go_on(_folder(), token, home, _now())
        sheet = _number("sheet", file.sheet)
        chosen = usable(file.workbook, sheet)
        start, _ = first_match(connection, file.kind, chosen, _number("row", 0))
        form = ColumnsForm(record, file, chosen, start, "")
        if form.valid():
            matched(connection, _folder(), token, form.said(sheet))
            return redirect(url_for(".preview", home=home, token=token), 303)
    return _columns(record, file, form), 422


@bp.get("/<token>/preview")
def preview(home: str, token: str) -> ResponseReturnValue:
    """Show everything that would be made, and every cell that cannot be taken."""
    record = opened(home).record
    file = go_on(_folder(), token, home, _now())
    if file.match is None:
        return redirect(url_for(".columns", home=home, token=token))
    return _preview(record, file, token)


@bp.post("/<token>/preview")
def store(home: str, token: str) -> ResponseReturnValue:
    """Take all of it in as one change, or nothing."""
    with change() as connection:
        start = opened_to_change(connection, home)
        sent = change_sent_as(connection, start.key, token)
        if sent is not None:
            return redirect(url_for("homes.show", home=home, done=sent.key), 303)
        file = go_on(_folder(), token, home, _now())
        take = request.form.get("take", "")
        if take not in TAKES and outcome(start.record, file).there:
            return _preview(start.record, file, token, asked=True), 422
        chosen = file.model_copy(update={"only_new": take == "others"})
        done, made = carry_out(connection, start, chosen, token)
        if made.faults:
            return _preview(start.record, file, token), 422
    finished(_folder(), token)
    return redirect(_after(home, file, done), 303)


def _folder() -> Path:
    folder: Path = current_app.config["WAITING"]
    return folder


def _now() -> datetime:
    return datetime.now(UTC)


def _number(name: str, usual: int) -> int:
    text = request.values.get(name, "")
    return int(text) if text.isascii() and text.isdecimal() and len(text) < 7 else usual


def _waiting(record: Record, kind: str, workbook: Workbook) -> Waiting:
    first = next((n for n, s in enumerate(workbook.sheets) if s.rows), 0)
    board = record.find(Board, request.args.get("board"))
    return Waiting.model_validate(
        {
            "home": record.home.ref,
            "kind": kind,
            "workbook": workbook,
            "sheet": first,
            "board": board.ref if board else None,
        }
    )


def _after(home: str, file: Waiting, done: int | None) -> str:
    if file.kind == "ways" and file.board:
        return url_for("boards.show", home=home, ref=file.board, done=done)
    return url_for(LISTS[file.kind], home=home, done=done)


def _choose(record: Record, error: AppError | None = None) -> str:
    home = record.home.ref
    asked = request.form.get("kind") or request.args.get("kind", "")
    form = type("FileForm", (FlaskForm,), {"kind": kind_field(asked)})()
    page = ChoosePage(
        title="The spreadsheet was not taken" if error else "Bring in a spreadsheet",
        form=form,
        boards=tuple(
            (b.name, url_for("typed_lists.show", home=home, ref=b.ref))
            for b in record.boards
        ),
        add_board=url_for("items.new", home=home, plural="boards"),
        refusal=error.sentence if error else "",
        problems=error.problems if error else (),
    )
    return render_template("pages/spreadsheets/choose.html", page=page)


def _columns(record: Record, file: Waiting, form: ColumnsForm | None = None) -> str:
    """Show the columns of the sheet asked for, as guessed, remembered or sent."""
    number = _number("sheet", file.sheet)
    refusal, remembered = "", False
    try:
        sheet = usable(file.workbook, number)
    except InvalidError as error:
        refusal, number = error.sentence, file.sheet
        sheet = usable(file.workbook, number)
    found, remembered = first_match(read(), file.kind, sheet, _number("row", 0))
    if file.match and not {"sheet", "row"} & set(request.values):
        found, remembered = file.match, True
    if form is None:
        basis = "As last time" if remembered else "A guess"
        form = ColumnsForm(record, file, sheet, found, basis)
    sheets = tuple((n, s.name) for n, s in enumerate(file.workbook.sheets))
    page = ColumnsPage(
        title="What the columns hold",
        name=file.workbook.name,
        read_as=file.workbook.read_as,
        kind=KINDS[file.kind],
        form=form.form,
        columns=form.columns,
        further=form.further,
        remembered=remembered,
        sheets=sheets if len(sheets) > 1 else (),
        sheet=number,
        rows=_rows(sheet.rows),
        row=found.row,
        again=url_for(".index", home=record.home.ref, kind=file.kind),
        problems=_problems(form),
        refusal=refusal,
    )
    return render_template("pages/spreadsheets/columns.html", page=page)


def _rows(rows: Sequence[Sequence[str]]) -> tuple[tuple[int, str], ...]:
    """Return the rows that may hold the headings, each with its first words."""
    found = []
    for number, cells in enumerate(rows[:MOST_HEADING_ROWS], 1):
        words = list(filter(None, map(tidied, cells)))
        if words:
            said = ", ".join(word[:20] for word in words[:3])
            found.append((number, f"Row {number}: {said}"))
    return tuple(found)


def _problems(form: ColumnsForm) -> tuple[tuple[str, str], ...]:
    return tuple(
        (field.id, f"{field.label.text}: {sentence}")
        for field in form.form
        for sentence in field.errors
    )


def _preview(record: Record, file: Waiting, token: str, *, asked: bool = False) -> str:
    """Show what a file makes: all of it, else what of it is not here already."""
    home = record.home.ref
    every = outcome(record, file)
    others = outcome(record, file.model_copy(update={"only_new": True}))
    made = others if every.there and every.faults else every
    page = PreviewPage(
        title="Nothing can be taken yet" if made.faults else "What it would make",
        name=file.workbook.name,
        made=made,
        count=() if made.faults else counted(record, made.record),
        there=tuple(_there(record, there) for there in every.there),
        again=not every.faults,
        others=() if others.faults else counted(record, others.record),
        asked=asked,
        rows=preview_rows(made),
        columns=url_for(".columns", home=home, token=token),
        another=url_for(".index", home=home, kind=file.kind),
    )
    return render_template("pages/spreadsheets/preview.html", page=page)


def _there(record: Record, there: There) -> tuple[int, str, str]:
    url = item_url(record.home.ref, record.by_ref[there.ref])
    return there.row, f"{there.what} ({there.ref})", url


def preview_rows(made: Made) -> tuple[tuple[str, str, str, str], ...]:
    """Return what is made as rows of a table: row, what, facts, beside."""
    return tuple(
        (
            str(row.row),
            row.what,
            "; ".join(f"{label}: {words}" for label, words in row.facts) or "-",
            " ".join(row.beside) or "-",
        )
        for row in made.rows
    )
