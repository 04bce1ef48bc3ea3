from __future__ import annotations

import sys
from pathlib import Path

import pytest

from app.services.key import secret_key


def test_a_key_is_made_once(tmp_path: Path) -> None:
    folder = tmp_path / "new"
    key = secret_key(folder)
    assert len(key) == 32
    assert secret_key(folder) == key
    assert secret_key(tmp_path / "other") != key
    assert [path.name for path in folder.iterdir()] == ["key"]


def test_half_a_key_is_made_anew(tmp_path: Path) -> None:
    (tmp_path / "key").write_bytes(b"half")
    assert len(secret_key(tmp_path)) == 32


@pytest.mark.skipif(sys.platform == "win32", reason="Windows knows no such modes")
def test_the_key_is_its_owners_only(tmp_path: Path) -> None:
    secret_key(tmp_path / "new")
    assert (tmp_path / "new").stat().st_mode & 0o777 == 0o700
    assert (tmp_path / "new" / "key").stat().st_mode & 0o777 == 0o600
