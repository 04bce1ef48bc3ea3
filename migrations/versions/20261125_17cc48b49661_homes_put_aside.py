"""Homes put aside.

A step imports sa and op, never app: it must still run when the app has moved on.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "17cc48b49661"
down_revision = "c1a7e5d90b42"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("home", sa.Column("archived_at", sa.Text(), nullable=True))


def downgrade() -> None:
    op.drop_column("home", "archived_at")
