"""Run every check in turn: ``python -m tests``; ``--quick`` leaves the browser out."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

from tests.browser_path import browser_path

HERE = Path(__file__).resolve().parent.parent
# Three at a time on two cores: a third of the time is waiting for a browser or a disk.
SHARED = ["-n", "3", "--dist", "worksteal"]
NO_BROWSER_TESTS = ["-m", "not browser"]
NO_BROWSER = (
    "The browser tests need Chromium, Chrome or Edge: install one (Debian: sudo apt "
    "install chromium), or leave these tests out: python -m tests --quick"
)


def main(arguments: Sequence[str]) -> int:
    if unknown := set(arguments) - {"--quick"}:
        print(f"Not known: {' '.join(sorted(unknown))}. There is only --quick.")
        return 2
    quick = "--quick" in arguments
    for name, command in _steps(quick=quick):
        print(f"== {name}", flush=True)
        if name == "pytest" and not quick and not _browser():
            print(NO_BROWSER)
            return 1
        if subprocess.run(command, cwd=HERE, check=False).returncode:
            print(f"Stopped: {name} found something; see above.")
            return 1
    print("All good.")
    return 0


def _steps(*, quick: bool) -> tuple[tuple[str, list[str]], ...]:
    python = [sys.executable, "-m"]
    return (
        ("ruff format", [*python, "ruff", "format", "--check", "."]),
        ("ruff check", [*python, "ruff", "check", "."]),
        ("mypy", [*python, "mypy"]),
        ("lint-imports", [sys.executable, "-c", _LINT_IMPORTS]),
        ("pytest", [*python, "pytest", *SHARED, *(NO_BROWSER_TESTS if quick else [])]),
    )


_LINT_IMPORTS = "from importlinter.cli import lint_imports_command as c; c()"


def _browser() -> bool:
    """Return whether there is a browser; if there is none, try to have one."""
    for way in (None, _install_own, _install_on_debian):
        if way:
            way()
        if browser_path():
            return True
    return False


def _install_own() -> None:
    _try([sys.executable, "-m", "playwright", "install", "chromium"])


def _install_on_debian() -> None:
    if shutil.which("apt-get") and os.geteuid() == 0:
        _try(["apt-get", "update"])
        _try(["apt-get", "install", "-y", "--no-install-recommends", "chromium"])


def _try(command: list[str]) -> None:
    print(f"== {' '.join(command)}", flush=True)
    subprocess.run(command, check=False)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
