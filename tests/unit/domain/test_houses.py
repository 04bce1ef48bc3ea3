"""Each test home gives the answers that were worked out for it by hand.

The homes and their expected answers are files of ``tests/houses``, described there.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from app.domain.ask import (
    ask_point,
    boundaries,
    boundaries_unknown,
    without_30_ma,
)
from app.domain.chain import Chain, chains
from app.domain.faults import faults
from app.domain.network import circuits_of, network
from app.domain.odd import odd_ones_out
from app.domain.protection import PEOPLE_MA
from app.domain.record import Point, Record
from app.interchange import from_document

HOUSES = Path(__file__).parents[2] / "houses"
NAMES = sorted(path.stem for path in HOUSES.glob("h*.json"))
ODD_TRAPS = ("point_on_unexpected_circuit", "alarm_on_other_floor_circuit")


def record_of(name: str) -> Record:
    return from_document((HOUSES / f"{name}.json").read_bytes())


def expected_of(name: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(
        (HOUSES / "expected" / f"{name}.json").read_text(encoding="utf-8")
    )
    return found


def each_chain() -> Iterator[Any]:
    for name in NAMES:
        for expected in expected_of(name)["chains"]:
            point = expected["point"]
            yield pytest.param(name, expected, id=f"{name}-{point}")


def point_of(record: Record, ref: str) -> Point:
    found = record.find(Point, ref)
    assert found
    return found


def without(refs: tuple[str, ...] | list[str], optional: list[str]) -> tuple[str, ...]:
    return tuple(ref for ref in refs if ref not in optional)


def _once(found: list[list[str]]) -> set[tuple[str, ...]]:
    return {tuple(refs) for refs in found}


def test_there_are_homes_and_each_has_its_answers() -> None:
    assert len(NAMES) >= 6
    expected = sorted(path.stem for path in (HOUSES / "expected").glob("h*.json"))
    assert expected == NAMES


@pytest.mark.parametrize(("name", "expected"), list(each_chain()))
def test_chains(name: str, expected: dict[str, Any]) -> None:
    net = network(record_of(name))
    found = chains(net, expected["point"])
    optional = expected.get("optional_ids", [])
    refs = [without(chain.references, optional) for chain in found]
    wanted = [expected["chain"], expected.get("second_chain") or expected["chain"]]
    assert {without(chain, optional) for chain in wanted} <= set(refs)
    assert all(chain.begins_at_source for chain in found)
    from_grid = [chain for chain in refs if chain[0] == "GRID"]
    assert len(from_grid) == sum(chain[0] == "GRID" for chain in _once(wanted))


@pytest.mark.parametrize(("name", "expected"), list(each_chain()))
def test_protection(name: str, expected: dict[str, Any]) -> None:
    record = record_of(name)
    answer = ask_point(network(record), point_of(record, expected["point"]))
    small: set[str] = set()
    large: set[str] = set()
    for rcd in answer.rcds:
        ma = rcd.residual_current_ma
        (small if ma is not None and ma <= PEOPLE_MA else large).add(rcd.ref)
    on_chain = set(expected["chain"])
    assert small & on_chain == set(expected["rcd_30mA"])
    assert large & on_chain == set(expected["other_rcd"])
    fuses = {ref: fuse for ref, fuse in answer.local_fuses.items() if ref in on_chain}
    assert fuses == expected["local_fuses"]


@pytest.mark.parametrize(("name", "expected"), list(each_chain()))
def test_neutral(name: str, expected: dict[str, Any]) -> None:
    record = record_of(name)
    answer = ask_point(network(record), point_of(record, expected["point"]))
    returns = expected.get("neutral_returns_via", ())
    assert bool(answer.neutral_chains) == bool(returns)
    for chain in answer.neutral_chains:
        assert set(returns) <= set(chain.references)
        assert chain.begins_at_source


@pytest.mark.parametrize("name", NAMES)
def test_points_without_an_rcd_of_30_ma(name: str) -> None:
    expected, net = expected_of(name), network(record_of(name))
    either = set(expected["either_way"])
    assert set(without_30_ma(net)) - either == set(expected["without_rcd"]) - either


@pytest.mark.parametrize("name", NAMES)
def test_points_to_which_an_rcd_does_not_apply(name: str) -> None:
    expected, record = expected_of(name), record_of(name)
    net = network(record)
    for ref in expected["not_applicable"]:
        assert ask_point(net, point_of(record, ref)).within_30_ma == "not_mains"
    for ref in expected["unknown"]:
        assert ask_point(net, point_of(record, ref)).within_30_ma == "unknown"


def intake_boundaries(record: Record) -> set[tuple[str, str]]:
    net = network(record)
    lines: list[Chain] = [c for item in record.intake for c in chains(net, item.ref)]
    intake = {item.ref for item in record.intake}
    pairs = (*boundaries(lines), *boundaries_unknown(lines))
    return {pair for pair in pairs if set(pair) <= intake}


@pytest.mark.parametrize("name", NAMES)
def test_each_change_of_owner_in_the_intake(name: str) -> None:
    expected = expected_of(name)
    found = intake_boundaries(record_of(name))
    assert found == {tuple(pair) for pair in expected["owner_changes"]}
    assert {tuple(pair) for pair in expected["boundary"]} <= found


@pytest.mark.parametrize("name", NAMES)
def test_circuits_that_are_live_in_off_peak_hours_only(name: str) -> None:
    record = record_of(name)
    net = network(record)
    off_peak = [
        circuit.ref
        for circuit in record.circuits
        if any("off_peak" in chain.when for chain in chains(net, circuit.ref))
    ]
    assert off_peak == expected_of(name)["off_peak_circuits"]


@pytest.mark.parametrize("name", NAMES)
def test_odd_ones_out_are_found_and_few(name: str) -> None:
    record = record_of(name)
    odd = {found.point for found in odd_ones_out(network(record))}
    traps = expected_of(name)["traps"]
    wanted = {p for t in traps if t["kind"] in ODD_TRAPS for p in t["points"]}
    assert wanted <= odd
    assert len(odd - wanted) <= 1 + len(record.points) // 30


@pytest.mark.parametrize("name", NAMES)
def test_every_odd_one_out_is_on_the_circuits_it_is_said_to_be_on(name: str) -> None:
    net = network(record_of(name))
    for odd in odd_ones_out(net):
        assert odd.circuits == circuits_of(net, odd.point)
        assert odd.expected not in odd.circuits
        assert all(f"({ref})" in odd.sentence for ref in odd.circuits)


@pytest.mark.parametrize("name", NAMES)
def test_no_home_contradicts_itself(name: str) -> None:
    assert [fault.sentence for fault in faults(record_of(name)) if fault.wrong] == []
