"""History: since when, what each change touched, the record whole, settings.

A step imports sa and op, never app: it must still run when the app has moved on.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from datetime import UTC, datetime
from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "c41d7e90a5b2"
down_revision = "10697e77d182"
branch_labels = None
depends_on = None

AT_ONCE = 500


def upgrade() -> None:
    op.create_table(
        "setting",
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("value", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("name", name=op.f("pk_setting")),
    )
    op.create_table(
        "snapshot",
        sa.Column("change_id", sa.Integer(), nullable=False),
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("record", sa.LargeBinary(), nullable=False),
        sa.ForeignKeyConstraint(
            ["change_id"],
            ["change.id"],
            name=op.f("fk_snapshot_change_id"),
            ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint("change_id", name=op.f("pk_snapshot")),
    )
    op.create_index("ix_snapshot_home_id", "snapshot", ["home_id", "change_id"])
    touch = op.create_table(
        "touch",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("sort", sa.Text(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("change_id", sa.Integer(), nullable=False),
        sa.Column("words", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["change_id"],
            ["change.id"],
            name=op.f("fk_touch_change_id"),
            ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint(
            "home_id", "sort", "ref", "change_id", name=op.f("pk_touch")
        ),
        sqlite_with_rowid=False,
    )
    op.create_index("ix_touch_change_id", "touch", ["change_id"])
    with op.batch_alter_table("change") as change:
        change.create_index("ix_change_home_id_at", ["home_id", "at"])
        change.create_index("ix_change_home_id_undoes", ["home_id", "undoes"])
    _fill(touch)
    _begin()


def downgrade() -> None:
    with op.batch_alter_table("home") as home:
        home.drop_column("began_at")
    with op.batch_alter_table("change") as change:
        change.drop_index("ix_change_home_id_undoes")
        change.drop_index("ix_change_home_id_at")
    for name in ("touch", "snapshot", "setting"):
        op.drop_table(name)


def _begin() -> None:
    """A home is recorded since its first change, as far as the file knows; or now."""
    with op.batch_alter_table("home") as home:
        home.add_column(
            sa.Column("began_at", sa.Text(), nullable=False, server_default="")
        )
    now = datetime.now(UTC).isoformat(timespec="seconds")
    query = sa.text(
        "UPDATE home SET began_at = coalesce("
        "(SELECT min(at) FROM change WHERE home_id = home.id), :now)"
    )
    op.get_bind().execute(query, {"now": now})
    with op.batch_alter_table("home") as home:
        home.alter_column("began_at", server_default=None)


def _fill(touch: sa.Table) -> None:
    """Note what the changes touched that are in the log already."""
    connection = op.get_bind()
    last = 0
    query = sa.text(
        "SELECT id, home_id, sentence, entries FROM change "
        "WHERE id > :last ORDER BY id LIMIT :n"
    )
    while rows := connection.execute(query, {"last": last, "n": AT_ONCE}).all():
        last = rows[-1].id
        touched = [each for row in rows for each in _touched(row)]
        if touched:
            connection.execute(sa.insert(touch), touched)


def _touched(row: Any) -> Iterator[dict[str, Any]]:
    found: dict[tuple[str, str], set[str]] = {}
    for entry in json.loads(row.entries):
        for item in filter(None, (entry["before"], entry["after"])):
            words = found.setdefault((entry["sort"], item["ref"]), {row.sentence})
            words.update((item["ref"], item.get("name") or ""))
    for (sort, ref), words in found.items():
        text = " ".join(sorted(words)).casefold()
        yield {
            "home_id": row.home_id,
            "sort": sort,
            "ref": ref,
            "change_id": row.id,
            "words": text.strip(),
        }
