"""Form fields made from the record's own declarations, with our own sentences."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from datetime import UTC, date, datetime
from decimal import Decimal, InvalidOperation
from typing import Any

from wtforms import (
    Field,
    SelectField,
    SelectMultipleField,
    StringField,
    TextAreaField,
    widgets,
)
from wtforms.fields.choices import SelectChoice  # type: ignore[attr-defined]
from wtforms.validators import ValidationError

from app.domain.record import LONG, REF_PATTERN, SORTS, FieldSpec, Item, Record
from app.web.papers import today

NOTHING = ""
# Labels that make no sentence as they are.
ASKED_AS = {
    "tied to": "what it is tied to",
    "from the left": "how far it is from the left",
    "from the top": "how far it is from the top",
    "labels across": "how many labels there are across",
    "labels down": "how many labels there are down",
}
# Years that an hour may be of; outside them it is a slip of the hand.
EARLIEST, LATEST = 1880, 2200
# Control characters, what turns the writing round, and what is no character.
UNSEEN = re.compile(
    r"[\x00-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069"
    r"\ud800-\udfff\ufdd0-\ufdef\ufffe\uffff]"
)
# A comma may stand for the point, but 7,200 is seven thousand to most readers here.
THOUSANDS = re.compile(r"[1-9][0-9]{0,2}(,[0-9]{3})+(\.[0-9]*)?")


class TextField(StringField):
    """A line of text, trimmed; a lone hyphen may say that nothing is there."""

    def __init__(self, *args: Any, spec: FieldSpec, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.spec = spec

    def process_formdata(self, valuelist: list[Any]) -> None:
        """Take what was typed."""
        if valuelist:
            self.data = tidy(valuelist[0])

    def value(self) -> str | None:
        """Return what the record is to hold."""
        text = self.data or ""
        if self.spec.optional:
            return "" if text == "-" else text or None
        return text

    def _value(self) -> str:
        if self.raw_data:
            return _seen(self.raw_data[0])
        return "-" if self.spec.optional and self.data == "" else self.data or ""


class LongField(TextAreaField):
    """Several lines of text."""

    def process_formdata(self, valuelist: list[Any]) -> None:
        """Take what was typed."""
        if valuelist:
            self.data = tidy(valuelist[0], lines=True)

    def value(self) -> str:
        """Return what the record is to hold."""
        return self.data or ""


class NumberField(Field):
    """A number in a text box; comma and point are both taken."""

    widget = widgets.TextInput()

    def __init__(self, *args: Any, spec: FieldSpec, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.spec = spec
        self.unit = spec.unit

    def process_formdata(self, valuelist: list[Any]) -> None:
        """Take what was typed.

        Raises:
            ValueError: It is no number that the record can hold; a sentence says so.
        """
        text = tidy(valuelist[0]) if valuelist else ""
        self.data = _number(text, self.spec) if text else None

    def value(self) -> Decimal | int | None:
        """Return what the record is to hold."""
        number: Decimal | int | None = self.data
        return self.spec.default if number is None else number

    def _value(self) -> str:
        if self.raw_data:
            return _seen(self.raw_data[0])
        return "" if self.data is None else str(self.data)


class DayField(Field):
    """A day."""

    widget = widgets.DateInput()

    def process_formdata(self, valuelist: list[Any]) -> None:
        """Take what was typed.

        Raises:
            ValueError: It is no day; a sentence says what to enter.
        """
        text = tidy(valuelist[0]) if valuelist else ""
        try:
            self.data = date.fromisoformat(text) if text else None
        except ValueError:
            raise ValueError(
                "Enter a day as year, month, day, such as 2026-03-01."
            ) from None

    def value(self) -> date | None:
        """Return what the record is to hold."""
        day: date | None = self.data
        return day

    def _value(self) -> str:
        if self.raw_data:
            return _seen(self.raw_data[0])
        return self.data.isoformat() if self.data else ""


class MomentField(Field):
    """A day and an hour by this machine's clock; the record holds them in UTC."""

    widget = widgets.DateTimeLocalInput()

    def process_formdata(self, valuelist: list[Any]) -> None:
        """Take what was typed.

        Raises:
            ValueError: It is no day and hour; a sentence says what to enter.
        """
        text = tidy(valuelist[0]) if valuelist else ""
        try:
            self.data = _in_utc(text) if text else None
        except (ValueError, OverflowError):
            raise ValueError(
                "Enter a day and an hour, such as 2026-03-01 14:05."
            ) from None

    def value(self) -> str | None:
        """Return what the record is to hold."""
        moment: str | None = self.data
        return moment

    def _value(self) -> str:
        if self.raw_data:
            return _seen(self.raw_data[0])
        if not self.data:
            return ""
        here = datetime.fromisoformat(self.data).astimezone()
        return here.strftime("%Y-%m-%dT%H:%M:%S")


