"""What is said of a point, in words."""

from __future__ import annotations

from app.domain.trace import Look, PointState, Survey, Way, answer_of, states


def said(state: PointState) -> str:
    return answer_of(state, lambda ref: ref)


def test_a_way_is_never_called_confirmed_that_is_not() -> None:
    """On a way and one that hangs off it together, it would look the same."""
    ways = (Way(ref="W1"), Way(ref="W2", parent="W1"))
    offs = [frozenset({"W1"})] * 3 + [frozenset({"W2"})] * 3 + [frozenset[str]()] * 2
    looks = tuple(
        Look(ref=f"R{n}", off=off, seen={"P1": "dead" if "W1" in off else "live"})
        for n, off in enumerate(offs)
    )
    state = states(Survey(ways, ("P1",), looks))["P1"]
    assert (state.way, state.confirmed, state.steady) == ("W1", False, True)
    assert said(state) == (
        "On W1: as sure as switching off can make it; it would stand if any one "
        "reading were wrong."
    )


def test_every_status_has_an_answer() -> None:
    pair = (("W1", "W2"),)
    assert said(PointState(point="P1", status="more_than_one_way", either=pair)) == (
        "On more than one way: dead with either of W1 and W2."
    )
    assert said(PointState(point="P1", status="found", way="W1", confirmed=True)) == (
        "On W1, confirmed: no two ways would explain the readings as well."
    )
    assert "On none of these ways, not confirmed yet" in said(
        PointState(point="P1", status="unaffected")
    )
    assert said(
        PointState(point="P1", status="several_fit", candidates=("", "W1"))
    ) == ("May be on W1 or none of these ways.")
    assert "one reading is wrong" in said(
        PointState(point="P1", status="contradiction")
    )
    never_live = PointState(
        point="P1", status="found", way="W1", confirmed=True, was_live=False
    )
    assert said(never_live) == (
        "On W1, not confirmed yet: it was never seen live at that time of day, so it "
        "may have been dead all along."
    )
    assert "battery of its own" in said(
        PointState(point="P1", status="not_testable", kept_on_in=("N1",))
    )
    assert "Dead with everything on" in said(
        PointState(point="P1", status="not_testable")
    )
