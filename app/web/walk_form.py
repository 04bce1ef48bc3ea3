"""What the walk's forms send: a point by kind and place, a mark on a point."""

from __future__ import annotations

import secrets
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Any

from flask import request
from flask_wtf import FlaskForm
from pydantic import ValidationError
from wtforms import HiddenField

from app.domain.edits import new_ref
from app.domain.record import Point, Record, Room, specs
from app.domain.record.choices import CARE, LOOKED_BEHIND
from app.errors import InvalidError
from app.web.fields import field_for, tidy

# The form has these fields of a point; a button may give the place, words add to it.
ASKED = ("kind", "place", "count")
# A place that is touched has room beside it.
MOST_WORDS = 80
COUNTED = {
    "inputmode": "numeric",
    "pattern": "[1-9][0-9]?",
    "title": "A number from 1 to 99",
}
# What a phone may be late by without its being said.
SOON = timedelta(minutes=2)
# Care that is marked with one touch: code, word on the button.
CARE_MARKS = {
    "freezer": "Freezer",
    "router": "Router",
    "alarm": "Alarm",
    "medical": "Medical",
    "heating": "Heating",
}
MOST_ALIKE = 99
BEHIND_MARKS = {"no": "Not looked behind", "no_access": "Could not get at it"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """A button that marks a point.

    Attributes:
        text: What stands on it.
        value: What it sends.
        on: Whether the point is so marked; None for what is no mark.
    """

    text: str
    value: str
    on: bool | None


class AddForm:
    """The form that adds a point of a room.

    Attributes:
        form: The bound form, with a key that lets it count once.
    """

    def __init__(self, record: Record, kind: str = "") -> None:
        by_name = {spec.name: spec for spec in specs(Point)}
        fields: dict[str, Any] = {n: field_for(by_name[n], record) for n in ASKED}
        fields["once"] = HiddenField()
        form_class = type("AddForm", (FlaskForm,), fields)
        data = {"kind": kind, "count": 1, "once": secrets.token_hex(8)}
        self.form: Any = form_class(data=data)
        self.form.place.label.text = "Or in your own words"
        self.form.place.description = ""
        self.form.place.render_kw = {"autocomplete": "off", "maxlength": MOST_WORDS}
        self.form.count.render_kw = COUNTED

    def point(self, record: Record, room: Room) -> Point | None:
        """Return the point that was sent; None, and sentences, when it is none."""
        if not self.form.validate():
            return None
        values = {name: self.form[name].value() for name in ASKED}
        values["place"] = ", ".join(p for p in (_touched(), values["place"]) if p)
        try:
            return Point(ref=new_ref(record, Point), room=room.ref, **values)
        except ValidationError as error:
            for one in error.errors(include_url=False):
                message = one["msg"].removeprefix("Value error, ")
                self.form[str(one["loc"][0])].errors = [f"This: {message}."]
            return None

    @property
    def errors(self) -> dict[str, list[str]]:
        """What there is to put right, by field."""
        return {f.name: [str(e) for e in f.errors] for f in self.form if f.errors}


def _touched() -> str:
    """Return the place whose button was touched."""
    return tidy(request.form.get("at", ""))


def when_made() -> str:
    """Return when a form was filled in, if it was sent late, in words.

    The browser says so by its own clock, which may be wrong; what is no moment is not
    worth losing a point for.
    """
    try:
        at = datetime.fromisoformat(request.form.get("made_at", ""))
        if at.tzinfo is None or datetime.now(UTC) - at < SOON:
            return ""
        when = f"{at.astimezone():%H:%M on %-d %B}"
    except (ValueError, OverflowError):
        return ""
    return f" Written down {when}, by the clock of the phone."


def marks_of(point: Point) -> tuple[tuple[str, tuple[Mark, ...]], ...]:
    """Return the buttons of a point, what one touch changes, in groups with heads."""
    more = Mark(text="One more alike", value=f"count={point.count + 1}", on=None)
    care = tuple(
        _mark("care", code, word, on=code in point.care)
        for code, word in CARE_MARKS.items()
    )
    behind = tuple(
        _mark("behind", code, word, on=point.looked_behind == code)
        for code, word in BEHIND_MARKS.items()
    )
    return (
        ("How it was looked at", behind),
        ("Missed if it goes off", care),
        ("More of it", (more,) if point.count < MOST_ALIKE else ()),
    )


def marked(point: Point, sent: str) -> tuple[Point, str]:
    """Return a point with a mark as sent, and a sentence.

    A mark says how the point is to be, not what to change: sent twice it counts once.

    Raises:
        InvalidError: It is no mark of the walk.
    """
    what, _, value = sent.partition("=")
    off, code = value.startswith("-"), value.removeprefix("-")
    if what == "count" and code.isascii() and code.isdigit():
        return _with(point, count=int(code)), f"{point.title}: {code} alike."
    if what == "care" and code in CARE_MARKS:
        care = set(point.care) - {code} if off else {*point.care, code}
        kept = tuple(c for c in CARE if c in care)
        word = CARE[code].lower()
        said = f"not marked for {word}" if off else f"missed if it goes off, {word}"
        return _with(point, care=kept), f"{point.title}: {said}."
    if what == "behind" and code in BEHIND_MARKS:
        behind = "unknown" if off else code
        word = "looked behind, not known" if off else BEHIND_MARKS[code].lower()
        return _with(point, looked_behind=behind), f"{point.title}: {word}."
    raise InvalidError("That is no mark of this page. Go back, and touch one there.")


def facts_of_point(point: Point) -> str:
    """Return what the walk notes of a point beside its title, in words."""
    found = [f"{point.count} alike"] if point.count > 1 else []
    if point.care:
        words = ", ".join(CARE[code].lower() for code in point.care)
        found.append(f"missed if it goes off: {words}")
    if point.looked_behind in BEHIND_MARKS:
        word = LOOKED_BEHIND[point.looked_behind].lower()
        found.append("not looked behind" if word == "no" else word)
    return "; ".join(found)


def _mark(what: str, code: str, word: str, *, on: bool) -> Mark:
    return Mark(text=word, value=f"{what}={'-' if on else ''}{code}", on=on)


def _with(point: Point, **changes: Any) -> Point:
    """Return a point with changes that hold.

    Raises:
        InvalidError: They do not.
    """
    values = {spec.name: getattr(point, spec.name) for spec in specs(Point)}
    try:
        return Point.model_validate(values | changes)
    except ValidationError:
        raise InvalidError("Enter from 1 to 99 alike.") from None
