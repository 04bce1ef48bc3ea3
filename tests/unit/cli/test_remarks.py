from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from app.cli import main
from app.domain.remarks import UNITS
from tests import json_schema

HOUSES = Path(__file__).parents[2] / "houses"


@pytest.fixture
def ways(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[..., Result]:
    """Run the command on a data folder that holds one home."""
    monkeypatch.setenv("WAYS_DATA", str(tmp_path / "data"))

    def run(*arguments: str, code: int = 0) -> Result:
        result = CliRunner().invoke(main, list(arguments))
        assert result.exit_code == code, result.output
        return result

    run("import", str(HOUSES / "h02.json"))
    return run


def test_remarks_stand_under_what_settles_them(ways: Callable[..., Result]) -> None:
    lines = ways("remarks").stdout.splitlines()
    assert lines[0] == "Calls to make now"
    assert lines[1].startswith("  fuse-wire-too-thick (leave it and call): ")
    assert any(line.startswith("Cannot be told yet: ") for line in lines)


def test_remarks_for_a_program_keep_to_their_schema(
    ways: Callable[..., Result],
) -> None:
    found = json.loads(ways("remarks", "--json").stdout)
    schema = json.loads(ways("schema", "--answer", "remarks").stdout)
    assert json_schema.errors(found, schema) == []
    assert found[0]["code"] == "fuse-wire-too-thick"
    assert found[0]["figures"][0] == {
        "label": "Wire seen", "value": 15, "unit": "A", "calculated": False,
    }  # fmt: skip


def test_help_says_more_of_one(ways: Callable[..., Result]) -> None:
    text = ways("help", "spur-off-spur").stdout
    assert text.startswith(UNITS["spur-off-spur"].title)
    for heading in UNITS["spur-off-spur"].sections:
        assert f"\n{heading}\n" in text
    refused = ways("help", "no-such", code=1).output
    assert "spur-off-spur" in refused
