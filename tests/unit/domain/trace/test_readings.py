"""A record as a survey: its ways, what hangs below them, and what was read."""

from __future__ import annotations

from app.domain.network import network
from app.domain.trace import (
    MANNERS,
    conflicts,
    likely_ways,
    loses_left_on,
    next_round,
    states,
    survey_of,
)
from app.domain.trace.answers import Finding, TraceAnswer, trace_answer
from app.domain.trace.survey import Group, Way
from tests.builders import (
    Part,
    board,
    circuit,
    device,
    home,
    main_switch,
    point,
    rcd,
    room,
    socket,
    street,
    switched_off,
    way,
)


def a_board(*more: Part, **fields: str) -> Part:
    return street(
        board(
            "B1",
            main_switch(
                "MS",
                rcd(
                    "R1",
                    way("W1", circuit("C1", socket("P1"))),
                    way("W2", circuit("C2", socket("P2")), **fields),
                ),
                way("W3", circuit("C3", board("B2", way("W4", circuit("C4"))))),
                *more,
            ),
        )
    )


def test_ways_groups_and_what_hangs_off_what() -> None:
    survey = survey_of(network(home(a_board(poles="line_and_neutral"))))
    assert survey.ways == (
        Way(ref="W1"),
        Way(ref="W2", poles=2),
        Way(ref="W3"),
        Way(ref="W4", parent="W3"),
    )
    assert survey.groups == (
        Group(ref="MS", ways=frozenset({"W1", "W2", "W3", "W4"})),
        Group(ref="R1", ways=frozenset({"W1", "W2"})),
    )


def test_a_way_of_which_nothing_is_known_is_a_way() -> None:
    more = (
        device("W5", kind="circuit_breaker", in_use="spare"),
        device("X1", kind="blank"),
        device("X2", kind="time_switch"),
    )
    survey = survey_of(network(home(a_board(*more))))
    assert [each.ref for each in survey.ways] == ["W1", "W2", "W3", "W4", "W5"]


def test_a_circuit_behind_a_time_switch_is_switched_at_the_breaker_above() -> None:
    timed = way("W5", device("T1", circuit("C5"), kind="time_switch"))
    survey = survey_of(network(home(a_board(timed))))
    assert [each.ref for each in survey.ways][-1] == "W5"


def test_what_is_left_on_keeps_what_feeds_it_on() -> None:
    kept = way("W5", circuit("C5"), leave_on="a stairlift")
    survey = survey_of(network(home(a_board(kept))))
    assert survey.switchable == ("W1", "W2", "W3", "W4")


def test_a_circuit_on_two_ways_has_both() -> None:
    two = way("W5", circuit("C5", socket("P5"), ways=("W5", "W6")))
    record = home(
        a_board(two, way("W6")),
        *switched_off("N1", "W5", live="P5"),
        *switched_off("N2", "W6", live="P5"),
        *switched_off("N3", "W5", "W6", dead="P5"),
    )
    survey = survey_of(network(record))
    assert [look.off for look in survey.looks] == [{"W5"}, {"W6"}, {"W5", "W6"}]
    assert [each.ref for each in survey.ways][-2:] == ["W5", "W6"]
    state = states(survey)["P5"]
    assert (state.status, state.both) == ("more_than_one_way", (("W5", "W6"),))
    assert "P5" not in likely_ways(network(record))


def test_a_way_with_two_feeds_hangs_off_neither_alone() -> None:
    other = device(
        "X1",
        way("W6", circuit("C6", socket("P6"))),
        kind="changeover",
        second_feed="W7",
    )
    record = home(
        a_board(way("W5", circuit("C5", board("B3", other))), way("W7")),
        *switched_off("N1", "W5", live="P6"),
        *switched_off("N2", "W6", dead="P6"),
    )
    survey = survey_of(network(record))
    assert survey.by_ref["W6"].parent is None
    assert states(survey)["P6"].way == "W6"


def test_a_way_hangs_off_what_takes_both_of_its_feeds() -> None:
    other = device("X1", way("W8", circuit("C8")), kind="changeover", second_feed="W7")
    below = board("B4", way("W6", circuit("C6", board("B5", other))), way("W7"))
    survey = survey_of(network(home(a_board(way("W5", circuit("C5", below))))))
    assert survey.by_ref["W8"].parent == "W5"


def test_what_feeds_a_switch_left_on_is_left_on() -> None:
    kept = main_switch("MS2", way("W6", circuit("C6")), leave_on="oxygen")
    net = network(home(a_board(way("W5", circuit("C5", board("B3", kept))))))
    survey = survey_of(net)
    assert survey.by_ref["W5"].leave_on == "oxygen"
    assert survey.switchable == ("W1", "W2", "W3", "W4", "W6")
    assert [group.ref for group in survey.groups] == ["R1"]
    for manner in MANNERS:
        planned = next_round(survey, manner)
        assert planned is not None
        assert loses_left_on(net, planned.switches) == ()
    assert [each.ref for each in loses_left_on(net, ["MS"])] == ["MS2"]


def test_a_round_in_which_nobody_saw_anything_does_not_count() -> None:
    record = home(a_board(), *switched_off("N1", "W1"), *switched_off("N2"))
    answer = trace_answer(network(record))
    assert answer.rounds == 0
    hidden = {each.code: [t.ref for t in each.things] for each in answer.hidden}
    assert hidden["not_tried"] == ["W1", "W2", "W3", "W4"]
    assert "nothing_found" not in hidden


