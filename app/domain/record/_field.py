"""How a field of the record is declared: once, for every use made of it.

A field carries its type, bounds, label, hint, unit, choices and what it may refer to.
The rows, the document and its schema, the forms and the search all read them from here.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal
from functools import cache
from typing import Annotated, Any, Literal

from pydantic import (
    AfterValidator,
    BaseModel,
    ConfigDict,
    Field,
    GetCoreSchemaHandler,
    PlainSerializer,
    WithJsonSchema,
)
from pydantic_core import core_schema

REF_PATTERN = r"^[A-Za-z0-9][A-Za-z0-9._-]{0,31}$"
MOMENT_PATTERN = r"^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$"
SHORT, LONG = 120, 4000
# What can be kept back when the record is handed over.
PRIVATE = {
    "mpan": "The meter point number (MPAN)",
    "phones": "Telephone numbers",
    "names": "Names of people",
    "notes": "Notes",
}

FieldType = Literal[
    "text",
    "long",
    "int",
    "decimal",
    "date",
    "moment",
    "choice",
    "choices",
    "ref",
    "refs",
]


class Model(BaseModel):
    """A frozen, strict value of the record; unknown fields are refused."""

    model_config = ConfigDict(frozen=True, strict=True, extra="forbid")


@dataclass(frozen=True, slots=True)
class OneOf:
    """The codes that a field may hold, each with its words."""

    choices: Mapping[str, str]

    def __get_pydantic_core_schema__(
        self, _source: Any, _handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        """Return a schema that takes these codes only."""
        return core_schema.literal_schema(list(self.choices))


@dataclass(frozen=True, slots=True)
class RefTo:
    """The sorts of item that a reference may name, such as ``intake``."""

    sorts: tuple[str, ...]


# Unicode 15, Bidirectional Algorithm (UAX 9): embeddings, overrides, isolates.
TURNING = re.compile("[\u202a-\u202e\u2066-\u2069]")


def _plain_text(value: str) -> str:
    """Refuse what no form or sheet can show: control characters, half characters.

    What turns the direction of writing is left out, for it would turn round the rest of
    a sentence that it came to stand in: letters know their direction without it.
    """
    for character in value:
        if (character < " " and character not in "\n\t") or character == "\x7f":
            raise ValueError("must hold no control characters")
        if "\ud800" <= character <= "\udfff":
            raise ValueError("must hold whole characters")
    return TURNING.sub("", value)


def _one_line(value: str) -> str:
    if "\n" in value or "\t" in value:
        raise ValueError("must stand on one line")
    return value


def _shortest(value: Decimal) -> Decimal:
    """Write a number in one way only: 2.50 is 2.5 and 1E+2 is 100."""
    return Decimal(f"{value.normalize():f}")


def _real_moment(value: str) -> str:
    datetime.fromisoformat(value)
    return value


def _number(value: Decimal) -> int | float:
    return int(value) if value == value.to_integral_value() else float(value)


Ref = Annotated[str, Field(pattern=REF_PATTERN)]
ShortText = Annotated[
    str, Field(max_length=SHORT), AfterValidator(_plain_text), AfterValidator(_one_line)
]
Moment = Annotated[str, Field(pattern=MOMENT_PATTERN), AfterValidator(_real_moment)]
LongText = Annotated[str, Field(max_length=LONG), AfterValidator(_plain_text)]
Number = Annotated[
    Decimal,
    Field(max_digits=10, decimal_places=4),
    AfterValidator(_shortest),
    PlainSerializer(_number, return_type=int | float, when_used="json"),
    WithJsonSchema({"type": "number", "multipleOf": 0.0001}),
]


def field(  # noqa: PLR0913 - a declaration, read as a table
    label: str,
    default: Any = None,
    *,
    hint: str = "",
    hinted: str = "",
    unit: str = "",
    low: int | None = None,
    high: int | None = None,
    group: str = "",
    blank: bool = False,
    term: str = "",
    private: str = "",
    come: bool = False,
    after: str = "",
    nonzero: bool = False,
) -> Any:
    """Declare a field.

    Args:
        label: What it is called beside the box, on a page and on paper.
        default: What it holds when nothing is said; ``...`` when it must be given.
        hint: One sentence of help.
        hinted: What a kind must do for the hint to be its; empty: it is of all.
        unit: Unit of a number, shown after it.
        low: Smallest number taken.
        high: Largest number taken.
        group: Heading under which a form shows it.
        blank: Whether leaving it open says that there is none.
        term: Slug of the word in the glossary that explains it.
        private: What it tells of the people in the home, a code of `PRIVATE`.
        come: Whether its day has to have come: it says when something was done.
        after: Field whose day is not after this one.
        nonzero: Whether 0 is no figure of it: forms and sheets refuse it; a record
            that has one is read, and it counts as not recorded.
    """
    extra: dict[str, Any] = {"unit": unit, "group": group, "blank": blank}
    extra |= {
        "hinted": hinted,
        "term": term,
        "private": private,
        "come": come,
        "after": after,
        "nonzero": nonzero,
    }
    return Field(
        default,
        title=label,
        description=hint or None,
        ge=low,
        le=high,
        json_schema_extra={name: value for name, value in extra.items() if value},
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class FieldSpec:
    """What the other layers need to know of a field.

    Attributes:
        name: Its name in the class, the table, the document and the form.
        type: Which sort of value it holds.
        hinted: What a kind must do for the hint to be its; may be empty.
        optional: Whether it may be not recorded.
        blank: Whether leaving it open says that there is none.
        term: Slug of the word in the glossary that explains it; may be empty.
        private: What it tells of people, a code of `PRIVATE`; may be empty.
        come: Whether its day has to have come.
        after: Field whose day is not after this one; may be empty.
        nonzero: Whether 0 is no figure of it.
        choices: Codes and words, for a choice.
        sorts: What a reference may name.
        low: Smallest number.
        high: Largest number.
    """

    name: str
    type: FieldType
    label: str
    hint: str
    hinted: str
    unit: str
    group: str
    optional: bool
    blank: bool
    term: str
    private: str
    come: bool
    after: str
    nonzero: bool
    required: bool
    default: Any
    choices: Mapping[str, str]
    sorts: tuple[str, ...]
    low: int | None
    high: int | None
    max_length: int


@cache
def specs(model: type[BaseModel]) -> tuple[FieldSpec, ...]:
    """Return a class's fields in the order they are declared."""
    return tuple(_spec(name, info) for name, info in model.model_fields.items())


