from __future__ import annotations

import re

import pytest

from app.domain.faults import faults
from app.domain.record import Record
from app.interchange.answer_text import CAUTION, answer_text, faults_text
from app.services.answers import answer
from tests.builders import (
    board,
    circuit,
    cutout,
    home,
    light,
    no_other_sources,
    one_way,
    rcd,
    room,
    source,
    switch,
    tie,
    way,
)

LAMP = """\
Light (P1)
  Kind                  Light
  Room                  Hall (R1)
  Circuits              Lights (C1)
  RCD of 30 mA or less  none in the record

From the source to the point
  GRID  The network in the street  Network
  CUT   Cut-out                    Network         100 A; guards against overload, short circuit
  MET   Meter                      Meter operator
  TAIL  Tails                      Yours
  MS    Main switch MS             Yours           100 A; breaks: line and neutral (usual for its kind)
  W1    Circuit-breaker W1, “UP”   Yours           B 32 A; guards against overload, short circuit; breaks: at least the line; whether the neutral too is not recorded
  C1    Lights                     Yours
  P1    Light                      Yours           tie: seen: went off and came back

The owner changes
  - between CUT and MET
  - between MET and TAIL

Ties
  - Lights (C1): feeds it; seen: went off and came back

Not known
  none in the record"""  # noqa: E501 - lines of a wide terminal


@pytest.fixture
def small() -> Record:
    lamp = light("P1", room="R1", care=("alarm",))
    lights = circuit("C1", lamp, name="Lights")
    supply = one_way(lights, label_found="UP")
    return home(supply, room("R1", name="Hall"), *no_other_sources())


def test_a_point_is_told_step_by_step(small: Record) -> None:
    text = answer_text(answer(small, "point", "P1"))
    assert text == f"{LAMP}\n\n{CAUTION}"


def test_a_way_tells_its_points_and_what_is_missed(small: Record) -> None:
    lines = answer_text(answer(small, "way", "W1")).splitlines()
    assert "  Label as found  “UP”" in lines
    said = "  - Light (P1): Hall (R1); smoke, fire or burglar alarm"
    assert lines.count(said.replace(" (R1)", "")) == 2


def test_a_room_tells_its_ways(small: Record) -> None:
    lines = answer_text(answer(small, "room", "R1")).splitlines()
    assert lines[:5] == [
        "Hall (R1)",
        "  Looked at  All of it",
        "",
        "Ways that serve it",
        "  - Circuit-breaker W1, “UP” (W1)",
    ]


def test_two_paths_are_told_apart() -> None:
    lamp = light("P1")
    two = home(one_way(circuit("C1", lamp), circuit("C2")), tie("P1", "C2"), room("R1"))
    text = answer_text(answer(two, "point", "P1"))
    assert "From the source to the point, path 1 of 2" in text
    assert "From the source to the point, path 2 of 2" in text


def test_what_is_not_known_is_told() -> None:
    alone = home(light("P1"))
    lines = answer_text(answer(alone, "point", "P1")).splitlines()
    below = lines[lines.index("Not known") + 1 :]
    assert below[0] == "  - What feeds it is not recorded."
    assert "  Circuits              none in the record" in lines


@pytest.mark.parametrize("question", ["point", "way", "room"])
def test_every_thing_of_every_home_can_be_told(
    question: str, houses: dict[str, Record], demo: Record
) -> None:
    for record in (*houses.values(), demo):
        things = {
            "point": record.points,
            "way": (*record.devices, *record.intake),
            "room": record.rooms,
        }
        for thing in things[question]:
            text = answer_text(answer(record, question, thing.ref))
            assert text.startswith(f"{thing.title} ({thing.ref})")
            assert "None" not in text
            assert "\nNot known\n" in text


def test_faults_are_told_with_their_remedies(demo: Record) -> None:
    found = faults(demo)
    text = faults_text(found)
    assert found
    assert all(f.sentence in text and f.remedy in text for f in found)