def test_an_rcd_that_was_off_takes_its_ways_with_it() -> None:
    record = home(
        a_board(),
        *switched_off("N1", live="P1 P2"),
        *switched_off("N2", "R1", dead="P1 P2"),
        *switched_off("N3", "W1", dead="P1", live="P2"),
    )
    survey = survey_of(network(record))
    assert [look.off for look in survey.looks] == [
        frozenset(),
        frozenset({"W1", "W2"}),
        frozenset({"W1"}),
    ]
    known = states(survey)
    assert {p: (s.status, s.way) for p, s in known.items()} == {
        "P1": ("found", "W1"),
        "P2": ("found", "W2"),
    }
    assert known["P1"].dead_in == ("N2", "N3")
    assert known["P2"].live_in == ("N1", "N3")


def test_a_round_that_switched_no_way_is_not_taken_for_a_baseline() -> None:
    spare = device("S1", kind="surge_protector")
    record = home(a_board(spare), *switched_off("N1", "S1", dead="P1"))
    assert survey_of(network(record)).looks == ()


def mark(ref: str, seen: str, by: str, at: str | None = None) -> Part:
    (_, reading) = switched_off("N1", "W1", dead="P1")
    return Part(
        reading.model,
        {**reading.fields, "ref": ref, "seen": seen, "seen_by": by, "seen_at": at},
    )


def round_n1() -> Part:
    return switched_off("N1", "W1")[0]


def test_the_later_mark_of_one_person_counts() -> None:
    late, early = "2026-03-01T10:05:00Z", "2026-03-01T10:00:00Z"
    record = home(
        a_board(),
        round_n1(),
        mark("M1", "live", "A", late),
        mark("M2", "dead", "A", early),
    )
    (look,) = survey_of(network(record)).looks
    assert look.seen == {"P1": "live"}
    assert conflicts(record) == ()


def test_two_people_who_disagree_are_both_shown_and_neither_counts() -> None:
    record = home(
        a_board(), round_n1(), mark("M1", "live", "A"), mark("M2", "dead", "B")
    )
    (look,) = survey_of(network(record)).looks
    assert look.seen == {}
    assert look.disputed == {"P1"}
    (conflict,) = conflicts(record)
    assert [reading.ref for reading in conflict.readings] == ["M1", "M2"]


def test_not_looked_is_nothing_and_contradicts_no_one() -> None:
    record = home(
        a_board(), round_n1(), mark("M1", "not_looked", "A"), mark("M2", "dead", "B")
    )
    (look,) = survey_of(network(record)).looks
    assert look.seen == {"P1": "dead"}
    alone = home(a_board(), round_n1(), mark("M1", "not_looked", "A"))
    assert survey_of(network(alone)).looks[0].seen == {}


def an_alarm(battery: str, *rounds: Part) -> TraceAnswer:
    alarm = point("P5", kind="smoke_alarm", battery_backed=battery)
    return trace_answer(network(home(a_board(), alarm, *rounds)))


def finding(answer: TraceAnswer) -> Finding:
    (found,) = (each for each in answer.points if each.point.ref == "P5")
    return found


def hidden(answer: TraceAnswer, code: str) -> list[str]:
    return [t.ref for h in answer.hidden if h.code == code for t in h.things]


LIT = (
    *switched_off("N0", live="P5"),
    *switched_off("N1", "W1", live="P5"),
    *switched_off("N2", "MS", live="P5"),
)


def test_what_stays_on_by_its_own_battery_is_not_said_to_be_on_none_of_the_ways() -> (
    None
):
    answer = an_alarm("yes", *LIT)
    found = finding(answer)
    assert (found.status, found.none_fits) == ("not_testable", False)
    assert found.kept_on_in == ("N0", "N1", "N2")
    assert "battery of its own" in found.answer
    assert found.reasons == (
        "Stayed on, perhaps by its own battery, in First look N0, Round N1, Round N2.",
    )
    assert hidden(answer, "own_battery") == ["P5"]
    assert "P5" not in hidden(answer, "not_looked")


def test_where_nobody_wrote_of_a_battery_staying_on_confirms_nothing() -> None:
    more = switched_off("N3", "W2", live="P5")
    found = finding(an_alarm("unknown", *LIT, *more))
    assert (found.status, found.confirmed) == ("unaffected", False)
    assert "but not confirmed: a battery of its own" in found.answer
    assert finding(an_alarm("no", *LIT, *more)).confirmed


def test_that_a_point_with_a_battery_went_off_still_counts() -> None:
    answer = an_alarm("yes", *LIT, *switched_off("N3", "W2", dead="P5"))
    found = finding(answer)
    assert found.way is not None
    assert (found.status, found.way.ref, found.confirmed) == ("found", "W2", False)
    assert "as sure as switching off can make it" in found.answer
    assert hidden(answer, "own_battery") == []


def test_where_no_battery_is_written_down_staying_on_counts_and_is_doubted() -> None:
    answer = an_alarm("unknown", *LIT)
    assert finding(answer).status == "unaffected"
    assert hidden(answer, "perhaps_battery") == ["P5"]
    without = an_alarm("no", *LIT)
    assert finding(without).status == "unaffected"
    assert hidden(without, "perhaps_battery") == []


def test_points_stand_in_the_order_of_the_walk() -> None:
    record = home(
        room("K", kind="kitchen"),
        room("L"),
        a_board(
            way("W5", circuit("C5", socket("P5", room="K"), socket("P6", room="L")))
        ),
    )
    assert survey_of(network(record)).points == ("P5", "P6", "P1", "P2")


def test_the_record_suggests_a_way() -> None:
    assert likely_ways(network(home(a_board()))) == {"P1": "W1", "P2": "W2"}
