"""Label sheets of one's own: their grid, measured with a ruler."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from flask import Blueprint, redirect, render_template, url_for
from flask.typing import ResponseReturnValue
from flask_wtf import FlaskForm

from app.domain.labels import SHEETS, LabelSheet
from app.domain.record import Record, specs
from app.store.label_sheets import add_sheet, own_sheets, remove_sheet
from app.web.fields import field_for
from app.web.session import change, opened, opened_to_change, read

bp = Blueprint("label_sheets", __name__, url_prefix="/homes/<home>/labels/sheets")


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetsPage:
    """The label sheets.

    Attributes:
        title: Heading.
        own: Sheets that were added: name, margins, address that removes it.
        offered: Names of the sheets that are always there.
        form: The form of one more.
        names: Names of its fields, in order.
        back: Address to go back to.
    """

    title: str
    own: tuple[tuple[str, str, str], ...]
    offered: tuple[str, ...]
    form: Any
    names: tuple[str, ...]
    back: str


@bp.get("")
def index(home: str) -> ResponseReturnValue:
    """List the sheets, with the form of one more."""
    record = opened(home).record
    return _show(record, own_sheets(read()), _form(record))


@bp.post("")
def add(home: str) -> ResponseReturnValue:
    """Keep one more sheet."""
    with change() as connection:
        record = opened_to_change(connection, home).record
        form = _form(record)
        sheet = _sheet(form) if form.validate() else None
        if sheet is not None:
            add_sheet(connection, sheet)
            return redirect(url_for(".index", home=home), 303)
        return _show(record, own_sheets(connection), form), 422


@bp.post("/<int:key>/remove")
def remove(home: str, key: int) -> ResponseReturnValue:
    """Remove a sheet that was added."""
    with change() as connection:
        opened_to_change(connection, home)
        remove_sheet(connection, key)
    return redirect(url_for(".index", home=home), 303)


def _form(record: Record) -> Any:
    fields = {spec.name: field_for(spec, record) for spec in specs(LabelSheet)}
    return type("SheetForm", (FlaskForm,), fields)()


def _sheet(form: Any) -> LabelSheet | None:
    """Return the sheet that a form makes; None, and a sentence, if it is too large."""
    values = {spec.name: form[spec.name].value() for spec in specs(LabelSheet)}
    sheet = LabelSheet.model_validate(values)
    across, down = sheet.over_the_edge()
    form.width_mm.errors = [*form.width_mm.errors, *([across] if across else [])]
    form.height_mm.errors = [*form.height_mm.errors, *([down] if down else [])]
    return None if across or down else sheet


def _show(record: Record, own: dict[int, LabelSheet], form: Any) -> str:
    home = record.home.ref
    page = SheetsPage(
        title="Label sheets",
        own=tuple(
            (
                sheet.name,
                f"margins {sheet.left_mm} and {sheet.top_mm} mm",
                url_for(".remove", home=home, key=key),
            )
            for key, sheet in own.items()
        ),
        offered=tuple(sheet.name for sheet in SHEETS),
        form=form,
        names=tuple(spec.name for spec in specs(LabelSheet)),
        back=url_for("labels.index", home=home),
    )
    return render_template("pages/labels/sheets.html", page=page)
