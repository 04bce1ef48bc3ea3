"""How this program is called in a terminal, for pages that say what to type there."""

from __future__ import annotations

import os
import shlex
import shutil
import subprocess
import sys
from pathlib import Path

from flask import current_app

from app.config import Config, usual_data_folder
from app.web.paired import from_here

NAME = "ways"


def command_line(*words: str) -> str:
    """Return what to type to have this program do something, quoted for the shell.

    The program is named as it was started: by its bare name only where that finds it.
    """
    return _quoted(*_program(Path(sys.argv[0])), *words)


def command_shown(*words: str) -> str:
    """Return the same for a page, on the data folder that it shows.

    A phone is told neither where the program lies nor where its data does.
    """
    if not from_here():
        return _quoted(NAME, *words)
    config: Config = current_app.extensions["config"]
    usual = config.demo or config.data.absolute() == usual_data_folder().absolute()
    return command_line(*words, *(() if usual else ("--data", str(config.data))))


def _program(started: Path) -> tuple[str, ...]:
    found = shutil.which(NAME)
    if started.stem != NAME:
        # Started as a module of Python, or by another program that serves it.
        return (sys.executable, "-m", "app")
    if found and _alike(Path(found), started):
        return (NAME,)
    return (str(started.absolute()),)


def _alike(one: Path, other: Path) -> bool:
    return one.absolute().with_suffix("") == other.absolute().with_suffix("")


def _quoted(*words: str) -> str:
    return subprocess.list2cmdline(words) if os.name == "nt" else shlex.join(words)
