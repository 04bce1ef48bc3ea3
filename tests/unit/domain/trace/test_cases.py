"""Every switching case gives the answer that an exhaustive search gave for it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from app.domain.trace.state import PointState, states
from tests.unit.domain.trace.cases import NAMES, case, survey


def moments() -> Iterator[Any]:
    for name in NAMES:
        data = case(name)
        yield pytest.param(data, None, data["at_the_end"], id=f"{name}-end")
        for number, expected in data["after"].items():
            yield pytest.param(data, int(number), expected, id=f"{name}-{number}")


def as_data(state: PointState, keys: set[str]) -> dict[str, Any]:
    words = {
        "status": state.status,
        "way": state.way,
        "confirmed": state.confirmed,
        "candidates": sorted(way or "none" for way in state.candidates),
        "either": [list(pair) for pair in state.either],
        "both": [list(pair) for pair in state.both],
        "misread": [[int(each.look), each.way] for each in state.misread],
    }
    return {key: words[key] for key in keys}


def in_order(expected: dict[str, Any]) -> dict[str, Any]:
    if "candidates" in expected:
        return {**expected, "candidates": sorted(expected["candidates"])}
    return expected


@pytest.mark.parametrize(("data", "up_to", "expected"), list(moments()))
def test_a_case(data: dict[str, Any], up_to: int | None, expected: Any) -> None:
    known = states(survey(data, up_to))
    found = {
        point: as_data(known[point], set(want)) for point, want in expected.items()
    }
    assert found == {point: in_order(want) for point, want in expected.items()}


def test_every_case_names_every_point_at_the_end() -> None:
    assert len(NAMES) == 12
    for name in NAMES:
        data = case(name)
        assert set(data["at_the_end"]) == set(data["points"])
