"""Whether what is called main switch is the switch for the whole home."""

from __future__ import annotations

import re

import pytest

from app.domain.isolation import house_off
from app.domain.network import network
from app.domain.record import Record
from tests.builders import (
    Part,
    board,
    circuit,
    device,
    main_switch,
    no_other_sources,
    point,
    room,
    socket,
    source,
    tie,
    way,
)
from tests.builders import home as home_of
from tests.unit.domain.isolation.test_rules import (
    BOTH,
    changed_sources,
    house,
    with_battery,
)

GARAGE = (
    board("B2", name="Garage board", earthing="supply"),
    device("MS2", kind="main_switch", board="B2", poles=BOTH),
    device("W9", kind="circuit_breaker", board="B2", fed_from="MS2"),
    circuit("C9", socket("P9"), ways=("W9",)),
)


def said(record: Record) -> dict[str, str]:
    """Return what is said of each main switch, by its reference."""
    found = [c.sentence for c in house_off(network(record)).not_main]
    switches = ("MS", "MS2")
    return {ref: s for s in found for ref in switches if re.search(rf"\b{ref}\b", s)}


def one_board(*parts: Part) -> Part:
    return board("B1", main_switch("MS", way("W1", circuit("C1", socket("P1")))),
                 *parts, earthing="supply")  # fmt: skip


def test_board_that_nothing_is_recorded_to_feed_may_hang_on_the_main_switch() -> None:
    found = said(house(*GARAGE))
    assert found["MS"].startswith("The record does not show that Main switch MS")
    assert "whether 1 point goes off with it is not recorded" in found["MS"]
    assert found["MS2"].startswith("Main switch MS2 is not the switch for the whole")


def test_second_board_fed_beside_the_first_is_known_to_stay_live() -> None:
    beside = device("MS2", kind="main_switch", board="B2", fed_from="TAIL")
    found = said(house(*(beside if p is GARAGE[1] else p for p in GARAGE)))
    assert found["MS"].startswith("Main switch MS, “MAIN SWITCH” is not the switch")


def test_first_board_stands_for_an_intake_that_is_not_recorded() -> None:
    rest = (room("R1"), *no_other_sources())
    alone = home_of(one_board(), *rest)
    assert said(alone) == {}
    beside = home_of(one_board(way("W5", circuit("C5", socket("P5")))), *rest)
    assert "MS is not the switch for the whole home: 1 point" in said(beside)["MS"]
    garage = said(home_of(one_board(), *GARAGE, *rest))
    assert garage["MS"].startswith("The record does not show that")
    assert garage["MS2"].startswith("Main switch MS2 is not the switch")


@pytest.mark.parametrize(
    ("fields", "known"),
    [
        ({"present": "unknown", "runs_without_network": "yes"}, False),
        ({"runs_without_network": "unknown"}, False),
        ({"runs_without_network": "yes"}, True),
    ],
)
def test_source_that_is_not_answered_is_not_known_to_feed(
    fields: dict[str, str], known: bool
) -> None:
    sentence = said(with_battery(**fields))["MS"]
    assert ("is not the switch for the whole home" in sentence) == known
    assert ("does not show" in sentence) != known


def test_what_hangs_on_next_door_stays_live_whether_or_not_it_runs_alone() -> None:
    next_door = source("NB", kind="neighbour", present="yes")
    record = house(next_door, point("P9", kind="light"), tie("P9", "NB"))
    found = said(changed_sources(record, "NO-neighbour"))
    assert "is not the switch for the whole home: 1 point stays" in found["MS"]
