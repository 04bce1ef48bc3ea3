"""The test homes: each finding worked out by hand is met by a remark, or named here."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from app.domain.remarks import Remark, remarks
from tests.unit.domain.remarks.cases import TODAY
from tests.unit.domain.test_houses import NAMES, expected_of, record_of

NO_RCD = (
    "sockets-without-30-ma",
    "outdoors-without-30-ma",
    "bathroom-without-30-ma",
    "lights-without-30-ma",
    "hidden-cable-without-30-ma",
)
# Which remarks answer to a topic of the findings.
MEETS: dict[str, tuple[str, ...]] = {
    "no_30mA_rcd_some_circuits": NO_RCD,
    "rcd_may_be_overloaded": ("rcd-may-be-overloaded",),
    "one_rcd_takes_out_too_much": ("rcd-takes-much-with-it",),
    "boiler_fridge_with_kitchen": ("rcd-takes-much-with-it",),
    "point_on_unexpected_circuit": ("odd-one-out",),
    "labels_poor": (
        "labels-alike",
        "label-says-nothing",
        "label-names-one-thing",
        "label-leaves-out",
    ),
    "label_wrong": ("label-misleads",),
    "alarm_circuit_sharing": ("alarm-shares-circuit",),
    "outdoor_light_on_main_ring": ("outdoors-on-indoor-circuit",),
    "rcd_type_ac": ("rcd-type-ac",),
    "plastic_board_under_stairs": ("enclosure-not-metal",),
    "wooden_board": ("enclosure-open-or-wood",),
    "bonding_not_confirmed": ("main-bonding-not-confirmed", "main-bonding-small"),
    "main_switch_not_whole_house": ("main-switch-not-whole-home",),
    "rewirable_fuses": ("rewirable-fuses",),
    "wrong_fuse_wire": ("fuse-wire-too-thick",),
    "old_rubber_cable_no_earth": ("lights-without-earth", "old-rubber-cable"),
    "old_cable_no_earth": ("lights-without-earth",),
    "loft_light_on_old_circuit": ("lights-without-earth",),
    "shower_too_big_for_circuit": ("shower-over-rating",),
    "spur_off_spur": ("spur-off-spur",),
    "local_rcd_only": ("local-rcd-only",),
    "dead_by_day_live_by_night": ("off-peak-wakes-by-itself",),
    "two_supplies_one_appliance": ("two-supplies-at-one-point",),
    "ownership_unclear": ("owner-not-known",),
    "fed_from_outside": ("fed-from-outside",),
    "intake_in_same_cupboard_as_cylinder": ("cylinder-beside-intake",),
    "rented_inspection": ("inspection-due",),
    "backup_sockets_stay_live": ("live-without-the-network",),
    "pv_dc_always_live": ("panels-live-by-day",),
    "generation_on_shared_rcd": ("generation-on-shared-rcd",),
    "dual_supply_notice": ("second-supply-notice",),
    "knock_on_loss": ("missed-behind-many-boards",),
    "livestock_fence": ("missed-behind-many-boards",),
    "separate_earthing_outbuildings": ("two-earthings-in-reach",),
    "earth_rod_not_recorded": ("electrode-reading-missing",),
    "board_live_in_room": ("board-fed-from-elsewhere",),
    "borrowed_neutral": ("borrowed-neutral",),
    "two_circuits_in_one_switch": ("two-circuits-in-one-box",),
    "lighting_on_one_rcd_workaround": ("all-lights-on-one-rcd",),
    "single_ring_two_floors": ("sockets-of-home-on-one-circuit",),
    "ring_small_earth_wire": ("ring-old-thin-earth",),
    "cable_route_matters": ("device-over-cable",),
    "long_run_volt_drop": ("voltage-drop-large",),
    "demand_over_main_fuse": ("demand-above-main-fuse",),
    "little_spare_capacity": ("little-left-for-more",),
    "night_load": ("night-load",),
    "part_rewire_paperwork": ("board-newer-than-wiring", "work-without-paper"),
}
# Findings that no remark meets, and why.
NOT_MET = {
    "good_30mA_everywhere": "praise: a remark never gives a verdict, good or bad",
    "good_freezer_on_backup": "praise: a remark never gives a verdict, good or bad",
}
# What the findings call evidence without naming an item: the earthing, the tenancy.
EARTHING = ("E1", "EL1", "MB1", "MB2")


def each_finding() -> Iterator[Any]:
    for name in NAMES:
        for number, finding in enumerate(expected_of(name)["d_findings"]):
            if finding["topic"] not in NOT_MET:
                label = f"{name}-{number}-{finding['topic']}"
                yield pytest.param(name, finding, id=label)


@pytest.fixture(scope="module")
def remarked() -> dict[str, tuple[Remark, ...]]:
    return {name: remarks(record_of(name), TODAY) for name in NAMES}


@pytest.mark.parametrize(("name", "finding"), list(each_finding()))
def test_each_finding_is_met(
    remarked: dict[str, tuple[Remark, ...]], name: str, finding: dict[str, Any]
) -> None:
    evidence = set(finding["evidence"])
    if "earthing" in evidence:
        evidence |= {*EARTHING, name}
    if "tenancy" in evidence:
        evidence |= {name}
    codes = MEETS[finding["topic"]]
    met = [r for r in remarked[name] if r.code in codes and evidence & set(r.about)]
    assert met


def test_what_is_not_met_is_in_the_findings() -> None:
    topics = {f["topic"] for name in NAMES for f in expected_of(name)["d_findings"]}
    assert set(NOT_MET) <= topics
    assert set(MEETS) | set(NOT_MET) == topics


@pytest.mark.parametrize("name", NAMES)
def test_each_point_without_an_rcd_is_named(
    remarked: dict[str, tuple[Remark, ...]], name: str
) -> None:
    expected = expected_of(name)
    named = {ref for r in remarked[name] if r.code in NO_RCD for ref in r.about}
    points = {p.ref for p in record_of(name).points}
    either = set(expected["either_way"]) | set(expected["unknown"])
    assert named & points - either == set(expected["without_rcd"]) - either


@pytest.mark.parametrize("name", NAMES)
def test_each_rcd_that_may_be_overloaded_is_named(
    remarked: dict[str, tuple[Remark, ...]], name: str
) -> None:
    loading = expected_of(name)["rcd_loading"]
    wanted = {one["rcd"] for one in loading if one["verdict"] != "ok"}
    found = {r.about[0] for r in remarked[name] if r.code == "rcd-may-be-overloaded"}
    assert found == wanted
    sums = {one["rcd"]: one["sum_of_ways_A"] for one in loading}
    for remark in remarked[name]:
        if remark.code == "rcd-may-be-overloaded":
            assert sums[remark.about[0]] in [figure.value for figure in remark.figures]


@pytest.mark.parametrize("name", NAMES)
def test_leave_it_and_call_is_kept_for_what_cannot_wait(
    remarked: dict[str, tuple[Remark, ...]], name: str
) -> None:
    found = [r.code for r in remarked[name] if r.outcome == "remark"]
    called = [r.code for r in remarked[name] if r.rank == "call" and r.code in found]
    acts = {"wrong_fuse_wire"} & {f["topic"] for f in expected_of(name)["d_findings"]}
    assert set(called) <= {"fuse-wire-too-thick", "metal-without-earth"} or not acts
    assert ("fuse-wire-too-thick" in called) == bool(acts)
