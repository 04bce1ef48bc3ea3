"""The secret key of forms and cookies: made once, kept in the data folder."""

from __future__ import annotations

import os
import secrets
from pathlib import Path

LENGTH = 32


def secret_key(folder: Path) -> bytes:
    """Return the key of a data folder; make it when there is none, or only half of one.

    It is readable by its owner only, where the system knows owners.
    """
    file = folder / "key"
    if not file.is_file() or file.stat().st_size != LENGTH:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        _write(file, secrets.token_bytes(LENGTH))
    return file.read_bytes()


def _write(file: Path, key: bytes) -> None:
    partial = file.with_name(f"key.{os.getpid()}.partial")
    flags = os.O_WRONLY | os.O_CREAT | os.O_TRUNC | getattr(os, "O_BINARY", 0)
    with os.fdopen(os.open(partial, flags, 0o600), "wb") as out:
        out.write(key)
    partial.replace(file)
