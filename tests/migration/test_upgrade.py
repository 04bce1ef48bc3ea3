from __future__ import annotations

import shutil
import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.config import Config as AlembicConfig
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory

from app.domain.record import Record
from app.errors import DatabaseError, DatabaseTooNewError
from app.paths import resource_dir
from app.services.homes import open_home
from app.store import migrate
from app.store.engine import make_engine, reading
from app.store.migrate import head_revision, revision_of, upgrade
from app.store.tables import metadata

NEXT_STEP = """\
from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "next"
down_revision = "{head}"
branch_labels = None
depends_on = None


def upgrade() -> None:
{body}
"""
A_COLUMN_MORE = """\
    with op.batch_alter_table("home") as home:
        home.add_column(sa.Column("colour", sa.Text()))
        home.alter_column("name", new_column_name="title")
"""
FAILING = """\
    op.execute("UPDATE home SET title = 'half done'")
    op.execute("INSERT INTO no_such_table VALUES (1)")
"""
A_COLUMN_THEN_A_FAILURE = f"{A_COLUMN_MORE}{FAILING}"
SOMETHING_DANGLING = """\
    op.execute("INSERT INTO item VALUES (99, 'P1', 'point', 1)")
"""


@pytest.fixture
def program_with(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> Callable[[str], None]:
    """Make the program one step newer."""

    def use(body: str) -> None:
        newer = tmp_path / "newer"
        shutil.copytree(resource_dir("migrations"), newer)
        step = NEXT_STEP.format(head=head_revision(), body=body)
        (newer / "versions" / "next.py").write_text(step, "utf-8")
        monkeypatch.setattr(migrate, "resource_dir", lambda _name: newer)

    return use


def columns(database: Path) -> set[str]:
    with closing(sqlite3.connect(database)) as file:
        return {row[1] for row in file.execute("PRAGMA table_info(home)")}


def copies(database: Path) -> list[Path]:
    return sorted((database.parent / "copies").glob("*"))


def run(database: Path) -> Path | None:
    return upgrade(database, database.parent / "copies")


def all_revisions() -> set[str]:
    """Return every shape that a file may have."""
    return set(migrate.revisions())


def test_there_is_one_line_of_steps() -> None:
    config = AlembicConfig()
    config.set_main_option("script_location", str(resource_dir("migrations")))
    config.set_main_option("path_separator", "os")
    steps = ScriptDirectory.from_config(config)
    read = {step.revision: step.down_revision for step in steps.walk_revisions()}
    assert steps.get_heads() == [head_revision()]
    assert migrate.revisions() == read


def test_the_steps_make_the_tables(empty_database: Path) -> None:
    with reading(make_engine(empty_database)) as connection:
        context = MigrationContext.configure(
            connection, opts={"compare_type": True, "compare_server_default": True}
        )
        assert compare_metadata(context, metadata) == []
    assert revision_of(empty_database) == head_revision()


def test_no_step_imports_the_program() -> None:
    steps = list((resource_dir("migrations") / "versions").glob("*.py"))
    assert steps
    for step in steps:
        assert "import app" not in step.read_text("utf-8")
        assert "from app" not in step.read_text("utf-8")


def test_a_new_file_needs_no_copy(tmp_path: Path) -> None:
    database = tmp_path / "new" / "ways.sqlite3"
    assert run(database) is None
    assert [path.name for path in database.parent.iterdir()] == ["ways.sqlite3"]


def test_an_empty_file_is_a_new_file(tmp_path: Path) -> None:
    database = tmp_path / "ways.sqlite3"
    database.touch()
    assert run(database) is None
    assert revision_of(database) == head_revision()


def test_a_second_start_writes_nothing(database: Path) -> None:
    before = database.read_bytes(), database.stat().st_mtime_ns
    assert run(database) is None
    assert (database.read_bytes(), database.stat().st_mtime_ns) == before
    assert copies(database) == []


def test_a_copy_is_made_before_a_step(
    database: Path,
    demo: Record,
    keep: Callable[[Record], int],
    program_with: Callable[[str], None],
) -> None:
    keep(demo)
    old = head_revision()
    program_with(A_COLUMN_MORE)
    copy = run(database)
    assert copy is not None
    assert copies(database) == [copy]
    assert f"before-upgrade-{old}" in copy.name
    assert "colour" not in columns(copy)
    assert {"colour", "title"} <= columns(database)
    assert revision_of(database) == "next"
    with reading(make_engine(copy)) as connection:
        assert open_home(connection, "demo").record == demo


def test_rebuilding_a_table_keeps_what_hangs_on_it(
    database: Path,
    demo: Record,
    keep: Callable[[Record], int],
    program_with: Callable[[str], None],
) -> None:
    keep(demo)
    program_with(A_COLUMN_MORE)
    run(database)
    with closing(sqlite3.connect(database)) as file:
        (points,) = file.execute("SELECT count(*) FROM point").fetchone()
        (items,) = file.execute("SELECT count(*) FROM item").fetchone()
    assert points == len(demo.points)
    assert items == len(demo.by_ref)


@pytest.mark.parametrize(
    ("body", "reason"),
    [
        (A_COLUMN_THEN_A_FAILURE, "no such table: no_such_table"),
        (SOMETHING_DANGLING, "names what is not there"),
    ],
    ids=["failing", "dangling"],
)
def test_a_step_that_fails_changes_nothing(
    database: Path,
    demo: Record,
    keep: Callable[[Record], int],
    program_with: Callable[[str], None],
    body: str,
    reason: str,
) -> None:
    keep(demo)
    program_with(body)
    before = columns(database)
    with pytest.raises(DatabaseError, match=reason) as refusal:
        run(database)
    (copy,) = copies(database)
    assert "Nothing was changed" in str(refusal.value)
    assert str(copy) in str(refusal.value)
    assert columns(database) == before
    assert "_alembic_tmp_home" not in database.read_bytes().decode("latin-1")
    for file in (database, copy):
        with reading(make_engine(file)) as connection:
            assert open_home(connection, "demo").record == demo


def refused(database: Path, error: type[DatabaseError | DatabaseTooNewError]) -> str:
    before = database.read_bytes()
    with pytest.raises(error) as refusal:
        run(database)
    assert database.read_bytes() == before
    assert copies(database) == []
    assert "Nothing was changed" in str(refusal.value)
    return str(refusal.value)


def test_a_newer_file_is_refused_and_left_as_it_is(database: Path) -> None:
    with closing(sqlite3.connect(database)) as file, file:
        file.execute("UPDATE alembic_version SET version_num = 'of next year'")
    assert "by a newer version" in refused(database, DatabaseTooNewError)


def test_a_file_of_another_kind_is_refused(tmp_path: Path) -> None:
    text = tmp_path / "ways.sqlite3"
    text.write_text("Dear diary, " * 1000, "utf-8")
    assert "not a record of this program" in refused(text, DatabaseError)


def test_a_database_of_another_program_is_refused(tmp_path: Path) -> None:
    other = tmp_path / "ways.sqlite3"
    with closing(sqlite3.connect(other)) as file, file:
        file.execute("CREATE TABLE recipe (name TEXT)")
    assert "not a record of this program" in refused(other, DatabaseError)


def test_a_file_cut_short_is_refused(database: Path) -> None:
    data = database.read_bytes()
    database.write_bytes(data[: len(data) // 2])
    assert "damaged" in refused(database, DatabaseError)


def test_a_damaged_file_is_refused(database: Path) -> None:
    data = bytearray(database.read_bytes())
    data[8192:20480] = b"\xa5" * 12288
    database.write_bytes(data)
    assert "damaged" in refused(database, DatabaseError)


def test_what_a_crash_left_half_done_is_rolled_back(
    database: Path, demo: Record, keep: Callable[[Record], int], tmp_path: Path
) -> None:
    keep(demo)
    journal = database.with_name(f"{database.name}-journal")
    crashed = tmp_path / "crashed.sqlite3"
    with closing(sqlite3.connect(database)) as file:
        # With so little room it has to write into the file before it commits.
        file.execute("PRAGMA cache_size = 1")
        file.execute("UPDATE point SET note = hex(zeroblob(1500))")
        shutil.copy(database, crashed)
        shutil.copy(journal, crashed.with_name(f"{crashed.name}-journal"))
    assert revision_of(crashed) == head_revision()
    with reading(make_engine(crashed)) as connection:
        assert open_home(connection, "demo").record == demo


def test_a_folder_in_its_place_is_refused(tmp_path: Path) -> None:
    (tmp_path / "ways.sqlite3").mkdir()
    with pytest.raises(DatabaseError, match="not a record of this program"):
        run(tmp_path / "ways.sqlite3")
