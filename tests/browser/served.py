"""The program as a process of its own, to be killed and started again on one port."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path


class Served:
    """A server on one data folder and one port."""

    def __init__(self, data: Path, *arguments: str) -> None:
        self.data = data
        self.arguments = arguments
        self.port = "0"
        self.child: subprocess.Popen[str] | None = None

    def start(self) -> str:
        """Start it; return its address, the same each time."""
        command = [sys.executable, "-m", "app", "serve", "--no-open"]
        command += ["--data", str(self.data), "--port", self.port, *self.arguments]
        self.child = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
        assert self.child.stdout is not None
        said = ""
        while not (found := re.search(r"http://127\.0\.0\.1:(\d+)/", said)):
            line = self.child.stdout.readline()
            assert line, said
            said += line
        self.port = found[1]
        return found[0]

    def kill(self) -> None:
        """End it as a power cut would."""
        if self.child is not None:
            self.child.kill()
            self.child.wait()
            assert self.child.stdout is not None
            self.child.stdout.close()
            self.child = None
