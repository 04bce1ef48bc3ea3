"""label sheets.

A step imports sa and op, never app: it must still run when the app has moved on.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "fc3a0c6c586a"
down_revision = "be48b829bd7d"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "label_sheet",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("columns", sa.Integer(), nullable=False),
        sa.Column("rows", sa.Integer(), nullable=False),
        sa.Column("width_mm", sa.Text(), nullable=False),
        sa.Column("height_mm", sa.Text(), nullable=False),
        sa.Column("left_mm", sa.Text(), nullable=False),
        sa.Column("top_mm", sa.Text(), nullable=False),
        sa.Column("gap_x_mm", sa.Text(), nullable=False),
        sa.Column("gap_y_mm", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_label_sheet")),
    )


def downgrade() -> None:
    op.drop_table("label_sheet")
