"""What guards a circuit against overload, and what is taken where that is open."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from typing import Any

import pytest

from app.domain.circuits import (
    CannotTell,
    CircuitAnswer,
    Part,
    Subject,
    Working,
    circuit_figures,
    load_current,
    result,
)
from app.domain.network import network
from app.domain.record import Circuit, Record, Result
from app.domain.remarks import remarks
from app.domain.results import measured_beside
from tests import builders as b

# 2.5 mm² flat twin and earth, clipped: 27 A (BS 7671:2018+A2:2022, Table 4D5).
CABLE: dict[str, Any] = {
    "use": "water_heating", "connected_w": 3000, "cable": "twin_and_earth",
    "arrangement": "radial", "line_mm2": 2.5, "cpc_mm2": 1.5, "method": "C",
    "length_m": 20, "ambient_c": 30, "grouped_with": 0, "insulation_mm": 0,
}  # fmt: skip
SUPPLY = {"earthing": "tn_c_s", "ze_ohm": "0.35", "ze_basis": "measured"}


def wired(*ways: b.Part, **home: Any) -> Record:
    switch = b.main_switch("MS", *ways)
    board = b.board("B1", switch, earthing="supply")
    return b.home(b.street(board), **SUPPLY | home)


def behind(kind: str, rated: int | None, breaker: int = 40, **cable: Any) -> Record:
    """A circuit from a thing of some kind, which a circuit-breaker of B1 feeds."""
    circuit = b.circuit("C1", **CABLE | cable)
    thing = b.device("X", circuit, kind=kind, rated_current_a=rated)
    return wired(b.way("W1", thing, rated_current_a=breaker))


def alone(cable: dict[str, Any] | None = None, /, **way: Any) -> Record:
    return wired(b.way("W1", b.circuit("C1", **CABLE | (cable or {})), **way))


def answer(record: Record, ref: str = "C1") -> CircuitAnswer:
    circuit = record.find(Circuit, ref)
    assert circuit is not None
    return circuit_figures(network(record), circuit)


def part(record: Record, code: str, ref: str = "C1") -> Part:
    got = answer(record, ref).part(code)
    assert got is not None, code
    return got


def limit(record: Record, code: str = "zs") -> Decimal:
    found = part(record, code).limit
    assert isinstance(found, Working)
    return found.value


def told(record: Record, code: str) -> list[tuple[str, ...]]:
    """What a remark is about, where it is found."""
    found = remarks(record, date(2026, 1, 1))
    return [r.about for r in found if r.code == code and r.outcome == "remark"]


@pytest.mark.parametrize(
    ("kind", "rated"),
    [("contactor", 20), ("time_switch", 16), ("isolator", 20), ("rcd", 25)],
)
def test_a_switch_guards_no_cable_but_what_is_before_it_does(
    kind: str, rated: int
) -> None:
    record = behind(kind, rated)
    got = part(record, "overload")
    assert got.sign == "beyond"
    assert (
        "The device, 40 A (Circuit-breaker W1, which guards it), is larger" in got.says
    )
    assert told(record, "device-over-cable") == [("C1", "X", "W1")]
    # BS 7671:2018+A2:2022, Table 41.3(a): B40, 1.09 Ω.
    assert round(limit(record), 2) == Decimal("1.09")


def test_a_small_enough_breaker_before_a_switch_guards_the_cable() -> None:
    assert part(behind("contactor", 40, breaker=25), "overload").sign == "within"


def test_a_switch_with_no_fuse_behind_it_may_be_overloaded() -> None:
    thing = b.device("X", b.circuit("C1", **CABLE), kind="isolator", rated_current_a=20)
    assert told(wired(thing), "switch-may-be-overloaded") == [("X", "CUT")]
    guarded = b.device("X", b.way("W1", b.circuit("C1", **CABLE), rated_current_a=16),
                       kind="isolator", rated_current_a=20)  # fmt: skip
    assert told(wired(guarded), "switch-may-be-overloaded") == []


def test_where_there_is_no_other_the_fuse_of_the_cut_out_guards() -> None:
    thing = b.device("X", b.circuit("C1", **CABLE), kind="isolator", rated_current_a=20)
    got = part(wired(thing), "overload")
    assert got.sign == "beyond"
    assert "100 A (Cut-out, which guards it, by the figure on it)" in got.says


def test_a_breaker_of_another_board_guards_what_is_behind_a_switch_of_this_one() -> (
    None
):
    feeder = b.circuit("C9", use="distribution", arrangement="distribution")
    switch = b.device("X", b.circuit("C1", **CABLE), kind="isolator")
    far = b.board("B2", switch, fed_from="C9", earthing="supply")
    breaker = b.way("W9", feeder, rated_current_a=32)
    board = b.board("B1", b.main_switch("MS", breaker), earthing="supply")
    got = part(b.home(b.street(board), far, **SUPPLY), "overload")
    assert "32 A (Circuit-breaker W9, which guards it), is larger" in got.says


def test_the_fuse_of_a_connection_unit_guards_the_board_behind_it() -> None:
    circuit = b.circuit("C9", b.fcu("P9"))
    switch = b.device("X", b.circuit("C1", **CABLE), kind="isolator")
    far = b.board("B2", switch, fed_from="P9", earthing="supply")
    board = b.board("B1", b.main_switch("MS", b.way("W9", circuit)), earthing="supply")
    got = part(b.home(b.street(board), far, **SUPPLY), "overload")
    assert got.sign == "within"
    assert "The device, 13 A (" in got.says


@pytest.mark.parametrize("kind", ["unknown", "other"])
def test_a_thing_that_may_guard_it_or_not_leaves_it_open(kind: str) -> None:
    got = part(behind(kind, 20), "overload")
    assert got.sign == "open"
    assert got.says == "Cannot tell: needs what its device guards against."


def test_behind_a_bell_transformer_nothing_is_worked_out() -> None:
    got = part(behind("bell_transformer", None), "overload")
    assert got.says == (
        "Cannot tell: it is behind a bell transformer, whose voltage is another."
    )


def test_a_switch_that_nothing_is_recorded_before_leaves_it_open() -> None:
    thing = b.device("X", b.circuit("C1", **CABLE), kind="isolator", rated_current_a=20)
    record = b.home(b.board("B1", thing, earthing="supply"), **SUPPLY)
    for code in ("overload", "load", "zs-measured"):
        assert part(record, code).says == (
            "Cannot tell: needs the fuse or circuit-breaker before its way."
        ), code


def test_of_two_feeds_with_a_breaker_each_none_is_picked() -> None:
    circuit = b.circuit("C1", **CABLE)
    change = b.device("X", circuit, kind="changeover", second_feed="W2", fed_from="W1")
    record = wired(b.way("W1"), b.way("W2"), change)
    assert "more ways than one" in part(record, "overload").says
    same = b.device("Y", b.circuit("C1", **CABLE), kind="changeover",
                    second_feed="MS", fed_from="MS")  # fmt: skip
    assert "Cut-out, which guards it" in part(wired(same), "overload").says


@pytest.mark.parametrize(
    ("rated", "sign", "says"),
    [
        (20, "within", "and of Contactor X, 20 A."),
        (10, "beyond", "The load is more than the rating of Contactor X, 10 A."),
        (None, "open", "needs the rating of Contactor X."),
    ],
)
def test_the_load_is_held_to_a_switch_too(
    rated: int | None, sign: str, says: str
) -> None:
    """3000 W at 230 V is 13 A."""
    got = part(behind("contactor", rated), "load")
    assert got.sign == sign
    assert says in got.says
    found = told(behind("contactor", rated), "fixed-load-over-rating")
    assert bool(found) is (sign == "beyond")


def test_of_sockets_what_less_may_pass_is_said() -> None:
    got = part(behind("contactor", 20, use="sockets", connected_w=None), "load")
    assert got.says == (
        "No load is recorded: 40.0 A is the rating of its device. "
        "Less may pass Contactor X, 20 A."
    )


def test_a_ring_is_held_to_what_guards_it() -> None:
    ring = {"use": "sockets", "arrangement": "ring", "connected_w": None}
    record = behind("contactor", 32, breaker=40, **ring)
    assert part(record, "ring").sign == "beyond"
    assert told(record, "ring-device-rating") == [("C1", "W1")]
    assert told(behind("contactor", 40, breaker=32, **ring), "ring-device-rating") == []


@pytest.mark.parametrize(
    ("wire", "carrier", "sign"),
    [(30, 15, "beyond"), (15, 30, "beyond"), (15, 15, "within"), (None, 15, "within")],
)
def test_the_larger_of_wire_and_carrier_governs(
    wire: int | None, carrier: int, sign: str
) -> None:
    """0.725 × 27 A is 19.6 A (BS 7671:2018+A2:2022, 433.1.202)."""
    record = alone(kind="fuse_rewirable", rated_current_a=carrier, fuse_wire_a=wire)
    got = part(record, "overload")
    assert got.sign == sign
    assert ("by the wire seen in it" in got.says) is (wire == 30)
    # BS 7671:2018+A2:2022, Table 41.4: 15 A 5.08 Ω, 30 A 2.51 Ω; 41.2: 2.43, 1.04 Ω.
    assert limit(record) == Decimal("1.04" if sign == "beyond" else "2.43")


def test_a_load_above_the_carrier_is_said_though_the_wire_holds() -> None:
    got = part(alone({"connected_w": 4600}, kind="fuse_rewirable", rated_current_a=15,
                     fuse_wire_a=30), "load")  # fmt: skip
    assert got.says == (
        "The load is more than the rating of the carrier of that fuse, 15 A."
    )


@pytest.mark.parametrize(
    ("way", "most"),
    [
        # BS 7671:2018+A2:2022, Table 41.3(c): D40 within 0.4 s, 0.27 Ω; D63 0.17 Ω.
        ({"rated_current_a": 40, "curve": "D"}, "0.27"),
        ({"rated_current_a": 63, "curve": "D"}, "0.17"),
        # Table 41.2, 45 A within 0.4 s: 0.56 Ω; 41.4, 100 A within 5 s: 0.51 Ω.
        ({"rated_current_a": 45, "kind": "fuse_rewirable"}, "0.56"),
        ({"rated_current_a": 100, "kind": "fuse_rewirable"}, "0.51"),
    ],
)
def test_while_the_use_is_unknown_the_shorter_time_is_taken_and_said(
    way: dict[str, Any], most: str
) -> None:
    record = alone({"use": "unknown", "line_mm2": 10, "cpc_mm2": 4}, **way)
    assert round(limit(record), 2) == Decimal(most)
    said = [text for text in part(record, "zs").assumes if "shorter time" in text]
    assert bool(said) is (way["rated_current_a"] <= 63)
    assert all("with sockets" in text for text in said)


def test_what_a_measured_figure_is_held_to_says_what_it_assumes() -> None:
    at = date(2021, 5, 1)
    test = b.Part(Result, {"ref": "R1", "about": "C1", "zs_ohm": "0.3",
                           "tested_on": at})  # fmt: skip
    circuit = b.circuit("C1", **CABLE | {"use": "unknown"})
    record = wired(b.way("W1", circuit, rated_current_a=40, curve="D"), test)
    [found] = [r for r in remarks(record, date(2026, 1, 1))
               if r.code == "measured-loop-high"]  # fmt: skip
    assert "it may reach 0.219 Ω. Assumed: It is taken as a final circuit" in (
        found.sentence
    )


@pytest.mark.parametrize(
    ("ma", "delayed", "said"),
    [(100, "unknown", True), (100, "no", False), (30, "unknown", False)],
)
def test_with_an_electrode_a_delay_that_is_open_is_assumed_and_said(
    ma: int, delayed: str, said: bool
) -> None:
    way = b.way("W1", b.circuit("C1", **CABLE))
    rcd = b.rcd("R", way, residual_current_ma=ma, time_delayed=delayed)
    record = wired(rcd, earthing="tt", ze_ohm=90)
    for code in ("zs", "zs-measured", "rcd"):
        got = part(record, code)
        assert any("not time-delayed" in text for text in got.assumes) is said, code
    test = Result(ref="R1", about="C1", zs_ohm=Decimal(95))
    circuit = record.find(Circuit, "C1")
    assert circuit is not None
    both = record.having(results=(test,))
    [beside] = measured_beside(both, circuit, answer(both))
    assert any("not time-delayed" in text for text in beside.says) is said


def test_at_night_a_three_phase_load_counts_by_phase() -> None:
    """12 kW is 52.2 A on one phase, 17.4 A on each of three; a third of 100 A is 33."""
    circuit = b.circuit("C1", use="storage_heating", connected_w=12_000)
    for phase, found in (("all", []), ("l1", [("CUT", "C1")])):
        thing = b.device("X", circuit, kind="contactor", when="off_peak")
        record = wired(b.way("W1", thing, phase=phase), phases="three")
        assert told(record, "night-load") == found, phase


def test_a_very_small_conductor_is_not_called_nought() -> None:
    rcd = b.rcd("R", b.way("W1", b.circuit("C1", **CABLE)))
    got = part(wired(rcd, earthing="tt", ze_ohm=300), "adiabatic")
    # Zs 300.47 Ω: 0.77 A for 0.3 s, k 115.
    assert got.says.startswith("0.004 mm² would do; the record says 1.5 mm².")


@pytest.mark.parametrize(
    ("value", "shown"),
    [("0", "0.00 V"), ("0.004", "0.004 V"), ("-0.0004", "-0.0004 V"),
     ("0.005", "0.01 V"), ("0.00096", "0.0010 V"), ("1.234", "1.23 V")],
)  # fmt: skip
def test_only_nought_reads_as_nought(value: str, shown: str) -> None:
    got = result(
        "It", Decimal(value), "V", formula="", put_in="", figures=(), source=""
    )
    assert got.shown == shown


def of_phase(phase: str, poles: str = "unknown", **home: Any) -> Record:
    circuit = b.circuit("C1", **CABLE | {"connected_w": 22_000, "use": "vehicle"})
    way = b.way("W1", circuit, phase=phase, poles=poles)
    return wired(way, **{"phases": "three"} | home)


@pytest.mark.parametrize(
    ("phase", "poles"), [("all", "unknown"), ("unknown", "three_line_and_neutral")]
)
def test_a_three_phase_load_is_shared_by_the_phases(phase: str, poles: str) -> None:
    """22 000 / (3 × 230) is 31.9 A."""
    record = of_phase(phase, poles)
    got = part(record, "load")
    assert isinstance(got.found, Working)
    assert got.found.shown == "31.88 A"
    assert got.sign == "within"
    assert "The load is taken as even on the three phases." in got.assumes
    assert told(record, "charger-over-rating") == []
    assert told(record, "demand-above-main-fuse") == []


def test_no_table_for_single_phase_stands_in_for_three() -> None:
    for code in ("overload", "drop", "drop-spread"):
        got = part(of_phase("all"), code)
        assert got.says == (
            "Cannot tell: it is three-phase, and no table here is for that."
        )
    # Line to earth is the same: B32, Table 41.3(a), 1.37 Ω.
    assert round(limit(of_phase("all")), 2) == Decimal("1.37")


@pytest.mark.parametrize(
    ("phase", "phases", "said"),
    [("unknown", "three", True), ("unknown", "single", False), ("l1", "three", False)],
)
def test_a_phase_that_is_open_in_a_three_phase_home_is_assumed_and_said(
    phase: str, phases: str, said: bool
) -> None:
    record = of_phase(phase, phases=phases)
    for code in ("load", "overload", "drop"):
        got = part(record, code)
        assert any("taken as single-phase" in text for text in got.assumes) is said, (
            code
        )


def test_three_ways_of_one_phase_each_make_three() -> None:
    ways = [b.way(f"W{n}", phase=f"l{n}") for n in (1, 2, 3)]
    circuit = b.circuit("C1", ways=("W1", "W2", "W3"), **CABLE)
    record = wired(*ways, circuit, phases="three")
    on_it = record.find(Circuit, "C1")
    assert on_it is not None
    found = load_current(Subject(network(record), on_it))
    assert isinstance(found, Working)
    # 3000 W by three times 230 V.
    assert found.shown == "4.35 A"


def test_behind_a_three_phase_feeder_the_drop_is_not_told() -> None:
    feeder = b.circuit("C9", use="distribution", arrangement="distribution",
                       name="Feeder")  # fmt: skip
    last = b.way("W1", b.circuit("C1", **CABLE), phase="l2")
    far = b.board("B2", b.main_switch("M2", last), fed_from="C9", earthing="supply")
    record = wired(b.way("W9", feeder, phase="all"), far, phases="three")
    assert "Feeder: it is three-phase" in part(record, "drop").says


def test_a_missing_guard_keeps_its_reason_through_the_calculation() -> None:
    got = part(behind("bell_transformer", None), "zs-measured")
    assert isinstance(got.found, CannotTell)
    assert "bell transformer" in got.says


@pytest.mark.parametrize(
    ("watts", "sign", "says"),
    [
        # 2990 W / 230 V is 13 A, 920 W / 230 V is 4 A.
        (2990, "beyond", "more than the rating of the wire seen in that fuse, 5 A."),
        (920, "within", "device, 15 A, and of the wire seen in that fuse, 5 A."),
    ],
)
def test_the_load_is_held_to_wire_smaller_than_its_carrier(
    watts: int, sign: str, says: str
) -> None:
    fuse = {"kind": "fuse_rewirable", "rated_current_a": 15, "fuse_wire_a": 5}
    record = alone({"connected_w": watts}, **fuse)
    got = part(record, "load")
    assert (got.sign, says in got.says) == (sign, True)
    # The cable is held to the carrier: next time it may hold wire for all of that.
    assert "15 A" in part(record, "overload").says


def test_wire_seen_in_a_carrier_of_unknown_rating_may_be_too_little() -> None:
    fuse = {"kind": "fuse_rewirable", "rated_current_a": None, "fuse_wire_a": 5}
    assert part(alone({"connected_w": 2990}, **fuse), "load").sign == "beyond"
    assert part(alone({"connected_w": 920}, **fuse), "load").sign == "open"


def of_circuit(record: Record) -> Subject:
    circuit = record.find(Circuit, "C1")
    assert circuit is not None
    return Subject(network(record), circuit)


THREE_LINES = {"poles": "three_line_and_neutral"}


@pytest.mark.parametrize(
    ("before", "poles", "phase"),
    [
        (THREE_LINES, "line", "unknown"),
        (THREE_LINES, "line_and_neutral", "unknown"),
        (THREE_LINES, "three_line", "all"),
        (THREE_LINES, "unknown", "all"),
        ({"phase": "l2"}, "line", "l2"),
        ({"phase": "l2"}, "unknown", "l2"),
    ],
)
def test_a_way_that_breaks_one_line_is_not_on_three_phases(
    before: dict[str, str], poles: str, phase: str
) -> None:
    circuit = b.circuit("C1", **CABLE | {"connected_w": 6900, "use": "space_heating"})
    switch = b.device("K1", circuit, kind="isolator", board="B1", poles=poles)
    record = wired(b.way("W1", switch, **before), phases="three")
    assert of_circuit(record).phase == phase
