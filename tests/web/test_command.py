"""What pages say to type works as it stands: the program as it was started."""

from __future__ import annotations

import shlex
import sys
from pathlib import Path

import pytest
from flask import Flask

from app.web.command import command_line, command_shown
from tests.pages import CheckedClient


@pytest.fixture
def started(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A program in a folder with a space in its name that no shell looks in."""
    program = tmp_path / "my programs" / "ways"
    program.parent.mkdir()
    program.write_text("#!/bin/sh\n")
    program.chmod(0o755)
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.setattr(sys, "argv", [str(program), "serve"])
    return program


def test_where_no_shell_finds_it_it_is_named_in_full(started: Path) -> None:
    assert command_line() == f"'{started}'"
    said = command_line("restore", "/a copy", "--data", "/$HOME")
    assert shlex.split(said) == [str(started), "restore", "/a copy", "--data", "/$HOME"]


def test_started_from_where_it_stands_it_is_named_in_full(
    started: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(started.parent)
    monkeypatch.setattr(sys, "argv", ["./ways"])
    assert shlex.split(command_line()) == [str(started)]


def test_where_a_shell_finds_it_its_name_is_enough(
    started: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PATH", str(started.parent))
    assert command_line("db", "path") == "ways db path"


def test_a_phone_is_not_told_where_it_lies(started: Path, app: Flask) -> None:
    for address, said in (
        ("127.0.0.1", f"'{started}' db path --data {app.extensions['config'].data}"),
        ("192.168.1.77", "ways db path"),
    ):
        with app.test_request_context(environ_base={"REMOTE_ADDR": address}):
            assert command_shown("db", "path") == said


def test_another_program_of_the_name_is_not_meant(
    started: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    other = started.parent.parent / "ways"
    other.write_text("#!/bin/sh\n")
    other.chmod(0o755)
    assert shlex.split(command_line()) == [str(started)]


def test_started_as_a_module_it_is_named_so(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "argv", ["/somewhere/app/__main__.py"])
    monkeypatch.setattr(sys, "executable", "/a b/python")
    assert command_line("serve") == "'/a b/python' -m app serve"


@pytest.mark.parametrize(
    ("url", "words"),
    [
        ("/help", "db path"),
        ("/help", "db backup"),
        ("/phones/", "serve --share"),
    ],
)
def test_pages_name_it_as_it_was_started(
    here: CheckedClient, started: Path, url: str, words: str
) -> None:
    assert f"'{started}' {words}" in here.see(url).main
