"""A stamp that is new with every write of a home, so that what was read can be kept.

A step imports sa and op, never app: it must still run when the app has moved on.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "5d1c9a7be204"
down_revision = "e6c042aeeea1"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("home", sa.Column("stamp", sa.Text(), nullable=True))
    op.execute("UPDATE home SET stamp = lower(hex(randomblob(16)))")


def downgrade() -> None:
    with op.batch_alter_table("home") as home:
        home.drop_column("stamp")