def _spec(name: str, info: Any) -> FieldSpec:
    extra = info.json_schema_extra or {}
    marks = [*info.metadata, *_marks(info.annotation)]
    kind = _type(info.annotation, marks)
    return FieldSpec(
        name=name,
        type=kind,
        label=info.title or name,
        hint=info.description or "",
        hinted=extra.get("hinted", ""),
        unit=extra.get("unit", ""),
        group=extra.get("group", ""),
        blank=extra.get("blank", False),
        term=extra.get("term", ""),
        private=extra.get("private") or ("notes" if kind == "long" else ""),
        optional=type(None) in _arguments(info.annotation),
        come=extra.get("come", False),
        after=extra.get("after", ""),
        nonzero=extra.get("nonzero", False),
        required=info.is_required(),
        default=None if info.is_required() else info.default,
        choices=next((m.choices for m in marks if isinstance(m, OneOf)), {}),
        sorts=next((m.sorts for m in marks if isinstance(m, RefTo)), ()),
        low=_bound(marks, "ge"),
        high=_bound(marks, "le"),
        max_length=_bound(marks, "max_length") or SHORT,
    )


def _arguments(annotation: Any) -> tuple[Any, ...]:
    return getattr(annotation, "__args__", ())


def _marks(annotation: Any) -> list[Any]:
    """Return all metadata that stands anywhere inside an annotation."""
    found: list[Any] = []
    for mark in getattr(annotation, "__metadata__", ()):
        found += getattr(mark, "metadata", None) or [mark]
    inner = (getattr(annotation, "__origin__", None), *_arguments(annotation))
    for part in inner:
        if part is not None and part is not annotation:
            found += _marks(part)
    return found


def _bound(marks: list[Any], name: str) -> Any:
    return next(
        (getattr(m, name) for m in marks if getattr(m, name, None) is not None), None
    )


def _type(annotation: Any, marks: list[Any]) -> FieldType:
    many = getattr(annotation, "__origin__", None) is tuple
    if any(isinstance(m, OneOf) for m in marks):
        return "choices" if many else "choice"
    if any(isinstance(m, RefTo) for m in marks):
        return "refs" if many else "ref"
    if _bound(marks, "pattern") == MOMENT_PATTERN:
        return "moment"
    plain: dict[type, FieldType] = {int: "int", Decimal: "decimal", date: "date"}
    for cls, name in plain.items():
        if cls in _leaves(annotation):
            return name
    return "long" if (_bound(marks, "max_length") or 0) > SHORT else "text"


def _leaves(annotation: Any) -> set[Any]:
    parts = (getattr(annotation, "__origin__", None), *_arguments(annotation))
    leaves = {annotation} if isinstance(annotation, type) else set()
    for part in parts:
        if part is not None and part is not annotation:
            leaves |= _leaves(part)
    return leaves
