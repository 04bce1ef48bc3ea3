"""The number of the network operator; how high a point is.

A step imports sa and op, never app: it must still run when the app has moved on.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "10697e77d182"
down_revision = "fa4c063df9a8"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("home", schema=None) as batch_op:
        batch_op.add_column(
            sa.Column("network_phone", sa.Text(), nullable=False, server_default="")
        )
    with op.batch_alter_table("home", schema=None) as batch_op:
        batch_op.alter_column("network_phone", server_default=None)
    with op.batch_alter_table("point", schema=None) as batch_op:
        batch_op.add_column(sa.Column("height_m", sa.Text(), nullable=True))


def downgrade() -> None:
    with op.batch_alter_table("point", schema=None) as batch_op:
        batch_op.drop_column("height_m")
    with op.batch_alter_table("home", schema=None) as batch_op:
        batch_op.drop_column("network_phone")
