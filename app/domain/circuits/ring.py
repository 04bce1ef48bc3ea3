"""A ring final: its rule, how its current divides, and what its ends measure.

Sources: BS 7671:2018+A2:2022, 433.1.204; the current divides as in any loop of even
wire, so that it needs no table.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from app.domain.circuits._working import (
    COMMON_PRACTICE,
    Figure,
    Working,
    plain,
    result,
    tabled,
)
from app.domain.tables import TABLES, Value

RULE = "ring-rule"
# A textbook gives the ratio of the sizes, 1.67, for 2.5/1.5; the limits of the standard
# for copper give 1.63. The band round it: common practice, no source.
BAND = (Decimal("0.95"), Decimal("1.07"))
ENDS_WITHIN = Decimal("0.05")


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


@dataclass(frozen=True, slots=True)
class Place:
    """A load on a ring: how far from one end, and what it draws."""

    metres: Decimal
    amps: Decimal


@dataclass(frozen=True, slots=True)
class Ends:
    """What the three end-to-end figures of a ring say."""

    line_and_neutral_agree: bool
    ratio: Decimal
    expected: Figure
    ratio_agrees: bool
    r1r2: Working


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


def leaving(loop_m: Decimal, loads: Sequence[Place]) -> Decimal:
    """Return the current that leaves by the first end; the rest leaves by the other."""
    return sum((p.amps * (loop_m - p.metres) for p in loads), Decimal(0)) / loop_m


def drops(
    loop_m: Decimal, loads: Sequence[Place], mv: Decimal
) -> tuple[tuple[Place, Decimal], ...]:
    """Return the voltage lost at each load, both ways round counted.

    Args:
        loop_m: Length of the whole loop.
        loads: The loads, wherever they are.
        mv: Drop of the cable in mV/A/m.
    """
    current, at, lost = leaving(loop_m, loads), Decimal(0), Decimal(0)
    found = []
    for place in sorted(loads, key=lambda p: p.metres):
        lost += current * (place.metres - at) * mv / 1000
        at = place.metres
        current -= place.amps
        found.append((place, lost))
    return tuple(found)


def ring_drop(loop: Figure, loads: Sequence[Place], mv: Figure) -> Working:
    """Return the voltage lost at the worst place of a ring."""
    found = drops(loop.value, loads, mv.value)
    worst, lost = max(found, key=lambda each: each[1])
    return result(
        "Voltage drop of the ring",
        lost,
        "V",
        formula="Both ways round: the current divides as the distances do",
        put_in=f"worst at {plain(worst.metres)} m of {loop.shown}",
        figures=(mv, loop),
        source=COMMON_PRACTICE,
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


def expected_ratio(line_mm2: Decimal, cpc_mm2: Decimal) -> Figure:
    """Return r2 / r1 as the copper would have it.

    Raises:
        OutsideTableError: A size is not in the table.
    """
    conductor = TABLES["conductor"]
    line, cpc = conductor.at(line_mm2), conductor.at(cpc_mm2)
    ratio = cpc.value / line.value
    return tabled("r2 / r1", Value(ratio, "", line.source, line.basis))


def ring_ends(
    r1: Figure, rn: Figure, r2: Figure, line_mm2: Decimal, cpc_mm2: Decimal
) -> Ends:
    """Read the end-to-end figures of line, neutral and protective conductor.

    Raises:
        OutsideTableError: A size is not in the table.
    """
    expected = expected_ratio(line_mm2, cpc_mm2)
    ratio = r2.value / r1.value
    low, high = (expected.value * share for share in BAND)
    return Ends(
        line_and_neutral_agree=abs(r1.value - rn.value) <= ENDS_WITHIN,
        ratio=ratio,
        expected=expected,
        ratio_agrees=low <= ratio <= high,
        r1r2=quarter(r1, r2),
    )
