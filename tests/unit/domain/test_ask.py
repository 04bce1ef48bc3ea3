from __future__ import annotations

from datetime import date
from decimal import Decimal
from time import process_time

import pytest

from app.domain.answers import (
    Cover,
    Feeding,
    Named,
    Overcurrent,
    PointAnswer,
    Rcd,
    RoomAnswer,
    TieAnswer,
    WayAnswer,
)
from app.domain.ask import (
    ask_point,
    ask_room,
    ask_way,
    boundaries,
    boundaries_unknown,
    without_30_ma,
)
from app.domain.chain import chains
from app.domain.network import MOST_PATHS, network
from app.domain.record import Device, IntakeItem, Point, Record, Room
from app.domain.unknowns import unanswered_sources
from tests.builders import (
    Part,
    board,
    circuit,
    control,
    cutout,
    device,
    fcu,
    home,
    intake,
    light,
    main_switch,
    meter,
    no_other_sources,
    one_way,
    point,
    rcbo,
    rcd,
    room,
    socket,
    source,
    street,
    switch,
    tie,
    way,
)

NOT_ANSWERED = (
    "Not answered whether these can feed the home: solar panels, battery, generator "
    "or its inlet, vehicle that can feed the home, next door, landlord or the "
    "building's shared supply."
)


def asked_point(record: Record, ref: str = "P1") -> PointAnswer:
    found = record.find(Point, ref)
    assert found
    return ask_point(network(record), found)


def asked_way(record: Record, ref: str = "W1") -> WayAnswer:
    found = record.find(Device, ref) or record.find(IntakeItem, ref)
    assert found
    return ask_way(network(record), found)


def asked_room(record: Record, ref: str = "R1") -> RoomAnswer:
    found = record.find(Room, ref)
    assert found
    return ask_room(network(record), found)


def refs(things: tuple[Named | Feeding | Rcd | Overcurrent, ...]) -> list[str]:
    return [thing.ref for thing in things]


def two_ways(first: tuple[Part, ...] = (), second: tuple[Part, ...] = ()) -> Part:
    return street(
        board(
            "B1",
            main_switch(
                "MS",
                way("W1", circuit("C1", *first)),
                way("W2", circuit("C2", *second)),
            ),
        )
    )


# What feeds a point


def test_the_whole_answer_for_a_point() -> None:
    record = home(
        *no_other_sources(),
        room("R1", name="Hall"),
        one_way(
            circuit("C1", fcu("P1", light("P2", room="R1"), fuse_a=3)),
            residual_current_ma=30,
            rcd_type="A",
        ),
        circuit("C2", name="Other"),
        switch("P3"),
        tie("P2", "C2", "present", grade="4", seen_on=date(2024, 5, 1), seen_by="Me"),
        control("P3", "P2"),
    )
    line = chains(network(record), "P2")
    before = {s.ref: s for s in line[0].steps}
    assert asked_point(record, "P2") == PointAnswer(
        home="H1",
        point=Named(ref="P2", title="Light"),
        kind="light",
        room=Named(ref="R1", title="Hall"),
        circuits=(Named(ref="C1", title="Circuit C1"),),
        chains=line,
        overcurrent=(
            Overcurrent(
                ref="CUT",
                title="Cut-out",
                kind="cutout",
                rated_current_a=Decimal(100),
            ),
            Overcurrent(
                ref="W1",
                title="Circuit-breaker W1",
                kind="circuit_breaker",
                rated_current_a=Decimal(32),
                curve="B",
            ),
            Overcurrent(
                ref="P1",
                title="Fused connection unit",
                kind="fused_connection_unit",
                rated_current_a=Decimal(3),
            ),
        ),
        rcds=(
            Rcd(
                ref="W1",
                title="Circuit-breaker W1",
                residual_current_ma=Decimal(30),
                rcd_type="A",
                time_delayed="unknown",
            ),
        ),
        within_30_ma="yes",
        local_fuses={"P1": Decimal(3)},
        opens=(before["MS"], before["W1"]),
        boundaries=(("CUT", "MET"), ("MET", "TAIL")),
        ties=(
            TieAnswer(
                ref="T-P2-P1-feeds",
                point="P2",
                tied_to=Named(ref="P1", title="Fused connection unit"),
                role="feeds",
                grade="3",
            ),
            TieAnswer(
                ref="T-P2-C2-present",
                point="P2",
                tied_to=Named(ref="C2", title="Other"),
                role="present",
                grade="4",
                seen_on=date(2024, 5, 1),
                seen_by="Me",
            ),
        ),
        also_present=(Named(ref="C2", title="Other"),),
        controlled_by=(Named(ref="P3", title="Light switch"),),
    )


