"""first tables.

A step imports sa and op, never app: it must still run when the app has moved on.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "6e2bbc7efc0f"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "home",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("nation", sa.Text(), nullable=False),
        sa.Column("dwelling", sa.Text(), nullable=False),
        sa.Column("tenure", sa.Text(), nullable=False),
        sa.Column("storeys", sa.Integer(), nullable=True),
        sa.Column("floor_area_m2", sa.Text(), nullable=True),
        sa.Column("year_built", sa.Integer(), nullable=True),
        sa.Column("notes", sa.Text(), nullable=False),
        sa.Column("earthing", sa.Text(), nullable=False),
        sa.Column("earthing_basis", sa.Text(), nullable=False),
        sa.Column("earthing_note", sa.Text(), nullable=False),
        sa.Column("phases", sa.Text(), nullable=False),
        sa.Column("looped", sa.Text(), nullable=False),
        sa.Column("ze_ohm", sa.Text(), nullable=True),
        sa.Column("ze_basis", sa.Text(), nullable=False),
        sa.Column("fault_current_ka", sa.Text(), nullable=True),
        sa.Column("fault_current_basis", sa.Text(), nullable=False),
        sa.Column("mpan", sa.Text(), nullable=False),
        sa.Column("deleted_at", sa.Text(), nullable=True),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_home")),
        sa.UniqueConstraint("ref", name=op.f("uq_home_ref")),
    )
    op.create_table(
        "change",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("at", sa.Text(), nullable=False),
        sa.Column("sentence", sa.Text(), nullable=False),
        sa.Column("entries", sa.Text(), nullable=False),
        sa.Column("undoes", sa.Integer(), nullable=True),
        sa.Column("once", sa.Text(), nullable=True),
        sa.ForeignKeyConstraint(
            ["home_id"], ["home.id"], name=op.f("fk_change_home_id"), ondelete="CASCADE"
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_change")),
        sa.UniqueConstraint("home_id", "once", name=op.f("uq_change_home_id")),
    )
    with op.batch_alter_table("change", schema=None) as batch_op:
        batch_op.create_index("ix_change_home_id", ["home_id"], unique=False)

    op.create_table(
        "item",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("sort", sa.Text(), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id"], ["home.id"], name=op.f("fk_item_home_id"), ondelete="CASCADE"
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_item")),
    )
    op.create_table(
        "board",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("room", sa.Text(), nullable=True),
        sa.Column("fed_from", sa.Text(), nullable=True),
        sa.Column("owner", sa.Text(), nullable=False),
        sa.Column("enclosure", sa.Text(), nullable=False),
        sa.Column("year", sa.Integer(), nullable=True),
        sa.Column("earthing", sa.Text(), nullable=False),
        sa.Column("surge_protection", sa.Text(), nullable=False),
        sa.Column("blanks_missing", sa.Text(), nullable=False),
        sa.Column("chart", sa.Text(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "fed_from"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_board_home_id_fed_from"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_board_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "room"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_board_home_id_room"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_board")),
    )
    op.create_table(
        "circuit",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("number", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("use", sa.Text(), nullable=False),
        sa.Column("arrangement", sa.Text(), nullable=False),
        sa.Column("cable", sa.Text(), nullable=False),
        sa.Column("line_mm2", sa.Text(), nullable=True),
        sa.Column("cpc_mm2", sa.Text(), nullable=True),
        sa.Column("has_cpc", sa.Text(), nullable=False),
        sa.Column("colours", sa.Text(), nullable=False),
        sa.Column("method", sa.Text(), nullable=False),
        sa.Column("length_m", sa.Text(), nullable=True),
        sa.Column("grouped_with", sa.Integer(), nullable=True),
        sa.Column("ambient_c", sa.Integer(), nullable=True),
        sa.Column("insulation_mm", sa.Integer(), nullable=True),
        sa.Column("installed", sa.Text(), nullable=False),
        sa.Column("connected_w", sa.Text(), nullable=True),
        sa.Column("floor_area_m2", sa.Text(), nullable=True),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_circuit_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_circuit")),
    )
    op.create_table(
        "control",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("controller", sa.Text(), nullable=False),
        sa.Column("controlled", sa.Text(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "controlled"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_control_home_id_controlled"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "controller"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_control_home_id_controller"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_control_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_control")),
    )
    op.create_table(
        "device",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("board", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("way", sa.Text(), nullable=False),
        sa.Column("label_found", sa.Text(), nullable=True),
        sa.Column("in_use", sa.Text(), nullable=False),
        sa.Column("fed_from", sa.Text(), nullable=True),
        sa.Column("second_feed", sa.Text(), nullable=True),
        sa.Column("rated_current_a", sa.Text(), nullable=True),
        sa.Column("curve", sa.Text(), nullable=False),
        sa.Column("residual_current_ma", sa.Text(), nullable=True),
        sa.Column("rcd_type", sa.Text(), nullable=False),
        sa.Column("time_delayed", sa.Text(), nullable=False),
        sa.Column("poles", sa.Text(), nullable=False),
        sa.Column("breaking_capacity_ka", sa.Text(), nullable=True),
        sa.Column("fuse_wire_a", sa.Text(), nullable=True),
        sa.Column("phase", sa.Text(), nullable=False),
        sa.Column("modules", sa.Integer(), nullable=True),
        sa.Column("when", sa.Text(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "board"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_device_home_id_board"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "fed_from"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_device_home_id_fed_from"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_device_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "second_feed"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_device_home_id_second_feed"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_device")),
    )
    op.create_table(
        "intake",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("owner", sa.Text(), nullable=False),
        sa.Column("fed_from", sa.Text(), nullable=True),
        sa.Column("second_feed", sa.Text(), nullable=True),
        sa.Column("room", sa.Text(), nullable=True),
        sa.Column("basis", sa.Text(), nullable=False),
        sa.Column("printed", sa.Text(), nullable=False),
        sa.Column("rated_current_a", sa.Text(), nullable=True),
        sa.Column("poles", sa.Text(), nullable=False),
        sa.Column("entry", sa.Text(), nullable=False),
        sa.Column("csa_mm2", sa.Text(), nullable=True),
        sa.Column("length_m", sa.Text(), nullable=True),
        sa.Column("service", sa.Text(), nullable=False),
        sa.Column("seal", sa.Text(), nullable=False),
        sa.Column("condition", sa.Text(), nullable=False),
        sa.Column("when", sa.Text(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "fed_from"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_intake_home_id_fed_from"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_intake_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "room"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_intake_home_id_room"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "second_feed"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_intake_home_id_second_feed"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_intake")),
    )
    op.create_table(
        "link",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("owner", sa.Text(), nullable=False),
        sa.Column("field", sa.Text(), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("target", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "owner"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_link_home_id_owner"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "target"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_link_home_id_target"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint(
            "home_id", "owner", "field", "position", name=op.f("pk_link")
        ),
    )
    op.create_table(
        "point",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("room", sa.Text(), nullable=True),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("place", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("count", sa.Integer(), nullable=False),
        sa.Column("connection", sa.Text(), nullable=False),
        sa.Column("fuse_a", sa.Text(), nullable=True),
        sa.Column("residual_current_ma", sa.Text(), nullable=True),
        sa.Column("care", sa.Text(), nullable=False),
        sa.Column("load_w", sa.Text(), nullable=True),
        sa.Column("outdoor", sa.Text(), nullable=False),
        sa.Column("ip", sa.Text(), nullable=False),
        sa.Column("current", sa.Text(), nullable=False),
        sa.Column("battery_backed", sa.Text(), nullable=False),
        sa.Column("looked_behind", sa.Text(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_point_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "room"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_point_home_id_room"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_point")),
    )
    op.create_table(
        "room",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("storey", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("has_bath", sa.Text(), nullable=False),
        sa.Column("has_shower", sa.Text(), nullable=False),
        sa.Column("has_basin", sa.Text(), nullable=False),
        sa.Column("has_pool", sa.Text(), nullable=False),
        sa.Column("looked_at", sa.Text(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_room_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_room")),
    )
    op.create_table(
        "source",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("present", sa.Text(), nullable=False),
        sa.Column("owner", sa.Text(), nullable=False),
        sa.Column("when", sa.Text(), nullable=False),
        sa.Column("runs_without_network", sa.Text(), nullable=False),
        sa.Column("joins", sa.Text(), nullable=True),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "joins"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_source_home_id_joins"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_source_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_source")),
    )
    op.create_table(
        "tie",
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.Text(), nullable=False),
        sa.Column("point", sa.Text(), nullable=False),
        sa.Column("tied_to", sa.Text(), nullable=False),
        sa.Column("role", sa.Text(), nullable=False),
        sa.Column("grade", sa.Text(), nullable=False),
        sa.Column("seen_on", sa.Text(), nullable=True),
        sa.Column("seen_by", sa.Text(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id", "point"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_tie_home_id_point"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "ref"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_tie_home_id_ref"),
            ondelete="CASCADE",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["home_id", "tied_to"],
            ["item.home_id", "item.ref"],
            name=op.f("fk_tie_home_id_tied_to"),
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("home_id", "ref", name=op.f("pk_tie")),
    )


def downgrade() -> None:
    op.drop_table("tie")
    op.drop_table("source")
    op.drop_table("room")
    op.drop_table("point")
    op.drop_table("link")
    op.drop_table("intake")
    op.drop_table("device")
    op.drop_table("control")
    op.drop_table("circuit")
    op.drop_table("board")
    op.drop_table("item")
    with op.batch_alter_table("change", schema=None) as batch_op:
        batch_op.drop_index("ix_change_home_id")

    op.drop_table("change")
    op.drop_table("home")
