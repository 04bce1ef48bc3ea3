"""What came back from somebody who read a record.

A step imports sa and op, never app: it must still run when the app has moved on.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "e6c042aeeea1"
down_revision = "17cc48b49661"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "reply",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("home_id", sa.Integer(), nullable=False),
        sa.Column("at", sa.Text(), nullable=False),
        sa.Column("words", sa.Text(), nullable=False),
        sa.Column("document", sa.Text(), nullable=False),
        sa.Column("turned_down", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["home_id"],
            ["home.id"],
            name=op.f("fk_reply_home_id"),
            ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_reply")),
    )
    op.create_index("ix_reply_home_id", "reply", ["home_id"])


def downgrade() -> None:
    op.drop_index("ix_reply_home_id", table_name="reply")
    op.drop_table("reply")
