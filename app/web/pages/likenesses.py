"""A new home begun from another of the same type: one of here, or a document."""

from __future__ import annotations

from contextlib import closing
from dataclasses import dataclass
from typing import Any

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from flask_wtf import FlaskForm
from sqlalchemy import Connection
from wtforms.fields.choices import SelectChoice  # type: ignore[attr-defined]

from app.domain.record import Home, Record, specs
from app.domain.spreadsheet import likeness
from app.errors import AppError, InvalidError, Problem
from app.interchange import from_document
from app.services.homes import add_home, free_home_ref, open_home
from app.store.homes import all_homes
from app.store.settings import set_home_sent_as
from app.web.fields import NOTHING, ChoiceField, field_for
from app.web.forms import home_made, sent_once
from app.web.pages.documents import MOST_BYTES
from app.web.pages.homes import EMPTY, ref_from
from app.web.session import change, read

bp = Blueprint("likenesses", __name__)
NAME = next(spec for spec in specs(Home) if spec.name == "name")


@dataclass(frozen=True, slots=True, kw_only=True)
class LikenessPage:
    """Beginning a home from another.

    Attributes:
        title: Heading.
        form: Its name, and which home it is like.
        back: Address to go back to.
        refusal: Why it was not begun; empty before it was sent.
        problems: The reasons, one by one, with their places.
    """

    title: str
    form: Any
    back: str
    refusal: str = ""
    problems: tuple[Problem, ...] = ()


@bp.get("/like-another")
def new() -> ResponseReturnValue:
    """Ask for a name, and for the other home."""
    return _page(_form(read()))


@bp.post("/like-another")
def create() -> ResponseReturnValue:
    """Begin a home that is like another."""
    with change() as connection:
        form = _form(connection)
        if made := home_made(connection):
            return redirect(url_for("homes.show", home=made), 303)
        try:
            if form.validate():
                other = _other(connection, form)
                ref = free_home_ref(connection, ref_from(form.named.data))
                home = Home(ref=ref, name=form.named.data)
                add_home(connection, likeness(other, home))
                set_home_sent_as(connection, sent_once(), ref)
                return redirect(url_for("homes.show", home=ref), 303)
        except AppError as error:
            return _page(form, error), 422
    return _page(form), 422


def _form(connection: Connection) -> Any:
    homes = [SelectChoice(h.ref, h.name) for h in all_homes(connection)]
    first = SelectChoice(NOTHING, "None of these: a document")
    fields = {
        "named": field_for(NAME, EMPTY),
        "other": ChoiceField(
            label="The home that it is like",
            choices=[*homes, first],
            default=homes[0].value if homes else NOTHING,
        ),
    }
    return type("LikenessForm", (FlaskForm,), fields)()


def _other(connection: Connection, form: Any) -> Record:
    """Return the record of the home that was chosen, or of the document.

    Raises:
        InvalidError: Neither was given, or both.
    """
    file = request.files.get("document")
    sent = file is not None and bool(file.filename)
    if sent and form.other.data:
        raise InvalidError("Choose a home or a document, not both.")
    if form.other.data:
        return open_home(connection, form.other.data).record
    if file is None or not sent:
        raise InvalidError("Choose a home, or a document.")
    with closing(file):
        return from_document(file.read(MOST_BYTES))


def _page(form: Any, error: AppError | None = None) -> str:
    page = LikenessPage(
        title="Begin a home like another",
        form=form,
        back=url_for("homes.index"),
        refusal=error.sentence if error else "",
        problems=error.problems if error else (),
    )
    return render_template("pages/homes/like.html", page=page)
