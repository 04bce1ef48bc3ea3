"""What a record says gives no order to the console that shows it, nor to the log."""

from __future__ import annotations

import json
import re
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from app.cli import main
from app.config import Config
from app.domain.record import Record
from app.services.homes import add_home
from app.store.engine import make_engine, writing

ORDER = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]")
TEXT = "\x9b31m\x9d0;zq\x9c\u202egnitrevni"
KEPT = TEXT.replace("\u202e", "")
COMMANDS: tuple[tuple[str, ...], ...] = (
    ("ask", "room", "R1"), ("ask", "point", "P1"), ("faults",), ("trace",),
    ("trace", "plan"), ("history",), ("remarks",), ("files",), ("results",),
    ("reminders",), ("homes",), ("circuit", "C1"), ("load",), ("tripped",),
    ("isolate", "--board", "B1"), ("may-i", "--job", "bath-fan", "--at", "R1"),
)  # fmt: skip


@pytest.fixture
def ordering(config: Config, demo: Record) -> Config:
    """A home with orders to a console in its names; no form takes them."""
    changed = {
        name: tuple(i.model_copy(update={"name": f"{i.name}{TEXT}"}) for i in items)
        for name in ("rooms", "boards", "circuits", "points", "works")
        for items in [getattr(demo, name)]
    }
    home = demo.home.model_copy(update={"name": f"Home{TEXT}"})
    with writing(make_engine(config.database)) as connection:
        add_home(connection, demo.having(home=home, **changed))
    return config


def run(config: Config, *arguments: str) -> Result:
    return CliRunner().invoke(main, [*arguments, "--data", str(config.data)])


def test_no_command_hands_an_order_on(ordering: Config) -> None:
    said = {command: run(ordering, *command) for command in COMMANDS}
    for command, result in said.items():
        assert result.exit_code in (0, 1), (command, result.output)
        assert not ORDER.search(result.output), command
    assert "31m" in said["homes",].output


def test_what_is_for_programs_says_the_same_without_one(ordering: Config) -> None:
    for command in (("export",), ("homes", "--json"), ("remarks", "--json")):
        result = run(ordering, *command)
        assert not re.search("[\x00-\x08\x0b-\x1f\x7f-\x9f]", result.output), command
        json.loads(result.output)
    assert json.loads(run(ordering, "export").output)["home"]["name"] == f"Home{KEPT}"


@pytest.mark.parametrize("name", ["\x1b]0;zq\x07", "\x9b2J", "zq\r\nzq"])
def test_a_file_name_gives_no_order(config: Config, tmp_path: Path, name: str) -> None:
    path = tmp_path / f"{name}.json"
    path.write_text("{}")
    result = run(config, "import", str(path))
    assert result.exit_code == 1
    assert not ORDER.search(result.output)


def test_an_address_adds_no_line_to_the_log(tmp_path: Path) -> None:
    code = (
        "import logging, sys; from pathlib import Path; from app.logs import "
        "configure_logging; configure_logging(Path(sys.argv[1])); "
        "logging.getLogger('zq').warning('%s', 'a\\r\\n2026 WARNING b\\x1b[2J\\x9b')"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, str(tmp_path)], capture_output=True, check=True
    )
    for written in (done.stderr, (tmp_path / "ways.log").read_bytes()):
        assert written.count(b"\n") == 1
        assert not re.search(rb"[\x1b\r]|\xc2\x9b", written)
