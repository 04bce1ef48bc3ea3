"""The plans of each test home are those that were worked out for it by hand."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from app.domain.isolation import house_off, plan
from app.domain.isolation.aim import aim
from app.domain.isolation.sets import nearest
from app.domain.isolation.shapes import Outcome
from app.domain.isolation.wires import wires
from app.domain.network import network
from app.domain.record import Point
from tests.unit.domain.test_houses import NAMES, expected_of, record_of


def each_room() -> Iterator[Any]:
    for name in NAMES:
        for expected in expected_of(name)["b_isolation"]:
            yield pytest.param(name, expected, id=f"{name}-{expected['room']}")


def refs(things: Any) -> set[str]:
    return {thing.ref for thing in things}


def opened(outcome: Outcome, record: Any) -> set[str]:
    """The switches without d.c. isolators, which the answers leave out."""
    return {s.ref for s in outcome.switches if not record.find(Point, s.ref)}


@pytest.mark.parametrize(("name", "expected"), list(each_room()))
def test_nearest_set(name: str, expected: dict[str, Any]) -> None:
    record = record_of(name)
    found = plan(network(record), [expected["room"]]).nearest
    assert opened(found, record) == set(expected["devices_to_open"])
    assert refs(found.goes_off) == set(expected["also_goes_off"])
    assert refs(found.partly_off) == set(expected["partly_off"])
    assert refs(found.cannot) == set(expected["cannot_be_made_dead_from_here"])
    assert refs(found.intake_here) == set(expected["always_live_intake_in_room"])


@pytest.mark.parametrize(("name", "expected"), list(each_room()))
def test_what_the_obvious_switch_leaves_live(
    name: str, expected: dict[str, Any]
) -> None:
    net = network(record_of(name))
    live = wires(net).live([expected["obvious_device"]])
    here = refs(aim(net, [expected["room"]]).points)
    assert live & here == set(expected["left_live_if_only_obvious"])


@pytest.mark.parametrize(("name", "expected"), list(each_room()))
def test_alternatives_are_offered(name: str, expected: dict[str, Any]) -> None:
    record = record_of(name)
    found = plan(network(record), [expected["room"]])
    offered = [refs(other.switches) for other in found.alternatives]
    for wanted in expected.get("alternatives", []):
        assert set(wanted) in offered
    for other in found.alternatives:
        assert refs(other.cannot) == refs(found.nearest.cannot)
        assert refs(found.nearest.goes_off) <= refs(other.goes_off)


@pytest.mark.parametrize(("name", "expected"), list(each_room()))
def test_wide_set_loses_what_the_nearest_loses(
    name: str, expected: dict[str, Any]
) -> None:
    found = plan(network(record_of(name)), [expected["room"]])
    lost = (*found.nearest.goes_off, *found.nearest.work_off)
    assert refs(lost) <= refs((*found.wide.goes_off, *found.wide.work_off))


@pytest.mark.parametrize("name", ["h10"])
def test_line_alone_would_open_less(name: str) -> None:
    """Without the rule of borrowed neutrals a way would be left on."""
    net = network(record_of(name))
    for expected in expected_of(name)["b_isolation"]:
        points = refs(aim(net, [expected["room"]]).points)
        present = {
            t.tied_to
            for p in points
            for t in net.record.ties_of(p)
            if t.role != "neutral"
        }
        line_only = nearest(wires(net), points | present)
        assert set(expected["line_only_devices"]) <= set(expected["devices_to_open"])
        neutral_too = {"B1.W2", "B1.W3"} & set(expected["devices_to_open"])
        assert line_only - neutral_too == (
            set(expected["line_only_devices"]) - neutral_too
        )


@pytest.mark.parametrize("name", NAMES)
def test_whole_house_off(name: str) -> None:
    expected, record = expected_of(name)["whole_house_off"], record_of(name)
    found = house_off(network(record))
    switches = {s.ref for s in found.switches if not record.find(Point, s.ref)}
    assert set(expected["operate"]) <= switches
    assert set(expected["still_live"]) <= refs(found.still_live)
    # More is named only where a source joins: its own way, and what is wired to it.
    more = switches - set(expected["operate"])
    left = refs(found.still_live) - set(expected["still_live"])
    assert (more, left) == (
        ({"B1.W10", "B2.W1"}, {"P41"}) if name == "h06" else (set(), set())
    )


@pytest.mark.parametrize("name", NAMES)
def test_a_main_switch_that_is_not_one_is_named(name: str) -> None:
    traps = expected_of(name)["traps"]
    wanted = {
        device
        for trap in traps
        if trap["kind"] == "main_switch_not_whole_house"
        for device in trap["devices"]
        if "MS" in device
    }
    said = " ".join(c.sentence for c in house_off(network(record_of(name))).not_main)
    assert all(ref in said for ref in wanted)
    assert bool(said) == bool(wanted)


@pytest.mark.parametrize("name", NAMES)
def test_no_home_with_open_sources_is_given_more_than_stop(name: str) -> None:
    net = network(record_of(name))
    for room in net.record.rooms:
        found = plan(net, [room.ref])
        assert found.advised == "stop"
        assert not found.sources_answered
