"""A quiet machine: nothing is asked of any network, and nothing is done unasked."""

from __future__ import annotations

import os
import re
import shutil
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Callable
from pathlib import Path
from typing import Any, cast

import pytest
from flask import Flask

from app.config import Config
from app.domain.record import Record
from tests.attacks.served import serving
from tests.pages import CheckedClient
from tests.web.test_guard import crawl, dump

PAPERS = (
    "boards/B1/chart.pdf", "isolate/plan.pdf?ref=B1", "hand-over/pack.zip",
    "hand-over/pack.html", "reminders/calendar.ics", "document.json",
)  # fmt: skip
IDLE_S = 3
# A tenth of the time that passes: an idle loop takes about a thousandth.
MOST_CPU = 0.1
# The system's calls that reach for another machine, by their families of addresses.
REACHES = re.compile(r"(?:connect|sendto|sendmsg)\(.*sa_family=AF_INET6?")
linux = pytest.mark.skipif(
    not sys.platform.startswith("linux"), reason="reads /proc, as only Linux has it"
)


@pytest.fixture
def no_network(monkeypatch: pytest.MonkeyPatch) -> None:
    """Fail whatever reaches for a network within this process."""

    def refused(*arguments: Any, **_more: Any) -> None:
        pytest.fail(f"reached for {arguments[-1]!r}")

    for name in ("connect", "connect_ex", "sendto", "sendmsg"):
        monkeypatch.setattr(socket.socket, name, refused)
    for name in ("getaddrinfo", "gethostbyname", "gethostbyname_ex", "gethostbyaddr"):
        monkeypatch.setattr(socket, name, refused)


@pytest.mark.usefixtures("no_network")
def test_no_page_and_no_file_reaches_for_a_network(
    app: Flask, keep: Callable[[Record], int], demo: Record, config: Config
) -> None:
    keep(demo)
    app.test_client_class = CheckedClient
    client = cast("CheckedClient", app.test_client())
    before = dump(config.database)
    assert len(crawl(client, "/homes/demo/?done=1", 1)) > 35
    for path in PAPERS:
        assert client.get(f"/homes/demo/{path}").status_code == 200, path
    assert dump(config.database) == before


@pytest.mark.usefixtures("no_network")
def test_the_guard_of_these_tests_sees_who_reaches() -> None:
    with pytest.raises(pytest.fail.Exception):
        socket.create_connection(("192.0.2.1", 80), timeout=1)


@linux
def test_every_process_of_a_paper_is_quiet(tmp_path: Path) -> None:
    """Watch the system's calls of the command and of the process that sets the PDF."""
    strace = shutil.which("strace")
    if strace is None:
        pytest.skip("strace is not here; it shows what the setting process asks for")
    data, trace = tmp_path / "data", tmp_path / "trace"
    ways = [sys.executable, "-m", "app"]
    subprocess.run([*ways, "demo", "--data", str(data)], check=True)
    watch = [strace, "-f", "-qq", "-o", str(trace), "-e", "trace=%network,execve"]
    pack = ["pack", "-o", str(tmp_path / "p.zip"), "--data", str(data)]
    subprocess.run([*watch, *ways, *pack], check=True, capture_output=True)
    calls = trace.read_text(errors="replace")
    assert calls.count("execve(") > 1
    assert not [line for line in calls.splitlines() if REACHES.search(line)]


@linux
def test_it_serves_where_there_is_no_network(tmp_path: Path) -> None:
    """In a namespace with a loopback and nothing else all pages and papers come."""
    inside = ["unshare", "--net", "--map-root-user"]
    if subprocess.run([*inside, "true"], capture_output=True, check=False).returncode:
        pytest.skip("this machine lets nobody make a network of their own")
    script = tmp_path / "inside.py"
    script.write_text(INSIDE, encoding="utf-8")
    done = subprocess.run(
        [*inside, sys.executable, str(script), str(tmp_path / "data")],
        capture_output=True, text=True, check=False, timeout=60,
        cwd=Path(__file__).parents[2],
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert done.stdout.split()[-1] == "quiet"


INSIDE = """
import fcntl, socket, struct, subprocess, sys, urllib.request
from pathlib import Path
sys.path.insert(0, str(Path.cwd()))
from tests.attacks.served import serving
with socket.socket() as any_socket:
    # SIOCSIFFLAGS: the loopback of a new namespace is not up yet.
    fcntl.ioctl(any_socket, 0x8914, struct.pack("16sH14x", b"lo", 0x1 | 0x40))
data = Path(sys.argv[1])
subprocess.run([sys.executable, "-m", "app", "demo", "--data", data], check=True)
with serving(data) as (port, _pid):
    for path in ("", "house/", "boards/B1/chart.pdf", "hand-over/pack.zip"):
        url = f"http://127.0.0.1:{port}/homes/demo/{path}"
        with urllib.request.urlopen(url) as answer:
            assert answer.status == 200 and answer.read(), path
try:
    socket.create_connection(("192.0.2.1", 80), timeout=1)
except OSError:
    print("quiet")
"""


@linux
def test_a_server_that_nobody_asks_rests(tmp_path: Path) -> None:
    data = tmp_path / "data"
    ways = [sys.executable, "-m", "app"]
    subprocess.run([*ways, "demo", "--data", str(data)], check=True)
    with serving(data) as (port, pid):
        with urllib.request.urlopen(f"http://127.0.0.1:{port}/homes/demo/") as answer:
            answer.read()
        # The copy of the day is made at the start; then nothing is left to do.
        before = at_rest(data)
        spent = cpu_s(pid)
        time.sleep(IDLE_S)
        assert state(data) == before
        assert cpu_s(pid) - spent < MOST_CPU * IDLE_S
        assert open_to_others(pid) == []


def at_rest(folder: Path) -> dict[str, tuple[int, int]]:
    """Wait until nothing was written for a second, but not for ever."""
    before = state(folder)
    for _ in range(20):
        time.sleep(1)
        now = state(folder)
        if now == before:
            return now
        before = now
    pytest.fail("it goes on writing")


def state(folder: Path) -> dict[str, tuple[int, int]]:
    return {
        str(path): (path.stat().st_size, path.stat().st_mtime_ns)
        for path in folder.rglob("*")
    }


def cpu_s(pid: int) -> float:
    """Return the seconds that a process has worked; proc(5), fields 14 and 15."""
    fields = Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def open_to_others(pid: int) -> list[str]:
    """Return the addresses of a process's own sockets that are not the loopback."""
    links = [str(fd.readlink()) for fd in Path(f"/proc/{pid}/fd").iterdir()]
    inodes = {link[8:-1] for link in links if link.startswith("socket:[")}
    found = []
    for kind in ("tcp", "tcp6", "udp", "udp6"):
        for line in Path(f"/proc/{pid}/net/{kind}").read_text().splitlines()[1:]:
            fields = line.split()
            # 127.0.0.1 as the kernel writes it on a machine of this order of bytes.
            if fields[9] in inodes and not fields[1].startswith("0100007F:"):
                found.append(fields[1])
    return found
