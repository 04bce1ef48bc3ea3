from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from click.testing import Result

Ways = Callable[..., Result]


@pytest.fixture
def ways(ways: Ways) -> Ways:
    """Run the command on a data folder with the demo home."""
    ways("demo")
    return ways


def text_of(path: Path) -> str:
    root = ET.fromstring(path.read_bytes())  # noqa: S314 - made by ourselves
    return " ".join(root.itertext())


def test_each_drawing_is_written_as_a_file(ways: Ways, tmp_path: Path) -> None:
    out = tmp_path / "drawing.svg"
    for arguments, words in (
        (("house",), "House by circuit: The corner semi"),
        (("house", "--circuit", "c2"), "Brought forward: Old ring, mostly upstairs."),
        (("house", "--room", "R-KITCHEN"), "Brought forward: Kitchen."),
        (("one-line",), "One-line diagram: The corner semi"),
        (("street",), "From the street to the boards"),
        (("board", "--board", "B2"), "Face of Newer board"),
    ):
        said = ways("draw", *arguments, "--replace", "-o", out).output
        assert said == f"Written: {out}\n"
        assert words in text_of(out), arguments


@pytest.mark.parametrize(
    ("arguments", "code", "words"),
    [
        (("house", "--circuit", "C99"), 1, "C99"),
        (("house", "--room", "C2"), 1, "C2"),
        (("house", "--room", "R-HALL", "--circuit", "C2"), 2, "not both"),
        (("street", "--circuit", "C2"), 2, "Only the house"),
        (("house", "--board", "B1"), 2, "Only a drawing of a board"),
        (("board",), 1, "There are several boards: say which"),
        (("board", "--board", "B9"), 1, "B9"),
        (("garden",), 2, "garden"),
    ],
)
def test_what_cannot_be_drawn_is_refused(
    ways: Ways, tmp_path: Path, arguments: tuple[str, ...], code: int, words: str
) -> None:
    out = tmp_path / "drawing.svg"
    assert words in ways("draw", *arguments, "-o", out, code=code).output
    assert not out.exists()


def test_a_file_must_be_named(ways: Ways) -> None:
    assert "-o" in ways("draw", "house", code=2).output
