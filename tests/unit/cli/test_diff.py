"""``ways diff`` and ``ways reply``: what differs, and how they end."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from app.cli import main
from app.domain.record import Record
from app.interchange import to_document

HOUSES = Path(__file__).parents[2] / "houses"


def ways(*arguments: object) -> Result:
    return CliRunner().invoke(main, [str(a) for a in arguments])


@pytest.fixture
def other(tmp_path: Path, houses: dict[str, Record]) -> Path:
    """The record of a test home with one room called otherwise."""
    record = houses["h01"]
    room = record.rooms[0].model_copy(update={"name": "Scullery"})
    path = tmp_path / "other.json"
    changed = record.having(rooms=(room, *record.rooms[1:]))
    path.write_text(to_document(changed), "utf-8")
    return path


def test_diff_ends_as_diff_does(other: Path) -> None:
    here = HOUSES / "h01.json"
    assert ways("diff", here, here).exit_code == 0
    found = ways("diff", here, other)
    assert found.exit_code == 1
    assert "Scullery" in found.stdout
    told = json.loads(ways("diff", here, other, "--json").stdout)
    assert [(each["sort"], each["what"]) for each in told] == [("room", "changed")]


def test_reply_lists_and_changes_nothing(
    other: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("WAYS_DATA", str(tmp_path / "data"))
    assert ways("import", HOUSES / "h01.json").exit_code == 0
    before = ways("export").stdout
    found = ways("reply", other)
    assert found.exit_code == 0, found.output
    assert "→ “Scullery”" in found.stdout
    assert ways("export").stdout == before
