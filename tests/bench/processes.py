"""What is measured from outside: starting, memory, papers."""

from __future__ import annotations

import math
import re
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from functools import partial
from pathlib import Path

from app.domain.isolation import plan
from app.domain.isolation.sheet import sheet_of
from app.domain.network import network
from app.services.isolation import as_paper
from app.services.pack import Wanted, pack_files
from tests.bench.homes import SIZES, home_of, stored
from tests.bench.rows import TODAY
from tests.bench.timing import Row, best_of, exponent, ratio

MOST_OVER_BARE_START = 2.5
ADDRESS = re.compile(r"http://127\.0\.0\.1:\d+/")
BARE = """
import flask, waitress
app = flask.Flask("bare")
app.add_url_rule("/", view_func=lambda: "here")
server = waitress.create_server(app, host="127.0.0.1", port=0)
print(f"http://127.0.0.1:{server.effective_port}/", flush=True)
server.run()
"""


def start_over_bare(folder: Path, times: int) -> Iterator[Row]:
    """From the command to the first page answered, against a bare Flask program."""
    config = stored(folder / "start", home_of(60))
    ours = serving(config.data)
    yield ratio(
        "start to first page",
        lambda: first_page(ours),
        lambda: first_page([sys.executable, "-c", BARE]),
        MOST_OVER_BARE_START,
        times,
    )


def serving(data: Path) -> list[str]:
    """Return the command that serves a data folder."""
    command = [sys.executable, "-m", "app", "serve", "--no-open", "--port", "0"]
    return [*command, "--data", str(data)]


def first_page(command: Sequence[str]) -> None:
    """Start a program, and have its first page."""
    with started(command) as (_, address):
        get(address)


@contextmanager
def started(command: Sequence[str]) -> Iterator[tuple[int, str]]:
    """Start a program; give its number and its address."""
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as child:
        assert child.stdout is not None
        found = None
        while found is None:
            found = ADDRESS.search(child.stdout.readline())
        try:
            yield child.pid, found[0]
        finally:
            child.kill()


def get(address: str) -> None:
    with urllib.request.urlopen(address) as answer:  # noqa: S310 - our own
        answer.read()


def memory(folder: Path) -> Iterator[Row]:
    """What the server holds once it has shown a home, and all its points."""
    for size in SIZES:
        config = stored(folder / f"memory-{size}", home_of(size))
        home = home_of(size).home.ref
        with started(serving(config.data)) as (pid, address):
            time.sleep(1)
            idle = resident_mb(pid)
            for page in ("", "points/", "remarks/", "house/"):
                get(f"{address}homes/{home}/{page}")
            used = resident_mb(pid)
        said = f"idle {idle:.0f} MB, after four pages {used:.0f} MB"
        yield Row(name=f"{size} points", value=math.nan, most=None, said=said)


def resident_mb(pid: int) -> float:
    """Return what a process holds of the machine's memory, where Linux tells."""
    status = Path(f"/proc/{pid}/status").read_text("utf-8")
    found = re.search(r"VmRSS:\s+(\d+) kB", status)
    assert found is not None
    return int(found[1]) / 1e3


def papers() -> Iterator[Row]:
    """The PDF of one sheet, and the whole pack, for growing homes."""
    sizes = (60, 150, 600)
    for name, make in (("PDF of one sheet", _sheet), ("the whole pack", _pack)):
        taken = [best_of(partial(make, size), 3) for size in sizes]
        yield exponent(name, sizes, taken)


def _sheet(points: int) -> None:
    net = network(home_of(points))
    sheet = sheet_of(plan(net, (net.record.rooms[0].ref,)))
    assert as_paper(net, sheet, TODAY).startswith(b"%PDF")


def _pack(points: int) -> None:
    assert pack_files(Wanted(record=home_of(points), day=TODAY, without=()))
