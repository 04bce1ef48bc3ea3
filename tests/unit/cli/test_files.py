from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from tests.photographs import PDF, SVG, picture


@pytest.fixture
def ways(ways: Callable[..., Result]) -> Callable[..., Result]:
    ways("demo")
    return ways


def test_a_file_is_attached_listed_and_checked(
    ways: Callable[..., Result], tmp_path: Path
) -> None:
    photo, paper = tmp_path / "a.jpg", tmp_path / "b.pdf"
    photo.write_bytes(picture())
    paper.write_bytes(PDF)
    assert ways("attach", photo, "--to", "B1", "--caption", "A\nface").stdout == (
        "Added: F3\n"
    )
    assert ways("attach", paper).stdout == "Added: F4\n"
    assert ways("attach", photo, "--to", "B2").stdout == "Here already: F3\n"
    listed = ways("files", "--check").stdout.splitlines()
    assert listed[2].startswith("F3  A face  (B1, B2, image/jpeg, ")
    assert listed[3].startswith("F4  b.pdf  (the home, application/pdf, ")
    assert len(listed) == 4
    found = json.loads(ways("files", "--json").stdout)
    assert [(row["ref"], row["wrong"]) for row in found][2:] == [
        ("F3", None), ("F4", None),
    ]  # fmt: skip


def test_a_file_that_is_not_right_is_named(
    ways: Callable[..., Result], tmp_path: Path
) -> None:
    for row in json.loads(ways("files", "--json").stdout):
        digest = row["sha256"]
        path = tmp_path / "data" / "files" / digest[:2] / digest
        path.write_bytes(b"x") if row["ref"] == "F1" else path.unlink()
    first, second = ways("files", "--check", code=1).stdout.splitlines()
    assert first.endswith(": its file is damaged")
    assert second.endswith(": its file is not here")


def test_what_is_not_taken_is_refused(
    ways: Callable[..., Result], tmp_path: Path
) -> None:
    wrong, photo = tmp_path / "a.jpg", tmp_path / "b.jpg"
    wrong.write_bytes(SVG)
    photo.write_bytes(picture())
    assert "An SVG is not taken" in ways("attach", wrong, code=1).stderr
    said = ways("attach", photo, "--to", "NO", code=1).stderr
    assert "There is no NO in this home" in said
    assert len(ways("files").stdout.splitlines()) == 2


def test_a_copy_says_where_its_files_are(
    ways: Callable[..., Result], tmp_path: Path
) -> None:
    copy = tmp_path / "home.sqlite3"
    said = ways("db", "backup", copy).stderr
    assert str(tmp_path / "home.files") in said
    for path in (tmp_path / "home.files").rglob("*"):
        if path.is_file():
            path.unlink()
    again = ways("restore", copy, "--data", tmp_path / "other").stdout
    assert "not here: 2" in again