def test_the_answer_for_a_point_that_nothing_is_known_of() -> None:
    record = home(socket("P1"), tie("P1", "GONE"))
    answer = asked_point(record)
    assert answer == PointAnswer(
        home="H1",
        point=Named(ref="P1", title="Socket-outlet, size not noted"),
        kind="socket",
        chains=chains(network(record), "P1"),
        within_30_ma="unknown",
        local_fuses={},
        ties=(
            TieAnswer(
                ref="T-P1-GONE-feeds",
                point="P1",
                tied_to=Named(ref="GONE", title="?"),
                role="feeds",
                grade="3",
            ),
        ),
        unknowns=("What feeds it is not recorded.", NOT_ANSWERED),
    )


def test_two_ties_are_two_chains_and_two_circuits() -> None:
    answer = asked_point(home(two_ways((socket("P1"),)), tie("P1", "C2")))
    assert [chain.references[-3:] for chain in answer.chains] == [
        ("W1", "C1", "P1"),
        ("W2", "C2", "P1"),
    ]
    assert refs(answer.circuits) == ["C1", "C2"]
    assert refs(answer.overcurrent) == ["CUT", "W1", "W2"]


def test_a_borrowed_neutral_is_shown_apart() -> None:
    record = home(two_ways((light("P1"),)), tie("P1", "C2", "neutral"))
    answer = asked_point(record)
    assert answer.neutral_chains == chains(network(record), "P1", "neutral")
    assert answer.neutral_chains[0].references[-3:] == ("W2", "C2", "P1")
    assert refs(answer.circuits) == ["C1"]
    assert refs(answer.neutral_circuits) == ["C2"]
    assert [step.ref for step in answer.opens] == ["MS", "W1", "W2"]


def test_a_neutral_borrowed_by_a_point_is_that_of_what_is_behind_it() -> None:
    record = home(
        two_ways((switch("P1", light("P2")),), (light("P3"),)),
        tie("P1", "C2", "neutral"),
    )
    assert refs(asked_point(record, "P2").neutral_circuits) == ["C2"]
    assert refs(asked_point(record, "P3").neutral_circuits) == []


def test_what_is_in_the_box_of_a_point_before_it_is_told() -> None:
    record = home(
        two_ways((switch("P1", light("P2")),), (light("P3"),)),
        tie("P1", "P3", "present"),
    )
    behind, at = asked_point(record, "P2"), asked_point(record, "P1")
    assert (refs(behind.present_before), refs(behind.also_present)) == (["C2"], [])
    assert (refs(at.present_before), refs(at.also_present)) == ([], ["P3"])


def test_what_comes_on_by_itself_is_not_among_what_can_switch_a_point() -> None:
    clock = device("TS", circuit("C1", fcu("P1", light("P2"))), kind="time_switch")
    record = home(
        street(intake("CON", board("B1", way("W1", clock)), kind="contactor"))
    )
    answer = asked_point(record, "P2")
    assert [step.ref for step in answer.opens] == ["W1"]
    (chain,) = answer.chains
    opening = [step.ref for step in chain.steps if step.opens != "none"]
    assert opening == ["CON", "W1", "TS"]


