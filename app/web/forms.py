"""The form of an item, made from its class: the fields that apply, and the values."""

from __future__ import annotations

import hashlib
import json
import secrets
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from flask import request
from flask_wtf import FlaskForm
from pydantic import ValidationError
from sqlalchemy import Connection
from wtforms import HiddenField

from app.domain.days import in_words as words_of_day
from app.domain.record import (
    FieldSpec,
    Item,
    Record,
    fields_of_kind,
    hint_of_kind,
    specs,
)
from app.errors import InvalidError
from app.store.changes import change_sent_as
from app.store.homes import home_id
from app.store.settings import home_sent_as
from app.web.addresses import meaning_url
from app.web.fields import field_for
from app.web.words import in_words

# A list of references is asked for one by one: this many boxes beyond those in use.
SPARE_BOXES = 2
ORDINALS = ("", ", second", ", third", ", fourth", ", fifth", ", sixth")


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """One field that two people have changed.

    Attributes:
        label: The field.
        stored: What stands in the record now.
        typed: What was typed here.
    """

    label: str
    stored: str | None
    typed: str | None


class ItemForm:
    """The form of one item: bound fields, and the item that they make.

    Attributes:
        form: The bound form, with a mark of how the item stood and a key that lets it
            count once.
        shown: Names of the fields that apply to its kind, in order.
        further: Names of the fields that usually do not.

    Where it names the fields that are ``asked``, it keeps the values of the others.
    """

    def __init__(
        self,
        cls: type[Item],
        record: Record,
        values: Mapping[str, Any],
        *,
        mark: str = "",
        kind: str | None = None,
        asked: tuple[str, ...] = (),
    ) -> None:
        self.cls = cls
        self._given = {n: v for n, v in values.items() if asked and n not in asked}
        own = [s for s in specs(cls) if s.name not in self._given]
        boxes = {s.name: _boxes(values, s) for s in own if s.type == "refs"}
        self._boxes = boxes
        by_name = {s.name: _fields(s, record, boxes.get(s.name, 0)) for s in own}
        fields = {
            name: field for some in by_name.values() for name, field in some.items()
        }
        hidden = {"mark": HiddenField(), "once": HiddenField()}
        form_class = type(f"{cls.__name__}Form", (FlaskForm,), fields | hidden)
        data = {**_flat(values), "mark": mark, "once": secrets.token_hex(8)}
        self.form: Any = form_class(data=data)
        for spec in own:
            for name in by_name[spec.name] if spec.term else ():
                self.form[name].meaning_url = meaning_url(spec.term)
        for spec in own:
            if spec.hinted:
                self.form[spec.name].description = hint_of_kind(cls, spec, kind)
        usual = fields_of_kind(cls, kind)
        self.shown = [n for s, some in by_name.items() if s in usual for n in some]
        self.further = [n for n in fields if n not in self.shown]

    def valid(self) -> bool:
        """Return whether what was sent makes an item; sentences say where not."""
        if not self.form.validate():
            return False
        try:
            self.item()
        except ValidationError as error:
            for one in error.errors(include_url=False):
                self._complain(str(one["loc"][0]), one["msg"])
            return False
        return self._in_order()

    def _in_order(self) -> bool:
        """Return whether no day stands before the one that it follows."""
        good = True
        for spec in specs(self.cls):
            day = self._value(spec) if spec.after else None
            first = day and getattr(self.item(), spec.after)
            if first and day < first:
                self.refuse(spec.name, f"That day is before {words_of_day(first)}.")
                good = False
        return good

    def item(self) -> Item:
        """Return the item that the form makes.

        Raises:
            ValidationError: It makes none.
        """
        values = {s.name: self._value(s) for s in specs(self.cls)}
        return self.cls.model_validate(values)

    def refuse(self, name: str, sentence: str) -> None:
        """Set a sentence beside a field."""
        field = self.form[name] if name in self.form else self.form[f"{name}_1"]
        field.errors = [*field.errors, sentence]

    def _complain(self, name: str, message: str) -> None:
        sentence = message.removeprefix("Value error, ")
        self.refuse(name, f"This {sentence}." if sentence[0].islower() else sentence)

    def _value(self, spec: FieldSpec) -> Any:
        if spec.name in self._given:
            return self._given[spec.name]
        if spec.type != "refs":
            return self.form[spec.name].value()
        count = self._boxes[spec.name]
        chosen = (self.form[f"{spec.name}_{n}"].value() for n in range(1, count + 1))
        return tuple(dict.fromkeys(ref for ref in chosen if ref))


def _fields(spec: FieldSpec, record: Record, boxes: int) -> dict[str, Any]:
    if spec.type != "refs":
        return {spec.name: field_for(spec, record)}
    return {
        f"{spec.name}_{n}": field_for(_one_of(spec, n), record)
        for n in range(1, boxes + 1)
    }


def _one_of(spec: FieldSpec, number: int) -> FieldSpec:
    """Return a list of references as the box for its first, second, … one."""
    ordinal = ORDINALS[number - 1] if number <= len(ORDINALS) else f", {number}"
    label = f"{spec.label}{ordinal}"
    hint = spec.hint if number == 1 else ""
    return replace(spec, type="ref", label=label, hint=hint, default=None)


def _boxes(values: Mapping[str, Any], spec: FieldSpec) -> int:
    return len(values.get(spec.name) or ()) + SPARE_BOXES


def _flat(values: Mapping[str, Any]) -> dict[str, Any]:
    """Spread lists of references over their boxes."""
    flat: dict[str, Any] = {}
    for name, value in values.items():
        flat[name] = value
        if isinstance(value, tuple):
            flat |= {f"{name}_{n}": ref for n, ref in enumerate(value, 1)}
    return flat


def sent_once() -> str:
    """Return the key by which a form that is sent twice counts once.

    It holds the page that the form came with, what was typed and where: to go back and
    type something else, or the same on another day, is no repetition.

    Raises:
        InvalidError: The form came from no page of this program.
    """
    if not request.form.get("once"):
        raise InvalidError(
            "This form came without its key, so it could count twice. Load its page "
            "again and send it from there. Nothing was changed."
        )
    own = {"csrf_token", "then"}
    typed = [pair for pair in request.form.items(multi=True) if pair[0] not in own]
    return hashlib.sha256(json.dumps([request.path, *typed]).encode()).hexdigest()[:32]


def sent_before(connection: Connection, home: int) -> int | None:
    """Return the number of the change that this very form made before."""
    earlier = change_sent_as(connection, home, sent_once())
    return earlier.key if earlier else None


def home_made(connection: Connection) -> str:
    """Return the home that this very form made before, if it is there still."""
    ref = home_sent_as(connection, sent_once())
    return ref if home_id(connection, ref) else ""


def values_of(item: Item) -> dict[str, Any]:
    """Return an item's values by field."""
    return {spec.name: getattr(item, spec.name) for spec in specs(type(item))}


def defaults_of(cls: type[Item], names: Iterable[tuple[str, Any]]) -> dict[str, Any]:
    """Return a class's defaults with some values of one's own."""
    return {s.name: s.default for s in specs(cls)} | dict(names)


def differences(
    record: Record, form: ItemForm, item: Item | None
) -> tuple[Difference, ...]:
    """Return where an item as it stands differs from what a form makes."""
    typed = form.item()
    return tuple(
        Difference(
            label=spec.label,
            stored=in_words(spec, getattr(item, spec.name), record),
            typed=in_words(spec, getattr(typed, spec.name), record),
        )
        for spec in specs(form.cls)
        if getattr(item, spec.name) != getattr(typed, spec.name)
    )
