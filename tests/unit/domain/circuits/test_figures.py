"""A circuit's figures: worked out, or what they need; never a guess unsaid."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from app.domain.circuits import CircuitFigures, circuit_figures
from app.domain.network import network
from app.domain.record import Circuit
from tests.builders import board, circuit, home, main_switch, street, way

CABLE = {
    "cable": "twin_and_earth",
    "line_mm2": "2.5",
    "cpc_mm2": "1.5",
    "method": "C",
    "arrangement": "radial",
    "length_m": 20,
    "use": "sockets",
    "ambient_c": 30,
    "grouped_with": 0,
    "insulation_mm": 0,
}
DEVICE = {"rated_current_a": 20, "curve": "B"}


def figures(device: dict[str, Any] | None = None, **cable: Any) -> CircuitFigures:
    record = home(
        street(
            board(
                "B1",
                main_switch(
                    "MS",
                    way(
                        "W1", circuit("C1", **{**CABLE, **cable}), **(device or DEVICE)
                    ),
                ),
            )
        ),
        ze_ohm="0.35",
    )
    found = record.find(Circuit, "C1")
    assert found is not None
    return circuit_figures(network(record), found)


def test_everything_known_is_worked_out() -> None:
    overload, drop, zs, adiabatic = figures().checks
    assert [c.holds for c in (overload, drop, zs, adiabatic)] == [True] * 4
    assert overload.limit.value == 27
    assert drop.figure.value == Decimal("7.2")
    assert zs.figure.value == Decimal("0.35") + Decimal("1.2") * Decimal("0.3902")
    assert zs.limit.value == Decimal("2.185")
    assert adiabatic.figure.value is not None
    assert round(adiabatic.figure.value, 3) == Decimal("0.275")


@pytest.mark.parametrize(
    ("change", "check", "need"),
    [
        ({"cable": "unknown"}, 0, "the kind of cable"),
        ({"method": "unknown"}, 0, "how the cable is laid"),
        ({"line_mm2": None}, 0, "the size of the line conductor"),
        ({"cable": "lead"}, 0, "a table for this kind of cable"),
        ({"length_m": None}, 1, "the length of the cable"),
        ({"arrangement": "unknown"}, 1, "whether it is a ring or a radial"),
        ({"cpc_mm2": None}, 2, "the size of the protective conductor"),
        ({"cpc_mm2": None}, 3, "the size of the protective conductor"),
        ({"line_mm2": "3"}, 0, "beyond the table"),
        ({"ambient_c": 75}, 0, "beyond the table"),
        ({"insulation_mm": 100, "method": "100"}, 0, "method C"),
    ],
)
def test_what_is_missing_is_named(
    change: dict[str, Any], check: int, need: str
) -> None:
    found = figures(**change).checks[check]
    assert found.holds is None
    assert need in " ".join(found.needs)


@pytest.mark.parametrize(
    ("device", "check", "need"),
    [
        ({"rated_current_a": None}, 0, "the rating of the device"),
        ({"rated_current_a": 20, "curve": "unknown"}, 2, "the type of the"),
        ({"rated_current_a": 21, "curve": "B"}, 2, "no value for 21"),
        ({"kind": "isolator", "rated_current_a": 20}, 2, "that the tables hold"),
    ],
)
def test_what_is_missing_of_the_device_is_named(
    device: dict[str, Any], check: int, need: str
) -> None:
    found = figures(device).checks[check]
    assert found.holds is None
    assert need in " ".join(found.needs)


def test_an_assumed_figure_is_never_shown_without_saying_so() -> None:
    found = figures(ambient_c=None, grouped_with=None, insulation_mm=None)
    assert found.checks[0].limit.shown == "27.0 A (assumed: Ca, Cg, Ci)"
    assert "assumed: I" in found.checks[1].figure.shown
    assert "assumed" not in figures().checks[0].limit.shown


def test_a_device_too_large_for_its_cable() -> None:
    assert figures({"rated_current_a": 32, "curve": "B"}).checks[0].holds is False


def test_factors_multiply() -> None:
    worse = figures(ambient_c=38, grouped_with=1).checks[0].limit
    assert worse.value == 27 * Decimal("0.87") * Decimal("0.8")


@pytest.mark.parametrize(
    ("device", "cable", "holds"),
    [
        ({"rated_current_a": 32}, {}, True),
        ({"rated_current_a": 30, "kind": "fuse_rewirable"}, {}, True),
        ({"rated_current_a": 40}, {}, False),
        ({"rated_current_a": 32}, {"line_mm2": "1.5"}, False),
        ({"rated_current_a": 32}, {"method": "103"}, False),
        ({"rated_current_a": 32}, {"method": "101"}, False),
        ({"rated_current_a": 32}, {"method": "101", "line_mm2": "4"}, True),
        ({"rated_current_a": None}, {}, None),
        ({"rated_current_a": 32}, {"method": "unknown"}, None),
    ],
)
def test_the_ring_rule(
    device: dict[str, Any], cable: dict[str, Any], holds: bool | None
) -> None:
    """BS 7671 433.1.204: 30 or 32 A, 2.5 mm², 20 A of cable as laid."""
    ring = {"arrangement": "ring", "ambient_c": None, "insulation_mm": None, **cable}
    assert figures({"curve": "B", **device}, **ring).checks[0].holds is holds


@pytest.mark.parametrize(
    ("rating", "size", "holds"),
    [(15, "2.5", True), (20, "2.5", False), (30, "6", True)],
)
def test_a_rewirable_fuse_by_its_factor(rating: int, size: str, holds: bool) -> None:
    fuse = {"kind": "fuse_rewirable", "rated_current_a": rating}
    assert figures(fuse, line_mm2=size).checks[0].holds is holds


@pytest.mark.parametrize(
    ("curve", "limit"),
    [
        ("B", "2.185"),
        ("C", "1.0925"),
        ("D", "0.5463"),
        ("1", "2.73125"),
        ("4", "0.2185"),
    ],
)
def test_limits_of_breakers_old_and_new(curve: str, limit: str) -> None:
    assert figures({**DEVICE, "curve": curve}).checks[2].limit.value == Decimal(limit)


@pytest.mark.parametrize(
    ("kind", "rating", "limit"),
    [
        ("fuse_rewirable", 30, "1.04"),
        ("fuse_cartridge", 30, "1.09"),
        ("fuse_bs88", 32, "0.91"),
    ],
)
def test_limits_of_fuses_with_sockets(kind: str, rating: int, limit: str) -> None:
    found = figures({"kind": kind, "rated_current_a": rating})
    assert found.checks[2].limit.value == Decimal(limit)


def test_a_large_fixed_load_has_five_seconds() -> None:
    fuse = {"kind": "fuse_bs88", "rated_current_a": 45}
    assert figures(fuse, use="shower").checks[2].limit.value == 1


def test_lighting_has_three_per_cent() -> None:
    assert figures(use="lighting").checks[1].limit.value == Decimal("6.9")


def test_a_ring_shares_its_load() -> None:
    radial = figures(connected_w=4600).checks[1].figure.value
    ring = figures(connected_w=4600, arrangement="ring").checks[1].figure.value
    assert radial == 4 * (ring or 0)


def test_the_drop_from_the_origin_counts_the_cable_to_the_board() -> None:
    far = {**CABLE, "line_mm2": "10", "length_m": 30, "connected_w": 4600}
    far |= {"arrangement": "distribution", "use": "distribution"}
    final = circuit("C2", **{**CABLE, "connected_w": 2300})
    record = home(
        street(
            board(
                "B1",
                main_switch(
                    "MS", way("W1", circuit("C1", board("B2", way("W2", final)), **far))
                ),
            )
        )
    )
    found = record.find(Circuit, "C2")
    assert found is not None
    drop = circuit_figures(network(record), found).checks[1].figure
    assert drop.value == Decimal("4.4") * 20 * 30 / 1000 + Decimal(18) * 10 * 20 / 1000