def test_the_odd_one_out_is_told_at_the_point() -> None:
    first = (socket("P1", room="R1"), socket("P2", room="R1"))
    record = home(room("R1"), two_ways(first, (socket("P3", room="R1"),)))
    assert asked_point(record, "P1").odd is None
    assert asked_point(record, "P3").odd == (
        "It is on Circuit C2 (C2); "
        "most other sockets in its room are on Circuit C1 (C1)."
    )


def off_board(*points: Part, **fields: object) -> Record:
    return home(
        street(board("B1", rcd("R1", way("W1", circuit("C1", *points)), **fields)))
    )


COVERS: list[tuple[Record, Cover]] = [
    (off_board(socket("P1")), "yes"),
    (off_board(socket("P1"), residual_current_ma=10), "yes"),
    (off_board(socket("P1"), residual_current_ma=100), "no"),
    (off_board(socket("P1"), residual_current_ma=None), "unknown"),
    (off_board(socket("P1"), residual_current_ma=0), "unknown"),
    (home(one_way(circuit("C1", socket("P1")))), "no"),
    (home(one_way(circuit("C1", socket("P1")), residual_current_ma=0)), "no"),
    (home(one_way(circuit("C1", socket("P1")), kind="unknown")), "unknown"),
    (home(one_way(circuit("C1", socket("P1")), kind="afdd")), "unknown"),
    (home(board("B1", way("W1", circuit("C1", socket("P1"))))), "unknown"),
    (home(board("B1", rcbo("W1", circuit("C1", socket("P1"))))), "yes"),
    (home(source("NEXT", socket("P1"), kind="neighbour")), "unknown"),
    (home(source("BATT", socket("P1"), kind="battery")), "no"),
    (home(source("PV", socket("P1", current="dc"), kind="solar")), "not_mains"),
    (off_board(socket("P1", current="extra_low")), "yes"),
    (home(one_way(circuit("C1", light("P1", current="extra_low")))), "no"),
    (home(source("NEXT", light("P1", current="dc"), kind="neighbour")), "unknown"),
    (home(light("P1", current="dc")), "unknown"),
    (off_board(socket("P1"), time_delayed="yes"), "no"),
    (off_board(socket("P1"), time_delayed="no"), "yes"),
    (off_board(socket("P1", current="unknown")), "yes"),
    (home(socket("P1")), "unknown"),
]


@pytest.mark.parametrize(("record", "expected"), COVERS)
def test_cover_by_an_rcd_of_30_ma_or_less(record: Record, expected: Cover) -> None:
    assert asked_point(record).within_30_ma == expected
    assert without_30_ma(network(record)) == (("P1",) if expected == "no" else ())


def covered_and(*parts: Part) -> Record:
    """A point on a circuit behind an RCD and on another one."""
    ways = (rcd("R1", way("W1", circuit("C1", socket("P1")))), way("W2", circuit("C2")))
    return home(street(board("B1", *ways)), tie("P1", "C2"), *parts)


def test_cover_on_some_chains() -> None:
    assert asked_point(covered_and()).within_30_ma == "some"
    unknown = covered_and(circuit("C3"), tie("P1", "C3"))
    assert asked_point(unknown).within_30_ma == "some"
    record = home(one_way(circuit("C1", socket("P1"))), circuit("C2"), tie("P1", "C2"))
    assert asked_point(record).within_30_ma == "unknown"


def test_cover_is_not_known_when_there_are_more_paths_than_are_followed() -> None:
    ways = [rcbo(f"W{i}", circuit(f"C{i}")) for i in range(MOST_PATHS)]
    ties = [tie("P1", f"C{i}") for i in range(MOST_PATHS)]
    record = home(street(board("B1", *ways)), socket("P1"), *ties, *no_other_sources())
    answer = asked_point(record)
    assert answer.within_30_ma == "unknown"
    assert answer.unknowns == ("There may be more than the 50 paths shown.",)


