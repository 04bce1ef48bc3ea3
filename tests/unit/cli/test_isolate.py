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
    ways("import", HOUSES / "h07.json")
    return ways


def test_plan_as_text_says_what_to_switch_and_what_stays_live(
    ways: Callable[..., Result],
) -> None:
    text = ways("isolate", "--room", "R-WORK").output
    assert "STOP AND FIND OUT" in text
    assert "STILL LIVE HERE" in text
    assert "B3.MS" in text
    assert "Prove dead" in text


def test_plan_as_json(ways: Callable[..., Result]) -> None:
    found = json.loads(ways("isolate", "--room", "R-WORK", "--json").output)
    assert [s["ref"] for s in found["nearest"]["switches"]] == [
        "B3.W1",
        "B3.W2",
        "B3.W3",
    ]
    assert found["advised"] == "stop"


def test_several_things_and_a_kind_of_work(ways: Callable[..., Result]) -> None:
    both = ways("isolate", "--point", "P33", "--circuit", "C14", "--json").output
    refs = {s["ref"] for s in json.loads(both)["nearest"]["switches"]}
    assert refs == {"B2.W1", "B3.W2"}
    lights = ways("isolate", "--room", "R-BOOT", "--job", "lighting", "--json").output
    found = {s["ref"] for s in json.loads(lights)["nearest"]["switches"]}
    assert found == {"B1.W1", "B2.W2"}


def test_whole_house(ways: Callable[..., Result]) -> None:
    found = json.loads(ways("isolate", "--whole-house", "--json").output)
    assert {s["ref"] for s in found["switches"]} == {"B1.MS", "I7"}


def test_files_are_written(ways: Callable[..., Result], tmp_path: Path) -> None:
    page, paper = tmp_path / "plan.html", tmp_path / "plan.pdf"
    ways("isolate", "--board", "B4", "--html", page, "--pdf", paper)
    assert "Still live here" in page.read_text("utf-8")
    assert "STILL LIVE HERE" in text_of(paper.read_bytes())


def test_what_cannot_be_asked_is_refused(ways: Callable[..., Result]) -> None:
    assert "Name what is to be worked on" in ways("isolate", code=2).output
    both = ways("isolate", "--whole-house", "--room", "R-WORK", code=2)
    assert "Name what is to be worked on" in both.output
    assert "GONE" in ways("isolate", "--room", "GONE", code=1).output
    assert "no work" in ways("isolate", "--room", "R-WORK", "--job", "x", code=1).output
