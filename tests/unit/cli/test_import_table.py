from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from app.domain.record import Record
from app.interchange import from_document
from tests.sheets import WRONG, as_csv, as_xlsx, points

HOUSE = Path(__file__).parents[2] / "houses" / "h01.json"
Ways = Callable[..., Result]


@pytest.fixture
def ways(ways: Ways) -> Ways:
    """Run the command on a data folder that holds one home."""
    ways("import", HOUSE)
    return ways


def stored(ways: Ways) -> Record:
    return from_document(ways("export").stdout_bytes)


def test_a_sheet_is_taken_in_as_one_change(ways: Ways, tmp_path: Path) -> None:
    before = stored(ways)
    file = tmp_path / "more.csv"
    file.write_bytes(as_csv([["Circuit", "Length", "Odd"], ["Shed", "12 m", "x"]], ";"))
    said = ways("import-table", "circuits", file, "--dry-run").stdout
    assert "row 2  Shed" in said
    assert "Would make: 1 circuit." in said
    assert stored(ways) == before
    assert "Taken in: 1 circuit." in ways("import-table", "circuits", file).stdout
    assert [c.name for c in stored(ways).circuits[len(before.circuits) :]] == ["Shed"]


@pytest.mark.parametrize("make", [as_csv, as_xlsx])
def test_every_fault_is_named_and_nothing_is_stored(
    ways: Ways, tmp_path: Path, make: Callable[..., bytes]
) -> None:
    before = stored(ways)
    file = tmp_path / "points"
    file.write_bytes(make(points(wrong=True)))
    leave = ("--map", "Circuit=", "--map", "Room=", "--json")
    found = json.loads(ways("import-table", "points", file, *leave, code=1).stdout)
    wanted = [w[:2] for w in WRONG if w[1] not in ("Circuit", "Room", "Floor")]
    assert [
        (f["row"], f["column"]) for f in found["faults"] if f["row"] != 214
    ] == wanted
    assert (found["stored"], found["columns"]["Circuit"]) == (False, "")
    assert stored(ways) == before


def test_ways_go_on_the_board_that_is_named(ways: Ways, tmp_path: Path) -> None:
    before = stored(ways)
    board = before.boards[0].ref
    file = tmp_path / "ways.xlsx"
    rows = [["Pos", "Was", "Thing"], ["77", "Loft", "B6"]]
    file.write_bytes(as_xlsx([["nothing"]], rows, names=("A", "B")))
    named = ("--map", "pos=way", "--map", "Was=label_found", "--map", "Thing=device")
    common = ("import-table", "ways", file, "--sheet", "B", "--board", board, *named)
    ways(*common, "--heading-row", "1", "--kind-unsaid", "circuit_breaker")
    new = stored(ways).devices[-1]
    assert (new.board, new.way, new.label_found, new.curve) == (
        board,
        "77",
        "Loft",
        "B",
    )


@pytest.mark.parametrize(
    ("more", "said"),
    [
        (("--board", "B99"), "There is no board “B99”"),
        (("--map", "Nothing=name"), "There is no column “Nothing”"),
        (("--map", "Circuit=colour"), "There is no field “colour”"),
        (("--sheet", "X"), "There is no sheet “X”"),
        (("--kind-unsaid", "magic"), "There is no kind “magic”"),
    ],
)
def test_what_is_not_there_is_said(
    ways: Ways, tmp_path: Path, more: tuple[str, ...], said: str
) -> None:
    file = tmp_path / "x.csv"
    file.write_bytes(as_csv([["Circuit"], ["Shed"]]))
    assert said in ways("import-table", "circuits", file, *more, code=1).stderr


def test_a_file_that_is_none_is_refused(ways: Ways, tmp_path: Path) -> None:
    file = tmp_path / "x.xlsx"
    file.write_bytes(b"PK\x03\x04")
    assert "no whole archive" in ways("import-table", "points", file, code=1).stderr


def test_what_is_there_already_is_refused_until_it_is_said_what_becomes_of_it(
    ways: Ways, tmp_path: Path
) -> None:
    file = tmp_path / "more.csv"
    file.write_bytes(as_csv([["Circuit", "Length"], ["Shed", "12 m"]]))
    ways("import-table", "circuits", file)
    once = stored(ways)
    shed = once.circuits[-1].ref
    said = ways("import-table", "circuits", file, code=1).stdout
    assert f"row 2  is here already: Shed ({shed})" in said
    assert "--only-new" in said
    found = json.loads(ways("import-table", "circuits", file, "--json", code=1).stdout)
    assert found["there"] == [{"row": 2, "ref": shed, "what": "Shed"}]
    assert not found["stored"]
    ways("import-table", "circuits", file, "--dry-run")
    ways("import-table", "circuits", file, "--only-new")
    assert stored(ways) == once
    ways("import-table", "circuits", file, "--once-more")
    assert [c.name for c in stored(ways).circuits[-2:]] == ["Shed", "Shed"]
