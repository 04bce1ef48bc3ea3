"""Every rule that turns or stops a plan: one case with its reason, one without."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from app.domain.isolation import (
    OnTheDay,
    Plan,
    house_off,
    house_sheet,
    next_step,
    plan,
    progress_of,
)
from app.domain.isolation.cautions import CAUTIONS
from app.domain.isolation.sheet import sheet_of
from app.domain.isolation.stops import STOPS
from app.domain.isolation.turns import TURNS
from app.domain.network import network
from app.domain.record import Reading, Record, Work
from tests.builders import (
    Part,
    board,
    circuit,
    device,
    home,
    intake,
    light,
    main_switch,
    no_other_sources,
    point,
    room,
    socket,
    source,
    street,
    switch,
    switched_off,
    tie,
    way,
)
from tests.unit.domain.remarks.cases import of_polarity

BOTH = "line_and_neutral"


def house(*parts: Part, inside: tuple[Part, ...] = (), **fields: Any) -> Record:
    """A home of which everything needed is known: one socket on one labelled way."""
    first = way(
        "W1",
        circuit("C1", socket("P1", room="R1"), use="sockets"),
        label_found="SOCKETS",
        way="1",
        poles="line",
    )
    second = way(
        "W2",
        circuit("C2", socket("P2", room="R1"), use="sockets"),
        label_found="OTHERS",
        way="2",
        poles="line",
    )
    given = {"earthing": "tn_s", **fields}
    return home(
        room("R1"),
        *no_other_sources(),
        street(
            board(
                "B1",
                main_switch(
                    "MS", first, second, *inside, poles=BOTH, label_found="MAIN SWITCH"
                ),
                earthing="supply",
            )
        ),
        *parts,
        **given,
    )


def planned(record: Record, *refs: str, **options: Any) -> Plan:
    return plan(network(record), refs or ("P1",), **options)


def codes(found: Plan) -> set[str]:
    return {reason.code for reason in found.reasons}


def changed(record: Record, plural: str, ref: str, **fields: Any) -> Record:
    items = tuple(
        item.model_copy(update=fields) if item.ref == ref else item
        for item in getattr(record, plural)
    )
    return record.having(**{plural: items})


def of_home(record: Record, **fields: Any) -> Record:
    return record.having(home=record.home.model_copy(update=fields))


def lit() -> Record:
    return house(
        inside=(
            way(
                "W3",
                circuit("C3", light("P3"), use="lighting"),
                label_found="LIGHTS",
                way="3",
                poles="line",
            ),
        )
    )


def worked_on(record: Record, *about: str) -> Record:
    done = Work(ref="WK", name="Altered", state="done", about=about)
    return record.having(works=(done,))


def borrowed() -> Record:
    return house(tie("P1", "C2", "neutral"))


def with_battery(**fields: Any) -> Record:
    given = {"kind": "battery", "present": "yes", "joins": "C2", **fields}
    return changed_sources(house(source("BATT", **given)), "NO-battery")


def stored(**fields: Any) -> Record:
    """P3 hangs on P9, which is on C1 and has a battery of its own."""
    given = {"kind": "socket", "battery_backed": "yes", **fields}
    return house(
        point("P9", socket("P3"), **given),
        tie("P9", "C1"),
        socket("P4"),
        tie("P4", "C1"),
    )


def panels(*parts: Part, **fields: Any) -> Record:
    """Panels that stop with the network, and an inverter on C2: its a.c. side only."""
    given = {"kind": "solar", "present": "yes", "joins": "C2", **fields}
    record = house(
        source("PV", runs_without_network="no", **given),
        point("INV", kind="inverter", room="R1"),
        tie("INV", "C2"),
        *parts,
    )
    return changed_sources(record, "NO-solar")


def two_ways(**fields: Any) -> Record:
    """C1 starts from both ways."""
    return changed(house(**fields), "circuits", "C1", ways=("W1", "W2"))


def with_generator(**fields: Any) -> Record:
    """A board behind a changeover: by way W8 of the first board, or by a generator."""
    given = {"kind": "generator", "present": "yes", **fields}
    record = house(
        source("GEN", **given),
        board("B2", earthing="supply"),
        device(
            "CO", kind="changeover", board="B2", fed_from="C8", second_feed="GEN",
            poles=BOTH, label_found="I 0 II",
        ),
        device("W9", kind="rcbo", board="B2", fed_from="CO", poles="line",
               label_found="BACKUP"),
        circuit("C9", socket("P9", room="R1"), ways=("W9",), use="sockets"),
        inside=(way("W8", circuit("C8"), label_found="BOARD 2", poles="line"),),
        earthing="tn_c_s",
    )  # fmt: skip
    return changed_sources(record, "NO-generator")


def changed_sources(record: Record, gone: str) -> Record:
    return record.having(sources=tuple(s for s in record.sources if s.ref != gone))


WITH: dict[str, Callable[[], Plan]] = {
    "weak_tie": lambda: planned(changed(house(), "ties", "T-P1-C1-feeds", grade="2")),
    "rounds_differ": lambda: planned(
        house(*switched_off("N1", "W1", live="P1", started_at="2026-05-03T12:00:00Z"))
    ),
    "work_since": lambda: planned(worked_on(house(), "C1")),
    "label": lambda: planned(changed(house(), "devices", "W1", label_found="SPARE")),
    "not_looked_at": lambda: planned(changed(house(), "rooms", "R1", looked_at="part")),
    "two_circuits": lambda: planned(house(tie("P1", "C2", "present"))),
    "two_ways": lambda: planned(two_ways()),
    "neutral_elsewhere": lambda: planned(borrowed()),
    "lighting": lambda: planned(lit(), "P3"),
    "earthing": lambda: planned(of_home(house(), earthing="tt")),
    "single_pole": lambda: planned(of_home(house(), earthing="unknown")),
    "carrier": lambda: planned(
        changed(house(), "devices", "W1", kind="fuse_rewirable")
    ),
    "fed_back": lambda: planned(with_battery(runs_without_network="yes")),
    "nothing": lambda: planned(house(room("R2")), "R2"),
    "source_unanswered": lambda: planned(changed_sources(house(), "NO-solar")),
    "source_unplaced": lambda: planned(with_battery(joins=None)),
    "feed_unknown": lambda: planned(house(point("P9", kind="socket")), "P9"),
    "unidentified": lambda: planned(changed(house(), "points", "P1", kind="unknown")),
    "not_parted": lambda: planned(
        house(tie("P1", "NEXT"), source("NEXT", kind="neighbour"))
    ),
    "battery_feeds": lambda: planned(stored(), "P3"),
    "dc_side": lambda: planned(panels(), "INV"),
    "seen_live": lambda: planned(house(*switched_off("N1", "MS", live="P1"))),
    "whose": lambda: planned(changed(house(), "boards", "B1", owner="unknown")),
    "board_itself": lambda: planned(house(), "B1"),
    "head_leaves_neutral": lambda: planned(
        changed(lit(), "devices", "MS", poles="unknown"), "P3"
    ),
    "chooses": lambda: planned(
        changed(house(), "devices", "MS", kind="changeover", label_found="I 0 II")
    ),
    "leave_on": lambda: planned(changed(house(), "devices", "W1", leave_on="Lift")),
    "medical": lambda: planned(changed(house(), "points", "P1", care=("medical",))),
    "condition": lambda: planned(changed(house(), "intake", "MET", condition="hot")),
    "board_condition": lambda: planned(
        changed(house(), "boards", "B1", condition="wet")
    ),
    "point_condition": lambda: planned(
        changed(house(), "points", "P1", condition="damaged")
    ),
    "polarity": lambda: planned(house().having(results=(of_polarity("wrong"),))),
}
ADVICE = {
    **dict.fromkeys([rule.__name__ for rule in TURNS], "wide"),
    **dict.fromkeys([rule.__name__ for rule in STOPS], "stop"),
    "nothing": "stop",
}


def test_every_rule_has_its_case() -> None:
    rules = {rule.__name__ for rule in (*TURNS, *STOPS)} - {"nothing_to_work_on"}
    assert set(WITH) == rules | {"nothing"}


@pytest.mark.parametrize("code", WITH)
def test_reason_is_given(code: str) -> None:
    found = WITH[code]()
    mine = [reason for reason in found.reasons if reason.code == code]
    assert [reason.advice for reason in mine] == [ADVICE[code]]
    assert mine[0].basis
    assert found.advised in (ADVICE[code], "stop")


def test_where_all_is_known_the_nearest_set_is_advised() -> None:
    """The one case without any reason: each rule stays silent here."""
    found = planned(house())
    assert found.reasons == ()
    assert found.advised == "nearest"
    assert [s.ref for s in found.used.switches] == ["W1"]
    assert found.used.parts
    assert found.sources_answered


@pytest.mark.parametrize(
    ("code", "without"),
    [
        ("lighting", lambda: planned(lit(), "P1")),
        ("earthing", lambda: planned(of_home(house(), earthing="tn_c_s"))),
        ("single_pole", lambda: planned(both_poles(of_home(house(), earthing="tt")))),
        ("fed_back", lambda: planned(with_battery(present="no"))),
        (
            "medical",
            lambda: planned(changed(house(), "points", "P2", care=("medical",))),
        ),
        ("leave_on", lambda: planned(changed(house(), "devices", "W2", leave_on="x"))),
        (
            "weak_tie",
            lambda: planned(changed(house(), "ties", "T-P2-C2-feeds", grade="1")),
        ),
        ("label", lambda: planned(changed(house(), "devices", "W2", label_found=""))),
        (
            "carrier",
            lambda: planned(changed(house(), "devices", "W2", kind="fuse_bs88")),
        ),
        ("source_unplaced", lambda: planned(with_battery(joins="C2"))),
        ("head_leaves_neutral", lambda: planned(lit(), "P3")),
        (
            "seen_live",
            lambda: planned(house(*switched_off("N1", "W1", live="P1"))),
        ),
        ("rounds_differ", lambda: planned(house(*switched_off("N1", live="P1")))),
        (
            "board_condition",
            lambda: planned(changed(house(), "boards", "B1", condition="sound")),
        ),
        (
            "point_condition",
            lambda: planned(changed(house(), "points", "P2", condition="hot")),
        ),
        (
            "polarity",
            lambda: planned(
                house().having(results=(of_polarity("wrong", about="C2"),))
            ),
        ),
        ("battery_feeds", lambda: planned(stored(), "P4")),
        ("dc_side", lambda: planned(panels(), "P1")),
        ("two_ways", lambda: planned(two_ways(), "P2")),
        ("neutral_elsewhere", lambda: planned(house(tie("P1", "C1", "neutral")))),
        (
            "not_parted",
            lambda: planned(house(tie("P2", "NEXT"), source("NEXT", kind="neighbour"))),
        ),
        (
            "not_looked_at",
            lambda: planned(
                changed(
                    house(room("R2", looked_at="part")), "rooms", "R1", looked_at="all"
                )
            ),
        ),
    ],
)
def test_reason_is_not_given(code: str, without: Callable[[], Plan]) -> None:
    assert code not in codes(without())


def both_poles(record: Record) -> Record:
    return changed(record, "devices", "W1", poles=BOTH)


def test_answers_of_the_day_settle_a_source() -> None:
    record = changed_sources(house(), "NO-solar")
    assert planned(record).advised == "stop"
    answered = planned(record, day=OnTheDay(sources={"solar": "no"}))
    assert answered.advised == "nearest"
    found_one = planned(record, day=OnTheDay(sources={"solar": "yes"}))
    assert codes(found_one) == {"source_unplaced"}
    unsure = planned(record, day=OnTheDay(sources={"solar": "unknown"}))
    assert codes(unsure) == {"source_unanswered"}


def test_a_day_does_not_overrule_a_recorded_source() -> None:
    record = with_battery(runs_without_network="yes")
    said_no = planned(record, day=OnTheDay(sources={"battery": "no"}))
    assert "fed_back" in codes(said_no)
    assert "BATT" in " ".join(s.title for s in said_no.sources)


def test_who_depends_on_it_can_be_settled_on_the_day() -> None:
    record = changed(house(), "points", "P1", care=("medical",))
    settled = planned(record, day=OnTheDay(settled=("medical", "whose")))
    assert settled.advised == "nearest"


def test_what_is_not_settled_by_asking_stays() -> None:
    record = changed(house(), "points", "P1", kind="unknown")
    found = planned(record, day=OnTheDay(settled=("unidentified",)))
    assert found.advised == "stop"


def test_circuits_joined_by_a_neutral_open_together_however_far() -> None:
    record = house(
        tie("P1", "C2", "neutral"),
        tie("P4", "C2"),
        tie("P4", "C3", "neutral"),
        point("P4", kind="socket", room="R1"),
        inside=(way("W3", circuit("C3"), label_found="THIRD", way="3"),),
    )
    found = planned(record, "P1")
    assert {s.ref for s in found.nearest.switches} == {"W1", "W2", "W3"}


def test_what_switches_a_light_brings_its_circuit_into_the_box() -> None:
    from tests.builders import control

    record = house(
        control("P5", "P3"),
        inside=(
            way("W3", circuit("C3", light("P3"))),
            way("W4", circuit("C4", switch("P5"))),
        ),
    )
    found = planned(record, "P5")
    assert {s.ref for s in found.nearest.switches} == {"W3", "W4"}


def test_nothing_of_the_network_or_the_meter_operator_is_ever_switched() -> None:
    record = house()
    for owner in ("network", "meter_operator", "shared", "landlord", "unknown"):
        theirs = changed(record, "boards", "B1", owner=owner)
        found = planned(theirs)
        assert not found.nearest.switches
        assert not found.wide.switches
        assert "not_parted" in codes(found)
    yours = changed(record, "intake", "CUT", owner="consumer", poles=BOTH)
    assert "CUT" not in {s.ref for s in planned(yours, "B1").wide.switches}


def test_the_own_switches_of_a_board_do_not_isolate_it() -> None:
    found = planned(house(), "B1")
    assert not found.nearest.switches
    assert not found.used.parts


def test_a_circuit_between_two_ways_feeds_back_through_the_open_one() -> None:
    """With the RCD of one way off, its neighbours stay live through the circuit."""
    record = home(
        *no_other_sources(),
        street(
            board(
                "B1",
                main_switch(
                    "MS",
                    device(
                        "R1",
                        way("W1"),
                        way("W3", circuit("C3", socket("P3"))),
                        kind="rcd",
                    ),
                    device("R2", way("W2"), kind="rcd"),
                ),
            )
        ),
        circuit("C1", socket("P1"), ways=("W1", "W2")),
    )
    found = planned(record, "P3")
    assert {s.ref for s in found.nearest.switches} == {"W3"}
    assert {s.ref for o in found.alternatives for s in o.switches} == {"MS"}


def test_battery_that_may_go_on_is_parted_too() -> None:
    for goes_on in ("yes", "unknown"):
        record = with_battery(runs_without_network=goes_on)
        found = planned(record, "P2")
        assert "not_parted" in codes(found)
        assert found.nearest.cannot
    stops = planned(with_battery(runs_without_network="no"), "P2")
    assert not stops.nearest.cannot


def test_every_caution_can_be_heard() -> None:
    """Each is given somewhere; the tails everywhere."""
    assert {c.code for c in planned(house()).cautions} == {"tails"}
    off_peak = planned(changed(house(), "devices", "MS", when="off_peak"))
    fused = planned(changed(house(), "points", "P1", kind="fused_connection_unit"))
    kept = planned(changed(house(), "points", "P1", battery_backed="yes"))
    open_ = planned(stored(battery_backed="unknown"), "P3")
    begins = planned(changed(house(), "boards", "B1", fed_from=None))
    stairs = planned(changed(lit(), "points", "P3", kind="two_way_switch"), "P3")
    inner = board(
        "B2", way("W9", circuit("C9", socket("P9", room="R2")), label_found="SKT")
    )
    sub = planned(house(room("R2"), inside=(way("W8", circuit("C8", inner)),)), "P9")
    odd = planned(
        house(
            tie("P6", "C1"),
            tie("P7", "C1"),
            *(point(f"P{n}", kind="socket", room="R1") for n in (6, 7)),
        ),
        "P2",
    )
    rubber = planned(changed(house(), "circuits", "C1", cable="rubber"))
    bare = planned(changed(house(), "circuits", "C1", has_cpc="no"))
    assert "no_earth" in {caution.code for caution in bare.cautions}
    found = {
        c.code
        for p in (off_peak, fused, kept, open_, begins, stairs, sub, odd, rubber)
        for c in p.cautions
    }
    names = {rule.__name__ for rule in CAUTIONS} - {"odd_ones"} | {"odd"}
    assert found >= names


@pytest.mark.parametrize(
    ("of_supply", "of_board", "said"),
    [
        ("tn_c_s", "unknown", "feeds is not answered, so the neutral"),
        ("unknown", "unknown", "The earthing is not known, so the neutral"),
    ],
)
def test_whose_earthing_is_not_known_is_said(
    of_supply: str, of_board: str, said: str
) -> None:
    record = of_home(house(), earthing=of_supply)
    found = planned(changed(record, "boards", "B1", earthing=of_board))
    (why,) = [reason for reason in found.reasons if reason.code == "earthing"]
    assert said in why.sentence


def test_steps_come_in_order_and_none_is_left_out_silently() -> None:
    first = planned(house())
    order = [step.code for step in first.steps]
    assert order[0] == "identify"
    assert order.index("prove_tester") < order.index("prove_dead")
    assert order.index("prove_dead") + 1 == order.index("prove_again")
    assert order[-1] == "restore"
    assert all(step.why and step.basis and step.do for step in first.steps)
    day = OnTheDay(done=("identify",), skipped={"sources": " ", "warn": "I live alone"})
    then = planned(house(), day=day)
    states = {step.code: step.state for step in then.steps}
    assert states["identify"] == "done"
    assert states["sources"] == "open"
    assert states["warn"] == "skipped"
    upcoming = next_step(then)
    assert upcoming is not None
    assert upcoming.code == "sources"


def test_while_it_says_stop_nothing_can_be_ticked_after_finding_out() -> None:
    day = OnTheDay(done=("switch_off", "prove_dead"), skipped={"lock": "no clip"})
    found = planned(changed_sources(house(), "NO-solar"), day=day)
    states = {step.code: step.state for step in found.steps}
    assert {states["switch_off"], states["lock"], states["prove_dead"]} == {"blocked"}
    assert states["identify"] == "open"


def sentence(found: Plan, code: str) -> str:
    (said,) = (r.sentence for r in found.reasons if r.code == code)
    return said


def test_a_point_seen_live_stops_a_plan_with_no_more_off_than_the_round_had() -> None:
    """P1 stayed live with all of the board off; its plan would open W1, then MS."""
    seen = switched_off("N1", "MS", live="P1 P2", started_at="2026-07-01T23:30:00Z")
    found = planned(house(*seen))
    assert found.advised == "stop"
    said = sentence(found, "seen_live")
    assert "or the mark is wrong" in said
    assert "P1" in said
    assert "P2" not in said
    assert "with Main switch MS, “MAIN SWITCH” off (Round N1, 2 July 2026)" in said
    assert {p.ref for p in found.used.live_here} == {"P2"}


def test_live_behind_its_way_alone_takes_the_whole_board_instead() -> None:
    found = planned(house(*switched_off("N1", "W1", live="P1")))
    assert found.advised == "wide"
    assert "stayed live" in sentence(found, "rounds_differ")


def test_what_somebody_saw_live_counts_though_another_saw_it_go_off() -> None:
    seen = switched_off("N1", "MS", live="P1")
    other = Reading(ref="N1-B", round="N1", point="P1", seen="dead", seen_by="B")
    record = house(*seen)
    record = record.having(readings=(*record.readings, other))
    assert "seen_live" in codes(planned(record))


def test_what_has_a_battery_of_its_own_may_stay_on() -> None:
    record = house(*switched_off("N1", "MS", live="P1"))
    kept = changed(record, "points", "P1", battery_backed="yes")
    assert planned(kept).reasons == ()


def test_seen_to_go_off_with_a_way_that_does_not_feed_it() -> None:
    went = house(*switched_off("N1", "W2", dead="P1"))
    found = planned(went)
    assert found.advised == "wide"
    assert "went off" in sentence(found, "rounds_differ")
    at_first = switched_off("N0", dead="P1")
    assert planned(house(*at_first, *switched_off("N1", "W2", dead="P1"))).reasons == ()


def test_round_that_the_record_expects_says_nothing() -> None:
    as_recorded = house(*switched_off("N1", "W1", dead="P1", live="P2"))
    assert planned(as_recorded).reasons == ()
    elsewhere = house(*switched_off("N1", "W1", live="P1"))
    assert planned(elsewhere, "P2").reasons == ()


def test_circuit_on_which_another_point_differs_is_taken_wide() -> None:
    """Something else may reach the wires of the circuit by the other point."""
    record = house(
        point("P7", kind="socket", room="R1"),
        tie("P7", "C1"),
        *switched_off("N1", "MS", live="P7"),
    )
    found = planned(record)
    assert found.advised == "wide"
    assert "P7" in sentence(found, "rounds_differ")


def test_work_at_two_boards_stops_for_what_stayed_live_at_one() -> None:
    inner = board("B2", main_switch("M2", way("W9", circuit("C9", socket("P9")))))
    seen = switched_off("N1", "MS", live="P1")
    record = house(*seen, intake("IS", inner, fed_from="TAIL", kind="connector_block"))
    found = planned(record, "P1", "P9")
    assert {"MS", "M2"} <= {s.ref for s in found.used.switches}
    assert "seen_live" in codes(found)


def test_whole_house_names_what_was_seen_live_with_it_off() -> None:
    found = house_off(network(house(*switched_off("N1", "MS", live="P1"))))
    assert [each.ref for each in found.still_live if each.ref[0] == "P"] == ["P1"]
    assert "Seen live with" in found.still_live[-1].why
    assert [each.ref for each in found.goes_off] == ["P2"]


def test_board_that_no_switch_of_the_plan_is_on_does_not_stop_it() -> None:
    other = changed(
        house(board("B2", condition="hot")), "boards", "B1", owner="consumer"
    )
    assert "board_condition" not in codes(planned(other))
    assert "board_condition" in codes(planned(other, "B2"))


def test_whole_house_stops_for_a_board_and_leaves_a_point_alone() -> None:
    assert house_off(network(house())).stops == ()
    record = changed(house(), "boards", "B1", condition="hot")
    found = house_off(network(changed(record, "points", "P1", condition="wet")))
    assert "B1" in found.stops[0]
    assert "hot, buzzing, scorched or smelling" in found.stops[0]
    assert "P1" in found.leave[0]
    sheet = house_sheet(found)
    assert sheet.advice == "Stop and find out first"
    assert found.stops[0] in sheet.stops
    assert found.leave[0] in sheet.cautions


PROOFS = ("prove_tester", "prove_dead", "prove_again")


def test_what_proves_is_never_left_out_and_keeps_work_shut() -> None:
    late = dict.fromkeys(PROOFS, "no time")
    found = planned(house(), day=OnTheDay(done=("work",), skipped=late))
    states = {step.code: step.state for step in found.steps}
    assert {states[code] for code in PROOFS} == {"open"}
    assert states["work"] == "blocked"
    (work,) = (step for step in found.steps if step.code == "work")
    assert "do not touch it" in work.shut_because


@pytest.mark.parametrize("missing", PROOFS)
def test_work_opens_when_all_three_are_done(missing: str) -> None:
    some = tuple(code for code in PROOFS if code != missing)
    for done, state in ((some, "blocked"), (PROOFS, "open")):
        found = planned(house(), day=OnTheDay(done=done))
        assert [s.state for s in found.steps if s.code == "work"] == [state]


def test_step_left_out_does_not_count_as_done() -> None:
    day = OnTheDay(done=("identify",), skipped={"lock": "no clip"})
    assert progress_of(planned(house(), day=day)) == "1 of 12 steps done, 1 left out"
    assert progress_of(planned(house())) == "0 of 12 steps done"


def test_who_to_call_differs_by_nation() -> None:
    said = {
        nation: " ".join(planned(of_home(house(), nation=nation)).call)
        for nation in ("england", "northern_ireland", "unknown")
    }
    assert "105" in said["england"]
    assert "105" not in said["northern_ireland"]
    assert "Northern Ireland" in said["unknown"]
    assert "105" in said["unknown"]


def test_job_in_a_room_touches_its_own_points_only() -> None:
    record = changed(lit(), "points", "P3", room="R1")
    lights = planned(record, "R1", job="lighting")
    assert {s.ref for s in lights.nearest.switches} == {"W3"}
    assert {p.ref for p in lights.nearest.live_here} == {"P1", "P2"}
    sockets = planned(record, "R1", job="sockets")
    assert {s.ref for s in sockets.nearest.switches} == {"W1", "W2"}


def test_what_nobody_recorded_is_not_said_to_be_so() -> None:
    """P9 has no tie: it may well be behind the main switch, and is named once."""
    record = house(point("P9", kind="socket"))
    found = planned(record, "P9")
    assert "feed_unknown" in codes(found)
    assert "not_parted" not in codes(found)
    (caution,) = house_off(network(record)).not_main
    assert caution.sentence == (
        "The record does not show that Main switch MS, “MAIN SWITCH” switches the "
        "whole home: whether 1 point goes off with it is not recorded."
    )
    lines = sheet_of(planned(record, "R1"))
    assert "cannot be made dead" not in " ".join(lines.still_live)


@pytest.mark.parametrize(("battery", "says"), [("unknown", True), ("no", False)])
def test_an_alarm_that_stayed_live_may_have_done_so_by_its_battery(
    battery: str, says: bool
) -> None:
    alarm = point("A1", kind="smoke_alarm", room="R1", battery_backed=battery)
    seen = switched_off("N1", "MS", live="A1")
    record = house(inside=(way("W9", circuit("C9", alarm)),))
    given = house(*seen, inside=(way("W9", circuit("C9", alarm)),))
    assert "seen_live" not in codes(planned(record, "A1"))
    said = sentence(planned(given, "A1"), "seen_live")
    assert ("It may have a battery of its own; else something" in said) == says
