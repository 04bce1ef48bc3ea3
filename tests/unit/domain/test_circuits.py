"""The figures of a circuit from the record: told, and not told."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from app.domain.circuits import (
    CannotTell,
    CircuitAnswer,
    Outcome,
    Part,
    Working,
    circuit_figures,
    measured,
    recorded,
)
from app.domain.circuits.loop import zs, zs_limit
from app.domain.circuits.side_by_side import beside
from app.domain.network import network
from app.domain.record import Circuit, Record
from tests import builders as b

CABLE: dict[str, Any] = {
    "use": "shower",
    "connected_w": 7200,
    "cable": "twin_and_earth",
    "arrangement": "radial",
    "line_mm2": 6,
    "cpc_mm2": 2.5,
    "method": "C",
    "length_m": 20,
    "ambient_c": 30,
    "grouped_with": 0,
    "insulation_mm": 0,
}
RING: dict[str, Any] = {
    "use": "sockets", "connected_w": None, "arrangement": "ring", "line_mm2": 2.5,
    "cpc_mm2": 1.5, "length_m": 60,
}  # fmt: skip
SUPPLY = {"earthing": "tn_c_s", "ze_ohm": "0.35", "ze_basis": "measured"}


def answer(record: Record, ref: str = "C1") -> CircuitAnswer:
    circuit = record.find(Circuit, ref)
    assert circuit is not None
    return circuit_figures(network(record), circuit)


def wired(circuit: b.Part, **device: Any) -> b.Part:
    """One way of a board that is earthed as the home is."""
    switch = b.main_switch("MS", b.way("W1", circuit, **device))
    return b.street(b.board("B1", switch, earthing="supply"))


def one(way: dict[str, Any] | None = None, home: dict[str, Any] | None = None,
        **fields: Any) -> CircuitAnswer:  # fmt: skip
    circuit = b.circuit("C1", name="It", **CABLE | fields)
    device = {"rated_current_a": 32} | (way or {})
    return answer(b.home(wired(circuit, **device), **SUPPLY | (home or {})))


def part(found: CircuitAnswer, code: str) -> Part:
    got = found.part(code)
    assert got is not None, code
    return got


def value(outcome: Outcome | None) -> Decimal:
    assert isinstance(outcome, Working), outcome
    return outcome.value


def missing(got: Part) -> list[tuple[str, str]]:
    assert isinstance(got.found, CannotTell)
    return [(need.ref, need.name) for need in got.found.needs]


def test_a_circuit_with_everything_recorded() -> None:
    found = one()
    assert {p.code: p.sign for p in found.parts} == {
        "load": "within",
        "overload": "within",
        "drop": "within",
        "drop-spread": "within",
        "r1r2": None,
        "zs": "within",
        "zs-measured": None,
        "adiabatic": "within",
    }
    assert value(part(found, "overload").found) == Decimal(47)
    # 7.3 * 7200/230 * 20 / 1000
    assert round(value(part(found, "drop").found), 2) == Decimal("4.57")
    # Ze, and 1.2 times 20 m of 3.08 and 7.41 mΩ/m.
    assert value(part(found, "zs").found) == Decimal("0.60176")


def test_a_figure_recorded_is_not_called_assumed() -> None:
    found = one()
    assert part(found, "overload").assumes == ()
    assert part(found, "zs").assumes == ()


@pytest.mark.parametrize(
    ("field", "code"),
    [
        ("ambient_c", "overload"),
        ("grouped_with", "overload"),
        ("insulation_mm", "overload"),
    ],
)
def test_what_is_not_recorded_of_its_surroundings_is_assumed_and_said(
    field: str, code: str
) -> None:
    got = part(one(**{field: None}), code)
    assert len(got.assumes) == 1
    assert "Part of that is assumed." in got.says


@pytest.mark.parametrize(
    ("fields", "capacity"),
    [
        ({"ambient_c": 36}, "40.89"),
        ({"grouped_with": 1}, "37.6"),
        ({"insulation_mm": 60}, "36.66"),
        ({"insulation_mm": 2000}, "23.5"),
        ({"ambient_c": 35, "grouped_with": 1}, "35.344"),
        ({"method": "B"}, "38"),
        ({"method": "103"}, "23.5"),
        ({"method": "103", "insulation_mm": 900}, "23.5"),
        ({"cable": "singles_in_conduit", "method": "A"}, "34"),
        ({"cable": "armoured", "method": "D"}, "46"),
    ],
)
def test_capacity_with_factors(fields: dict[str, Any], capacity: str) -> None:
    assert value(part(one(**fields), "overload").found) == Decimal(capacity)


@pytest.mark.parametrize(
    "fields",
    [
        {"cable": "rubber"},
        {"cable": "singles_in_conduit", "method": "101"},
        {"line_mm2": 25},
        {"ambient_c": 70},
        {"grouped_with": 30},
        {"cable": "armoured", "method": "D", "grouped_with": 2},
        {"cable": "twin_no_earth", "method": "E", "insulation_mm": 100},
    ],
)
def test_capacity_is_not_guessed_beyond_the_tables(fields: dict[str, Any]) -> None:
    got = part(one(**fields), "overload")
    assert got.sign == "open"
    assert isinstance(got.found, CannotTell)
    assert got.found.why
    assert not got.found.needs


def test_a_device_too_large_for_its_cable_is_said() -> None:
    got = part(one({"rated_current_a": 50}), "overload")
    assert got.sign == "beyond"
    assert "larger than the cable allows" in got.says


@pytest.mark.parametrize(("rating", "sign"), [(30, "within"), (45, "beyond")])
def test_a_rewirable_fuse_asks_for_more_cable(rating: int, sign: str) -> None:
    """0.725 × 47 A is 34.1 A."""
    got = part(one({"kind": "fuse_rewirable", "rated_current_a": rating}), "overload")
    assert got.sign == sign
    assert value(got.limit) == Decimal("34.075")


@pytest.mark.parametrize(
    ("fields", "way", "sign"),
    [
        ({}, {}, "within"),
        ({"method": "100"}, {}, "within"),
        ({"method": "101"}, {}, "beyond"),
        ({"method": "103"}, {}, "beyond"),
        ({"line_mm2": 4, "method": "101"}, {}, "within"),
        ({"line_mm2": 1.5}, {}, "beyond"),
        ({}, {"rated_current_a": 40}, "beyond"),
        ({}, {"rated_current_a": 20}, "beyond"),
        ({}, {"kind": "fuse_rewirable", "rated_current_a": 30}, "within"),
    ],
)
def test_the_rule_for_rings(
    fields: dict[str, Any], way: dict[str, Any], sign: str
) -> None:
    assert part(one(way, **RING | fields), "ring").sign == sign


def test_the_ends_of_a_ring() -> None:
    found = one(**RING)
    assert value(part(found, "ring-r1").found) == Decimal("0.4446")
    assert value(part(found, "ring-r2").found) == Decimal("0.726")
    assert round(value(part(found, "r1r2").found), 4) == Decimal("0.2926")
    # 18 * 32 * 60 / 4000, and half of it spread evenly.
    assert value(part(found, "drop").found) == Decimal("8.64")
    assert value(part(found, "drop-spread").found) == Decimal("4.32")


@pytest.mark.parametrize(
    ("field", "codes"),
    [
        ("length_m", ("drop", "r1r2", "zs")),
        ("line_mm2", ("overload", "drop", "r1r2", "zs")),
        ("cpc_mm2", ("r1r2", "zs")),
        ("method", ("overload",)),
        ("cable", ("overload", "drop", "r1r2", "zs")),
        ("arrangement", ("drop", "r1r2", "zs")),
    ],
)
def test_what_is_missing_is_named(field: str, codes: tuple[str, ...]) -> None:
    empty: Any = "unknown" if field in ("method", "cable", "arrangement") else None
    found = one(**{field: empty})
    for code in codes:
        assert missing(part(found, code)) == [("C1", field)], code
        assert part(found, code).sign == "open"


def test_a_rating_that_is_missing_is_named() -> None:
    found = one({"rated_current_a": None}, connected_w=None)
    wanted = [("C1", "connected_w"), ("W1", "rated_current_a")]
    assert missing(part(found, "load")) == wanted
    for code in ("overload", "zs-measured"):
        got = part(found, code)
        assert got.sign == "open"
        assert "the rating of its device" in got.says


def test_no_protective_conductor_no_figure() -> None:
    got = part(one(has_cpc="no"), "r1r2")
    assert got.says == "Cannot tell: it has no protective conductor."


def test_ze_not_recorded_is_the_usual_worst_and_assumed() -> None:
    got = part(one(home={"ze_ohm": None, "earthing": "tn_s"}), "zs")
    assert value(got.found) == Decimal("1.05176")
    assert "Ze is not recorded: 0.8 Ω" in got.assumes[0]


def test_ze_that_is_the_usual_figure_is_assumed_too() -> None:
    got = part(one(home={"ze_basis": "typical"}), "zs")
    assert "is the usual figure for this kind of supply" in got.assumes[0]


def test_without_earthing_and_ze_nothing_is_supposed() -> None:
    got = part(one(home={"ze_ohm": None, "earthing": "unknown"}), "zs")
    assert missing(got) == [("H1", "ze_ohm"), ("H1", "earthing")]


def test_a_board_whose_earthing_is_not_recorded_is_not_given_the_homes() -> None:
    found = answer(b.home(b.one_way(b.circuit("C1", **CABLE)), **SUPPLY))
    for code in ("zs", "zs-measured"):
        got = part(found, code)
        assert missing(got) == [("B1", "earthing")]
        assert "the earthing of what A board feeds" in got.says


def test_a_board_with_its_own_electrode_is_not_given_the_homes_ze() -> None:
    circuit = b.circuit("C1", **CABLE)
    board = b.board("B1", b.main_switch("MS", b.way("W1", circuit)), earthing="tt")
    got = part(answer(b.home(b.street(board), **SUPPLY)), "zs")
    assert "earthing of its own" in got.says


@pytest.mark.parametrize(
    ("way", "limit"),
    [
        ({"curve": "B"}, "1.365625"),
        ({"curve": "C"}, "0.6828125"),
        ({"curve": "D"}, "0.34140625"),
        ({"curve": "2"}, "0.9754464285714285714285714286"),
        ({"kind": "rcbo", "curve": "B", "residual_current_ma": 30}, "1.365625"),
        ({"kind": "fuse_rewirable", "rated_current_a": 30}, "1.04"),
        ({"kind": "fuse_bs88"}, "0.91"),
        ({"kind": "fuse_cartridge", "rated_current_a": 30}, "1.09"),
    ],
)
def test_limit_of_each_kind_of_device(way: dict[str, Any], limit: str) -> None:
    assert value(part(one(way), "zs").limit) == Decimal(limit)


@pytest.mark.parametrize(
    ("way", "says"),
    [
        ({"curve": "unknown"}, "the type of its circuit-breaker"),
        ({"kind": "fuse_rewirable", "rated_current_a": 32}, "has no row for 32"),
        ({"kind": "other"}, "what its device guards against"),
    ],
)
def test_a_limit_that_cannot_be_told(way: dict[str, Any], says: str) -> None:
    got = part(one(way), "zs")
    assert got.sign == "open"
    assert says in got.says


def test_more_than_32_a_of_fixed_equipment_may_take_5_s() -> None:
    got = part(one({"kind": "fuse_bs88", "rated_current_a": 45}), "zs")
    assert value(got.limit) == Decimal(1)


def test_d_at_5_s_counts_with_10() -> None:
    rated = recorded("In", Decimal(40), "A", "here")
    limit = zs_limit("circuit_breaker", rated, "D", Decimal(5))
    assert value(limit) == Decimal("0.54625")


def test_in_a_tt_system_a_fuse_has_no_figure() -> None:
    got = part(one({"kind": "fuse_bs88"}, {"earthing": "tt", "ze_ohm": 90}), "zs")
    assert got.sign == "open"
    assert "no figure for 0.2 s" in got.says


@pytest.mark.parametrize(
    ("ohm", "sign", "says"),
    [(90, "within", "Ze"), (400, "within", "may not keep its figure"),
     (900, "beyond", "above")],
)  # fmt: skip
def test_a_tt_electrode_against_the_rcd(ohm: int, sign: str, says: str) -> None:
    way = {"kind": "rcbo", "residual_current_ma": 100}
    got = part(one(way, {"earthing": "tt", "ze_ohm": ohm}), "rcd")
    assert got.sign == sign
    assert says in got.says


TT = {"earthing": "tt", "ze_ohm": 90, "ze_basis": "measured"}


@pytest.mark.parametrize(
    ("ohm", "ma", "sign"),
    [(90, 30, "within"), (90, 300, "within"), (200, 300, "beyond")],
)
def test_in_a_tt_system_the_loop_is_held_to_the_rcd(
    ohm: int, ma: int, sign: str
) -> None:
    # 50 V / IΔn, BS 7671:2018+A2:2022, Table 41.5: 1667 Ω at 30 mA, 167 Ω at 300 mA.
    found = one({"kind": "rcbo", "residual_current_ma": ma}, TT | {"ze_ohm": ohm})
    got = part(found, "zs")
    assert got.sign == sign
    assert "device may open too late" not in got.says
    assert ("its RCD may not trip" in got.says) is (sign == "beyond")
    assert value(got.limit) == Decimal(50_000) / ma
    assert value(part(found, "zs-measured").found) == Decimal(50_000) / ma


def test_in_a_tt_system_without_an_rcd_the_loop_is_held_to_the_device() -> None:
    got = part(one(home=TT), "zs")
    assert got.sign == "beyond"
    assert "its device may open too late" in got.says


@pytest.mark.parametrize(
    ("of_rcd", "says"),
    [
        ({"time_delayed": "yes", "residual_current_ma": 100}, "time-delayed"),
        ({"residual_current_ma": None}, "the IΔn of its RCD"),
    ],
)
def test_in_a_tt_system_an_rcd_that_has_no_figure_leaves_it_open(
    of_rcd: dict[str, Any], says: str
) -> None:
    found = one({"kind": "rcbo", **of_rcd}, TT)
    for code in ("zs", "zs-measured", "rcd"):
        got = part(found, code)
        assert got.sign == "open"
        assert says in got.says


def test_in_a_tt_system_the_fault_lasts_until_the_rcd_opens() -> None:
    found = one({"kind": "rcbo", "residual_current_ma": 30}, TT)
    got = part(found, "adiabatic")
    # Zs 90.25176 Ω: 2.55 A for 0.3 s, k 115.
    assert got.sign == "within"
    assert round(value(got.found), 3) == Decimal("0.012")
    assert any("0.3 s" in text for text in got.assumes)


def test_a_time_delayed_rcd_has_no_figure() -> None:
    way = {"kind": "rcbo", "residual_current_ma": 100, "time_delayed": "yes"}
    assert part(one(way), "rcd").sign == "open"


def behind_a_board(**feeder: Any) -> Record:
    last = b.way("W2", b.circuit("C2", **CABLE | {"length_m": 10}), rated_current_a=32)
    feeds = {
        "use": "distribution", "arrangement": "distribution", "cable": "armoured",
        "line_mm2": 10, "cpc_mm2": 10, "length_m": 30, "method": "D",
        "connected_w": None,
    }  # fmt: skip
    switch = b.main_switch("MS2", last)
    board = b.board("B2", switch, fed_from="C1", earthing="supply")
    circuit = b.circuit("C1", name="Feeder", **feeds | feeder)
    return b.home(wired(circuit, rated_current_a=40), board, **SUPPLY)


def test_a_circuit_behind_another_board_counts_from_the_origin() -> None:
    found = answer(behind_a_board(), "C2")
    own = value(part(found, "drop-own").found)
    # Its own, and 4.4 * 40 * 30 / 1000 of the feeder.
    assert value(part(found, "drop").found) == own + Decimal("5.28")
    # Ze, and 1.2 times 30 m of 3.66 mΩ/m and 10 m of 10.49 mΩ/m.
    assert value(part(found, "zs").found) == Decimal("0.60764")
    assert any("rating" in said for said in part(found, "drop").assumes)


def test_what_is_missing_further_up_is_named_with_its_circuit() -> None:
    got = part(answer(behind_a_board(length_m=None), "C2"), "zs")
    assert missing(got) == [("C1", "length_m")]
    assert "(Feeder)" in got.says


def test_of_two_supplies_no_single_figure_is_given() -> None:
    circuit = b.circuit("C1", **CABLE)
    other = b.circuit("C9", **CABLE | {"use": "distribution"}, ways=("W9",))
    change = b.device("CO", b.way("W1", circuit), kind="changeover", second_feed="C9")
    board = b.board("B1", b.main_switch("MS", change, b.way("W9")))
    found = answer(b.home(b.street(board), other, **SUPPLY))
    assert "more ways than one" in part(found, "zs").says
    assert "more ways than one" in part(found, "drop").says


def test_a_circuit_on_two_ways_has_no_one_device() -> None:
    circuit = b.circuit("C1", ways=("W1", "W2"), **CABLE)
    board = b.board("B1", b.main_switch("MS", b.way("W1"), b.way("W2")))
    found = answer(b.home(b.street(board), circuit, **SUPPLY))
    assert "which one way guards it" in part(found, "overload").says


def test_points_give_the_load_where_the_circuit_does_not() -> None:
    heaters = (b.point("P1", kind="heater", load_w=1000, count=2),
               b.point("P2", kind="heater", load_w=300))  # fmt: skip
    circuit = b.circuit("C1", *heaters, use="space_heating")
    found = answer(b.home(b.one_way(circuit)))
    assert value(part(found, "load").found) == Decimal(10)


def test_one_point_without_a_load_leaves_the_sum_unknown() -> None:
    heaters = (b.point("P1", kind="heater", load_w=1000),
               b.point("P2", kind="heater"))  # fmt: skip
    circuit = b.circuit("C1", *heaters, use="space_heating")
    got = part(answer(b.home(b.one_way(circuit, rated_current_a=16))), "load")
    assert value(got.found) == Decimal(16)
    assert "stands in for it" in got.assumes[0]


def test_a_small_protective_conductor_is_said() -> None:
    got = part(one({"kind": "fuse_rewirable", "rated_current_a": 30},
                   cpc_mm2=1, length_m=5), "adiabatic")  # fmt: skip
    # √(210.1² * 0.4) / 115
    assert round(value(got.found), 2) == Decimal("1.16")
    assert got.sign == "beyond"
    assert "maker" in got.says


def test_above_the_limit_the_fault_is_not_worked_on() -> None:
    found = one(length_m=200)
    assert part(found, "zs").sign == "beyond"
    assert "the time is not known" in part(found, "adiabatic").says


def test_measured_and_calculated_stand_side_by_side() -> None:
    ohms = [recorded(n, Decimal(v), "Ω", "here") for n, v in (("Ze", "0.35"),
            ("R1+R2, warm", "0.25"))]  # fmt: skip
    calculated = zs(*ohms)
    seen = measured("Zs", Decimal("0.72"), "Ω", "A. Tester, 1 May 2021, report 7")
    found = beside(seen, calculated)
    assert found.difference == Decimal("0.12")
    assert "A. Tester, 1 May 2021, report 7" in found.sentence
    assert "Neither overrules the other" in found.sentence
    assert "measured cold" in found.sentence
    same = measured("Zs", Decimal("0.6"), "Ω", "report")
    assert beside(same, calculated).sentence == "Measured and calculated are the same."


def test_only_a_measured_figure_of_one_unit_is_set_beside() -> None:
    calculated = zs(recorded("Ze", Decimal(1), "Ω", "here"))
    with pytest.raises(ValueError, match="measured"):
        beside(recorded("Zs", Decimal(1), "Ω", "here"), calculated)
    with pytest.raises(ValueError, match="unit"):
        beside(measured("I", Decimal(1), "A", "here"), calculated)


def shower_behind_its_switch(**way: Any) -> Record:
    shower = b.point("P1", kind="shower", load_w=10_800)
    switch = b.point("S1", shower, kind="shower_switch")
    return b.home(b.one_way(b.circuit("C1", switch, use="shower"), **way))


def test_what_only_passes_a_load_on_hides_no_overload() -> None:
    # 10 800 W / 230 V
    got = part(answer(shower_behind_its_switch(rated_current_a=32)), "load")
    assert (round(value(got.found), 2), got.sign) == (Decimal("46.96"), "beyond")
    assert not got.assumes
    assert part(answer(shower_behind_its_switch(rated_current_a=50)), "load").sign == (
        "within"
    )


@pytest.mark.parametrize(
    ("kind", "use", "sign"),
    [
        ("switch", "lighting", "within"),
        ("fused_connection_unit", "water_heating", "within"),
        ("junction_box", "fixed", "within"),
        ("blank_plate", "fixed", "within"),
        ("isolator", "heat_pump", "within"),
        ("cooker_outlet_socket", "cooker", "within"),
        ("cooker_outlet_socket", "fixed", None),
        ("unknown", "fixed", None),
    ],
)
def test_only_what_draws_must_have_its_load(
    kind: str, use: str, sign: str | None
) -> None:
    points = (b.point("P1", kind="heater", load_w=1000), b.point("P2", kind=kind))
    circuit = b.circuit("C1", *points, use=use)
    got = part(answer(b.home(b.one_way(circuit, rated_current_a=16))), "load")
    assert got.sign == sign


@pytest.mark.parametrize(
    ("watts", "sign", "says"),
    [
        (3000, None, "Of its load only 13.04 A is recorded: 16.0 A is the rating"),
        (4000, "beyond", "The load is more than the rating of the device, 16 A."),
    ],
)
def test_a_part_of_a_load_is_a_least(watts: int, sign: str | None, says: str) -> None:
    points = (b.point("P1", kind="heater", load_w=watts), b.point("P2", kind="heater"))
    circuit = b.circuit("C1", *points, use="space_heating")
    got = part(answer(b.home(b.one_way(circuit, rated_current_a=16))), "load")
    assert got.sign == sign
    assert says in got.says
    assert ("at least" in " ".join(got.assumes)) == (sign == "beyond")


def test_a_part_of_a_load_is_held_to_a_switch_too() -> None:
    points = (b.point("P1", kind="heater", load_w=5000), b.point("P2", kind="heater"))
    circuit = b.circuit("C1", *points, use="space_heating")
    switch = b.device("K1", circuit, kind="isolator", board="B1", rated_current_a=20)
    got = part(answer(b.home(b.one_way(switch))), "load")
    assert got.sign == "beyond"
    assert "20 A" in got.says