def test_an_rcd_in_a_point_counts_for_what_is_behind_it_only() -> None:
    inner = fcu("P1", socket("P2"), residual_current_ma=10)
    record = home(one_way(circuit("C1", inner)))
    own, behind = asked_point(record, "P1"), asked_point(record, "P2")
    assert (own.within_30_ma, own.own_rcd_ma, own.rcds) == ("no", Decimal(10), ())
    assert (behind.within_30_ma, behind.own_rcd_ma) == ("yes", None)
    assert refs(behind.rcds) == ["P1"]
    assert without_30_ma(network(record)) == ("P1",)


def test_an_rcd_in_a_socket_is_no_sure_cover_of_what_is_behind_it() -> None:
    inner = socket("P1", socket("P2"), residual_current_ma=30)
    answer = asked_point(home(one_way(circuit("C1", inner))), "P2")
    assert (answer.within_30_ma, answer.rcds) == ("unknown", ())
    assert asked_point(off_board(inner), "P2").within_30_ma == "yes"


def test_a_figure_of_0_on_a_point_is_not_known() -> None:
    inner = fcu("P1", socket("P2"), residual_current_ma=0, fuse_a=0)
    record = home(one_way(circuit("C1", inner), rated_current_a=0))
    own, behind = asked_point(record, "P1"), asked_point(record, "P2")
    assert own.own_rcd_ma is None
    assert (behind.within_30_ma, behind.rcds) == ("no", ())
    assert behind.local_fuses == {"P1": None}
    (chain,) = behind.chains
    figures = {s.ref: (s.rated_current_a, s.fuse_a) for s in chain.steps}
    assert figures["W1"] == figures["P1"] == (None, None)
    lamp = point("P1", light("P2"), kind="shaver_unit", fuse_a=0)
    assert asked_point(home(one_way(circuit("C1", lamp))), "P2").local_fuses == {}


def test_fuses_in_points_are_local_in_their_order() -> None:
    inner = fcu("P1", fcu("P2", light("P3"), fuse_a=None), fuse_a=13)
    answer = asked_point(home(*no_other_sources(), one_way(circuit("C1", inner))), "P3")
    assert answer.local_fuses == {"P1": Decimal(13), "P2": None}
    assert answer.unknowns == (
        "The rating of Fused connection unit (P2) is not recorded.",
    )


def test_a_fuse_in_the_point_itself_guards_only_what_is_behind_it() -> None:
    answer = asked_point(home(one_way(circuit("C1", fcu("P1")))))
    assert answer.local_fuses == {}
    assert refs(answer.overcurrent) == ["CUT", "W1"]


def test_each_change_of_owner_is_a_boundary_once() -> None:
    landlords = board("B1", way("W1", circuit("C1", socket("P1"))), owner="landlord")
    record = home(source("GRID", cutout("CUT", landlords)), circuit("C2", ways=("W1",)))
    assert asked_point(record).boundaries == (("CUT", "W1"),)
    record = home(two_ways((socket("P1"),)), tie("P1", "C2"))
    assert asked_point(record).boundaries == (("CUT", "MET"), ("MET", "TAIL"))


def test_the_source_and_the_first_item_may_change_hands_too() -> None:
    record = home(source("NEXT", cutout("CUT"), kind="neighbour", owner="shared"))
    assert asked_way(record, "CUT").chains[0].steps[0].owner == "shared"
    line = chains(network(record), "CUT")
    assert boundaries(line) == (("NEXT", "CUT"),)


def test_where_an_owner_is_not_known_it_may_change_hands() -> None:
    hall = board(
        "B1", main_switch("MS", way("W1", circuit("C1", light("P1")))), owner="unknown"
    )
    steps = intake("TAIL", hall, kind="tails", owner="unknown")
    answer = asked_point(home(source("GRID", cutout("CUT", meter("MET", steps)))))
    assert answer.boundaries == (("CUT", "MET"),)
    assert answer.boundaries_unknown == (("MET", "TAIL"), ("TAIL", "MS"))
    assert boundaries_unknown(answer.chains) == answer.boundaries_unknown


