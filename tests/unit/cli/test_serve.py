from __future__ import annotations

import os
import re
import signal
import socket
import subprocess
import sys
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

START = [sys.executable, "-m", "app", "serve", "--no-open"]


@contextmanager
def served(
    *arguments: str, temporary: Path
) -> Iterator[tuple[subprocess.Popen[str], str]]:
    """Start the program; give it and all that it says before it serves."""
    environment = os.environ | {"TMPDIR": str(temporary), "PYTHONUNBUFFERED": "1"}
    with subprocess.Popen(
        [*START, "--port", "0", *arguments],
        stdout=subprocess.PIPE,
        text=True,
        env=environment,
    ) as child:
        assert child.stdout is not None
        said = "".join(child.stdout.readline() for _ in range(3))
        try:
            yield child, said
        finally:
            child.kill()


def page_at(said: str) -> str:
    address = re.search(r"http://127\.0\.0\.1:\d+/", said)
    assert address is not None, said
    with urllib.request.urlopen(address[0]) as answer:  # noqa: S310 - our own
        assert answer.status == 200
        assert answer.headers["Server"] is None
        text: str = answer.read().decode()
    return text


@pytest.mark.skipif(sys.platform == "win32", reason="Windows has no SIGTERM to send")
@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGINT])
def test_the_demo_is_served_and_leaves_nothing(
    number: signal.Signals, tmp_path: Path
) -> None:
    with served("--demo", temporary=tmp_path) as (child, said):
        assert "This is a demo" in said
        assert list(tmp_path.glob("ways-demo-*"))
        assert "demo" in page_at(said)
        child.send_signal(number)
        assert child.wait(10) == 0
    assert list(tmp_path.glob("ways-demo-*")) == []


def test_a_data_folder_is_served(tmp_path: Path) -> None:
    data = tmp_path / "data"
    with served("--data", str(data), temporary=tmp_path) as (_, said):
        assert str(data / "ways.sqlite3") in said
        page_at(said)
    assert (data / "key").is_file()


def test_a_taken_port_is_said(tmp_path: Path) -> None:
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        port = str(other.getsockname()[1])
        result = subprocess.run(
            [*START, "--port", port, "--data", str(tmp_path)],
            capture_output=True,
            text=True,
            check=False,
        )
    assert result.returncode == 1
    assert f"Port {port} of this machine cannot be had" in result.stderr
    assert "Choose another one with --port" in result.stderr
    assert "Traceback" not in result.stderr


def test_a_folder_that_cannot_be_written_to_is_said(tmp_path: Path) -> None:
    # As on a read-only disk: the log cannot be opened.
    (tmp_path / "ways.log").mkdir()
    result = subprocess.run(
        [*START, "--port", "0", "--data", str(tmp_path)],
        capture_output=True,
        text=True,
        check=False,
    )
    assert result.returncode == 1
    assert f"The folder {tmp_path} cannot be written to: Is a directory." in (
        result.stderr
    )
    assert "Traceback" not in result.stderr


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="there is no full disk here")
def test_a_log_on_a_full_disk_fills_no_console(tmp_path: Path) -> None:
    (tmp_path / "ways.log").symlink_to("/dev/full")
    code = (
        "import logging; from pathlib import Path; from app.logs import "
        f"configure_logging as c; c(Path({str(tmp_path)!r})); logging.info('x' * 9999)"
    )
    result = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=False
    )
    assert "Traceback" not in result.stderr