def _in_utc(text: str) -> str:
    at = datetime.fromisoformat(text).astimezone(UTC)
    if not EARLIEST <= at.year <= LATEST:
        raise ValueError(text)
    return at.strftime("%Y-%m-%dT%H:%M:%SZ")


class ChoiceField(SelectField):
    """One of a list."""

    def pre_validate(self, _form: Any) -> None:
        """Take what is in the list only."""
        if (self.data or NOTHING) not in set(_codes(self)):
            raise ValidationError("Choose one from the list.")

    def value(self) -> str | None:
        """Return what the record is to hold."""
        return self.data or None


class TicksField(SelectMultipleField):
    """Any of a list, each with a box to tick."""

    widget = widgets.ListWidget(prefix_label=False)
    option_widget = widgets.CheckboxInput()
    type = "MultiCheckboxField"

    def pre_validate(self, _form: Any) -> None:
        """Take what is in the list only."""
        if not set(self.data or ()) <= set(_codes(self)):
            raise ValidationError("Choose from the list only.")

    def value(self) -> tuple[str, ...]:
        """Return what the record is to hold, in the order of the list."""
        chosen = set(self.data or ())
        return tuple(code for code in _codes(self) if code in chosen)


def _codes(field: SelectField | SelectMultipleField) -> list[str]:
    return [str(choice[0]) for choice in field.iter_choices()]


def options(choices: Mapping[str, str]) -> list[SelectChoice]:
    """Return codes with their words as what may be chosen."""
    return [SelectChoice(code, word) for code, word in choices.items()]


def field_for(spec: FieldSpec, record: Record) -> Any:
    """Return the unbound form field of a field of the record."""
    common: dict[str, Any] = {
        "label": spec.label,
        "description": spec.hint,
        "default": spec.default,
        "validators": _validators(spec),
    }
    if spec.type in ("int", "decimal"):
        mode = "numeric" if spec.type == "int" else "decimal"
        return NumberField(spec=spec, render_kw={"inputmode": mode}, **common)
    if spec.type in ("choice", "ref"):
        return ChoiceField(choices=choices_of(spec, record), **common)
    if spec.type == "choices":
        return TicksField(choices=options(spec.choices), **common)
    if spec.type in ("date", "moment"):
        return _day_or_moment(spec, common)
    if spec.type == "long":
        return LongField(render_kw={"rows": 3}, **common)
    return TextField(spec=spec, render_kw={"autocomplete": "off"}, **common)


def _day_or_moment(spec: FieldSpec, common: dict[str, Any]) -> Any:
    if spec.type == "date":
        return DayField(**common)
    by = {"description": "By the clock of the machine that the program runs on."}
    return MomentField(render_kw={"step": "1"}, **(common | by))


def choices_of(spec: FieldSpec, record: Record) -> list[SelectChoice]:
    """Return what may be chosen: codes with their words, or things of the record."""
    if spec.type == "choice":
        first = [SelectChoice(NOTHING, "Choose")] if spec.required else []
        return first + options(spec.choices)
    open_word = "None" if spec.blank else "Not recorded"
    first = SelectChoice(NOTHING, "Choose" if spec.required else open_word)
    return [first, *_things(spec.sorts, record)]


def _things(sorts: Sequence[str], record: Record) -> list[SelectChoice]:
    found = []
    for sort in sorts:
        cls = SORTS[sort]
        group = cls.noun if len(sorts) > 1 else None
        found += [_thing(item, group) for item in record.of(cls)]
    return found


def _thing(item: Item, group: str | None) -> SelectChoice:
    return SelectChoice(item.ref, f"{item.title} ({item.ref})", optgroup=group)


