"""The day by which work was done, where its own day is not known.

A step imports sa and op, never app: it must still run when the app has moved on.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "b7d20c3f5a18"
down_revision = "5d1c9a7be204"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("work", schema=None) as batch_op:
        batch_op.add_column(sa.Column("done_before", sa.Text(), nullable=True))


def downgrade() -> None:
    with op.batch_alter_table("work", schema=None) as batch_op:
        batch_op.drop_column("done_before")