def backup_home() -> Record:
    """Panels and a battery with a backup output that has a board of its own."""
    backup = board("B3", main_switch("MS3", rcbo("W3", circuit("C3", socket("P3")))))
    inverter = point("P2", backup, kind="inverter")
    panels = point("P6", kind="inverter")
    return home(
        street(
            board(
                "B1",
                main_switch(
                    "MS",
                    way("W1", circuit("C1", point("P1", inverter, kind="isolator"))),
                    way("W2", circuit("C2", socket("P4"), panels)),
                ),
            )
        ),
        source(
            "BATT",
            kind="battery",
            owner="consumer",
            runs_without_network="yes",
            joins="C1",
        ),
        source(
            "PV",
            point("P5", kind="dc_isolator", current="dc"),
            kind="solar",
            owner="consumer",
            when="daylight",
            runs_without_network="no",
        ),
        tie("P2", "BATT"),
        tie("P6", "P5"),
    )


def test_a_backup_socket_has_a_chain_from_the_battery() -> None:
    answer = asked_point(backup_home(), "P3")
    assert [" ".join(chain.references) for chain in answer.chains] == [
        "GRID CUT MET TAIL MS W1 C1 P1 P2 MS3 W3 C3 P3",
        "BATT P2 MS3 W3 C3 P3",
    ]
    assert answer.within_30_ma == "yes"
    assert without_30_ma(network(backup_home())) == ("P1", "P2", "P4", "P6")


def test_what_panels_feed_is_live_in_daylight() -> None:
    answer = asked_point(backup_home(), "P6")
    assert [chain.when for chain in answer.chains] == [(), ("daylight",)]


def test_an_off_peak_point_says_when_it_is_live() -> None:
    off_peak = board("B2", main_switch("MS", way("W1", circuit("C1", socket("P1")))))
    record = home(street(intake("CON", off_peak, kind="contactor", when="off_peak")))
    assert [chain.when for chain in asked_point(record).chains] == [("off_peak",)]


# What the record does not say


def unknowns(*parts: Part) -> tuple[str, ...]:
    return asked_point(home(*no_other_sources(), *parts)).unknowns


def test_a_whole_record_leaves_nothing_unknown() -> None:
    assert unknowns(one_way(circuit("C1", socket("P1")))) == ()


