"""A board's labels typed as a list: one box, one way a line, all or nothing."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from typing import Any

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from flask_wtf import FlaskForm
from wtforms import HiddenField

from app.domain.record import Board, Record
from app.domain.spreadsheet import Asked, Made, made_of_list
from app.services.homes import save
from app.services.spreadsheets import counted
from app.web.fields import LongField
from app.web.forms import sent_before, sent_once
from app.web.pages.spreadsheets import preview_rows
from app.web.session import change, needed, opened, opened_to_change
from app.web.spreadsheet_form import unsaid_field

bp = Blueprint("typed_lists", __name__, url_prefix="/homes/<home>/boards/<ref>/list")
ROWS = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class ListPage:
    """A board's labels as a list.

    Attributes:
        title: Heading.
        form: The form: the list, and what a way is where no line says so.
        shown: Whether what it makes is shown.
        made: What it makes, with its faults.
        count: How many things of each sort, in words.
        rows: Line, what, facts, what is beside it.
        changed: Whether the list was changed since what it makes was shown.
        back: Address to go back to.
    """

    title: str
    form: Any
    shown: bool
    made: Made | None
    count: tuple[str, ...]
    rows: tuple[tuple[str, str, str, str], ...]
    changed: bool
    back: str


@bp.get("")
def show(home: str, ref: str) -> ResponseReturnValue:
    """Ask for the list."""
    record = opened(home).record
    return _page(record, needed(record, Board, ref), _form(), None)


@bp.post("")
def enter(home: str, ref: str) -> ResponseReturnValue:
    """Show what the list makes; or take all of it, once it was shown, or nothing."""
    with change() as connection:
        start = opened_to_change(connection, home)
        board = needed(start.record, Board, ref)
        if done := sent_before(connection, start.key):
            return redirect(url_for("boards.show", home=home, ref=ref, done=done), 303)
        form = _form()
        valid = form.validate()
        made = _made(start.record, board, form)
        seen = form.seen.data == _mark(form)
        saving = request.form.get("then") == "save"
        if valid and saving and seen and not made.faults:
            sentence = f"Entered the ways of {board.name} ({ref}) from a list."
            done = save(connection, start, made.record, sentence, once=sent_once())
            return redirect(url_for("boards.show", home=home, ref=ref, done=done), 303)
    changed = saving and not seen
    status = 200 if valid and not made.faults and not changed else 422
    return _page(start.record, board, form, made, changed=changed), status


def _form() -> Any:
    fields = {
        "lines": LongField(
            label="One way a line",
            description="Its number, the very words of its label, then what is printed "
            "on the device: 1 Sockets up B32",
            render_kw={"rows": ROWS, "autocomplete": "off", "spellcheck": "false"},
        ),
        "kind_unsaid": unsaid_field(),
        "seen": HiddenField(),
    }
    return type("ListForm", (FlaskForm,), fields)()


def _mark(form: Any) -> str:
    text = f"{form.kind_unsaid.data}\n{form.lines.data}"
    return hashlib.sha256(text.encode()).hexdigest()[:16]


def _made(record: Record, board: Board, form: Any) -> Made:
    kind = "unknown" if form.kind_unsaid.errors else form.kind_unsaid.data
    asked = Asked(board=board.ref, kind_unsaid=kind)
    return made_of_list(form.lines.data or "", record, asked)


def _page(
    record: Record, board: Board, form: Any, made: Made | None, *, changed: bool = False
) -> str:
    good = made is not None and not made.faults
    mark = _mark(form) if good else ""
    form.seen.raw_data, form.seen.data = [mark], mark
    form.lines.errors = [
        *form.lines.errors,
        *(fault.sentence for fault in (made.faults if made else ())),
    ]
    page = ListPage(
        title=f"Ways of {board.name} as a list",
        form=form,
        shown=good,
        made=made,
        count=counted(record, made.record) if made and good else (),
        rows=preview_rows(made) if made else (),
        changed=changed,
        back=url_for("boards.show", home=record.home.ref, ref=board.ref),
    )
    return render_template("pages/spreadsheets/list.html", page=page)
