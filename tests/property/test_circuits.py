"""Rings by formula against a nodal solution; capacities never rise with a factor."""

from __future__ import annotations

from decimal import Decimal

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.domain.circuits import capacity, drop_at, ring_drop_at
from app.domain.record import Circuit

metres = st.integers(1, 99)
amperes = st.integers(0, 32)
loads = st.lists(st.tuples(metres, amperes), min_size=1, max_size=10)


def nodal(loop: float, loads: list[tuple[int, int]], mv: float) -> dict[int, float]:
    """Drop at each load of a ring, from the conductances between its points."""
    places = sorted({place for place, _ in loads})
    nodes = [0.0, *map(float, places), loop]
    size = len(places)
    conductance = np.zeros((size, size))
    current = np.zeros(size)
    for n in range(size):
        for beside in (n, n + 2):
            ohms = abs(nodes[n + 1] - nodes[beside]) * mv / 1000
            conductance[n, n] += 1 / ohms
            if 0 < beside < size + 1:
                conductance[n, beside - 1] -= 1 / ohms
        current[n] = sum(amps for place, amps in loads if place == places[n])
    drops = np.linalg.solve(conductance, current)
    return dict(zip(places, map(float, drops), strict=True))


@given(loads)
def test_a_ring_drops_as_its_network_does(some: list[tuple[int, int]]) -> None:
    loop, mv = Decimal(100), Decimal(18)
    exact = [(Decimal(place), Decimal(amps)) for place, amps in some]
    for place, volts in nodal(100, some, 18).items():
        found = ring_drop_at(mv, loop, exact, Decimal(place))
        assert float(found) == pytest.approx(volts, abs=1e-9)


@given(st.integers(1, 400), st.integers(1, 400), st.integers(1, 99))
def test_no_place_of_a_ring_reads_more_than_its_middle(
    r1: int, r2: int, place: int
) -> None:
    """Cross-connected at the board: line legs to protective legs, crosswise."""
    assert reading(r1, r2, 50) == pytest.approx((r1 + r2) / 4)
    assert reading(r1, r2, place) <= (r1 + r2) / 4 + 1e-9


def reading(r1: float, r2: float, place: int) -> float:
    """Line to protective at a place: two ways round, side by side."""
    there, back = place / 100, 1 - place / 100
    one, other = r1 * there + r2 * back, r1 * back + r2 * there
    return one * other / (one + other)


@given(loads, metres)
def test_a_radial_drops_more_the_further_out(
    some: list[tuple[int, int]], place: int
) -> None:
    exact = [(Decimal(where), Decimal(amps)) for where, amps in some]
    near, far = (drop_at(Decimal(18), exact, Decimal(p)) for p in (place, place + 1))
    assert near <= far
    assert far == sum(18 * min(int(w), place + 1) * amps / 1000 for w, amps in exact)


@given(
    st.sampled_from(("1", "1.5", "2.5", "4", "6", "10", "16")),
    st.sampled_from(("C", "A", "100", "101", "102", "103", "B")),
    st.none() | st.integers(-20, 60),
    st.none() | st.integers(0, 19),
)
def test_factors_only_take_away(
    size: str, method: str, celsius: int | None, others: int | None
) -> None:
    plain = Circuit(
        ref="C1", cable="twin_and_earth", line_mm2=Decimal(size), method=method
    )
    worse = plain.model_copy(update={"ambient_c": celsius, "grouped_with": others})
    best, found = capacity(plain).value, capacity(worse).value
    assert best is not None
    assert found is not None
    assert found <= best * Decimal("1.03")
    assert bool(capacity(worse).assumed) == (
        celsius is None or others is None or method in ("C", "A", "B")
    )
