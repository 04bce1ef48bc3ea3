"""Rounds of switching off, their readings, and why a device is left on.

A step imports sa and op, never app: it must still run when the app has moved on.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "be48b829bd7d"
down_revision = "6e2bbc7efc0f"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "reading",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("round", sa.Text(), nullable=False),
        sa.Column("point", sa.Text(), nullable=False),
        sa.Column("seen", sa.Text(), nullable=False),
        sa.Column("how", sa.Text(), nullable=False),
        sa.Column("seen_at", sa.Text(), nullable=True),
        sa.Column("seen_by", sa.Text(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "point"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_reading_home_id_point"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_reading_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "round"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_reading_home_id_round"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_reading")),
    )
    op.create_table(
        "round",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("when", sa.Text(), nullable=False),
        sa.Column("manner", sa.Text(), nullable=False),
        sa.Column("stage", sa.Text(), nullable=False),
        sa.Column("how", sa.Text(), nullable=False),
        sa.Column("started_at", sa.Text(), nullable=True),
        sa.Column("started_by", sa.Text(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_round_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_round")),
    )
    with op.batch_alter_table("device", schema=None) as batch_op:
        batch_op.add_column(
            sa.Column("leave_on", sa.Text(), nullable=False, server_default="")
        )
    with op.batch_alter_table("device", schema=None) as batch_op:
        batch_op.alter_column("leave_on", server_default=None)


def downgrade() -> None:
    with op.batch_alter_table("device", schema=None) as batch_op:
        batch_op.drop_column("leave_on")

    op.drop_table("round")
    op.drop_table("reading")
