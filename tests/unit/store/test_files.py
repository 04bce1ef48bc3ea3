"""The bytes: on the disk before their row, once by content, along with every copy."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from app.config import Config, files_beside
from app.domain.record import Home, Record
from app.services.files import attach, clear_orphans, looked_at, not_here, unsound
from app.services.homes import open_home, undo
from app.services.upkeep import copy_of, restored
from app.store import files
from app.store.changes import latest_changes
from app.store.engine import make_engine, reading, writing
from tests.photographs import picture

LATER = datetime.now(UTC) + timedelta(hours=1)
DATA = picture()
DIGEST = files.digest_of(DATA)
Keep = Callable[[Record], int]


@pytest.fixture(autouse=True)
def _home(keep: Keep) -> None:
    keep(Record(home=Home(ref="a", name="A home")))


def added(config: Config, data: bytes = DATA) -> None:
    with writing(make_engine(config.database)) as connection:
        attach(
            connection, open_home(connection, "a"), config.files, looked_at(data, "")
        )


def rows(config: Config) -> list[str]:
    with reading(make_engine(config.database)) as connection:
        return [a.sha256 for a in open_home(connection, "a").record.attachments]


def undone(config: Config) -> None:
    """Take the newest change back."""
    with writing(make_engine(config.database)) as connection:
        here = open_home(connection, "a")
        [newest] = latest_changes(connection, here.key, 1)
        undo(connection, here, newest.key)


def on_disk(config: Config) -> list[str]:
    return sorted(path.name for path in config.files.rglob("*") if path.is_file())


KEPT = sorted([DIGEST, f"{DIGEST}.large.jpg", f"{DIGEST}.small.jpg"])


def fail(config: Config) -> None:
    """Break off after the bytes were written, before their row was."""
    with writing(make_engine(config.database)) as connection:
        here = open_home(connection, "a")
        attach(connection, here, config.files, looked_at(DATA, ""))
        raise RuntimeError


def test_a_file_without_its_row_is_cleared_at_the_next_start(config: Config) -> None:
    with pytest.raises(RuntimeError):
        fail(config)
    assert (rows(config), on_disk(config)) == ([], KEPT)
    assert clear_orphans(config, datetime.now(UTC) - timedelta(hours=1)) == ()
    assert on_disk(config) == KEPT
    assert clear_orphans(config, LATER) == (DIGEST,)
    assert on_disk(config) == []


KILLED = """
import os, signal, sys
from pathlib import Path
from app.services import files
from app.services.homes import open_home
from app.store.engine import make_engine, writing

def killed(*_arguments, **_more):
    os.kill(os.getpid(), signal.SIGKILL)

files.save = killed
data = Path(sys.argv[1])
with writing(make_engine(data / "ways.sqlite3")) as connection:
    sent = files.looked_at(Path(sys.argv[2]).read_bytes(), "x")
    files.attach(connection, open_home(connection, "a"), data / "files", sent)
"""


@pytest.mark.skipif(os.name == "nt", reason="Windows has no signal that kills")
def test_killed_between_file_and_row_there_is_no_row_and_no_orphan_for_long(
    config: Config, tmp_path: Path
) -> None:
    source = tmp_path / "x.jpg"
    source.write_bytes(DATA)
    command = [sys.executable, "-c", KILLED, str(config.data), str(source)]
    ended = subprocess.run(command, check=False, capture_output=True)
    assert ended.returncode == -9, ended.stderr
    assert (rows(config), on_disk(config)) == ([], KEPT)
    clear_orphans(config, LATER)
    assert on_disk(config) == []
    added(config)
    assert rows(config) == [DIGEST]


def test_the_bytes_are_on_the_disk_before_the_row_is(
    config: Config, monkeypatch: pytest.MonkeyPatch
) -> None:
    said: list[str] = []
    synced, replaced = os.fsync, Path.replace

    def sync(handle: int) -> None:
        said.append("folder" if os.path.isdir(f"/proc/self/fd/{handle}") else "file")  # noqa: PTH112
        synced(handle)

    def replace(path: Path, target: Path) -> Path:
        said.append("named")
        return replaced(path, target)

    monkeypatch.setattr("app.store.files.os.fsync", sync)
    monkeypatch.setattr("app.store.files.Path.replace", replace)
    files.write(config.data / "x", b"x")
    assert said == ["file", "named", "folder"]


def test_what_can_still_be_undone_is_no_orphan(config: Config) -> None:
    added(config)
    undone(config)
    assert rows(config) == []
    assert clear_orphans(config, LATER) == ()
    assert on_disk(config) == KEPT


def test_nothing_is_cleared_while_another_writes(
    config: Config, monkeypatch: pytest.MonkeyPatch
) -> None:
    files.keep(config.files, DIGEST, DATA)
    monkeypatch.setattr("app.store.engine.WAIT_S", 0.05)
    with writing(make_engine(config.database)):
        assert clear_orphans(config, LATER) == ()
    assert on_disk(config) == [DIGEST]


def test_what_is_not_ours_is_left_alone(config: Config) -> None:
    files.keep(config.files, DIGEST, DATA)
    (config.files / "notes.txt").write_text("mine", "utf-8")
    (config.files / "mine").mkdir()
    (config.files / "mine" / "letter").write_text("mine", "utf-8")
    clear_orphans(config, LATER)
    assert on_disk(config) == ["letter", "notes.txt"]


def test_a_damaged_file_is_found_and_mended_by_adding_it_again(config: Config) -> None:
    added(config)
    path = files.path_of(config.files, DIGEST)
    path.write_bytes(b"x")
    with reading(make_engine(config.database)) as connection:
        found = open_home(connection, "a").record.attachments
    assert list(unsound(config.files, found)) == [(found[0], "damaged")]
    added(config)
    assert list(unsound(config.files, found)) == []
    path.unlink()
    assert list(unsound(config.files, found)) == [(found[0], "missing")]
    assert not_here(config) == 1


def test_a_copy_takes_the_files_along_and_a_restore_brings_them_back(
    config: Config, tmp_path: Path
) -> None:
    added(config)
    copy = copy_of(config, tmp_path / "home.sqlite3")[0]
    kept = files.path_of(tmp_path / "home.files", DIGEST)
    assert kept.read_bytes() == DATA
    assert kept.stat().st_nlink == 1
    other = Config(data=tmp_path / "other")
    restored(other, copy)
    assert (rows(other), on_disk(other)) == ([DIGEST], [DIGEST])
    assert not_here(other) == 0


def test_a_restore_forgets_no_file_that_a_copy_made_before_names(
    config: Config,
) -> None:
    empty, _ = copy_of(config, None)
    assert not files_beside(empty).exists()
    added(config)
    before = restored(config, empty)
    assert before is not None
    clear_orphans(config, LATER)
    assert on_disk(config) == []
    restored(config, before)
    assert (rows(config), on_disk(config)) == ([DIGEST], [DIGEST])


def test_a_damaged_database_is_moved_aside_with_its_files(config: Config) -> None:
    empty, _ = copy_of(config, None)
    added(config)
    config.database.write_bytes(b"no database" * 99)
    moved = restored(config, empty)
    assert moved is not None
    assert "damaged" in moved.name
    assert files.is_sound(files_beside(moved), DIGEST)
    clear_orphans(config, LATER)
    assert files.is_sound(files_beside(moved), DIGEST)
