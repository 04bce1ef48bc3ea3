"""Writing what was found into the record."""

from __future__ import annotations

from datetime import date

from app.domain.network import network
from app.domain.record import Record
from app.domain.record.choices import GRADES
from app.domain.trace import Applied, applied, states, survey_of
from tests.builders import (
    Part,
    board,
    circuit,
    home,
    main_switch,
    point,
    socket,
    street,
    switched_off,
    tie,
    way,
)

DAY = date(2026, 3, 1)


def a_home(*more: Part) -> Record:
    """Two ways; P1 is on the first, seen once and confirmed."""
    return home(
        street(
            board(
                "B1",
                main_switch(
                    "MS",
                    way("W1", circuit("C1", number="1"), way="1"),
                    way("W2", circuit("C2", number="2"), way="2"),
                    way("W3", way="3", label_found="Shed"),
                ),
            )
        ),
        *more,
    )


def seen_on(way_ref: str) -> tuple[Part, ...]:
    others = sorted({"W1", "W2", "W3"} - {way_ref})
    return (
        *switched_off("N1", way_ref, dead="P1"),
        *switched_off("N2", others[0], live="P1"),
        *switched_off("N3", others[1], live="P1"),
    )


def apply(record: Record) -> Applied:
    net = network(record)
    return applied(net, states(survey_of(net)), DAY, "A")


def ties(record: Record) -> list[tuple[str, str]]:
    return [(t.tied_to, t.grade) for t in record.ties if t.point == "P1"]


def test_a_point_tied_to_nothing_is_tied_at_grade_4_when_confirmed() -> None:
    done = apply(a_home(point("P1", kind="socket"), *seen_on("W1")))
    assert ties(done.record) == [("C1", "4")]
    (made,) = done.record.ties
    assert (made.seen_on, made.seen_by) == (DAY, "A")
    assert [change.split(":")[1] for change in done.changes] == [" on Circuit 1."]
    assert done.left_alone == ()


def test_grade_4_does_not_say_that_a_point_was_seen_twice() -> None:
    """Nor does it have to be: that no other way explains the rounds is enough."""
    record = a_home(point("P1", kind="socket"), *seen_on("W1"))
    assert states(survey_of(network(record)))["P1"].dead_in == ("N1",)
    (made,) = apply(record).record.ties
    assert "by elimination" in GRADES[made.grade]
    assert "twice" not in GRADES[made.grade]


def test_one_found_but_not_confirmed_is_tied_at_grade_3() -> None:
    record = a_home(
        point("P1", kind="socket"),
        *switched_off("N0", live="P1"),
        *switched_off("N1", "W1", dead="P1"),
    )
    assert ties(apply(record).record) == [("C1", "3")]


def left(*rounds: Part) -> list[str]:
    """What is said of P1 where nothing may be written of it."""
    record = a_home(point("P1", kind="socket"), *rounds)
    done = apply(record)
    assert (done.record, done.changes) == (record, ())
    return [each.sentence for each in done.left_alone]


def test_what_nobody_saw_live_may_have_been_dead_all_along_and_is_left() -> None:
    (sentence,) = left(*switched_off("N1", "W1", dead="P1"))
    assert "dead all along; look at it with everything on" in sentence
    both = switched_off("N1", "W1", "W2", dead="P1")
    assert left(*both, *switched_off("N2", "W1", "W3", dead="P1")) == [sentence]
    by_night = switched_off("N0", live="P1", when="night")
    assert left(*by_night, *switched_off("N1", "W1", dead="P1")) == [sentence]


def test_one_seen_live_only_while_another_way_was_off_is_written() -> None:
    record = a_home(
        point("P1", kind="socket"),
        *switched_off("N1", "W1", dead="P1"),
        *switched_off("N2", "W2", live="P1"),
    )
    assert ties(apply(record).record) == [("C1", "3")]


def test_a_label_is_raised_to_what_was_seen() -> None:
    record = a_home(
        point("P1", kind="socket"), tie("P1", "C1", grade="1"), *seen_on("W1")
    )
    done = apply(record)
    assert ties(done.record) == [("C1", "4")]
    assert len(done.record.ties) == 1
    assert "now seen" in done.changes[0]


