"""The next round, by hand-made surveys."""

from __future__ import annotations

from dataclasses import replace

from app.domain.trace import (
    MANNERS,
    Group,
    Look,
    Survey,
    Way,
    cannot_show,
    effort,
    next_round,
    states,
)
from app.domain.trace.code import rounds_for
from app.domain.trace.survey import Seen

EIGHT = tuple(Way(ref=f"W{n}") for n in range(1, 9))
POINTS = ("P1", "P2")


def test_an_rcd_is_switched_as_one_where_it_halves_as_well() -> None:
    group = Group(ref="R1", ways=frozenset({"W5", "W6", "W7", "W8"}))
    planned = next_round(Survey(EIGHT, POINTS, groups=(group,)), "halving")
    assert planned is not None
    assert planned.switches == ("R1",)
    assert planned.ways == group.ways


def test_everything_off_is_the_main_switch() -> None:
    group = Group(ref="MS", ways=frozenset(way.ref for way in EIGHT))
    looks = tuple(
        Look(ref=f"R{n}", off=frozenset({way.ref}), seen={"P1": "live"})
        for n, way in enumerate(EIGHT)
    )
    survey = Survey(EIGHT, ("P1",), looks, groups=(group,))
    planned = next_round(survey, "one_at_a_time")
    assert planned is not None
    assert (planned.purpose, planned.switches) == ("confirm", ("MS",))


def test_a_board_below_is_off_with_the_way_that_feeds_it() -> None:
    ways = (Way(ref="W1"), Way(ref="W2", parent="W1"), Way(ref="W3"))
    planned = next_round(Survey(ways, POINTS), "one_at_a_time")
    assert planned is not None
    assert planned.switches == ("W1",)
    assert planned.ways == {"W1", "W2"}


def test_likely_ways_spread_over_both_halves() -> None:
    likely = {"P1": "W1", "P2": "W2"}
    planned = next_round(Survey(EIGHT, POINTS), "halving", likely)
    assert planned is not None
    assert len({"W1", "W2"} & planned.ways) == 1


def test_a_point_with_a_battery_is_looked_at_but_halving_makes_no_round_for_it() -> (
    None
):
    looks = (Look(ref="R0", off=frozenset(), seen={"P1": "live"}),)
    survey = Survey(EIGHT, POINTS, looks, own_battery=frozenset({"P1"}))
    planned = next_round(survey, "halving")
    assert planned is not None
    assert planned.points == POINTS
    alone = replace(survey, points=("P1",))
    assert next_round(alone, "halving") is None


def test_one_at_a_time_looks_at_a_point_with_a_battery_once_with_each_way_off() -> None:
    survey = Survey(EIGHT, ("P1",), own_battery=frozenset({"P1"}))
    for n in range(len(EIGHT)):
        planned = next_round(survey, "one_at_a_time")
        assert planned is not None
        assert planned.points == ("P1",)
        look = Look(ref=f"R{n}", off=planned.ways, seen={"P1": "live"})
        survey = replace(survey, looks=(*survey.looks, look))
    assert next_round(survey, "one_at_a_time") is None
    assert states(survey)["P1"].status == "not_testable"


def test_only_points_that_can_be_learnt_from_are_asked_about() -> None:
    look = Look(ref="R0", off=frozenset(), seen={"P1": "dead", "P2": "live"})
    planned = next_round(Survey(EIGHT, POINTS, (look,)), "halving")
    assert planned is not None
    assert planned.points == ("P2",)


def test_nothing_to_switch_is_no_round() -> None:
    kept = (Way(ref="W1", leave_on="a stairlift"),)
    assert next_round(Survey(kept, POINTS), "halving") is None
    assert next_round(Survey((), POINTS), "self_checking") is None
    assert next_round(Survey(EIGHT, ()), "one_at_a_time") is None


def test_each_way_is_off_equally_often_and_any_two_differ_twice() -> None:
    for ways in range(1, 25):
        rounds = rounds_for(ways)
        words = [
            frozenset(n for n, off in enumerate(rounds) if way in off)
            for way in range(ways)
        ]
        assert len({len(word) for word in words}) == 1
        for place, word in enumerate(words):
            assert len(word) >= 2
            assert all(len(word - other) >= 2 for other in words[:place])


