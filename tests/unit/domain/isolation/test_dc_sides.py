"""What stands on the d.c. side of a source: no joint of it, and live of itself."""

from __future__ import annotations

from typing import Any

import pytest

from app.domain.isolation import house_off
from app.domain.isolation.own import open_dc
from app.domain.network import network
from app.domain.record import Record
from tests.builders import Part, point, source, tie
from tests.unit.domain.isolation.test_rules import (
    changed_sources,
    codes,
    house,
    panels,
    planned,
)


def running_alone(kind: str, *parts: Part, **fields: Any) -> Record:
    """A source that runs without the network, and what is wired to it."""
    given = {"kind": kind, "present": "yes", "runs_without_network": "yes", **fields}
    return changed_sources(house(source("OWN", **given), *parts), f"NO-{kind}")


ON_ITS_DC: dict[str, tuple[str, tuple[Part, ...]]] = {
    "by its isolator": (
        "battery",
        (
            point("DC", kind="dc_isolator"),
            tie("DC", "OWN"),
            point("INV", kind="inverter"),
            tie("INV", "DC"),
            tie("INV", "C2"),
        ),
    ),
    "at once": (
        "solar",
        (point("INV", kind="inverter"), tie("INV", "OWN"), tie("INV", "C2")),
    ),
    "by a box": (
        "solar",
        (
            point("BOX", kind="junction_box"),
            tie("BOX", "OWN"),
            point("INV", kind="inverter"),
            tie("INV", "BOX"),
            tie("INV", "C2"),
        ),
    ),
    "a vehicle": (
        "vehicle",
        (point("EV", kind="vehicle_charger"), tie("EV", "OWN"), tie("EV", "C2")),
    ),
}


@pytest.mark.parametrize("wired", ON_ITS_DC)
def test_tie_on_the_dc_side_does_not_say_where_a_source_joins(wired: str) -> None:
    kind, parts = ON_ITS_DC[wired]
    record = running_alone(kind, *parts)
    found = planned(record)
    assert found.advised == "stop"
    assert "source_unplaced" in codes(found)
    assert house_off(network(record)).may_stay != ""
    joined = running_alone(kind, *parts, joins="C2")
    assert "source_unplaced" not in codes(planned(joined))


@pytest.mark.parametrize(
    ("kind", "fed", "placed"),
    [
        ("neighbour", "light", True),
        ("landlord", "vehicle_charger", True),
        ("battery", "socket", True),
        ("battery", "vehicle_charger", False),
    ],
)
def test_source_is_placed_by_what_it_feeds_at_mains_only(
    kind: str, fed: str, placed: bool
) -> None:
    record = running_alone(kind, point("P9", kind=fed), tie("P9", "OWN"))
    assert ("source_unplaced" not in codes(planned(record))) == placed


@pytest.mark.parametrize("joins", ["C2", None])
def test_isolator_of_panels_on_a_circuit_does_not_go_off_with_it(
    joins: str | None,
) -> None:
    """Fed by a circuit only, it is live in daylight whatever is switched."""
    record = panels(point("DC", kind="dc_isolator"), tie("DC", "C2"), joins=joins)
    found = planned(record, "DC")
    assert found.advised == "stop"
    assert "dc_side" in codes(found)
    assert [p.ref for p in found.used.cannot] == ["DC"]
    assert found.used.work_off == ()
    whole = house_off(network(record))
    assert "DC" in {each.ref for each in whole.still_live}
    assert "DC" not in {each.ref for each in whole.goes_off}


@pytest.mark.parametrize("feeder", ["PV", "BOX"])
def test_isolator_that_a_source_feeds_has_its_dc_side(feeder: str) -> None:
    box = point("BOX", kind="battery")
    record = panels(box, point("DC", kind="dc_isolator"), tie("DC", feeder))
    assert "DC" not in {each.ref for each in open_dc(network(record))}


HYBRID: dict[str, tuple[bool, tuple[Part, ...]]] = {
    "panels only": (True, (tie("INV", "PV"),)),
    "isolator for one of both": (True, (point("DC", kind="dc_isolator"),
                                        tie("INV", "DC"))),
    "both": (False, (tie("INV", "PV"), tie("INV", "OWN"))),
    "panels, and a battery on the wall": (
        False, (tie("INV", "PV"), point("BOX", kind="battery"), tie("INV", "BOX"))
    ),
    "battery at another": (
        False,
        (tie("INV", "PV"), point("I2", kind="inverter"), tie("I2", "OWN"),
         tie("I2", "C2")),
    ),
}  # fmt: skip


@pytest.mark.parametrize("wired", HYBRID)
def test_inverter_is_asked_for_each_source_that_it_may_serve(wired: str) -> None:
    is_open, parts = HYBRID[wired]
    battery = source("OWN", kind="battery", present="yes", joins="C2")
    record = changed_sources(panels(battery, *parts), "NO-battery")
    assert ("INV" in {each.ref for each in open_dc(network(record))}) == is_open


@pytest.mark.parametrize(
    ("joins", "is_open"),
    [("C2", True), ("W2", True), ("C1", False), ("W1", False)],
)
def test_source_that_joins_away_from_an_inverter_is_not_asked_of_it(
    joins: str, is_open: bool
) -> None:
    battery = source("OWN", kind="battery", present="yes", joins=joins)
    record = changed_sources(panels(battery, tie("INV", "PV")), "NO-battery")
    assert (open_dc(network(record)) != ()) == is_open


def test_inverter_is_asked_for_a_battery_that_nobody_answered() -> None:
    record = changed_sources(panels(tie("INV", "PV")), "NO-battery")
    assert [each.ref for each in open_dc(network(record))] == ["INV"]


@pytest.mark.parametrize("kind", ["inverter", "battery"])
def test_what_is_there_counts_as_live_though_no_source_is_said_to_be(
    kind: str,
) -> None:
    """The record and the answers contradict each other."""
    record = house(point("BOX", kind=kind), tie("BOX", "C2"))
    found = planned(record, "BOX")
    assert found.advised == "stop"
    assert "dc_side" in codes(found)
    assert [p.ref for p in found.used.cannot] == ["BOX"]
    assert "BOX" in {each.ref for each in house_off(network(record)).still_live}


@pytest.mark.parametrize("solar", ["no", "yes", "unknown"])
def test_isolator_of_a_battery_speaks_of_panels_where_some_may_be(solar: str) -> None:
    battery = source("OWN", kind="battery", present="yes", joins="C2")
    parts = (battery, point("DC", kind="dc_isolator"), tie("DC", "OWN"))
    record = changed_sources(panels(*parts, present=solar), "NO-battery")
    (switch,) = (s for s in planned(record, "DC").used.switches if s.ref == "DC")
    assert "The d.c. cable into" in switch.still_live
    assert ("panels in any daylight" in switch.still_live) == (solar != "no")
