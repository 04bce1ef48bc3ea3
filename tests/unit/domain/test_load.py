"""Load: the test homes' demand, RCDs by what stands round them, and the doubts."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from app.domain.load import (
    Addition,
    LoadAnswer,
    addition,
    kilowatts,
    load_answer,
    loads_of,
)
from app.domain.load.differ import QUESTION
from app.domain.load.rcd import RcdLoading, rcd_loading
from app.domain.network import network
from app.domain.record import Device, Record
from app.errors import InvalidError
from tests import builders as b
from tests.unit.domain.test_houses import NAMES, expected_of, record_of

VERDICTS = {"ok": "shown", "not_shown_protected_from_overload": "not_shown"}


def answer_of(record: Record, *additions: str) -> LoadAnswer:
    return load_answer(network(record), [addition(text) for text in additions])


def amps_of(text: str) -> float:
    return float(text.removesuffix(" A"))


@pytest.mark.parametrize("name", NAMES)
def test_demand_of_a_home_is_in_the_range_worked_out_by_hand(name: str) -> None:
    expected = expected_of(name)["c_max_demand"]
    found = answer_of(record_of(name)).demand
    low, high = expected["acceptable_range_A"]
    assert low <= found.amps <= high
    assert abs(float(found.amps) - expected["total_A"]) <= 0.1
    assert found.low <= found.amps <= found.high
    assert not found.not_counted


@pytest.mark.parametrize("name", NAMES)
def test_each_row_is_as_it_was_worked_out_by_hand(name: str) -> None:
    expected = expected_of(name)["c_max_demand"]["lines"]
    names = {"battery_charging": "battery"}
    by_hand = {names.get(line["rule"], line["rule"]): line["A"] for line in expected}
    found = {row.group: row.amps for row in answer_of(record_of(name)).demand.rows}
    assert set(found) == set(by_hand)
    for group, amps in by_hand.items():
        assert abs(float(found[group]) - amps) <= 0.011, group


@pytest.mark.parametrize("name", NAMES)
def test_supply_fuse_of_a_home(name: str) -> None:
    expected = expected_of(name)["c_max_demand"]
    [fuse] = [a for a in answer_of(record_of(name)).against if a.what == "supply_fuse"]
    assert fuse.rated is not None
    assert fuse.rated.value == expected["cutout_A"]
    beyond = expected["verdict"] == "over_main_fuse_on_paper"
    assert fuse.sign == ("beyond" if beyond else "within")
    assert fuse.says.startswith("On paper, cautious")


@pytest.mark.parametrize("name", NAMES)
def test_rcds_of_a_home(name: str) -> None:
    expected = {each["rcd"]: each for each in expected_of(name)["rcd_loading"]}
    found = {each.rcd.ref: each for each in answer_of(record_of(name)).rcds}
    assert set(found) == set(expected)
    for ref, by_hand in expected.items():
        got = found[ref]
        assert got.rated_a == by_hand["rating_A"]
        assert got.ways_a == by_hand["sum_of_ways_A"]
        assert got.before_a == by_hand["nearest_upstream_overcurrent_A"]
        assert got.verdict == VERDICTS[by_hand["verdict"]]
        assert abs(amps_of(got.demand) - by_hand["diversified_A"]) <= 0.1


def test_day_and_night_are_told_apart() -> None:
    expected = expected_of("h05")["c_max_demand"]
    found = answer_of(record_of("h05")).demand
    assert amps_of(found.day) == expected["day_only_A"]
    # By hand 38.9 A for the board; what is on off-peak only is just that board.
    assert amps_of(found.off_peak) == pytest.approx(
        expected["off_peak_board_only_A"], abs=0.1
    )


def test_what_is_held_back_counts_as_managed_and_without() -> None:
    record = record_of("h06")
    circuits = tuple(
        c.model_copy(update={"managed": "yes"}) if c.use == "battery" else c
        for c in record.circuits
    )
    found = answer_of(record.having(circuits=circuits)).demand
    expected = expected_of("h06")["c_max_demand"]
    managed = expected["total_without_battery_charging_A"]
    assert abs(float(found.amps) - managed) <= 0.1
    without = next(v for v in found.variations if "held back" in v.label)
    assert abs(float(without.amps) - expected["total_A"]) <= 0.1


def bank(*ratings: int | None, rcd: str, rated: int) -> b.Part:
    ways = [
        b.way(f"{rcd}{n}", b.circuit(f"C{rcd}{n}", use="sockets"), rated_current_a=a)
        for n, a in enumerate(ratings)
    ]
    return b.rcd(rcd, *ways, rated_current_a=rated)


def split(cutout: int | None, *banks: b.Part) -> Record:
    board = b.board("B1", b.main_switch("MS", *banks))
    street = b.source("GRID", b.cutout("CUT", board, rated_current_a=cutout))
    return b.home(street, phases="single", looped="no")


SMALL = (32, 6, 6)
LARGE = (32, 32, 40)


@pytest.mark.parametrize(
    ("cutout", "at_63", "at_80", "verdicts"),
    [
        (60, LARGE, LARGE, ("shown", "shown")),
        (80, SMALL, LARGE, ("shown", "shown")),
        (80, LARGE, LARGE, ("not_shown", "shown")),
        (100, SMALL, LARGE, ("shown", "not_shown")),
        (100, LARGE, SMALL, ("not_shown", "shown")),
        (100, LARGE, LARGE, ("not_shown", "not_shown")),
        (None, SMALL, LARGE, ("shown", "cannot_tell")),
        (None, SMALL, SMALL, ("shown", "shown")),
        (100, (32, None), SMALL, ("cannot_tell", "shown")),
    ],
)
def test_two_rcds_that_differ(
    cutout: int | None,
    at_63: tuple[int | None, ...],
    at_80: tuple[int | None, ...],
    verdicts: tuple[str, str],
) -> None:
    record = split(
        cutout, bank(*at_63, rcd="R1", rated=63), bank(*at_80, rcd="R2", rated=80)
    )
    [asked] = answer_of(record).rcds_differ
    assert QUESTION in asked.question
    assert "63 A and 80 A" in asked.question
    assert tuple(each.verdict for each in asked.each) == verdicts
    begins = (
        "It may matter"
        if "not_shown" in verdicts
        else "Cannot tell whether it matters"
        if "cannot_tell" in verdicts
        else "On paper it does not matter here"
    )
    assert asked.answer.startswith(begins)
    sourced = {said.source for said in asked.why if said.source}
    assert sourced == {"common practice, no source"}
    assert len(asked.matters) >= 4
    if cutout is None and "cannot_tell" in verdicts:
        assert any("supply fuse" in said.text for said in asked.matters)


def test_rcds_alike_raise_no_question() -> None:
    record = split(
        80, bank(*SMALL, rcd="R1", rated=63), bank(*LARGE, rcd="R2", rated=63)
    )
    assert not answer_of(record).rcds_differ


def test_an_rcd_for_fire_is_no_pair_of_one_for_people() -> None:
    other = b.rcd("R2", residual_current_ma=100, rated_current_a=80)
    record = split(80, bank(*SMALL, rcd="R1", rated=63), other)
    assert not answer_of(record).rcds_differ


def loading(record: Record, ref: str) -> RcdLoading:
    net = network(record)
    device = record.find(Device, ref)
    assert device is not None
    return rcd_loading(net, device, loads_of(net))


def test_an_rcd_of_unknown_rating_gives_no_verdict() -> None:
    board = b.board("B1", b.rcd("R1", b.way("W1"), rated_current_a=None))
    found = loading(b.home(b.street(board)), "R1")
    assert found.verdict == "cannot_tell"
    assert found.says == "Cannot tell: needs the rated current of the RCD."


def test_ways_behind_a_switch_count_and_a_breaker_ends_the_search() -> None:
    behind = b.way("W2", b.device("SUB", b.way("W3"), kind="isolator"))
    rcd = b.rcd("R1", b.device("SW", behind, kind="isolator"))
    found = loading(b.home(b.street(b.board("B1", rcd))), "R1")
    assert [way.ref for way in found.ways] == ["W2"]


def test_of_two_feeds_the_larger_fuse_counts_and_an_unknown_one_blocks() -> None:
    def fed_by(second: int | None) -> Record:
        generator = b.source(
            "GEN", b.intake("SF", kind="switch_fuse", rated_current_a=second),
            kind="generator",
        )  # fmt: skip
        rcd = b.rcd("R1", b.way("W1"), rated_current_a=80)
        change = b.device("CO", rcd, kind="changeover", second_feed="SF")
        return b.home(b.source("GRID", b.cutout("CUT", b.board("B1", change))),
                      generator)  # fmt: skip

    assert loading(fed_by(32), "R1").before_a == 100
    assert loading(fed_by(125), "R1").before_a == 125
    assert loading(fed_by(None), "R1").before is None


def test_an_rcd_that_is_fed_from_itself_is_answered_for() -> None:
    around = b.intake("I1", kind="isolator", fed_from="R1")
    rcd = b.rcd("R1", b.way("W1"), fed_from="I1", rated_current_a=63)
    found = loading(b.home(b.board("B1", rcd), around), "R1")
    assert [way.ref for way in found.ways] == ["W1"]
    assert found.before is None


def test_two_rcds_in_a_circle_have_the_same_ways_each_once() -> None:
    first = b.rcd("R1", b.way("W1"), b.way("W2"), fed_from="R2")
    second = b.rcd("R2", b.way("W3"), fed_from="R1", second_feed="R1")
    record = b.home(b.board("B1", first, second))
    for ref in ("R1", "R2"):
        ways = [way.ref for way in loading(record, ref).ways]
        assert sorted(ways) == ["W1", "W2", "W3"]


def test_a_supply_fuse_not_known_gives_no_verdict() -> None:
    found = answer_of(split(None, bank(*SMALL, rcd="R1", rated=63)), "shower=8.5")
    [fuse] = [a for a in found.against if a.what == "supply_fuse"]
    assert fuse.sign == "open"
    assert "find out from the network" in fuse.says
    assert fuse.rated is None
    assert found.what_if is not None
    assert found.what_if.to_do[0].text.startswith("Find out the rating")


def test_no_cutout_recorded_gives_no_verdict_either() -> None:
    found = answer_of(b.home(b.board("B1", b.way("W1", b.circuit("C1")))))
    assert found.against[0].sign == "open"


def test_what_cannot_be_counted_makes_the_total_a_least() -> None:
    unknown = b.circuit("C1", name="Cable to nowhere")
    found = answer_of(b.home(b.one_way(unknown)))
    [left] = found.demand.not_counted
    assert (left.ref, left.why) == (
        "C1",
        "Cannot tell: what it is used for is not recorded.",
    )
    assert found.against[0].sign == "open"
    assert "not counted" in found.against[0].says


def test_where_nothing_is_counted_no_figure_stands_for_it() -> None:
    rcd = b.rcd("R1", b.way("W1", b.circuit("C1")))
    home = b.home(b.street(b.board("B1", b.main_switch("MS", rcd))))
    found = answer_of(home, "shower=8.5")
    assert (found.demand.shown, found.demand.total) == ("nothing counted yet",) * 2
    assert found.what_if is not None
    assert found.what_if.then.total == "at least 37.0 A"
    assert {each.demand for each in found.against} == {"nothing counted yet"}
    assert "0.0 A" not in found.model_dump_json()
    assert "With diversity" not in found.rcds[0].says


def test_a_fuse_beyond_stays_beyond_whatever_is_not_counted() -> None:
    shower = b.circuit("C1", use="shower", connected_w=25000)
    record = b.home(b.one_way(shower), b.circuit("C2", ways=("MS",)))
    assert answer_of(record).against[0].sign == "beyond"


def three_phase(*phases: str) -> Record:
    ways = [
        b.way(f"W{n}", b.circuit(f"C{n}", use="shower", connected_w=9200), phase=phase)
        for n, phase in enumerate(phases)
    ]
    board = b.board("B1", b.main_switch("MS", *ways))
    return b.home(
        b.source("GRID", b.cutout("CUT", board, rated_current_a=60)), phases="three"
    )


def test_demand_by_phase() -> None:
    fuses = [a for a in answer_of(three_phase("l1", "l1", "l2")).against
             if a.what == "supply_fuse"]  # fmt: skip
    assert [(f.phase, f.demand, f.sign) for f in fuses] == [
        ("L1", "80.0 A", "beyond"),
        ("L2", "40.0 A", "within"),
        ("L3", "0.0 A", "within"),
    ]
    # What the figure on a cut-out is worth is said once.
    assert [("may be smaller" in fuse.says) for fuse in fuses] == [True, False, False]


def test_three_phases_without_a_cut_out_are_not_added() -> None:
    record = charger("all", "l1")
    bare = record.having(intake=())
    [fuse] = [a for a in answer_of(bare).against if a.what == "supply_fuse"]
    assert fuse.says.startswith("On paper, cautious: 71.9 A on one phase at most.")


def charger(own: str = "all", other: str = "unknown") -> Record:
    """A charger of 22 kW on three phases; 22 000 / (3 × 230) is 31.9 A in each."""
    circuit = b.circuit("C1", use="vehicle", connected_w=22_000)
    shower = b.circuit("C2", use="shower", connected_w=9200)
    ways = (b.way("W1", circuit, phase=own), b.way("W2", shower, phase=other))
    board = b.board("B1", b.main_switch("MS", *ways, rated_current_a=63))
    fed = b.source("GRID", b.cutout("CUT", board, rated_current_a=80))
    return b.home(fed, phases="three")


def test_a_three_phase_load_is_shared_by_the_phases() -> None:
    found = answer_of(charger())
    fuses = [a for a in found.against if a.what == "supply_fuse"]
    assert [fuse.demand for fuse in fuses] == ["31.9 A"] * 3
    [switch] = [a for a in found.against if a.what == "switch"]
    # The shower of 40 A may be on any phase: more than 63 A then, and yet not shown.
    assert (switch.demand, switch.sign) == ("71.9 A", "open")
    assert "that no one phase is recorded for" in switch.says


@pytest.mark.parametrize(
    ("own", "other", "demand", "sign"),
    [("l1", "l2", "95.7 A", "beyond"), ("all", "l2", "71.9 A", "beyond"),
     ("all", "all", "45.2 A", "within")],
)  # fmt: skip
def test_a_switch_carries_what_is_on_the_phase_with_most(
    own: str, other: str, demand: str, sign: str
) -> None:
    found = answer_of(charger(own, other))
    [switch] = [a for a in found.against if a.what == "switch"]
    assert (switch.demand, switch.sign) == (demand, sign)


def test_each_phase_builds_up_by_itself() -> None:
    found = answer_of(charger(), "charger=7.36").what_if
    assert found is not None
    assert [(each.phase, each.demand.shown) for each in found.phases] == [
        ("L1", "31.9 A"), ("L2", "31.9 A"), ("L3", "31.9 A"), ("", "72.0 A"),
    ]  # fmt: skip
    assert answer_of(split(60, bank(32, rcd="R1", rated=63))).phases == ()


@pytest.mark.parametrize(
    ("breaker", "verdict"), [(40, "not_shown"), (25, "shown"), (None, "cannot_tell")]
)
def test_an_rcd_with_no_fuse_behind_it_is_guarded_by_what_is_before_alone(
    breaker: int | None, verdict: str
) -> None:
    rcd = b.rcd("R1", b.circuit("C1", use="sockets"), rated_current_a=25)
    record = split(100, b.way("W1", rcd, rated_current_a=breaker))
    [found] = answer_of(record).rcds
    assert found.verdict == verdict
    assert "No fuse or breaker stands between it and Circuit C1." in found.says


def test_wire_above_its_carrier_counts_before_and_behind_a_switch() -> None:
    of_wire = {"kind": "fuse_rewirable", "rated_current_a": 15, "fuse_wire_a": 30}
    behind = b.rcd("R2", b.way("W2", **of_wire), rated_current_a=25)
    before = b.device("W1", b.rcd("R1", rated_current_a=25), **of_wire)
    found = {each.rcd.ref: each for each in answer_of(split(100, before, behind)).rcds}
    assert found["R1"].before_a == 30
    assert found["R2"].ways_a == 30
    assert found["R2"].verdict == "not_shown"


def test_a_phase_not_recorded_leaves_the_verdict_open() -> None:
    fuses = [a for a in answer_of(three_phase("l1", "unknown")).against
             if a.what == "supply_fuse"]  # fmt: skip
    assert [fuse.sign for fuse in fuses] == ["open"] * 3
    assert fuses[0].says == (
        "L1: On paper, cautious: 40.0 A against a supply fuse of 60 A, "
        "but one load is on no phase recorded: no verdict yet."
    )
    assert [("may be smaller" in fuse.says) for fuse in fuses] == [False, False, True]


@pytest.mark.parametrize(
    ("looped", "says"),
    [
        ("yes", "Ask the network before anything is added"),
        ("unknown", "Ask the network whether the supply is looped"),
    ],
)
def test_what_to_do_first_when_the_supply_is_looped(looped: str, says: str) -> None:
    record = b.home(b.street(), looped=looped)
    found = answer_of(record, "charger=7.4")
    assert found.what_if is not None
    texts = [said.text for said in found.what_if.to_do]
    assert any(text.startswith(says) for text in texts)
    assert any("wants to hear of vehicle chargers" in text for text in texts)


def test_an_addition_joins_the_group_it_belongs_to() -> None:
    """Two showers at 100 %, the third at 25 %: adding one is not adding its all."""
    showers = [b.way(f"W{n}", b.circuit(f"C{n}", use="shower", connected_w=9200))
               for n in range(2)]  # fmt: skip
    record = b.home(b.street(b.board("B1", b.main_switch("MS", *showers))))
    found = answer_of(record, "shower=9.2")
    assert found.demand.shown == "80.0 A"
    assert found.what_if is not None
    assert found.what_if.then.shown == "90.0 A"
    assert found.what_if.against[0].demand == "90.0 A"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("shower=8.5", Addition(kind="shower", kw=Decimal("8.5"))),
        ("charger=7,4:held-back",
         Addition(kind="charger", kw=Decimal("7.4"), managed=True)),
    ],
)  # fmt: skip
def test_an_addition_is_read(text: str, expected: Addition) -> None:
    assert addition(text) == expected


@pytest.mark.parametrize(
    "text",
    ["kettle=3", "shower", "shower=", "shower=x", "shower=0", "shower=-1", "shower=51",
     "shower=NaN", "shower=Infinity", "shower=1.23456", "charger=7:later"],
)  # fmt: skip
def test_an_addition_that_is_none_is_refused(text: str) -> None:
    with pytest.raises(InvalidError):
        addition(text)


def test_kilowatts_take_a_comma() -> None:
    assert kilowatts(" 7,4 ") == Decimal("7.4")


def test_a_cooker_is_counted_by_circuit_in_the_variation() -> None:
    cookers = [
        b.way(f"W{n}", b.circuit(f"C{n}", use="cooker", connected_w=4600))
        for n in range(2)
    ]
    record = b.home(b.street(b.board("B1", b.main_switch("MS", *cookers))))
    found = answer_of(record).demand
    assert found.shown == "19.0 A"
    [each] = found.variations
    assert each.shown == "26.0 A"


def test_generation_is_no_load_and_not_taken_off() -> None:
    panels = b.way("W2", b.circuit("C2", use="generation", connected_w=3680))
    shower = b.way("W1", b.circuit("C1", use="shower", connected_w=9200))
    record = b.home(b.street(b.board("B1", b.main_switch("MS", shower, panels))))
    assert answer_of(record).demand.shown == "40.0 A"


def against_of(record: Record, ref: str) -> Any:
    every = answer_of(record).against
    return next(each for each in every if each.thing and each.thing.ref == ref)


@pytest.mark.parametrize(
    ("fields", "sign"),
    [
        ({"csa_mm2": 25}, "within"),
        ({"csa_mm2": 16}, "beyond"),
        ({"csa_mm2": None}, "open"),
        ({"csa_mm2": 10}, "open"),
    ],
)
def test_tails_against_the_fuse_before_them(
    fields: dict[str, int | None], sign: str
) -> None:
    load = b.way("W1", b.circuit("C1", use="shower", connected_w=9200))
    tails = b.tails("T", b.board("B1", b.main_switch("MS", load)), **fields)
    assert (
        against_of(b.home(b.source("GRID", b.cutout("CUT", tails))), "T").sign == sign
    )


@pytest.mark.parametrize(
    ("rating", "cutout", "watts", "sign"),
    [
        (100, 100, 9200, "within"),
        (63, 80, 9200, "within"),
        (63, 80, 18400, "beyond"),
        (63, None, 9200, "open"),
        (63, None, 18400, "beyond"),
        (None, 80, 9200, "open"),
    ],
)
def test_a_main_switch(
    rating: int | None, cutout: int | None, watts: int, sign: str
) -> None:
    load = b.way("W1", b.circuit("C1", use="shower", connected_w=watts))
    board = b.board("B1", b.main_switch("MS", load, rated_current_a=rating))
    record = b.home(b.source("GRID", b.cutout("CUT", board, rated_current_a=cutout)))
    assert against_of(record, "MS").sign == sign


def test_a_home_without_a_circuit_has_no_verdict() -> None:
    bare = b.home(b.street(b.board("B1", b.main_switch("MS"))))
    assert [(a.sign, a.says.partition(".")[0]) for a in answer_of(bare).against][
        :1
    ] == [("open", "No load is recorded yet: no verdict")]


def test_a_load_behind_its_switch_is_counted_whole() -> None:
    shower = b.point("P1", kind="shower", load_w=9200)
    switch = b.point("S1", shower, kind="shower_switch")
    circuit = b.circuit("C1", switch, use="shower")
    found = answer_of(b.home(b.one_way(circuit, rated_current_a=32))).demand
    assert (found.total, found.not_counted) == ("40.0 A", ())


def test_a_load_of_which_a_part_is_open_makes_the_total_a_least() -> None:
    points = (b.point("P1", kind="shower", load_w=9200), b.point("P2", kind="shower"))
    circuit = b.circuit("C1", *points, use="shower")
    found = answer_of(b.home(b.one_way(circuit, rated_current_a=32)))
    assert found.demand.total == "at least 40.0 A"
    assert [each.ref for each in found.demand.not_counted] == ["C1"]
    assert found.against[0].sign == "open"
    assert "one circuit is not counted in full" in found.against[0].says


def bare_ways(*inner: b.Part, **fields: Any) -> Record:
    """A board with two ways of which no circuit is recorded, besides some more."""
    ways = (b.way("W8", **fields), b.device("W9", kind="fuse_bs88", **fields))
    return b.home(b.street(b.board("B1", b.main_switch("MS", *ways, *inner))))


LAMP = b.way("W1", b.circuit("C1", use="lighting", connected_w=10))


def test_ways_without_a_circuit_are_no_demand_of_nought() -> None:
    found = answer_of(bare_ways(), "shower=8.5")
    assert found.demand.total == "nothing counted yet"
    assert found.against[0].sign == "open"
    assert "2 ways are not counted: no verdict yet" in found.against[0].says
    assert found.what_if is not None
    [then] = found.what_if.against
    assert (then.sign, "at least 37.0 A" in then.says) == ("open", True)


def test_a_way_without_a_circuit_leaves_the_verdict_open() -> None:
    found = answer_of(bare_ways(LAMP))
    assert found.demand.total == "at least 0.0 A"
    assert found.against[0].sign == "open"
    assert [each.ref for each in found.demand.not_counted] == ["W8", "W9"]


def test_a_way_recorded_as_spare_is_nothing_left_out() -> None:
    found = answer_of(bare_ways(LAMP, in_use="spare"))
    assert (found.against[0].sign, found.demand.not_counted) == ("within", ())


@pytest.mark.parametrize("kind", ["blank", "rcd", "isolator", "surge_protector"])
def test_what_guards_nothing_is_no_way_left_out(kind: str) -> None:
    other = b.device("D1", kind=kind)
    board = b.board("B1", b.main_switch("MS", LAMP, other))
    assert not answer_of(b.home(b.street(board))).demand.not_counted


def test_a_way_that_feeds_a_board_is_nothing_left_out() -> None:
    shed = b.board("B2", b.main_switch("MS2", LAMP))
    assert not answer_of(b.home(b.one_way(shed))).demand.not_counted


def test_of_three_phases_a_way_without_a_circuit_leaves_its_own_open() -> None:
    ways = (
        b.way("W1", b.circuit("C1", use="shower", connected_w=9200), phase="l1"),
        b.way("W2", phase="l2"),
        b.way("W3", phase="l3"),
    )
    record = b.home(b.street(b.board("B1", b.main_switch("MS", *ways))), phases="three")
    fuses = [a for a in answer_of(record).against if a.what == "supply_fuse"]
    assert [fuse.sign for fuse in fuses] == ["within", "open", "open"]
    loose = answer_of(b.home(b.one_way(), phases="three")).against
    assert [each.sign for each in loose if each.what == "supply_fuse"] == ["open"] * 3
    assert "one way is on no phase recorded" in loose[0].says


@pytest.mark.parametrize(("kw", "sign"), [("8.5", "open"), ("30", "beyond")])
def test_on_nothing_recorded_what_is_added_may_only_be_beyond(
    kw: str, sign: str
) -> None:
    found = answer_of(b.home(b.street()), f"shower={kw}").what_if
    assert found is not None
    assert [each.sign for each in found.against] == [sign]


def on_ways(*phases: str) -> Record:
    """A shower of 9200 W on several ways of a three-phase home."""
    ways = [b.way(f"W{n}", phase=phase) for n, phase in enumerate(phases)]
    refs = tuple(f"W{n}" for n, _ in enumerate(phases))
    circuit = b.circuit("C1", ways=refs, use="shower", connected_w=9200)
    board = b.board("B1", b.main_switch("MS", *ways))
    return b.home(b.street(board), circuit, phases="three")


def test_a_load_on_ways_of_different_phases_is_said_to_be() -> None:
    found = answer_of(on_ways("l1", "l2"))
    assert found.demand.assumes == (
        "It is taken as single-phase: its ways are recorded on different phases.",
    )
    assert found.against[0].sign == "open"
    assert "one load is on ways of different phases" in found.against[0].says
    assert "no phase recorded" not in found.against[0].says


@pytest.mark.parametrize(
    ("phases", "phase"),
    [
        (("l1", "l1"), "l1"),
        (("l1", "unknown"), "unknown"),
        (("l1", "l2", "l3"), "all"),
    ],
)
def test_the_phase_of_a_load_on_several_ways(
    phases: tuple[str, ...], phase: str
) -> None:
    [load] = answer_of(on_ways(*phases)).loads
    assert (load.phase, load.on_different) == (phase, False)
