"""column matches.

A step imports sa and op, never app: it must still run when the app has moved on.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "c1a7e5d90b42"
down_revision = "c41d7e90a5b2"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "column_match",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("headings", sa.Text(), nullable=False),
        sa.Column("columns", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_column_match")),
        sa.UniqueConstraint("kind", "headings", name=op.f("uq_column_match_kind")),
    )


def downgrade() -> None:
    op.drop_table("column_match")
