from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import click
import pytest
from click.testing import CliRunner, Result

from app import __version__
from app.cli import main
from app.cli._base import NewFile
from app.domain.record import Record
from app.interchange import from_document, to_document
from tests import json_schema

HOUSES = Path(__file__).parents[2] / "houses"


def test_alone_it_shows_its_help(ways: Callable[..., Result]) -> None:
    assert ways().stdout == ways("--help").stdout
    assert ways("--version").stdout == f"ways, version {__version__}\n"


def every_command() -> list[tuple[str, click.Command]]:
    groups: list[tuple[str, click.Command]] = [("", main)]
    found = []
    for name, command in groups:
        found.append((name, command))
        if isinstance(command, click.Group):
            # A group that takes an argument wants one before its commands.
            given = ["2026-03-01"] if name == "as-of" else []
            before = " ".join([name, *given])
            groups += [
                (f"{before} {k}".strip(), c) for k, c in command.commands.items()
            ]
    return found


@pytest.mark.parametrize(("name", "command"), every_command())
def test_every_command_has_help(
    name: str, command: click.Command, ways: Callable[..., Result]
) -> None:
    assert command.help
    assert all(
        isinstance(p, click.Argument) or getattr(p, "help", None)
        for p in command.params
    )
    assert "Usage: " in ways(*name.split(), "--help").stdout


@pytest.mark.parametrize(
    "arguments",
    [
        ("no-such-command",),
        ("ask", "house", "P1"),
        ("ask", "point"),
        ("import", "no such file"),
        ("serve", "--port", "99999"),
        ("restore", "no such file"),
    ],
)
def test_wrong_usage_ends_with_2(
    arguments: tuple[str, ...], ways: Callable[..., Result]
) -> None:
    assert "Usage: " in ways(*arguments, code=2).stderr


def test_a_home_goes_in_and_comes_out(
    ways: Callable[..., Result], tmp_path: Path, houses: dict[str, Record]
) -> None:
    assert "(h05)" in ways("import", HOUSES / "h05.json").stdout
    document = to_document(houses["h05"])
    assert ways("export").stdout_bytes.decode() == document
    out = tmp_path / "out.json"
    ways("export", "--home", "h05", "-o", out)
    assert out.read_bytes().decode() == document


def test_a_taken_reference_is_refused_unless_another_is_given(
    ways: Callable[..., Result], houses: dict[str, Record]
) -> None:
    ways("import", HOUSES / "h05.json")
    refusal = ways("import", HOUSES / "h05.json", code=1)
    assert "There is a home “h05” already" in refusal.stderr
    ways("import", HOUSES / "h05.json", "--as", "again")
    again = from_document(ways("export", "--home", "again").stdout_bytes)
    assert again == houses["h05"].having(home=again.home)
    refusal = ways("import", HOUSES / "h05.json", "--as", "not one", code=1)
    assert "home.ref: “not one” cannot be a reference" in refusal.stderr


def test_every_problem_of_a_document_is_printed(
    ways: Callable[..., Result], tmp_path: Path
) -> None:
    values = json.loads((HOUSES / "h01.json").read_text("utf-8"))
    values["points"][0]["kind"] = "tap"
    values["rooms"][1]["colour"] = "red"
    wrong = tmp_path / "wrong.json"
    wrong.write_text(json.dumps(values), "utf-8")
    lines = ways("import", wrong, code=1).stderr.splitlines()
    assert lines[0].startswith("Error: The document cannot be taken")
    assert [line.partition(":")[0].strip() for line in lines[1:]] == [
        "rooms[1].colour",
        "points[0].kind",
    ]
    assert "no home here yet" in ways("export", code=1).stderr


def test_the_home_may_be_left_out_only_where_there_is_one(
    ways: Callable[..., Result],
) -> None:
    assert "no home here yet" in ways("faults", code=1).stderr
    ways("demo")
    ways("faults")
    assert "(demo-2)" in ways("demo").stdout
    assert "several homes: say which" in ways("faults", code=1).stderr
    assert "no home “other”" in ways("faults", "--home", "other", code=1).stderr
    ways("faults", "--home", "demo-2")


@pytest.mark.parametrize("name", ["point", "way", "room"])
def test_an_answer_is_as_its_schema_says(
    ways: Callable[..., Result], name: str, demo: Record
) -> None:
    ways("demo")
    schema = json.loads(ways("schema", "--answer", name).stdout_bytes)
    things = {"point": demo.points, "way": demo.devices, "room": demo.rooms}
    for thing in things[name][::9]:
        said = ways("ask", name, thing.ref, "--json").stdout_bytes
        answer = json.loads(said)
        assert json_schema.errors(answer, schema) == []
        assert answer["asks"] == name
        assert answer[name]["ref"] == thing.ref
        assert ways("ask", name, thing.ref.lower(), "--json").stdout_bytes == said


def test_the_faults_are_as_their_schema_says(ways: Callable[..., Result]) -> None:
    ways("demo")
    schema = json.loads(ways("schema", "--answer", "faults").stdout_bytes)
    found = json.loads(ways("faults", "--json").stdout_bytes)
    assert found
    assert json_schema.errors(found, schema) == []
    text = ways("faults").stdout
    assert all(fault["sentence"] in text for fault in found)


