"""What comes back is a difference only where it says otherwise; taken one by one."""

from __future__ import annotations

from datetime import date
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.domain.edits import removed, replaced
from app.domain.pack import PARTS, kept_back
from app.domain.record import Circuit, Point, Record
from app.domain.replies import (
    Correction,
    Reply,
    accepted,
    differences,
    key_of,
    name_of,
    named,
    noted,
    open_corrections,
    with_needed,
    with_paper,
)
from app.errors import InvalidError
from tests import builders as b
from tests.property.whole_records import whole_records

REPLY = Reply(by="A. Person", paper="17/26", dated=date(2026, 10, 1))


def house() -> Record:
    ways = (
        b.way("W1", b.circuit("C1", b.socket("P1"), name="Ring"), way="1"),
        b.way("W2", b.circuit("C2", b.socket("P2"), name="Lights"), way="2"),
    )
    record = b.home(b.street(b.board("B1", b.main_switch("MS", *ways))), notes="Ours.")
    ties = tuple(
        tie.model_copy(update={"seen_by": "Ash", "grade": "3", "note": "By lamp."})
        for tie in record.ties
    )
    return record.having(ties=ties)


def test_what_was_kept_back_is_no_difference() -> None:
    assert differences(house(), kept_back(house(), tuple(PARTS))) == ()


def test_a_tie_that_is_taken_stands_in_a_document() -> None:
    record = house()
    moved = tuple(
        tie.model_copy(update={"tied_to": "C2"}) if tie.point == "P1" else tie
        for tie in record.ties
    )
    returned = kept_back(record.having(ties=moved), tuple(PARTS))
    (entry,) = differences(record, returned)
    after = accepted(record, [entry], REPLY)
    (tie,) = after.ties_of("P1")
    assert (tie.tied_to, tie.grade, tie.seen_on) == ("C2", "5", date(2026, 10, 1))
    assert tie.seen_by == "17/26, 1 October 2026"
    assert tie.note == "By lamp."
    assert differences(after, returned) == ()


def test_what_was_turned_down_is_open_no_more() -> None:
    record = house()
    returned = removed(record, "P2")
    found = differences(record, returned)
    assert {entry.sort for entry in found} == {"point", "tie"}
    keys = [key_of(entry) for entry in found]
    assert differences(record, returned, keys) == ()


def test_what_is_new_comes_with_what_it_needs() -> None:
    record = house()
    more = b.home(b.circuit("C3", b.socket("P3"), name="Shed"), notes="Ours.")
    returned = record.having(
        circuits=(*record.circuits, *more.circuits),
        points=(*record.points, *more.points),
        ties=(*record.ties, *more.ties),
    )
    found = differences(record, returned)
    tie = next(entry for entry in found if entry.sort == "tie")
    after = accepted(record, with_needed(record, tie, found), REPLY)
    assert after.find(Circuit, "C3") is not None
    assert after.find(Point, "P3") is not None
    assert differences(after, returned) == ()


def test_the_paper_is_written_down_once() -> None:
    once = with_paper(house(), REPLY)
    assert [(p.number, p.by, p.dated) for p in once.papers] == [
        ("17/26", "A. Person", date(2026, 10, 1))
    ]
    assert with_paper(once, REPLY) == once
    assert with_paper(house(), Reply()) == house()


def test_words_go_into_the_name_or_the_note() -> None:
    said = Correction(ref="W1", feeds="the shed")
    reply = REPLY.model_copy(update={"ways": (said,)})
    record = house()
    assert open_corrections(record, reply) == (said,)
    assert open_corrections(record, reply, ()) == (said,)
    by_name = named(record, said)
    assert by_name.circuits[0].name == "the shed"
    assert open_corrections(by_name, reply) == ()
    by_note = noted(record, said, reply)
    device = by_note.by_ref["W1"]
    assert device.note == "17/26, 1 October 2026: the shed"  # type: ignore[attr-defined]
    assert open_corrections(by_note, reply) == ()
    gone = removed(record, "W1")
    assert open_corrections(gone, reply) == (said,)


def test_words_that_a_note_happens_to_hold_are_still_open() -> None:
    record = house()
    way = record.by_ref["W1"]
    held = way.model_copy(update={"note": "It was the garage until 2019."})
    record = replaced(record, "W1", held)
    said = Correction(ref="W1", feeds="the garage")
    assert open_corrections(record, REPLY.model_copy(update={"ways": (said,)}))


def test_what_does_not_fit_is_refused_and_not_cut() -> None:
    record = house()
    long = Correction(ref="W1", feeds="x" * 130)
    assert named(record, long) == record
    way = record.by_ref["W1"].model_copy(update={"note": "x" * 3990})
    with pytest.raises(InvalidError):
        noted(replaced(record, "W1", way), long, REPLY)


def test_without_a_paper_a_tie_is_no_more_than_told() -> None:
    record = house()
    moved = tuple(
        tie.model_copy(update={"tied_to": "C2", "grade": "4"})
        if tie.point == "P1"
        else tie
        for tie in record.ties
    )
    found = differences(record, record.having(ties=moved))
    after = accepted(record, found, Reply())
    assert after.ties_of("P1")[0].grade == "2"


def test_how_a_tie_is_known_is_known_here() -> None:
    """A record handed over before it was seen comes back: nothing is to be taken."""
    record = house()
    old = tuple(tie.model_copy(update={"grade": "1"}) for tie in record.ties)
    assert differences(record, record.having(ties=old)) == ()


def test_one_reference_for_two_things_is_refused() -> None:
    record = house()
    point = record.points[0].model_copy(update={"ref": "C9"})
    returned = record.having(points=(*record.points, point))
    ours = record.having(circuits=(*record.circuits, Circuit(ref="C9")))
    entry = next(e for e in differences(ours, returned) if e.sort == "point")
    with pytest.raises(InvalidError, match="C9 is a circuit here"):
        accepted(ours, [entry], REPLY)


@given(whole_records(), whole_records(), st.randoms(use_true_random=False))
def test_taking_every_difference_leads_to_what_came_back(
    ours: Record, theirs: Record, rng: Random
) -> None:
    """In any order: each that is still open is taken until none is left."""
    for _ in range(400):
        found = differences(ours, theirs)
        if not found:
            break
        entry = rng.choice(found)
        before = ours
        ours = accepted(ours, with_needed(ours, entry, found), REPLY)
        assert ours != before
    assert differences(ours, theirs) == ()


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ("feeds the shed, not the garage.", "the shed"),
        ("It feeds  the shed", "the shed"),
        ("Shed lights", "Shed lights"),
        ("feeds", ""),
        ("does not feed the cooker", ""),
        ("x" * 121, ""),
    ],
)
def test_what_is_said_makes_a_name_if_it_can(said: str, name: str) -> None:
    assert name_of(Correction(ref="W1", feeds=said)) == name
