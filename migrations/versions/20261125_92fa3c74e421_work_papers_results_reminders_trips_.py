"""Work, papers, test results, reminders, trips, files.

A step imports sa and op, never app: it must still run when the app has moved on.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "92fa3c74e421"
down_revision = "39a2191be7d4"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "attachment",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("sha256", sa.Text(), nullable=False),
        sa.Column("media_type", sa.Text(), nullable=False),
        sa.Column("size", sa.Integer(), nullable=False),
        sa.Column("file_name", sa.Text(), nullable=False),
        sa.Column("caption", sa.Text(), nullable=False),
        sa.Column("taken_on", sa.Text(), nullable=True),
        sa.Column("added_at", sa.Text(), nullable=True),
        sa.Column("added_by", sa.Text(), nullable=False),
        sa.Column("private", sa.Text(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_attachment_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_attachment")),
    )
    op.create_table(
        "occasion",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("about", sa.Text(), nullable=True),
        sa.Column("reminder", sa.Text(), nullable=True),
        sa.Column("done_on", sa.Text(), nullable=False),
        sa.Column("outcome", sa.Text(), nullable=False),
        sa.Column("done_by", sa.Text(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "about"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_occasion_home_id_about"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_occasion_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "reminder"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_occasion_home_id_reminder"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_occasion")),
    )
    op.create_table(
        "paper",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("number", sa.Text(), nullable=False),
        sa.Column("dated", sa.Text(), nullable=True),
        sa.Column("by", sa.Text(), nullable=False),
        sa.Column("work", sa.Text(), nullable=True),
        sa.Column("inspect_again_by", sa.Text(), nullable=True),
        sa.Column("where_kept", sa.Text(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_paper_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "work"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_paper_home_id_work"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_paper")),
    )
    op.create_table(
        "reminder",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("about", sa.Text(), nullable=True),
        sa.Column("next_on", sa.Text(), nullable=True),
        sa.Column("every", sa.Integer(), nullable=True),
        sa.Column("every_unit", sa.Text(), nullable=False),
        sa.Column("state", sa.Text(), nullable=False),
        sa.Column("basis", sa.Text(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "about"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_reminder_home_id_about"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_reminder_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_reminder")),
    )
    op.create_table(
        "result",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("about", sa.Text(), nullable=True),
        sa.Column("paper", sa.Text(), nullable=True),
        sa.Column("tested_on", sa.Text(), nullable=True),
        sa.Column("tested_by", sa.Text(), nullable=False),
        sa.Column("r1_ohm", sa.Text(), nullable=True),
        sa.Column("rn_ohm", sa.Text(), nullable=True),
        sa.Column("r2_ohm", sa.Text(), nullable=True),
        sa.Column("r1_r2_ohm", sa.Text(), nullable=True),
        sa.Column("r2_alone_ohm", sa.Text(), nullable=True),
        sa.Column("live_live_mohm", sa.Text(), nullable=True),
        sa.Column("live_live_over", sa.Text(), nullable=False),
        sa.Column("live_earth_mohm", sa.Text(), nullable=True),
        sa.Column("live_earth_over", sa.Text(), nullable=False),
        sa.Column("polarity", sa.Text(), nullable=False),
        sa.Column("zs_ohm", sa.Text(), nullable=True),
        sa.Column("rcd_ms", sa.Text(), nullable=True),
        sa.Column("rcd_button", sa.Text(), nullable=False),
        sa.Column("ze_ohm", sa.Text(), nullable=True),
        sa.Column("fault_current_ka", sa.Text(), nullable=True),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "about"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_result_home_id_about"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "paper"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_result_home_id_paper"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_result_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_result")),
    )
    op.create_table(
        "spot",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("attachment", sa.Text(), nullable=False),
        sa.Column("across", sa.Integer(), nullable=False),
        sa.Column("down", sa.Integer(), nullable=False),
        sa.Column("about", sa.Text(), nullable=True),
        sa.Column("words", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "about"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_spot_home_id_about"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "attachment"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_spot_home_id_attachment"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_spot_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_spot")),
    )
    op.create_table(
        "trip",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("happened_at", sa.Text(), nullable=True),
        sa.Column("moved", sa.Text(), nullable=False),
        sa.Column("device", sa.Text(), nullable=True),
        sa.Column("outcome", sa.Text(), nullable=False),
        sa.Column("told_by", sa.Text(), nullable=False),
        sa.Column("trail", sa.Text(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "device"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_trip_home_id_device"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_trip_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_trip")),
    )
    op.create_table(
        "work",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("job", sa.Text(), nullable=False),
        sa.Column("state", sa.Text(), nullable=False),
        sa.Column("planned_for", sa.Text(), nullable=True),
        sa.Column("done_on", sa.Text(), nullable=True),
        sa.Column("done_by", sa.Text(), nullable=False),
        sa.Column("done_by_name", sa.Text(), nullable=False),
        sa.Column("told", sa.Text(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_work_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_work")),
    )


def downgrade() -> None:
    op.drop_table("work")
    op.drop_table("trip")
    op.drop_table("spot")
    op.drop_table("result")
    op.drop_table("reminder")
    op.drop_table("paper")
    op.drop_table("occasion")
    op.drop_table("attachment")
