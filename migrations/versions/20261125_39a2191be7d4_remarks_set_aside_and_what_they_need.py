"""Remarks set aside, and the facts that remarks need.

A step imports sa and op, never app: it must still run when the app has moved on.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "39a2191be7d4"
down_revision = "bbc3e73db55b"
branch_labels = None
depends_on = None

# The default is for the rows that are there; new ones always say something.
WITHOUT_DEFAULT = {
    "board": ("second_supply_notice", "condition", "paper"),
    "circuit": ("paper",),
    "point": ("metal", "condition"),
}


def upgrade() -> None:
    op.create_table(
        "aside",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("remark", sa.Text(), nullable=False),
        sa.Column("about", sa.Text(), nullable=True),
        sa.Column("reason", sa.Text(), nullable=False),
        sa.Column("day", sa.Text(), nullable=True),
        sa.Column("facts", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "about"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_aside_home_id_about"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_aside_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_aside")),
    )
    with op.batch_alter_table("board", schema=None) as batch_op:
        batch_op.add_column(
            sa.Column(
                "second_supply_notice",
                sa.Text(),
                nullable=False,
                server_default="unknown",
            )
        )
        batch_op.add_column(
            sa.Column("condition", sa.Text(), nullable=False, server_default="unknown")
        )
        batch_op.add_column(
            sa.Column("paper", sa.Text(), nullable=False, server_default="unknown")
        )

    with op.batch_alter_table("circuit", schema=None) as batch_op:
        batch_op.add_column(
            sa.Column("paper", sa.Text(), nullable=False, server_default="unknown")
        )

    with op.batch_alter_table("device", schema=None) as batch_op:
        batch_op.add_column(sa.Column("button_pressed_on", sa.Text(), nullable=True))

    with op.batch_alter_table("home", schema=None) as batch_op:
        batch_op.add_column(sa.Column("inspected_on", sa.Text(), nullable=True))
        batch_op.add_column(sa.Column("inspect_again_by", sa.Text(), nullable=True))

    with op.batch_alter_table("intake", schema=None) as batch_op:
        batch_op.add_column(sa.Column("resistance_ohm", sa.Text(), nullable=True))

    with op.batch_alter_table("point", schema=None) as batch_op:
        batch_op.add_column(
            sa.Column("metal", sa.Text(), nullable=False, server_default="unknown")
        )
        batch_op.add_column(
            sa.Column("condition", sa.Text(), nullable=False, server_default="unknown")
        )
        batch_op.add_column(sa.Column("from_bath_m", sa.Text(), nullable=True))
    for table, names in WITHOUT_DEFAULT.items():
        with op.batch_alter_table(table, schema=None) as batch_op:
            for name in names:
                batch_op.alter_column(name, server_default=None)


def downgrade() -> None:
    with op.batch_alter_table("point", schema=None) as batch_op:
        batch_op.drop_column("from_bath_m")
        batch_op.drop_column("condition")
        batch_op.drop_column("metal")

    with op.batch_alter_table("intake", schema=None) as batch_op:
        batch_op.drop_column("resistance_ohm")

    with op.batch_alter_table("home", schema=None) as batch_op:
        batch_op.drop_column("inspect_again_by")
        batch_op.drop_column("inspected_on")

    with op.batch_alter_table("device", schema=None) as batch_op:
        batch_op.drop_column("button_pressed_on")

    with op.batch_alter_table("circuit", schema=None) as batch_op:
        batch_op.drop_column("paper")

    with op.batch_alter_table("board", schema=None) as batch_op:
        batch_op.drop_column("paper")
        batch_op.drop_column("condition")
        batch_op.drop_column("second_supply_notice")

    op.drop_table("aside")