def test_a_record_without_faults_says_so() -> None:
    assert faults_text(()) == (
        "None of the checks found anything. That does not make the record complete."
    )


def test_a_point_with_another_feed_says_so_beside_the_way() -> None:
    lamp = light("P1")
    two = home(one_way(circuit("C1", lamp), circuit("C2")), tie("P1", "C2"))
    assert "keeps another feed" not in answer_text(answer(two, "way", "W1"))
    apart = home(
        one_way(circuit("C1", lamp)),
        source("NEXT", kind="neighbour"),
        tie("P1", "NEXT"),
    )
    text = answer_text(answer(apart, "way", "W1"))
    assert "  - Light (P1): room not known; keeps another feed" in text.splitlines()


def test_hours_are_told_in_a_chain() -> None:
    timed = home(
        one_way(
            circuit("C1", light("P1")),
            kind="contactor",
            when="off_peak",
            label_found="",
        )
    )
    text = answer_text(answer(timed, "point", "P1"))
    assert "; live: off-peak hours only\n" in text
    unsaid = home(one_way(circuit("C1", light("P1")), kind="contactor"))
    text = answer_text(answer(unsaid, "point", "P1"))
    assert "; when it is live is not known\n" in text


@pytest.mark.parametrize(
    ("label", "words"),
    [(None, "Not known"), ("", "nothing written"), ("-", "nothing written")],
)
def test_a_label_without_words_is_not_quoted(label: str | None, words: str) -> None:
    text = answer_text(answer(home(one_way(label_found=label)), "way", "W1"))
    assert f"  Label as found  {words}" in text.splitlines()


def test_neutrals_boxes_and_owners_are_told() -> None:
    inner = switch("P1", light("P2"))
    record = home(
        one_way(circuit("C1", inner)),
        board("B2", rcd("R2", way("W2", circuit("C2", light("P3")))), owner="unknown"),
        tie("P1", "C2", "neutral"),
        tie("P1", "P3", "present"),
        tie("P2", "C2"),
    )
    lines = answer_text(answer(record, "point", "P2")).splitlines()
    assert "  Neutral returns by    Circuit C2 (C2)" in lines
    assert "  In a box before it    Circuit C2 (C2)" in lines
    way_lines = answer_text(answer(record, "way", "W1")).splitlines()
    said = "room not known; its neutral returns by Circuit C2 (C2)"
    assert f"  - Light switch (P1): {said}" in way_lines
    loose = home(
        source("GRID", cutout("CUT", circuit("C1", light("P1")), owner="unknown"))
    )
    lines = answer_text(answer(loose, "point", "P1")).splitlines()
    said = "whether it changes hands between GRID and CUT is not known"
    assert f"  - {said}" in lines


def test_what_can_feed_back_and_what_feeds_without_a_circuit_are_told() -> None:
    record = home(
        one_way(circuit("C1", light("P1", room="R1"))),
        source("BATT", kind="battery", name="Bank", joins="C1"),
        source("NEXT", light("P2", room="R1"), kind="neighbour", name="Flat"),
        room("R1"),
    )
    for question, ref in (("point", "P1"), ("way", "W1"), ("room", "R1")):
        text = answer_text(answer(record, question, ref))
        assert re.search(r"^  Can feed back +Bank \(BATT\)$", text, re.MULTILINE)
    lines = answer_text(answer(record, "room", "R1")).splitlines()
    at = lines.index("Feed it without a circuit of this home")
    assert lines[at + 1] == "  - Flat (NEXT)"


def test_a_time_delayed_rcd_is_said_not_to_count() -> None:
    record = home(
        one_way(
            circuit("C1", light("P1")),
            kind="rcbo",
            residual_current_ma=30,
            time_delayed="yes",
        )
    )
    text = answer_text(answer(record, "point", "P1"))
    assert "none in the record; one that is time-delayed does not count" in text
