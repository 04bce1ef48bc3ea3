"""Lines and neutrals that do not pass the same RCDs."""

from __future__ import annotations

from app.domain.record import Record
from app.domain.remarks import UNITS, sight
from app.domain.remarks._kind import Found, Outcome
from tests.builders import circuit, fcu, light, rcbo, rcd, way
from tests.unit.domain.remarks.cases import TODAY, lit, neutral_of

PLAIN = way("W2", circuit("C2"))


def outcomes(record: Record) -> list[Outcome]:
    return list(UNITS["neutral-past-its-rcd"].look(sight(record, TODAY)))


def sentence(record: Record) -> str:
    (found,) = outcomes(record)
    assert isinstance(found, Found)
    return found.sentence


def test_the_rcd_that_would_trip_is_named() -> None:
    said = sentence(neutral_of(PLAIN, rcd("R", way("W1", lit()))))
    assert said.startswith(
        "The line of Light (P1) passes RCD R, its neutral does not: "
    )
    assert "One of the two ties is wrong" in said


def test_it_is_the_same_the_other_way_round() -> None:
    said = sentence(neutral_of(rcd("R", PLAIN), way("W1", lit())))
    assert said.startswith(
        "The neutral of Light (P1) passes RCD R, its line does not: "
    )


def test_one_rcd_before_both_does_not_stand_for_one_before_the_line_only() -> None:
    both = rcd("R", rcbo("W1", lit()), PLAIN)
    assert "RCBO W1" in sentence(neutral_of(both))


def test_what_hangs_behind_such_a_point_is_not_named_again() -> None:
    hung = circuit("C1", fcu("P1", light("P2")))
    record = neutral_of(PLAIN, rcd("R", way("W1", hung)))
    assert [found.about[0] for found in outcomes(record)] == ["P1"]


def test_without_any_rcd_there_is_nothing_to_trip() -> None:
    assert outcomes(neutral_of(PLAIN, way("W1", lit()))) == []