def _validators(spec: FieldSpec) -> list[Callable[[Any, Any], None]]:
    checks: list[Callable[[Any, Any], None]] = []
    if spec.type in ("text", "long"):
        checks.append(_length(spec))
    if spec.name == "ref":
        checks.append(_is_ref)
    if spec.come:
        checks.append(has_come)
    if spec.required:
        checks.append(_needed(spec))
    return checks


def has_come(_form: Any, field: Any) -> None:
    """Refuse a day, or a moment, that is still to come.

    Raises:
        ValidationError: It is.
    """
    said = field.data
    if isinstance(said, str):
        said = datetime.fromisoformat(said).astimezone().date()
    if said and said > today():
        raise ValidationError("That day is still to come. Enter one that has come.")


def fits(most: int) -> Callable[[Any, Any], None]:
    """Return a check that a text is not longer than the record takes."""

    def check(_form: Any, field: Any) -> None:
        if len(tidy(field.data or "")) > most:
            raise ValidationError(f"Enter {most} characters at most.")

    return check


def _needed(spec: FieldSpec) -> Callable[[Any, Any], None]:
    choosing = spec.type in ("choice", "ref")
    verb = "Choose" if choosing else "Enter"
    thing = _thing_needed(spec.label[0].lower() + spec.label[1:])

    def check(_form: Any, field: Any) -> None:
        if field.data in (None, ""):
            raise ValidationError(f"{verb} {thing}.")

    check.field_flags = {"required": True}  # type: ignore[attr-defined]
    return check


def _thing_needed(label: str) -> str:
    """Return a label as what a sentence asks for: a name, what it is, its load."""
    if label in ASKED_AS:
        return ASKED_AS[label]
    if label.startswith(("what ", "its ")):
        return label
    return f"the {label}" if " " in label else f"a {label}"


def _length(spec: FieldSpec) -> Callable[[Any, Any], None]:
    most = LONG if spec.type == "long" else spec.max_length

    def check(_form: Any, field: Any) -> None:
        if len(field.data or "") > most:
            raise ValidationError(
                f"Enter at most {most} characters; there are {len(field.data)}."
            )

    return check


def _is_ref(_form: Any, field: Any) -> None:
    if field.data and not re.fullmatch(REF_PATTERN, field.data):
        raise ValidationError(
            "Enter a reference of up to 32 letters, digits, dots and hyphens, "
            "such as P12."
        )


def _number(text: str, spec: FieldSpec) -> Decimal | int:
    if THOUSANDS.fullmatch(text):
        raise ValueError("Write it without a comma, such as 7200 or 7.2.")
    try:
        number = Decimal(text.replace(",", ".").replace(" ", ""))
    except InvalidOperation:
        number = Decimal("NaN")
    example = _example(spec)
    if not number.is_finite():
        raise ValueError(f"Enter a number, such as {example}.")
    _in_bounds(number, spec)
    if spec.type == "int":
        if number != number.to_integral_value():
            raise ValueError(f"Enter a whole number, such as {example}.")
        return int(number)
    if number != round(number, 4):
        raise ValueError("Enter at most four digits after the point.")
    return Decimal(f"{number.normalize():f}")


def _example(spec: FieldSpec) -> str:
    """Return a number that the field takes, such as a year where it asks for one."""
    if spec.type != "int":
        return "2.5"
    return "1965" if spec.low and spec.low > 1000 else "2"


def _in_bounds(number: Decimal, spec: FieldSpec) -> None:
    low, high = spec.low, spec.high
    if spec.nonzero and number == 0:
        raise ValueError("Enter a number above 0, or leave it open.")
    if (low is not None and number < low) or (high is not None and number > high):
        raise ValueError(f"Enter a number from {low} to {high}.")


def tidy(text: str, *, lines: bool = False) -> str:
    """Trim it, and leave out what no screen shows."""
    joined = _seen(text).replace("\t", "").strip()
    return joined if lines else joined.replace("\n", " ")


def _seen(text: str) -> str:
    """Return what a screen shows of a text."""
    plain = text.replace("\r\n", "\n").replace("\r", "\n")
    return "".join(c for c in plain if c in "\n\t" or not UNSEEN.fullmatch(c))
