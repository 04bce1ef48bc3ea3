"""phones.

A step imports sa and op, never app: it must still run when the app has moved on.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "84025473cb30"
down_revision = "fc3a0c6c586a"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "phone",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("token_hash", sa.Text(), nullable=False),
        sa.Column("paired_at", sa.Text(), nullable=False),
        sa.Column("seen_at", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_phone")),
        sa.UniqueConstraint("token_hash", name=op.f("uq_phone_token_hash")),
    )
    with op.batch_alter_table("change") as change:
        change.add_column(sa.Column("made_by", sa.Text(), nullable=True))


def downgrade() -> None:
    with op.batch_alter_table("change") as change:
        change.drop_column("made_by")
    op.drop_table("phone")
