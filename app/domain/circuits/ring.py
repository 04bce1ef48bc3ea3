"""A ring final: its rule, the voltage that it loses, and R1+R2 at its far side.

Source: BS 7671:2018+A2:2022, 433.1.204.
"""

from __future__ import annotations

from dataclasses import dataclass

from app.domain.circuits._working import (
    Figure,
    Working,
    result,
)
from app.domain.tables import TABLES, Value

RULE = "ring-rule"


@dataclass(frozen=True, slots=True)
class RingTerm:
    """One thing that the rule for rings asks for, and whether the figures give it."""

    label: str
    has: Figure
    least: Value
    most: Value | None = None

    @property
    def holds(self) -> bool:
        """Whether it is as the rule wants it."""
        above = self.has.value >= self.least.value
        return above and (self.most is None or self.has.value <= self.most.value)


def ring_terms(rated: Figure, line: Figure, iz: Figure) -> tuple[RingTerm, ...]:
    """Return what the rule for rings asks for: rating, size, capacity."""
    at = TABLES[RULE].at
    return (
        RingTerm(
            "Rating of the device",
            rated,
            at("rating, lower (A)"),
            at("rating, upper (A)"),
        ),
        RingTerm(
            "Line and neutral conductor", line, at("smallest line and neutral (mm²)")
        ),
        RingTerm("Capacity of the cable", iz, at("smallest capacity of the cable (A)")),
    )


def ring_drop_at_middle(loop: Figure, current: Figure, mv: Figure) -> Working:
    """Return the drop with all of a load at the far side of a ring."""
    return result(
        "Voltage drop of the ring, all at its far side",
        mv.value * current.value * loop.value / 4000,
        "V",
        formula="mV × I × loop / 4 / 1000",
        put_in=f"{mv.shown} × {current.shown} × {loop.shown} / 4 / 1000",
        figures=(mv, current, loop),
        source="BS 7671:2018+A2:2022, Appendix 4, section 6; each half carries half",
    )


def ring_drop_spread(loop: Figure, current: Figure, mv: Figure) -> Working:
    """Return the drop with a load spread evenly round a ring."""
    return result(
        "Voltage drop of the ring, spread evenly",
        mv.value * current.value * loop.value / 8000,
        "V",
        formula="mV × I × loop / 8 / 1000",
        put_in=f"{mv.shown} × {current.shown} × {loop.shown} / 8 / 1000",
        figures=(mv, current, loop),
        source="BS 7671:2018+A2:2022, Appendix 4, section 6; half of all at one place",
    )


def quarter(r1: Figure, r2: Figure) -> Working:
    """Return R1+R2 at the far side of a ring, the most that it is anywhere on it.

    Cross-connected for a test it is the same at every socket only where both conductors
    are of one size; with a smaller protective conductor it is less near the ends.
    """
    return result(
        "R1+R2 of the ring, at its far side",
        (r1.value + r2.value) / 4,
        "Ω",
        formula="R1+R2 = (r1 + r2) / 4",
        put_in=f"({r1.shown} + {r2.shown}) / 4",
        figures=(r1, r2),
        source="IET Guidance Note 3, ring final continuity; from memory",
        places=3,
    )
