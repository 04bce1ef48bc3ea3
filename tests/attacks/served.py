"""The program as a process of its own, spoken to over a bare connection."""

from __future__ import annotations

import re
import socket
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

START = re.compile(r"http://127\.0\.0\.1:(\d+)/")


@contextmanager
def serving(data: Path, *before: str) -> Iterator[tuple[int, int]]:
    """Serve a data folder; give the port and the number of the process."""
    command = [*before, sys.executable, "-m", "app", "serve", "--no-open"]
    command += ["--port", "0", "--data", str(data)]
    with subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True
    ) as child:
        assert child.stdout is not None
        said = ""
        while not (found := START.search(said)):
            line = child.stdout.readline()
            assert line, said
            said += line
        try:
            yield int(found[1]), child.pid
        finally:
            child.terminate()
            child.stdout.read()


def told(port: int, sent: bytes, seconds: float = 5) -> bytes:
    """Send bytes as they are; return all that comes back until the end."""
    with socket.create_connection(("127.0.0.1", port), timeout=seconds) as line:
        found = b""
        # One that refuses what was not read to its end resets the line, even before
        # all was sent, or before this end is told to be the end.
        with suppress(ConnectionError):
            line.sendall(sent)
        with suppress(OSError):
            line.shutdown(socket.SHUT_WR)
        with suppress(ConnectionError):
            while more := line.recv(65536):
                found += more
    return found