def test_the_document_is_as_its_schema_says(ways: Callable[..., Result]) -> None:
    ways("demo")
    schema = json.loads(ways("schema").stdout_bytes)
    assert json_schema.errors(json.loads(ways("export").stdout_bytes), schema) == []


def test_an_answer_for_people(ways: Callable[..., Result], demo: Record) -> None:
    ways("demo")
    point = demo.points[0]
    text = ways("ask", "point", point.ref).stdout
    assert text.startswith(f"{point.title} ({point.ref})\n")
    assert "Not known" in text
    refusal = ways("ask", "room", "NOWHERE", code=1).stderr
    assert "There is no room “NOWHERE” in demo." in refusal


def test_the_file_is_copied_and_put_back(
    ways: Callable[..., Result], tmp_path: Path
) -> None:
    ways("demo")
    file = Path(ways("db", "path").stdout.strip())
    assert file == (tmp_path / "data" / "ways.sqlite3").resolve()
    copy = tmp_path / "copy of the file"
    assert str(copy) in ways("db", "backup", copy).stdout
    assert "already" in ways("db", "backup", copy, code=1).stderr
    among = ways("db", "backup").stdout.strip().removeprefix("Copied to ")
    assert Path(among).parent == file.parent / "copies"
    ways("import", HOUSES / "h01.json")
    said = ways("restore", copy).stdout.splitlines()
    kept = Path(said[1].removeprefix("What was there before is "))
    assert kept.is_file()
    assert "no home “h01”" in ways("export", "--home", "h01", code=1).stderr
    ways("restore", kept)
    ways("export", "--home", "h01")
    assert "up to date" in ways("db", "upgrade").stdout


def test_what_is_no_record_is_not_put_in_its_place(
    ways: Callable[..., Result], tmp_path: Path
) -> None:
    ways("demo")
    before = ways("export").stdout_bytes
    text, empty = tmp_path / "text", tmp_path / "empty"
    text.write_text("Dear diary, " * 1000, "utf-8")
    empty.touch()
    said = ways("restore", text, code=1).stderr
    assert "not a record of this program" in said
    assert "holds no record" in ways("restore", empty, code=1).stderr
    assert ways("export").stdout_bytes == before


def test_a_damaged_file_is_said_and_can_be_replaced(
    ways: Callable[..., Result], tmp_path: Path
) -> None:
    ways("demo")
    before = ways("export").stdout_bytes
    ways("db", "backup", tmp_path / "copy")
    (tmp_path / "data" / "ways.sqlite3").write_bytes(b"lost" * 5000)
    assert "ways restore FILE" in ways("faults", code=1).stderr
    assert "-damaged" in ways("restore", tmp_path / "copy").stdout
    assert ways("export").stdout_bytes == before


def test_a_folder_that_cannot_be_made_is_said(
    ways: Callable[..., Result], tmp_path: Path
) -> None:
    (tmp_path / "file").touch()
    said = ways("demo", "--data", tmp_path / "file" / "data", code=1).stderr
    assert "cannot be made" in said


def test_a_document_from_another_program_comes_through_a_pipe(
    tmp_path: Path,
) -> None:
    data = (HOUSES / "h01.json").read_bytes()
    arguments = ["import", "-", "--data", str(tmp_path / "data")]
    result = CliRunner().invoke(main, arguments, input=data)
    assert result.exit_code == 0
    assert "(h01)" in result.stdout


@pytest.mark.parametrize(
    "command",
    [
        "export -o",
        "as-of 2026-11-25 export -o",
        "labels B2 -o",
        "chart B2 -o",
        "draw house -o",
        "isolate --room R-HALL --pdf",
        "isolate --room R-HALL --html",
        "tripped --sheet",
        "pack --out",
    ],
)
def test_no_file_is_written_over_unless_told_so(
    ways: Callable[..., Result], tmp_path: Path, command: str
) -> None:
    out = tmp_path / "mine.zip"
    out.write_text("precious")
    refusal = ways(*command.split(), out, code=1)
    assert f"{out} is there already." in refusal.stderr
    assert out.read_text() == "precious"


def test_every_command_that_writes_a_file_can_be_told_to_write_over_one() -> None:
    writing = {
        name: {p.name for p in command.params}
        for name, command in every_command()
        if any(isinstance(p.type, NewFile) for p in command.params)
    }
    assert len(writing) == 8
    assert all("replace" in params for params in writing.values())


def test_told_so_it_is_written_over(
    ways: Callable[..., Result], tmp_path: Path
) -> None:
    ways("demo")
    out = tmp_path / "house.svg"
    out.write_text("old")
    ways("draw", "house", "-o", out, "--replace")
    assert out.read_text().startswith("<?xml")
    (tmp_path / "folder").mkdir()
    refusal = ways("pack", "--replace", "-o", tmp_path / "folder", code=1)
    assert "a folder" in refusal.stderr
