"""The form that says which labels are wanted, and how; all of it in the address."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from flask import request
from werkzeug.datastructures import MultiDict
from wtforms import Form
from wtforms.fields.choices import SelectChoice  # type: ignore[attr-defined]

from app.domain.labels import SHEETS, Choice, Label, LabelSheet
from app.domain.record import Record, specs
from app.services.papers import sheets_by_code
from app.web.fields import ChoiceField, TicksField, field_for

# What each manner of printing needs to know, besides where the paper lies.
NEEDS = (
    ("Plain paper", ("width_mm", "height_mm")),
    ("A sheet of labels", ("sheet", "start")),
    ("Strips", ("module_mm", "strip_mm")),
    ("If the print lies beside its place", ("right_mm", "down_mm")),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What was asked for.

    Attributes:
        form: The bound form, its sentences beside its fields.
        choice: How to print; None where what was typed cannot be taken.
        sheet: The sheet chosen.
        chosen: References of the devices whose labels are wanted.
    """

    form: Any
    choice: Choice | None
    sheet: LabelSheet
    chosen: frozenset[str]


def asked(
    record: Record, labels: tuple[Label, ...], own: Mapping[int, LabelSheet]
) -> Asked:
    """Read from the address which labels are wanted, and how."""
    sheets = sheets_by_code(own)
    form = _form(record, labels, sheets)
    good = form.validate()
    sheet = sheets.get(form.sheet.data or "", SHEETS[0])
    if good and form.manner.data == "sheet" and form.start.value() > sheet.count:
        form.start.errors = [f"This sheet holds {sheet.count} labels."]
        good = False
    if good and request.args and not form.way.value():
        form.way.errors = ["Tick at least one."]
        good = False
    return Asked(
        form=form,
        choice=_choice(form) if good else None,
        sheet=sheet,
        chosen=frozenset(form.way.value()) if good else frozenset(),
    )


def _choice(form: Any) -> Choice:
    return Choice.model_validate(
        {spec.name: form[spec.name].value() for spec in specs(Choice)}
    )


def _form(
    record: Record, labels: tuple[Label, ...], sheets: Mapping[str, LabelSheet]
) -> Any:
    fields = {spec.name: field_for(spec, record) for spec in specs(Choice)}
    offered = [label for label in labels if not label.blank]
    fields["sheet"] = ChoiceField(
        label="Sheet",
        choices=[SelectChoice(code, sheet.name) for code, sheet in sheets.items()],
        default=next(iter(sheets)),
    )
    fields["way"] = TicksField(
        label="Which labels",
        choices=[SelectChoice(label.ref, _called(label)) for label in offered],
        default=[label.ref for label in offered if label.outgoing],
    )
    data = {spec.name: spec.default for spec in specs(Choice)}
    sent = None
    if request.args:
        first = {"sheet": next(iter(sheets))}
        sent = MultiDict(request.args)
        for name, value in (data | first).items():
            sent.setdefault(name, str(value))
    return type("LabelForm", (Form,), fields)(sent, data=data)


def _called(label: Label) -> str:
    return f"{label.number}: {label.text}" if label.number else label.text
