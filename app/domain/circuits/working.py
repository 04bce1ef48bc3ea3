"""A figure with its working: nothing is worked out without saying from what."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Literal

Origin = Literal["record", "measured", "table", "assumed", "worked_out"]
ORIGINS: dict[Origin, str] = {
    "record": "your record",
    "measured": "measured",
    "table": "table",
    "assumed": "assumed",
    "worked_out": "worked out above",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Input:
    """A number that was put in.

    Attributes:
        name: Its letter or name in the formula.
        value: The number, exact.
        unit: Its unit; empty for a plain factor.
        origin: Where it came from.
        note: What exactly: which field, which table with its basis, why assumed.
    """

    name: str
    value: Decimal
    unit: str
    origin: Origin
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Working:
    """A figure, or what is missing before there can be one.

    Attributes:
        title: What the figure is.
        formula: How it is worked out, in the letters of the inputs.
        inputs: What was put in.
        value: The figure, exact; None when something is missing.
        unit: Its unit.
        places: Decimal places to show.
        source: Published source of the formula, with its edition.
        needs: What is missing, in words of the record; empty when nothing.
    """

    title: str
    formula: str
    inputs: tuple[Input, ...] = ()
    value: Decimal | None = None
    unit: str
    places: int = 2
    source: str
    needs: tuple[str, ...] = ()

    def lacking(self, needs: tuple[str, ...]) -> Working:
        """Return it as what cannot be told for want of something."""
        return replace(self, inputs=(), value=None, needs=needs)

    def worth(self, value: Decimal, inputs: tuple[Input, ...]) -> Working:
        """Return it with its figure, and what was put in."""
        return replace(self, value=value, inputs=inputs)

    @property
    def assumed(self) -> tuple[Input, ...]:
        """The inputs that were assumed, for want of a record."""
        return tuple(each for each in self.inputs if each.origin == "assumed")

    @property
    def shown(self) -> str:
        """The figure as it is displayed, with what of it was assumed."""
        if self.value is None:
            return f"cannot tell: needs {', '.join(self.needs)}"
        rounded = f"{self.value:.{self.places}f}"
        figure = f"{rounded} {self.unit}".strip()
        if not self.assumed:
            return figure
        names = ", ".join(each.name for each in self.assumed)
        return f"{figure} (assumed: {names})"


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """One figure against another.

    Attributes:
        title: The question.
        figure: What is looked at.
        limit: What it is held against.
        holds: Whether it keeps the limit; None when it cannot be told.
        note: What else to know.
    """

    title: str
    figure: Working
    limit: Working
    holds: bool | None
    note: str = ""

    @property
    def needs(self) -> tuple[str, ...]:
        """What is missing before it can be told."""
        return tuple(dict.fromkeys((*self.figure.needs, *self.limit.needs)))


def at_most(title: str, figure: Working, limit: Working, note: str = "") -> Check:
    """Return the check that a figure is no larger than its limit."""
    holds = None
    if figure.value is not None and limit.value is not None:
        holds = figure.value <= limit.value
    return Check(title=title, figure=figure, limit=limit, holds=holds, note=note)
