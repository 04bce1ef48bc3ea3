"""Generation that shares an RCD, and whether it stops when the network does."""

from __future__ import annotations

import pytest

from app.domain.record import Record
from app.domain.remarks import UNITS, sight
from app.domain.remarks._kind import Found
from tests.builders import board, circuit, home, rcd, socket, source, street, way
from tests.unit.domain.remarks.cases import TODAY


def shared_with_battery(joins: str, runs: str) -> Record:
    first = way("W1", circuit("C1", socket("P1")))
    second = way("W2", circuit("C2"))
    battery = source(
        "BATT", kind="battery", present="yes", joins=joins, runs_without_network=runs
    )
    return home(street(board("B1", rcd("R", first, second))), battery)


def sentence(record: Record) -> str:
    (found,) = UNITS["generation-on-shared-rcd"].look(sight(record, TODAY))
    assert isinstance(found, Found)
    return found.sentence


@pytest.mark.parametrize("joins", ["C2", "W2"])
def test_one_that_may_run_without_the_network_keeps_the_rest_live(joins: str) -> None:
    for runs in ("yes", "unknown"):
        said = sentence(shared_with_battery(joins, runs))
        assert said.endswith(
            "Battery (BATT) may run without the network: with that RCD open, what "
            "shares it may stay live."
        )


def test_of_one_that_stops_with_the_network_that_is_not_said() -> None:
    said = sentence(shared_with_battery("C2", "no"))
    assert said == "Circuit C2 shares RCD R with Circuit C1."
