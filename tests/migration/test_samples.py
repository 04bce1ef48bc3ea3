"""A file that any former shape of the program wrote is here whole after the upgrade.

Each sample is the demo home as the last program of that shape kept it, with three
changes and one undoing, and beside it the document that this program itself wrote.
"""

from __future__ import annotations

import gzip
import json
import sqlite3
import subprocess
import sys
import time
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest

from app.errors import DatabaseError
from app.interchange import from_document, to_document
from app.services.homes import open_home, undo
from app.store.changes import latest_changes
from app.store.engine import make_engine, reading, writing
from app.store.migrate import head_revision, revision_of, upgrade
from tests.migration.test_upgrade import all_revisions

SAMPLES = Path(__file__).parent / "samples"
SHAPES = sorted(path.name.partition(".")[0] for path in SAMPLES.glob("*.sqlite3.gz"))
SAYS_NOTHING: tuple[Any, ...] = ("unknown", "", None, [])
OLDEST = "6e2bbc7efc0f"
UPGRADING = """
import sys
from pathlib import Path
from app.store.migrate import upgrade
print("begun", flush=True)
upgrade(Path(sys.argv[1]), Path(sys.argv[2]))
"""


def sample(shape: str, folder: Path) -> Path:
    database = folder / "ways.sqlite3"
    packed = (SAMPLES / f"{shape}.sqlite3.gz").read_bytes()
    database.write_bytes(gzip.decompress(packed))
    return database


def document_then(shape: str) -> Any:
    return json.loads(gzip.decompress((SAMPLES / f"{shape}.json.gz").read_bytes()))


def document_now(database: Path) -> Any:
    with reading(make_engine(database)) as connection:
        return json.loads(to_document(open_home(connection, "demo").record))


def differences(now: Any, then: Any, place: str = "") -> list[str]:
    """Return where two documents differ; a field that came later must say nothing."""
    if isinstance(then, dict) and isinstance(now, dict):
        said = {name: now[name] for name in now.keys() - then.keys()}
        found = [f"{place}.{n}: {v}" for n, v in said.items() if v not in SAYS_NOTHING]
        for name, value in then.items():
            found += differences(now.get(name), value, f"{place}.{name}")
        return found
    if isinstance(then, list) and isinstance(now, list) and len(then) == len(now):
        pairs = enumerate(zip(now, then, strict=True))
        return [f for n, p in pairs for f in differences(*p, f"{place}.{n}")]
    return [] if now == then else [f"{place}: {then} became {now}"]


def rows(database: Path) -> dict[str, list[dict[str, Any]]]:
    """Return all that a file holds, by table."""
    with closing(sqlite3.connect(database)) as file:
        file.row_factory = sqlite3.Row
        query = "SELECT name FROM sqlite_master WHERE type = 'table'"
        names = [row[0] for row in file.execute(query)]
        return {
            name: [dict(row) for row in file.execute(f'SELECT * FROM "{name}"')]  # noqa: S608
            for name in names
        }


def test_every_former_shape_has_its_sample() -> None:
    assert set(SHAPES) >= all_revisions() - {head_revision()}


@pytest.mark.parametrize("shape", SHAPES)
def test_what_it_held_is_here(shape: str, tmp_path: Path) -> None:
    database = sample(shape, tmp_path)
    assert revision_of(database) == shape
    upgrade(database, tmp_path / "copies")
    assert differences(document_now(database), document_then(shape)) == []


@pytest.mark.parametrize("shape", SHAPES)
def test_no_row_is_lost_and_no_value_changed(shape: str, tmp_path: Path) -> None:
    database = sample(shape, tmp_path)
    before = rows(database)
    upgrade(database, tmp_path / "copies")
    after = rows(database)
    del before["alembic_version"]
    for table, old in before.items():
        new = after[table]
        kept = [{name: row[name] for name in old[0]} for row in new] if old else []
        assert kept[: len(old)] == old, table


@pytest.mark.parametrize("shape", SHAPES)
def test_its_changes_can_still_be_undone(shape: str, tmp_path: Path) -> None:
    database = sample(shape, tmp_path)
    upgrade(database, tmp_path / "copies")
    with writing(make_engine(database)) as connection:
        here = open_home(connection, "demo")
        undone, renamed_light, _renamed, added = latest_changes(connection, here.key, 4)
        assert undone.sentence == "Undone: Renamed the home."
        undo(connection, here, renamed_light.key)
        undo(connection, open_home(connection, "demo"), added.key)
        left = open_home(connection, "demo").record
    assert "P900" not in left.by_ref
    assert from_document(to_document(left).encode()) == left


def test_an_end_half_way_leaves_the_old_file(tmp_path: Path) -> None:
    """Killed at ten moments of an upgrade, it opens as it was, or as it was to be."""
    ended = set()
    for delay in (0, 0.02, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5):
        folder = tmp_path / f"{delay}"
        folder.mkdir()
        database = sample(OLDEST, folder)
        killed_while_upgrading(database, folder / "copies", delay)
        shape = revision_of(database)
        ended.add(shape)
        assert shape in (OLDEST, head_revision())
        upgrade(database, folder / "copies")
        now, then = document_now(database), document_then(OLDEST)
        assert differences(now, then) == []
        for copy in (folder / "copies").glob("*.sqlite3"):
            assert revision_of(copy) == OLDEST
    assert OLDEST in ended


def killed_while_upgrading(database: Path, copies: Path, delay: float) -> None:
    command = [sys.executable, "-c", UPGRADING, str(database), str(copies)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as child:
        assert child.stdout is not None
        assert child.stdout.readline() == "begun\n"
        time.sleep(delay)
        child.kill()


def test_a_sample_that_is_cut_off_is_refused(tmp_path: Path) -> None:
    database = sample(OLDEST, tmp_path)
    database.write_bytes(database.read_bytes()[:40_000])
    with pytest.raises(DatabaseError, match="damaged"):
        upgrade(database, tmp_path / "copies")