UNKNOWNS: list[tuple[tuple[Part, ...], tuple[str, ...]]] = [
    (
        (circuit("C1", light("P1")),),
        ("What feeds Circuit C1 (C1) is not recorded.",),
    ),
    (
        (one_way(circuit("C1", light("P1", tied="0"))),),
        ("What feeds Light (P1) is not known.",),
    ),
    (
        (one_way(circuit("C1", switch("P2", light("P1"), tied="1"))),),
        ("What feeds Light switch (P2) is only what a label says.",),
    ),
    (
        (one_way(circuit("C1", light("P1")), rated_current_a=None),),
        ("The rating of Circuit-breaker W1 (W1) is not recorded.",),
    ),
    (
        (
            one_way(
                circuit("C1", light("P1")),
                kind="rcbo",
                residual_current_ma=None,
            ),
        ),
        ("The IΔn of RCBO W1 (W1) is not recorded.",),
    ),
    (
        (one_way(circuit("C1", light("P1")), kind="unknown"),),
        (
            "What Not known W1 (W1) is, is not known.",
            "Whether Not known W1 (W1) is an RCD is not recorded.",
        ),
    ),
    (
        (one_way(circuit("C1", light("P1")), when="unknown"),),
        ("When Circuit-breaker W1 (W1) passes the supply on is not known.",),
    ),
    (
        (source("GRID", cutout("CUT", circuit("C1", light("P1")), owner="unknown")),),
        ("Whose Cut-out (CUT) is, is not known.",),
    ),
    (
        (
            source(
                "NEXT",
                light("P1"),
                kind="other",
                name="Pole",
                runs_without_network="yes",
            ),
        ),
        ("What protects Pole (NEXT) is not recorded.",),
    ),
    (
        (board("B1", way("W1", circuit("C1", light("P1")), fed_from="W1")),),
        ("Circuit-breaker W1 (W1) feeds itself in the record, in a circle.",),
    ),
    (
        (one_way(circuit("C1", light("P1"))), tie("P1", "GONE", "neutral")),
        ("Where the neutral of Light (P1) returns is not recorded.",),
    ),
    (
        (
            one_way(circuit("C1", light("P1"))),
            circuit("C2", ways=("W1",)),
            tie("P1", "C2", "neutral", grade="0"),
        ),
        ("Where the neutral of Light (P1) returns is not known.",),
    ),
    (
        (
            one_way(circuit("C1", light("P1"))),
            source("X", kind="other", name="Mill", present="unknown"),
            source("Y", kind="other", name="Pole"),
        ),
        (
            "Not answered whether Mill (X) is there.",
            "Not answered whether Pole (Y) can feed when the network is off.",
            "Where Pole (Y) joins the installation is not recorded.",
        ),
    ),
    (
        (
            one_way(circuit("C1", light("P1"))),
            source("B", kind="battery", name="Bank", present="unknown", joins="C1"),
        ),
        (
            "Not answered whether Bank (B) can feed when the network is off.",
            "Not answered whether these can feed the home: battery.",
        ),
    ),
    (
        (one_way(circuit("C1", light("P1")), kind="contactor"),),
        ("When Contactor W1 (W1) passes the supply on is not known.",),
    ),
    (
        (one_way(circuit("C1", light("P1")), kind="time_switch", when="always"),),
        ("When Time switch W1 (W1) passes the supply on is not known.",),
    ),
    (
        (one_way(circuit("C1", light("P1")), kind="contactor", when="off_peak"),),
        (),
    ),
    (
        (one_way(circuit("C1", light("P1")), kind="changeover"),),
        ("The second feed of Changeover switch W1 (W1) is not recorded.",),
    ),
    (
        (one_way(circuit("C1", light("P1")), kind="changeover", second_feed="TAIL"),),
        (),
    ),
    (
        (
            one_way(
                circuit("C1", socket("P2", light("P1"), residual_current_ma=30)),
            ),
        ),
        (
            (
                "Whether the RCD in Socket-outlet, size not noted (P2) guards what is "
                "behind it is not recorded."
            ),
        ),
    ),
    (
        (one_way(circuit("C1", fcu("P2", light("P1"), fuse_a=0))),),
        ("The rating of Fused connection unit (P2) is not recorded.",),
    ),
]


@pytest.mark.parametrize(("parts", "expected"), UNKNOWNS)
def test_what_the_record_does_not_say_is_said(
    parts: tuple[Part, ...], expected: tuple[str, ...]
) -> None:
    assert unknowns(*parts) == expected


def test_the_fuse_in_the_point_itself_need_not_be_known() -> None:
    assert unknowns(one_way(circuit("C1", fcu("P1", fuse_a=None)))) == ()


def test_a_source_is_answered_only_with_yes_or_no() -> None:
    record = home(
        source("S1", kind="solar", present="no"),
        source("S2", kind="battery", present="yes"),
        source("S3", kind="generator", present="unknown"),
        source("S4", kind="neighbour", present="no"),
        source("S5", kind="neighbour", present="unknown"),
    )
    assert unanswered_sources(record) == (
        "generator",
        "vehicle",
        "neighbour",
        "landlord",
    )


# What a way feeds


