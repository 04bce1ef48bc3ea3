"""A ring against the laws of Kirchhoff, solved as a net of nodes."""

from __future__ import annotations

import random
from collections.abc import Callable
from decimal import Decimal

import numpy as np
import pytest

from app.domain.circuits import Working, recorded
from app.domain.circuits.ring import quarter, ring_drop_at_middle, ring_drop_spread

MV = 18.0


def solved(loop: float, loads: list[tuple[float, float]], ohm: float) -> list[float]:
    """Return the voltage lost at each load: conductances between nodes, node 0 fed."""
    at = [0.0, *(x for x, _ in loads), loop]
    count = len(loads)
    net, taken = np.zeros((count, count)), np.zeros(count)
    for n, (_, amps) in enumerate(loads):
        taken[n] = amps
    for n in range(count + 1):
        g = 1 / ((at[n + 1] - at[n]) * ohm)
        one, other = n - 1, n
        for node in (one, other):
            if 0 <= node < count:
                net[node, node] += g
        if 0 <= one < count and 0 <= other < count:
            net[one, other] -= g
            net[other, one] -= g
    return list(np.linalg.solve(net, taken))


def ring(seed: int) -> tuple[float, list[tuple[float, float]]]:
    made = random.Random(seed)  # noqa: S311 - the same rings each time
    loop = made.randint(200, 1200) / 10
    steps = sorted(made.sample(range(1, int(loop * 10)), made.randint(1, 12)))
    return loop, [(s / 10, made.randint(1, 130) / 10) for s in steps]


def lost(drop: Callable[..., Working], loop: float, amps: float) -> float:
    length = recorded("loop", Decimal(str(loop)), "m", "here")
    current = recorded("I", Decimal(str(amps)), "A", "here")
    mv = recorded("mV", Decimal(str(MV)), "mV/A/m", "here")
    return float(drop(length, current, mv).value)


@pytest.mark.parametrize("seed", range(100))
def test_no_load_on_a_ring_loses_more_than_all_of_it_at_the_far_side(seed: int) -> None:
    loop, loads = ring(seed)
    worst = max(solved(loop, loads, MV / 1000))
    most = lost(ring_drop_at_middle, loop, sum(amps for _, amps in loads))
    assert worst <= most + 1e-9
    [alone] = solved(loop, [(loop / 2, 13.0)], MV / 1000)
    assert lost(ring_drop_at_middle, loop, 13.0) == pytest.approx(alone)


@pytest.mark.parametrize("count", [1, 3, 9, 99])
def test_even_loads_come_near_to_the_drop_of_an_even_spread(count: int) -> None:
    """Of an odd count of even loads the middle one loses (n + 1) / n of it."""
    even = [(60 * n / (count + 1), 32 / count) for n in range(1, count + 1)]
    worst = max(solved(60, even, MV / 1000))
    spread = lost(ring_drop_spread, 60, 32)
    assert worst == pytest.approx(spread * (count + 1) / count)


Parts = list[tuple[int, int, float]]


def resistance(parts: Parts, count: int) -> float:
    """Return what is measured between nodes 0 and 1 of a net of resistances."""
    net = np.zeros((count, count))
    for a, b, ohm in parts:
        net[a, a] += 1 / ohm
        net[b, b] += 1 / ohm
        net[a, b] -= 1 / ohm
        net[b, a] -= 1 / ohm
    kept = [0, *range(2, count)]
    driven = np.array([1.0, *[0.0] * (count - 2)])
    return float(np.linalg.solve(net[np.ix_(kept, kept)], driven)[0])


def cross_connected(r1: float, r2: float, share: float) -> float:
    """Line of one end joined to the protective conductor of the other, and back."""
    return resistance(
        [
            (0, 2, r1 * share),
            (0, 3, r1 * (1 - share)),
            (1, 2, r2 * (1 - share)),
            (1, 3, r2 * share),
        ],
        4,
    )


def in_use(r1: float, r2: float, share: float) -> float:
    """Both ends of each conductor in the board; a fault between them at a socket."""
    line = [(0, 2, r1 * share), (0, 2, r1 * (1 - share))]
    return resistance(
        [*line, (1, 2, r2 * share), (1, 2, r2 * (1 - share))],
        3,
    )


def quarter_of(r1: float, r2: float) -> float:
    ends = (("r1", r1), ("r2", r2))
    figures = [recorded(n, Decimal(str(v)), "Ω", "here") for n, v in ends]
    return float(quarter(*figures).value)


@pytest.mark.parametrize("seed", range(300))
def test_a_quarter_of_both_is_the_most_anywhere_on_a_ring(seed: int) -> None:
    made = random.Random(seed)  # noqa: S311 - the same rings each time
    r1, r2 = made.uniform(0.1, 2), made.uniform(0.1, 3)
    share = made.uniform(0.01, 0.99)
    most = quarter_of(r1, r2)
    for measured in (cross_connected, in_use):
        assert measured(r1, r2, 0.5) == pytest.approx(most)
        assert measured(r1, r2, share) <= most * (1 + 1e-9)
    assert cross_connected(r1, r1, share) == pytest.approx(quarter_of(r1, r1))
