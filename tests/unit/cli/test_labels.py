from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from tests.unit.report.pdf import letters_of, text_of


@pytest.fixture
def ways(ways: Callable[..., Result]) -> Callable[..., Result]:
    """Run the command on a data folder with the demo home."""
    ways("demo")
    return ways


def test_labels_are_written_for_the_ways_named(
    ways: Callable[..., Result], tmp_path: Path
) -> None:
    out = tmp_path / "labels.pdf"
    ways("labels", "B2", "--ways", "B2.W1,B2.W3", "--day", "2026-03-05", "-o", out)
    text = text_of(out.read_bytes())
    assert "Cooker" in text
    assert "Shower" not in text


def test_every_manner_takes_its_measures(
    ways: Callable[..., Result], tmp_path: Path
) -> None:
    out = tmp_path / "labels.pdf"
    for how in (
        ("--manner", "strip", "--module", "18", "--strip", "20"),
        ("--manner", "sheet", "--sheet", "2x7-99.1", "--start", "14"),
        ("--size", "80x25", "--right", "1.5", "--down", "-1"),
    ):
        ways("labels", "B2", *how, "-o", out, "--replace")
        assert "Cooker?B32" in letters_of(out.read_bytes())


def test_what_has_no_room_and_what_misleads_is_said(
    ways: Callable[..., Result], tmp_path: Path
) -> None:
    said = ways("labels", "B1", "--size", "20x10", "-o", tmp_path / "a.pdf").stderr
    assert "Way 1: too long for this size." in said


def test_labels_and_problems_as_json(ways: Callable[..., Result]) -> None:
    given = json.loads(ways("labels", "B2", "--json").stdout)
    assert {label["ref"] for label in given["labels"]} >= {"B2.MS", "B2.W1"}
    assert isinstance(given["problems"], list)


def test_the_chart_is_written_and_shown(
    ways: Callable[..., Result], tmp_path: Path
) -> None:
    out = tmp_path / "chart.pdf"
    ways("chart", "B2", "--paper", "a5", "--day", "2026-03-05", "-o", out)
    assert "5 March 2026" in text_of(out.read_bytes())
    rows = json.loads(ways("chart", "B2", "--json").stdout)["rows"]
    assert "Cooker\xa0?" in [row["feeds"] for row in rows]


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (("labels", "B2"), "Say where the PDF goes"),
        (("labels", "B2", "--manner", "wall", "-o", "x"), "manner:"),
        (("labels", "B2", "--size", "5x5", "-o", "x"), "width_mm:"),
        (("labels", "B2", "--ways", "Q", "-o", "x"), "This board has no Q."),
        (("labels", "B2", "--day", "soon", "-o", "x"), "Write a day as"),
        (
            ("labels", "B2", "--manner", "sheet", "--start", "22", "-o", "x"),
            "This sheet holds 21 labels.",
        ),
    ],
)
def test_what_cannot_be_is_said(
    ways: Callable[..., Result], arguments: tuple[str, ...], sentence: str
) -> None:
    assert sentence in ways(*arguments, code=2).output


def test_a_board_or_sheet_that_is_not_there_is_named(
    ways: Callable[..., Result],
) -> None:
    assert "There is no board “B9”" in ways("chart", "B9", "-o", "x", code=1).output
    said = ways("labels", "B2", "--sheet", "z", "-o", "x", code=1).output
    assert "There is no sheet “z”" in said