def test_the_whole_answer_for_a_way() -> None:
    record = home(
        room("R1", name="Hall"),
        room("R2", name="Loft"),
        two_ways(
            (socket("P1", room="R1", care=("router",)), light("P2", tied="1")),
            (light("P3"), socket("P4")),
        ),
        tie("P1", "C2"),
        tie("P3", "C1", "neutral"),
        tie("P4", "C1", "present"),
    )
    router = Feeding(
        ref="P1",
        title="Socket-outlet, size not noted",
        room=Named(ref="R1", title="Hall"),
        care=("router",),
        other_feed=True,
    )
    assert asked_way(record) == WayAnswer(
        home="H1",
        way=Named(ref="W1", title="Circuit-breaker W1"),
        kind="circuit_breaker",
        board=Named(ref="B1", title="A board"),
        chains=chains(network(record), "W1"),
        circuits=(Named(ref="C1", title="Circuit C1"),),
        points=(router, Feeding(ref="P2", title="Light")),
        rooms=(Named(ref="R1", title="Hall"),),
        care=(router,),
        neutral_only=(Named(ref="P3", title="Light"),),
        present_at=(Named(ref="P4", title="Socket-outlet, size not noted"),),
        unknowns=(
            "That these are fed from here is not known, or a label says it: P2.",
            NOT_ANSWERED,
        ),
    )


def test_a_way_feeds_the_boards_below_it_but_not_its_own() -> None:
    empty = board("B4")
    workshop = board("B3", main_switch("MS3", way("W3", circuit("C3", empty))))
    beside = board("B5", device("D5", kind="isolator", fed_from="W1"), fed_from=None)
    record = home(one_way(circuit("C1", workshop)), beside)
    assert refs(asked_way(record, "W1").boards) == ["B3", "B4", "B5"]
    assert refs(asked_way(record, "MS").boards) == ["B3", "B4", "B5"]
    assert refs(asked_way(record, "TAIL").boards) == ["B1", "B3", "B4", "B5"]


def test_a_point_behind_one_with_another_feed_keeps_it_too() -> None:
    record = home(two_ways((switch("P1", light("P2")),)), tie("P1", "C2"))
    assert [(p.ref, p.other_feed) for p in asked_way(record).points] == [
        ("P1", True),
        ("P2", True),
    ]
    assert [p.other_feed for p in asked_way(record, "MS").points] == [False, False]


def test_a_neutral_that_returns_elsewhere_is_told_beside_the_point() -> None:
    record = home(
        two_ways((switch("P1", light("P2")), light("P3")), (light("P4"),)),
        tie("P1", "C2", "neutral"),
    )
    found = {p.ref: refs(p.neutral_elsewhere) for p in asked_way(record).points}
    assert found == {"P1": ["C2"], "P2": ["C2"], "P3": []}
    whole = asked_way(record, "MS").points
    assert all(point.neutral_elsewhere == () for point in whole)


def test_what_is_unknown_of_a_way_itself_is_said() -> None:
    record = home(one_way(rated_current_a=None, label_found="-"))
    answer = asked_way(record)
    assert answer.label_found == "-"
    assert answer.unknowns == (
        "The rating of Circuit-breaker W1, “-” (W1) is not recorded.",
        NOT_ANSWERED,
    )


def test_an_intake_item_answers_as_a_way() -> None:
    answer = asked_way(home(one_way(circuit("C1", light("P1")))), "TAIL")
    assert (answer.board, answer.label_found) == (None, None)
    assert refs(answer.points) == ["P1"]


# Which ways serve a room


def test_the_whole_answer_for_a_room() -> None:
    record = home(
        room("R1", name="Hall", looked_at="part"),
        two_ways((light("P1", room="R1"),), (light("P2", room="R1", tied="1"),)),
        socket("P3", room="R1"),
        socket("P4"),
        *no_other_sources(),
    )
    net = network(record)
    ties = [t for p in ("P1", "P2") for t in ask_point(net, _point(record, p)).ties]
    light_title, socket_title = "Light", "Socket-outlet, size not noted"
    assert asked_room(record) == RoomAnswer(
        home="H1",
        room=Named(ref="R1", title="Hall"),
        looked_at="part",
        ways=(
            Named(ref="W1", title="Circuit-breaker W1"),
            Named(ref="W2", title="Circuit-breaker W2"),
        ),
        circuits=(
            Named(ref="C1", title="Circuit C1"),
            Named(ref="C2", title="Circuit C2"),
        ),
        points=(
            Named(ref="P1", title=light_title),
            Named(ref="P2", title=light_title),
            Named(ref="P3", title=socket_title),
        ),
        ties=tuple(ties),
        not_tied=(Named(ref="P3", title=socket_title),),
        unknowns=(
            "This room has been looked at in part.",
            "What feeds Light (P2) is only what a label says.",
            "Socket-outlet, size not noted (P3): what feeds it is not recorded.",
        ),
    )


