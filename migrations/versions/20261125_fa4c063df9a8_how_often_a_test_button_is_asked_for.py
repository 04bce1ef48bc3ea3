"""How often a test button is asked for.

A step imports sa and op, never app: it must still run when the app has moved on.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "fa4c063df9a8"
down_revision = "92fa3c74e421"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("device", schema=None) as batch_op:
        batch_op.add_column(
            sa.Column("button_every_months", sa.Integer(), nullable=True)
        )


def downgrade() -> None:
    with op.batch_alter_table("device", schema=None) as batch_op:
        batch_op.drop_column("button_every_months")
