"""Whether the load of a circuit is held back when the home draws much.

A step imports sa and op, never app: it must still run when the app has moved on.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "bbc3e73db55b"
down_revision = "fc3a0c6c586a"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("circuit", schema=None) as batch_op:
        batch_op.add_column(
            sa.Column("managed", sa.Text(), nullable=False, server_default="unknown")
        )
    with op.batch_alter_table("circuit", schema=None) as batch_op:
        batch_op.alter_column("managed", server_default=None)


def downgrade() -> None:
    with op.batch_alter_table("circuit", schema=None) as batch_op:
        batch_op.drop_column("managed")