def _point(record: Record, ref: str) -> Point:
    found = record.find(Point, ref)
    assert found
    return found


def test_a_room_is_served_by_neutrals_and_by_what_passes_through_its_boxes() -> None:
    record = home(
        room("R1"),
        two_ways((light("P1", room="R1"),), (light("P2"),)),
        circuit("C3"),
        tie("P1", "C3", "neutral"),
        tie("P1", "P2", "present"),
    )
    answer = asked_room(record)
    assert refs(answer.circuits) == ["C1", "C3", "C2"]
    assert refs(answer.ways) == ["W1", "W2"]


def test_a_room_names_the_sources_that_feed_it_without_a_circuit() -> None:
    record = home(
        room("R1"),
        two_ways((light("P1", room="R1"),)),
        source("NEXT", switch("P2", light("P3", room="R1")), kind="neighbour"),
        source("PV", kind="solar"),
        tie("P1", "PV", "present"),
    )
    answer = asked_room(record)
    assert refs(answer.sources) == ["PV", "NEXT"]
    assert answer.not_tied == ()
    assert refs(answer.circuits) == ["C1"]


def test_a_room_names_its_odd_ones_out() -> None:
    first = (socket("P1", room="R1"), socket("P2", room="R1"))
    record = home(room("R1"), two_ways(first, (light("P3"), fcu("P4", room="R1"))))
    (sentence,) = asked_room(record).odd
    assert sentence == (
        "Fused connection unit (P4): It is on Circuit C2 (C2); "
        "most other sockets in its room are on Circuit C1 (C1)."
    )


@pytest.mark.parametrize(
    ("looked_at", "sentences"),
    [
        ("all", ()),
        ("not_yet", ("This room has not been looked at yet.",)),
        ("no_access", ("Nobody could get into this room.",)),
    ],
)
def test_how_far_a_room_was_looked_at(
    looked_at: str, sentences: tuple[str, ...]
) -> None:
    record = home(room("R1", looked_at=looked_at), *no_other_sources())
    assert asked_room(record).unknowns == sentences


def test_what_is_not_known_of_the_points_of_a_room() -> None:
    record = home(
        room("R1"),
        circuit("C1", point("P1", kind="unknown", room="R1")),
        tie("P1", "C1", "neutral", grade="1"),
    )
    assert asked_room(record).unknowns == (
        "What Not known (P1) is, is not known.",
        "Where the neutral of Not known (P1) returns is only what a label says.",
        "Which way Circuit C1 (C1) starts from is not recorded.",
        NOT_ANSWERED,
    )


# Large homes


def test_one_point_of_a_very_large_home_costs_no_more_than_its_network() -> None:
    """Measured against building the network, for machines differ in speed."""
    circuits = [
        circuit(f"C{c}", *(socket(f"P{c}-{n}", room=f"R{n}") for n in range(30)))
        for c in range(200)
    ]
    ways = [rcbo(f"W{i}", part) for i, part in enumerate(circuits)]
    rooms = [room(f"R{n}") for n in range(30)]
    record = home(*rooms, street(board("B1", main_switch("MS", *ways))))
    assert len(record.points) == 6000
    taken = [_seconds(record, "P150-7") for _ in range(5)]
    building, first, again = (min(times) for times in zip(*taken, strict=True))
    assert first < building * 3
    assert again < building / 2


def _seconds(record: Record, ref: str) -> tuple[float, float, float]:
    """Time the network, one answer from it, and the same answer once more."""
    point = _point(record, ref)
    began = process_time()
    net = network(record)
    built = process_time()
    ask_point(net, point)
    asked = process_time()
    assert ask_point(net, point).within_30_ma == "yes"
    return built - began, asked - built, process_time() - asked
