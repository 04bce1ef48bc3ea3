"""``ways pack`` and what it keeps back."""

from __future__ import annotations

import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from app.cli import main, pack
from app.domain.pack import PARTS

HOUSES = Path(__file__).parents[2] / "houses"


@pytest.fixture
def ways(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[..., Result]:
    """Run the command on a data folder that holds one home."""
    monkeypatch.setenv("WAYS_DATA", str(tmp_path / "data"))

    def run(*arguments: object, code: int = 0) -> Result:
        result = CliRunner().invoke(main, [str(a) for a in arguments])
        assert result.exit_code == code, result.output
        return result

    run("import", HOUSES / "h01.json")
    return run


def test_the_parts_are_those_of_the_pack() -> None:
    assert tuple(PARTS) == pack.PARTS


def test_a_zip_and_a_folder_hold_the_same(
    ways: Callable[..., Result], tmp_path: Path
) -> None:
    said = ways("pack", "-o", tmp_path / "p.zip").stdout
    assert "Kept back: mpan, phones, names, notes, photos, originals, history." in said
    again = ways("pack", "-o", tmp_path / "p", "--with", "all", "--without", "notes")
    assert "Kept back: notes." in again.stdout
    with zipfile.ZipFile(tmp_path / "p.zip") as archive:
        names = {name.partition("/")[2] for name in archive.namelist()}
    there = (p for p in (tmp_path / "p").rglob("*") if p.is_file())
    assert names == {p.relative_to(tmp_path / "p").as_posix() for p in there}
    refusal = ways("pack", "-o", tmp_path / "p", code=1)
    assert "is there already" in refusal.stderr
