"""The reference tables, against figures typed again and against physics.

Sources as each table names them: BS 7671:2018+A2:2022, BS EN 60228, the IET On-Site
Guide; for most of them no page was seen, which the basis of each row says.
"""

from __future__ import annotations

from decimal import Decimal
from math import log, sqrt

import pytest

from app.domain.tables import BASES, TABLES, OutsideTableError

AGAIN = [
    ("zs-circuit-breaker", 32, "B as printed", "1.37"),
    ("zs-bs-3036", 30, "0.4 s", "1.04"),
    ("zs-bs-88-3", 32, "0.4 s", "0.91"),
    ("zs-bs-1361", 30, "5 s", "1.75"),
    ("zs-bs-1362", 13, "0.4 s", "2.3"),
    ("zs-rcd", 30, "Zs", "1667"),
    ("conductor-resistance", Decimal("2.5"), "20 °C", "7.41"),
    ("r1-r2", "2.5/1.5", "20 °C", "19.51"),
    ("capacity-4d5", Decimal("2.5"), "C", "27"),
    ("capacity-4d1a", Decimal("2.5"), "B", "24"),
    ("capacity-4d2a", 6, "B", "38"),
    ("capacity-4d4a", 10, "D", "60"),
    ("tails", 25, "usual largest cut-out fuse, A", "100"),
    ("ambient", 40, "70 °C cable", "0.87"),
    ("grouping", 8, "bunched", "0.52"),
    ("insulation", 100, "Ci", "0.78"),
    ("voltage-drop-limits", "lighting", "%", "3"),
    ("disconnection-times", "distribution and the rest", "TN", "5"),
    ("adiabatic-k", "copper in cable, 70 °C thermoplastic", "k", "115"),
    ("protective-sizes", "earthing conductor with 25 mm² tails", "least, mm²", "16"),
    ("standard-circuits", "radial, 20 A", "floor area, m²", "50"),
    ("rcd-times", "general", "IΔn", "300"),
    ("test-button", "18th edition, from 2018", "months", "6"),
    ("circuit-breaker-bands", "trips within an hour", "times In", "1.45"),
    ("supply", "Ze, TN-S, Ω", "usual", "0.8"),
]
WORDS = {"diversity", "rcd-types", "dates", "bath-zones"}


@pytest.mark.parametrize(("code", "row", "column", "figure"), AGAIN)
def test_a_figure_typed_again(
    code: str, row: Decimal | str, column: str, figure: str
) -> None:
    assert TABLES[code].value(row, column) == Decimal(figure)


def test_every_table_is_among_them() -> None:
    assert {code for code, *_ in AGAIN} | WORDS == set(TABLES)


def test_every_row_has_a_basis_in_the_words_of_the_list() -> None:
    for table in TABLES.values():
        assert len(table.basis) == len(table.rows) > 0
        assert all(len(row) == len(table.columns) for row in table.rows)
        for basis in table.basis:
            assert any(word in basis for word in ("source", *BASES)), basis


@pytest.mark.parametrize("code", sorted(TABLES))
def test_a_lookup_refuses_to_leave_the_table(code: str) -> None:
    table = TABLES[code]
    with pytest.raises(OutsideTableError):
        table.value("no such row", table.columns[-1])
    with pytest.raises(OutsideTableError):
        table.basis_of(
            Decimal("98765.4321") if code.startswith("zs") else "no such row"
        )


def test_breaker_limits_are_the_multiples_to_the_rounding_of_the_print() -> None:
    table = TABLES["zs-circuit-breaker"]
    for amps in table.numbers():
        for curve, k in (("B", 5), ("C", 10)):
            exact = Decimal("218.5") / (k * amps)
            assert abs(table.value(amps, curve) - exact) < Decimal("0.0001")
            if amps not in (3, 13, 45):
                printed = table.value(amps, f"{curve} as printed")
                assert abs(printed - exact) <= Decimal("0.005")


def test_rewirable_fuse_limits_follow_from_their_currents() -> None:
    """218.5 V over the current that blows it, within 0.01 Ω; 5 A is printed 9.10."""
    table = TABLES["zs-bs-3036"]
    for amps in (Decimal(15), Decimal(20), Decimal(30), Decimal(45)):
        current = table.value(amps, "Ia at 0.4 s, A")
        assert abs(table.value(amps, "0.4 s") - Decimal("218.5") / current) <= Decimal(
            "0.01"
        )


@pytest.mark.parametrize("code", ["capacity-4d5", "capacity-4d1a", "capacity-4d2a"])
def test_voltage_drop_is_twice_the_warm_resistance(code: str) -> None:
    """BS EN 60228 at 70 °C, both ways; the print is rounded: within 1.6 %."""
    table, ohms = TABLES[code], TABLES["conductor-resistance"]
    for size in table.numbers():
        if size <= 16:
            warm = 2 * Decimal("1.2") * ohms.value(size, "20 °C")
            printed = table.value(size, "mV/A/m")
            assert abs(printed - warm) / warm < Decimal("0.016"), size


def test_r1_plus_r2_is_the_sum_of_both_conductors() -> None:
    table, ohms = TABLES["r1-r2"], TABLES["conductor-resistance"]
    for (pair, cold, warm), _ in zip(table.rows, table.basis, strict=True):
        assert pair is not None
        assert cold is not None
        assert warm is not None
        line, protective = (
            ohms.value(Decimal(size), "20 °C") for size in pair.split("/")
        )
        assert Decimal(cold) == line + protective
        assert abs(Decimal(warm) - Decimal("1.2") * Decimal(cold)) < Decimal("0.001")


def test_ambient_factors_follow_from_the_heat_that_is_left() -> None:
    """√((70 − T) ÷ 40), within 0.005; 25 °C is printed 1.03 and lower."""
    table = TABLES["ambient"]
    for celsius in table.numbers():
        if celsius >= 30:
            worked = sqrt((70 - float(celsius)) / 40)
            printed = float(table.value(celsius, "70 °C cable"))
            assert abs(printed - worked) < 0.006


@pytest.mark.parametrize(
    ("row", "big_k", "beta", "start", "end"),
    [
        ("copper in cable, 70 °C thermoplastic", 226, 234.5, 70, 160),
        ("copper in cable, 90 °C thermosetting", 226, 234.5, 90, 250),
        ("copper by itself, 70 °C thermoplastic", 226, 234.5, 30, 160),
        ("steel armour, 70 °C thermoplastic", 78, 202, 60, 200),
        ("aluminium in cable, 70 °C thermoplastic", 148, 228, 70, 160),
    ],
)
def test_k_follows_from_the_material(
    row: str, big_k: float, beta: float, start: float, end: float
) -> None:
    worked = big_k * sqrt(log(1 + (end - start) / (beta + start)))
    assert abs(float(TABLES["adiabatic-k"].value(row, "k")) - worked) < 1
