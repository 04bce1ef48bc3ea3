"""An answer with its working: what was put in, where each figure came from, and how.

A figure that is only assumed keeps saying so through every calculation that it enters,
so that no result can be shown without it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from decimal import ROUND_HALF_UP, Decimal
from functools import wraps
from typing import Annotated, Literal, ParamSpec

from pydantic import PlainSerializer, WithJsonSchema

from app.domain.record._field import Model, field
from app.domain.tables import BASES, OutsideTableError, Value

Came = Literal["record", "measured", "table", "assumed", "calculated"]
P = ParamSpec("P")

CAME: dict[Came, str] = {
    "record": "from your record",
    "measured": "measured",
    "table": "from a table",
    "assumed": "assumed",
    "calculated": "calculated from your record",
}
COMMON_PRACTICE = "common practice, no source"

Exact = Annotated[
    Decimal,
    PlainSerializer(float, return_type=float, when_used="json"),
    WithJsonSchema({"type": "number"}),
]


class Figure(Model):
    """One number that went into a calculation."""

    label: str = field("What it is", ...)
    value: Exact = field("Number", ...)
    unit: str = field("Unit", "")
    came: Came = field("Where it came from", ...)
    source: str = field("In which field, table or document", "")
    basis: str = field("How well the source is known", "")
    assumes: tuple[str, ...] = field("What is assumed in it", ())
    working: Working | None = field("How it was worked out")

    @property
    def shown(self) -> str:
        """The number with its unit, to four places at most."""
        return f"{plain(self.value)} {self.unit}".strip()


class Working(Model):
    """A result, and all that led to it."""

    outcome: Literal["figure"] = "figure"
    label: str = field("What it is", ...)
    value: Exact = field("Result, not rounded", ...)
    unit: str = field("Unit", "")
    shown: str = field("Result, rounded, with its unit", ...)
    rounding: str = field("How it is rounded", ...)
    formula: str = field("Formula", ...)
    put_in: str = field("The formula with the numbers in it", ...)
    figures: tuple[Figure, ...] = field("What went in", ...)
    source: str = field("Where the formula stands", ...)
    assumes: tuple[str, ...] = field("What is assumed", ())

    def chain(self) -> tuple[Working, ...]:
        """Return this calculation and those before it, the last first."""
        before = [figure.working for figure in self.figures if figure.working]
        return (self, *(step for each in before for step in each.chain()))


class Need(Model):
    """Something that the record does not say, without which nothing can be told."""

    ref: str = field("Of which thing", ...)
    name: str = field("Field, or empty where the record has none", "")
    label: str = field("What is missing", ...)


class CannotTell(Model):
    """No result, and what it would take."""

    outcome: Literal["cannot_tell"] = "cannot_tell"
    label: str = field("What cannot be told", ...)
    needs: tuple[Need, ...] = field("What is missing", ())
    why: str = field("Why not, where nothing is missing", "")

    @property
    def sentence(self) -> str:
        """Why it cannot be told."""
        missing = ", ".join(dict.fromkeys(need.label for need in self.needs))
        reason = f"needs {missing}" if missing else ""
        return f"Cannot tell: {reason or self.why}".rstrip(".") + "."


Outcome = Working | CannotTell

Figure.model_rebuild()


def recorded(label: str, value: Decimal, unit: str, where: str) -> Figure:
    """Return a figure that the record holds."""
    return Figure(label=label, value=value, unit=unit, came="record", source=where)


def measured(label: str, value: Decimal, unit: str, document: str) -> Figure:
    """Return a measured figure, with who measured it, when and in which document."""
    return Figure(label=label, value=value, unit=unit, came="measured", source=document)


def assumed(label: str, value: Decimal, unit: str, why: str) -> Figure:
    """Return a figure that is only supposed; ``why`` is a sentence that says so."""
    return Figure(
        label=label, value=value, unit=unit, came="assumed", source=why, assumes=(why,)
    )


def tabled(
    label: str, value: Value, *, unit: str = "", assumes: tuple[str, ...] = ()
) -> Figure:
    """Return a figure from a reference table; a table of words names no unit."""
    return Figure(
        label=label,
        value=value.value,
        unit=value.unit or unit,
        came="table",
        source=value.source,
        basis=BASES[value.basis],
        assumes=assumes,
    )


def worked(working: Working) -> Figure:
    """Return a result as a figure that goes into the next calculation."""
    return Figure(
        label=working.label,
        value=working.value,
        unit=working.unit,
        came="calculated",
        source=working.formula,
        assumes=working.assumes,
        working=working,
    )


def result(  # noqa: PLR0913 - a statement of a calculation, read as a table
    label: str,
    value: Decimal,
    unit: str,
    *,
    formula: str,
    put_in: str,
    figures: Iterable[Figure],
    source: str,
    places: int = 2,
) -> Working:
    """Return a result with its working; what its figures assume goes with it."""
    went_in = tuple(figures)
    assumes = tuple(dict.fromkeys(a for figure in went_in for a in figure.assumes))
    places = _enough(value, places)
    rounded = value.quantize(Decimal(1).scaleb(-places), rounding=ROUND_HALF_UP)
    return Working(
        label=label,
        value=value,
        unit=unit,
        shown=f"{rounded} {unit}".strip(),
        rounding=f"{_places(places)} for reading; not rounded in between",
        formula=formula,
        put_in=put_in,
        figures=went_in,
        source=source,
        assumes=assumes,
    )


def _enough(value: Decimal, places: int) -> int:
    """Return how many places keep a result that is not nought from reading so."""
    nought = abs(value) * 2 < Decimal(1).scaleb(-places)
    return -value.adjusted() if value and nought else places


def _places(places: int) -> str:
    known = {0: "to whole numbers", 1: "to one place"}
    return known.get(places, f"to {places} places")


def plain(value: Decimal) -> str:
    """Write a number in its shortest way, with four places at most."""
    step = value.quantize(Decimal("0.0001"), rounding=ROUND_HALF_UP)
    return f"{step.normalize():f}"


def told(
    label: str,
) -> Callable[[Callable[P, Outcome]], Callable[P, Outcome]]:
    """Make a calculation answer *cannot tell* where a table ends, with its sentence."""

    def mark(calculate: Callable[P, Outcome]) -> Callable[P, Outcome]:
        @wraps(calculate)
        def answered(*args: P.args, **kwargs: P.kwargs) -> Outcome:
            try:
                return calculate(*args, **kwargs)
            except OutsideTableError as error:
                return CannotTell(label=label, why=error.sentence)

        return answered

    return mark
