"""Where a supply begins besides the network, and what is not said to go off for it."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from app.domain.isolation import Plan, house_off, house_sheet, sheet_of
from app.domain.network import network
from app.domain.record import Record
from tests.builders import board, circuit, device, point, socket, source, tie
from tests.unit.domain.isolation.test_rules import (
    BOTH,
    changed,
    changed_sources,
    codes,
    house,
    panels,
    planned,
    sentence,
    stored,
    two_ways,
    with_battery,
    with_generator,
)

WITHOUT: dict[str, Callable[[], Plan]] = {
    "battery_feeds, for it has none": lambda: planned(
        stored(battery_backed="no"), "P3"
    ),
    "battery_feeds, for it serves itself": lambda: planned(
        stored(kind="smoke_alarm"), "P3"
    ),
    "dc_side, for it is recorded": lambda: planned(panels(tie("INV", "PV")), "INV"),
    "earthing, for there is no generator": lambda: planned(
        with_generator(present="no"), "P9"
    ),
    "earthing, for next door is the network": lambda: planned(
        house(tie("P1", "NEXT"), source("NEXT", kind="neighbour"))
    ),
}


@pytest.mark.parametrize("code", WITHOUT)
def test_reason_is_not_given(code: str) -> None:
    assert code.split(",", maxsplit=1)[0] not in codes(WITHOUT[code]())


def test_what_hangs_on_a_battery_stays_live_whatever_is_switched() -> None:
    """The way of C1 parts P4, but neither P9, which has the battery, nor P3."""
    found = planned(stored(), "C1")
    assert found.advised == "stop"
    assert {p.ref for p in found.used.cannot} == {"P3", "P9"}
    assert {p.ref for p in found.used.work_off} == {"P1", "P4"}
    said = sentence(found, "battery_feeds")
    assert "have a battery of their own and feed more: " in said
    assert "Switch the battery off at itself and unplug it." in said
    whole = house_off(network(stored()))
    kept = {each.ref: each.why for each in whole.still_live}
    assert kept["P9"] == "It feeds more from a battery of its own. It counts as live."
    assert "hangs on Socket-outlet, size not noted (P9)" in kept["P3"]
    assert {"P3", "P9"}.isdisjoint(each.ref for each in whole.goes_off)
    assert whole.not_main == ()


def test_switch_behind_a_battery_parts_what_is_behind_it() -> None:
    record = house(
        point("P9", kind="socket", battery_backed="yes"),
        tie("P9", "C1"),
        board("B2", earthing="supply"),
        device("W9", kind="circuit_breaker", board="B2", fed_from="P9", poles=BOTH),
        circuit("C9", socket("P3"), ways=("W9",)),
    )
    found = planned(record, "P3")
    assert {s.ref for s in found.used.switches} == {"W9"}
    assert "battery_feeds" not in codes(found)
    assert "W9" in {s.ref for s in house_off(network(record)).switches}


@pytest.mark.parametrize(
    ("kind", "named"),
    [("socket", True), ("data_equipment", True), ("junction_box", False)],
)
def test_battery_that_nobody_answered_is_named_where_one_could_be(
    kind: str, named: bool
) -> None:
    record = stored(kind=kind, battery_backed="unknown")
    found = planned(record, "P3")
    assert "battery_feeds" not in codes(found)
    assert ("may_have_battery" in {c.code for c in found.cautions}) == named
    whole = house_off(network(record))
    assert bool(whole.batteries) == named
    assert set(whole.batteries) <= {*house_sheet(whole).cautions}
    assert "may_have_battery" not in {c.code for c in planned(record, "P2").cautions}


def test_battery_that_feeds_nothing_goes_off_as_recorded() -> None:
    record = changed(house(), "points", "P1", battery_backed="yes")
    assert {p.ref for p in house_off(network(record)).goes_off} == {"P1", "P2"}
    assert planned(record).advised == "nearest"


def test_inverter_counts_as_live_until_its_dc_side_is_recorded() -> None:
    found = planned(panels(), "INV")
    assert [p.ref for p in found.used.cannot] == ["INV"]
    assert found.used.work_off == ()
    whole = house_off(network(panels()))
    (kept,) = (each for each in whole.still_live if each.ref == "INV")
    assert kept.why == "Its d.c. side is not recorded. It counts as live."
    assert "INV" not in {each.ref for each in whole.goes_off}
    isolator = point("DC", kind="dc_isolator", current="dc")
    recorded = panels(isolator, tie("DC", "PV"), tie("INV", "DC"))
    then = planned(recorded, "INV")
    assert {"W2", "DC"} <= {s.ref for s in then.used.switches}
    assert {"dc_side", "not_parted"}.isdisjoint(codes(then))


@pytest.mark.parametrize(("on", "recorded"), [(None, True), ("C2", False)])
def test_isolator_of_a_dc_side_stands_for_the_panels_unless_a_circuit_feeds_it(
    on: str | None, recorded: bool
) -> None:
    more = (tie("DC", on),) if on else ()
    record = panels(point("DC", kind="dc_isolator"), tie("INV", "DC"), *more)
    found = planned(record, "INV")
    assert ("dc_side" not in codes(found)) == recorded
    assert ("DC" in {s.ref for s in found.nearest.switches}) == recorded


def test_inverter_counts_as_live_where_panels_are_not_answered() -> None:
    record = changed_sources(panels(), "PV")
    assert "dc_side" in codes(planned(record, "INV"))
    assert "INV" in {each.ref for each in house_off(network(record)).still_live}


def test_battery_point_keeps_itself_live() -> None:
    record = house(
        source("BATT", kind="battery", present="yes", runs_without_network="no",
               joins="C2"),
        point("BOX", kind="battery"),
        tie("BOX", "C2"),
    )  # fmt: skip
    record = changed_sources(record, "NO-battery")
    assert "dc_side" in codes(planned(record, "BOX"))


def test_earthing_of_the_network_holds_for_the_network_only() -> None:
    """With the generator feeding, the way that opens the line only is not enough."""
    found = planned(with_generator(), "P9")
    said = sentence(found, "earthing")
    assert "GEN" in said
    assert "Whether the neutral is earthed then is not recorded" in said
    assert {"single_pole", "head_leaves_neutral"} <= codes(found)
    assert found.advised == "stop"
    both = changed(with_generator(), "devices", "W9", poles=BOTH)
    assert planned(both, "P9").advised == "wide"
    assert planned(with_generator(), "P1").advised == "nearest"


def test_circuit_on_two_ways_is_taken_wide_unless_they_are_phases() -> None:
    found = planned(two_ways())
    assert found.advised == "wide"
    said = sentence(found, "two_ways")
    assert "neither guards it against overload" in said
    assert all(ref in said for ref in ("C1", "W1", "W2"))
    phased = changed(two_ways(), "devices", "W1", phase="l1")
    assert "two_ways" in codes(planned(phased))
    phased = changed(phased, "devices", "W2", phase="l2")
    assert "two_ways" not in codes(planned(phased))
    ring = changed(phased, "circuits", "C1", arrangement="ring")
    assert "two_ways" in codes(planned(ring))
    assert planned(ring).advised == "wide"


@pytest.mark.parametrize(
    "record",
    [with_battery(joins=None), changed_sources(house(), "NO-solar")],
    ids=["not placed", "not answered"],
)
def test_whole_house_claims_nothing_off_while_a_source_is_open(record: Record) -> None:
    found = house_off(network(record))
    assert found.may_stay.startswith("What should go off may stay live")
    sheet = house_sheet(found)
    assert sheet.off_head == "May go off, or stay live"
    assert sheet.advice == "Stop and find out first"
    assert found.may_stay in sheet.stops
    assert sheet_of(planned(record)).off_head == "May go off, or stay live"


def test_whole_house_says_what_goes_off_where_all_is_answered() -> None:
    for record in (house(), with_battery(runs_without_network="no")):
        found = house_off(network(record))
        assert found.may_stay == ""
        assert house_sheet(found).off_head == "Goes off as well"
    assert sheet_of(planned(house())).off_head == "Goes off as well"
