"""``ways trace``: findings, plans, and rounds from a file."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from app.cli import main
from app.cli import trace as command
from app.domain.trace import MANNERS
from app.interchange import to_document
from tests.builders import board, circuit, home, main_switch, socket, street, way
from tests.json_schema import errors


@pytest.fixture
def data(tmp_path: Path) -> Path:
    record = home(
        street(
            board(
                "B1",
                main_switch(
                    "MS",
                    way("W1", circuit("C1", socket("P1"))),
                    way("W2", circuit("C2", socket("P2"))),
                ),
            )
        )
    )
    file = tmp_path / "home.json"
    file.write_text(to_document(record), encoding="utf-8")
    done = ways("import", str(file), data=tmp_path)
    assert done.exit_code == 0
    return tmp_path


def ways(*arguments: str, data: Path) -> Result:
    return CliRunner().invoke(main, [*arguments, "--data", str(data)])


def answered(*arguments: str, data: Path, schema: str) -> Any:
    result = ways(*arguments, "--json", data=data)
    assert result.exit_code == 0, result.output
    value = json.loads(result.output)
    shape = json.loads(ways_schema(schema))
    assert errors(value, shape) == []
    return value


def ways_schema(name: str) -> str:
    return CliRunner().invoke(main, ["schema", "--answer", name]).output


def rounds(folder: Path, value: object) -> str:
    file = folder / "rounds.json"
    file.write_text(json.dumps(value), encoding="utf-8")
    return str(file)


GOOD = {
    "rounds": [
        {"live": ["P1", "P2"], "by": "A", "at": "2026-03-01T10:00:00Z"},
        {"off": ["W1"], "dead": ["P1"], "live": ["P2"], "by": "A"},
        {"off": ["W2"], "dead": ["P2"], "live": ["P1"], "by": "A"},
    ]
}


def test_rounds_from_a_file_are_taken_in_once(data: Path) -> None:
    file = rounds(data, GOOD)
    done = ways("trace", "read", file, data=data)
    assert (done.exit_code, done.output) == (0, "Rounds taken in: 3\n")
    again = ways("trace", "read", file, data=data)
    assert again.exit_code == 0
    assert "taken in before" in again.output
    found = answered("trace", data=data, schema="trace")
    assert found["rounds"] == 3
    assert [
        (p["point"]["ref"], p["status"], p["way"]["ref"], p["confirmed"])
        for p in found["points"]
    ] == [("P1", "found", "W1", True), ("P2", "found", "W2", True)]


def test_findings_as_text_give_their_reasons(data: Path) -> None:
    ways("trace", "read", rounds(data, GOOD), data=data)
    text = ways("trace", data=data).output
    assert "Went dead in Round N2." in text
    assert "Live in First look N1, Round N3." in text
    assert "borrow its neutral from another circuit" in text
    assert "prove it at the point" in text


@pytest.mark.parametrize(
    ("value", "place"),
    [
        ({"rounds": [{"off": ["W9"]}]}, "rounds.0.off: there is no device “W9”"),
        ({"rounds": [{"dead": ["P9"]}]}, "rounds.0: there is no point “P9”"),
        (
            {"rounds": [{"dead": ["P1"], "live": ["P1"]}]},
            "rounds.0: point “P1” stands in it more than once",
        ),
        ({"rounds": [{"when": "noon"}]}, "rounds.0.when"),
        ({"rounds": [{"at": "yesterday"}]}, "rounds.0.at"),
        ({"rounds": [{"colour": "red"}]}, "rounds.0.colour"),
        ([], "file"),
    ],
)
def test_a_file_that_does_not_fit_is_refused_whole(
    data: Path, value: object, place: str
) -> None:
    done = ways("trace", "read", rounds(data, value), data=data)
    assert done.exit_code == 1
    assert place in done.output
    assert answered("trace", data=data, schema="trace")["rounds"] == 0


def test_the_command_knows_every_manner() -> None:
    assert set(command.MANNERS) == set(MANNERS)


@pytest.mark.parametrize("manner", sorted(MANNERS))
def test_a_plan_names_what_to_switch_off(data: Path, manner: str) -> None:
    planned = answered(
        "trace", "plan", "--manner", manner, data=data, schema="trace-plan"
    )
    assert planned["purpose"] == "tell_apart"
    assert {each["ref"] for each in planned["switch_off"]} <= {"W1", "W2"}
    assert [each["ref"] for each in planned["look_at"]] == ["P1", "P2"]
    assert planned["effort"]["finding_worst"] >= 2
    text = ways("trace", "plan", "--manner", manner, data=data).output
    assert "not for working" in text


def test_a_home_without_ways_has_no_plan(tmp_path: Path) -> None:
    file = tmp_path / "home.json"
    file.write_text(to_document(home(socket("P1"))), encoding="utf-8")
    ways("import", str(file), data=tmp_path)
    text = ways("trace", "plan", data=tmp_path).output
    assert "nothing left that switching off could show" in text
