from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from tests.unit.report.pdf import text_of

HOUSES = Path(__file__).parents[2] / "houses"


@pytest.fixture
def ways(ways: Callable[..., Result]) -> Callable[..., Result]:
    """Run the command on a data folder with one of the test homes."""
    ways("import", HOUSES / "h10.json")
    return ways


def test_one_device_with_its_suspects_in_order(ways: Callable[..., Result]) -> None:
    text = ways("tripped", "b1.r1").output
    assert text.index("leave it off and call") < text.index("RCD 1")
    assert text.index("Porch light") < text.index("Washing machine socket")
    assert text.index("Washing machine socket") < text.index("Hall light")
    assert "If it trips with every way off" in text
    assert "breaks line only" in text
    assert "Garage socket" not in text


def test_every_device_as_json(ways: Callable[..., Result]) -> None:
    found = json.loads(ways("tripped", "--json").output)
    assert [one["ref"] for one in found][:2] == ["B1.R1", "B1.W1"]
    assert len(found) == 9
    assert found[0]["suspects"][0] == {
        "ref": "P15",
        "title": "Porch light",
        "room": "Outside",
        "ground": "outdoors",
        "unplugs": False,
        "care": [],
    }
    assert [way["ref"] for way in found[0]["ways"]] == ["B1.W1", "B1.W2", "B1.W3"]
    assert json.loads(ways("schema", "--answer", "tripped").output)["type"] == "array"


def test_the_sheet_is_written(ways: Callable[..., Result], tmp_path: Path) -> None:
    paper = tmp_path / "trips.pdf"
    ways("tripped", "--sheet", paper, "--day", "2026-03-01")
    assert "If it trips" in text_of(paper.read_bytes())


def test_what_is_not_there_is_refused(ways: Callable[..., Result]) -> None:
    assert "There is no device" in ways("tripped", "GONE", code=1).output
    assert "is a point" in ways("tripped", "P15", code=1).output
