"""Files that were chosen and are not taken in yet: few, and for a day.

They stand beside the database, not in it, so that no copy of the record has them.  The
name of each is its token, which nobody guesses.
"""

from __future__ import annotations

import re
import secrets
from datetime import datetime, timedelta
from pathlib import Path

KEPT_FOR = timedelta(days=1)
MOST_FILES = 8
TOKEN = re.compile(r"[0-9a-f]{32}")


def keep(folder: Path, text: str, now: datetime) -> str:
    """Keep a text; return its token.  What is too old, or too much, goes."""
    folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    token = secrets.token_hex(16)
    put(folder, token, text)
    clear(folder, now)
    return token


def put(folder: Path, token: str, text: str) -> None:
    """Put a text in the place of the one with this token, whole or not at all."""
    path = folder / token
    half = path.with_suffix(f".{secrets.token_hex(4)}")
    half.touch(mode=0o600)
    half.write_text(text, "utf-8")
    half.replace(path)


def kept(folder: Path, token: str, now: datetime) -> str | None:
    """Return the text of a token; None if it is not kept, or not any longer."""
    path = folder / token
    if not TOKEN.fullmatch(token) or not path.is_file() or _is_old(path, now):
        return None
    return path.read_text("utf-8")


def let_go(folder: Path, token: str) -> None:
    """Remove what a token stands for; what is not there stays so."""
    if TOKEN.fullmatch(token):
        (folder / token).unlink(missing_ok=True)


def clear(folder: Path, now: datetime) -> None:
    """Remove what is too old, or too much."""
    there = folder.iterdir() if folder.is_dir() else ()
    for index, path in enumerate(sorted(there, key=_age_key)):
        if index >= MOST_FILES or _is_old(path, now):
            path.unlink(missing_ok=True)


def _age_key(path: Path) -> float:
    """Return what puts the newest first; what has just gone counts as the oldest."""
    try:
        return -path.stat().st_mtime
    except FileNotFoundError:
        return 0


def _is_old(path: Path, now: datetime) -> bool:
    return now.timestamp() + _age_key(path) > KEPT_FOR.total_seconds()
