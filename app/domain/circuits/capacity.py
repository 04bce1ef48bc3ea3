"""What a cable carries, and whether its device keeps it within that.

Source: BS 7671:2018+A2:2022, 433.1 and Appendix 4.
"""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from app.domain.circuits._working import Figure, Working, plain, result, tabled
from app.domain.tables import TABLES

SOURCE = "BS 7671:2018+A2:2022, Appendix 4, section 5"
LONGEST_IN_TABLE = Decimal(500)


def ambient_factor(air_c: Decimal, *, column: str = "70 °C cable") -> Figure:
    """Return Ca for the warmth round a cable; between two rows the warmer counts.

    Raises:
        OutsideTableError: It is warmer than the table goes.
    """
    row, value = TABLES["ambient"].next_at(air_c, column)
    return tabled(f"Ca, row {plain(row)} °C", value)


def grouping_factor(circuits: Decimal, *, column: str = "In a bunch") -> Figure:
    """Return Cg for circuits that lie together; between two rows the larger counts.

    Raises:
        OutsideTableError: There are more than the table goes to.
    """
    row, value = TABLES["grouping"].next_at(circuits, column)
    return tabled(f"Cg, {plain(row)} circuits", value)


def insulation_factor(length_mm: Decimal) -> Figure:
    """Return Ci for a length within insulation; from 500 mm on it stays the same."""
    within = min(length_mm, LONGEST_IN_TABLE)
    row, value = TABLES["insulation"].next_at(within)
    return tabled(f"Ci, row {plain(row)} mm", value)


def capacity(tabulated: Figure, factors: Sequence[Figure]) -> Working:
    """Return Iz: the capacity of a table times every factor."""
    value = tabulated.value
    for factor in factors:
        value *= factor.value
    names = ["It", *(factor.label.split(",")[0] for factor in factors)]
    numbers = [tabulated.shown, *(plain(factor.value) for factor in factors)]
    return result(
        "Capacity of the cable, Iz",
        value,
        "A",
        formula=f"Iz = {' × '.join(names)}",
        put_in=" × ".join(numbers),
        figures=(tabulated, *factors),
        source=SOURCE,
        places=1,
    )


def fuse_limit(iz: Figure) -> Working:
    """Return the largest rewirable fuse that guards a cable against overload."""
    factor = tabled("Factor for rewirable fuses", TABLES["fuse-factor"].at("rewirable"))
    return result(
        "Largest rewirable fuse",
        factor.value * iz.value,
        "A",
        formula="In = 0.725 × Iz",
        put_in=f"{plain(factor.value)} × {iz.shown}",
        figures=(factor, iz),
        source="BS 7671:2018+A2:2022, 433.1.202",
        places=1,
    )
