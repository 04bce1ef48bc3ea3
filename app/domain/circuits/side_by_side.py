"""A measured figure beside a calculated one: neither overrules the other."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from app.domain.circuits._working import Figure, Working, plain


@dataclass(frozen=True, slots=True)
class Beside:
    """Two figures of one thing, and the difference between them.

    Attributes:
        measured: With who, when and from which document.
        calculated: With its working.
        difference: Measured less calculated.
        sentence: What to make of it.
    """

    measured: Figure
    calculated: Working
    difference: Decimal
    sentence: str


def beside(measured: Figure, calculated: Working) -> Beside:
    """Set a measured figure beside the calculated one.

    Raises:
        ValueError: They are not of one unit, or the first was not measured.
    """
    if measured.came != "measured" or measured.unit != calculated.unit:
        raise ValueError("a measured figure of the same unit is needed")
    difference = measured.value - calculated.value
    return Beside(
        measured=measured,
        calculated=calculated,
        difference=difference,
        sentence=_sentence(measured, calculated, difference),
    )


def _sentence(measured: Figure, calculated: Working, difference: Decimal) -> str:
    if not difference:
        return "Measured and calculated are the same."
    way = "more" if difference > 0 else "less"
    by = f"{plain(abs(difference))} {measured.unit}".strip()
    warm = (
        " It was measured cold, and the calculation is for warm conductors."
        if "warm" in calculated.formula
        or any("warm" in f.label for f in calculated.figures)
        else ""
    )
    return (
        f"Measured {measured.shown} ({measured.source}) is {by} {way} than "
        f"{calculated.shown}, calculated from your record.{warm} Neither overrules "
        "the other: a length, a size or a joint in the record may be wrong."
    )