def test_a_label_that_was_wrong_is_turned_and_said() -> None:
    record = a_home(
        point("P1", kind="socket"), tie("P1", "C2", grade="1"), *seen_on("W1")
    )
    done = apply(record)
    assert ties(done.record) == [("C1", "4")]
    assert "no longer Circuit 2" in done.changes[0]


def test_what_an_electrician_wrote_is_left_and_said() -> None:
    record = a_home(
        point("P1", kind="socket"), tie("P1", "C2", grade="5"), *seen_on("W1")
    )
    done = apply(record)
    assert done.record == record
    assert done.changes == ()
    assert "the record says otherwise: Circuit 2" in done.left_alone[0].sentence


def test_a_higher_grade_is_not_lowered() -> None:
    record = a_home(
        point("P1", kind="socket"), tie("P1", "C1", grade="5"), *seen_on("W1")
    )
    assert apply(record).record == record


def test_a_point_behind_another_stays_behind_it() -> None:
    record = a_home(
        point("P1", kind="socket"),
        socket("P0"),
        tie("P0", "C1"),
        tie("P1", "P0", grade="1"),
        *seen_on("W1"),
    )
    done = apply(record)
    assert ties(done.record) == [("P0", "1")]
    assert (done.changes, done.left_alone) == ((), ())


def test_a_way_without_a_circuit_gets_one_and_keeps_its_label() -> None:
    done = apply(a_home(point("P1", kind="socket"), *seen_on("W3")))
    made = done.record.circuits[-1]
    assert made.ways == ("W3",)
    assert ties(done.record) == [(made.ref, "4")]
    assert "is made" in done.changes[0]
    assert [d.label_found for d in done.record.devices if d.ref == "W3"] == ["Shed"]


def test_a_point_on_two_ways_is_proposed_and_not_written() -> None:
    record = a_home(
        point("P1", kind="socket"),
        *switched_off("N1", "W1", dead="P1"),
        *switched_off("N2", "W2", dead="P1"),
    )
    done = apply(record)
    assert done.record == record
    assert "depends on two ways" in done.left_alone[0].sentence


def test_the_pair_is_named_where_a_point_is_on_two_ways() -> None:
    record = a_home(
        point("P1", kind="socket"),
        *switched_off("N1", "W1", dead="P1"),
        *switched_off("N2", "W2", dead="P1"),
        *switched_off("N3", "W3", live="P1"),
    )
    (left,) = apply(record).left_alone
    assert "dead with either of Way 1 and Way 2" in left.sentence


def test_a_second_tie_that_the_readings_do_not_bear_out_is_said() -> None:
    record = a_home(
        point("P1", kind="socket"),
        tie("P1", "C1", grade="1"),
        tie("P1", "C2", grade="1"),
        *seen_on("W1"),
    )
    done = apply(record)
    assert ties(done.record) == [("C1", "4"), ("C2", "1")]
    assert "also says Circuit 2 is left as it is" in done.left_alone[0].sentence


def test_a_point_seen_on_no_way_that_the_record_ties_to_one_is_said() -> None:
    live = [
        switched_off(f"N{n}", f"W{n}", live="P1", stage="done") for n in range(1, 4)
    ]
    read = [part for parts in live for part in parts]
    record = a_home(point("P1", kind="socket"), tie("P1", "C2", grade="1"), *read)
    done = apply(record)
    assert done.record == record
    assert "the record says Circuit 2" in done.left_alone[0].sentence
    untied = apply(a_home(point("P1", kind="socket"), *read))
    assert untied.left_alone == ()


def test_a_way_whose_circuit_is_on_another_way_too_is_left_and_said() -> None:
    record = home(
        street(
            board(
                "B1",
                main_switch(
                    "MS", way("W1", circuit("C1", ways=("W1", "W2"))), way("W2")
                ),
            )
        ),
        point("P1", kind="socket"),
        *switched_off("N1", "W2", dead="P1"),
        *switched_off("N2", "W1", live="P1"),
    )
    done = apply(record)
    assert done.record == record
    assert "on another way too" in done.left_alone[0].sentence


def test_nothing_read_changes_nothing() -> None:
    record = a_home(point("P1", kind="socket"))
    assert apply(record).record == record