def test_what_cannot_be_shown() -> None:
    ways = (
        Way(ref="W1", poles=1),
        Way(ref="W2", poles=2),
        Way(ref="W3", poles=2, leave_on="a pump"),
        Way(ref="W4"),
    )
    look = Look(ref="R1", off=frozenset({"W1", "W2"}), seen={"P1": "dead"})
    survey = Survey(ways, POINTS, (look,))
    told = {each.code: each.refs for each in cannot_show(survey, states(survey))}
    assert told == {
        "borrowed_neutral": ("W1", "W4"),
        "left_on": ("W3",),
        "no_baseline": ("P1",),
        "not_tried": ("W4",),
        "nothing_found": ("W1", "W2"),
        "not_looked": ("P2",),
    }


def test_a_way_of_a_pair_is_not_one_on_which_nothing_was_found() -> None:
    looks = (
        Look(ref="R0", off=frozenset(), seen={"P1": "live"}),
        Look(ref="R1", off=frozenset({"W1"}), seen={"P1": "dead"}),
        Look(ref="R2", off=frozenset({"W2"}), seen={"P1": "dead"}),
        Look(ref="R3", off=frozenset({"W3"}), seen={"P1": "live"}),
        Look(ref="R4", off=frozenset({"W4"}), seen={}),
    )
    ways = tuple(Way(ref=f"W{n}", poles=2) for n in range(1, 5))
    survey = Survey(ways, ("P1",), looks)
    told = {each.code: each.refs for each in cannot_show(survey, states(survey))}
    assert told == {"not_tried": ("W4",), "nothing_found": ("W3",)}


def test_a_baseline_by_day_says_nothing_of_the_night() -> None:
    looks = (
        Look(ref="R0", off=frozenset(), seen={"P1": "live"}),
        Look(ref="R1", off=frozenset({"W1"}), seen={"P1": "dead"}, night=True),
    )
    survey = Survey((Way(ref="W1", poles=2),), ("P1",), looks)
    told = {each.code: each.refs for each in cannot_show(survey, states(survey))}
    assert told == {"no_baseline": ("P1",)}


def test_a_blown_lamp_keeps_no_round_going() -> None:
    looks = (
        Look(ref="R0", off=frozenset(), seen={"P1": "dead", "P2": "live"}),
        *(
            Look(ref=f"R{n}", off=frozenset({f"W{n}"}), seen={"P2": "live"})
            for n in range(1, 9)
        ),
    )
    survey = Survey(EIGHT, POINTS, looks)
    for manner in MANNERS:
        planned = next_round(survey, manner)
        assert planned is None or planned.points == ("P2",)
    alone = Survey(EIGHT, ("P1",), looks[:1])
    assert [next_round(alone, manner) for manner in MANNERS] == [None] * 3


def test_a_point_that_is_gone_decides_nothing() -> None:
    survey = Survey(EIGHT, POINTS)
    assert next_round(survey, "halving", {"P9": "W1"}) == next_round(survey, "halving")


def test_self_checking_goes_on_where_sub_boards_hide_a_way() -> None:
    """Off with its own board and with another, a way looks like its board's way."""
    ways = (
        *(Way(ref=f"W{n}") for n in range(1, 5)),
        *(Way(ref=f"V{n}", parent="W1") for n in range(1, 5)),
    )
    survey = Survey(ways, tuple(f"P{n}" for n in range(1, 9)))
    fed = dict(zip(survey.points, (way.ref for way in ways), strict=True))
    said = effort(survey, "self_checking")
    for n in range(said.rounds_worst + 1):
        planned = next_round(survey, "self_checking")
        if planned is None:
            break
        seen: dict[str, Seen] = {
            p: "dead" if fed[p] in planned.ways else "live" for p in planned.points
        }
        look = Look(ref=f"R{n}", off=planned.ways, seen=seen)
        survey = replace(survey, looks=(*survey.looks, look))
    assert next_round(survey, "self_checking") is None
    assert {p: state.way for p, state in states(survey).items()} == fed


def test_what_is_never_switched_off_is_split_as_one() -> None:
    kept = (Way(ref=f"K{n}", leave_on="a pump") for n in range(5))
    survey = Survey((*EIGHT[:3], *kept), ("P1",))
    assert effort(survey, "halving").finding_worst == 2
    planned = next_round(survey, "halving")
    assert planned is not None
    assert len(planned.ways) == 2


def test_half_way_the_self_checking_rounds_still_need_no_more_than_was_said() -> None:
    survey = Survey(EIGHT, POINTS)
    said = effort(survey, "self_checking")
    planned = next_round(survey, "self_checking")
    assert planned is not None
    seen: dict[str, Seen] = dict.fromkeys(POINTS, "live")
    look = Look(ref="R1", off=planned.ways, seen=seen)
    left = effort(replace(survey, looks=(look,)), "self_checking")
    assert left.finding_worst == said.finding_worst - 1
    assert left.rounds_worst == said.rounds_worst - 1
