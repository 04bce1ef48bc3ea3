"""Run the steps on the connection handed over, or on the file named with ``-x db=``."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from alembic import context
from sqlalchemy import Connection, TypeDecorator

from app.store.engine import make_engine
from app.store.tables import metadata


def render_item(kind: str, item: Any, _context: Any) -> str | bool:
    """Write our own column types as the plain type that they store."""
    if kind == "type" and isinstance(item, TypeDecorator):
        return f"sa.{type(item.impl).__name__}()"
    return False


def run(connection: Connection) -> None:
    context.configure(
        connection=connection,
        target_metadata=metadata,
        render_as_batch=True,
        compare_type=True,
        compare_server_default=True,
        transactional_ddl=True,
        render_item=render_item,
    )
    with context.begin_transaction():
        context.run_migrations()


given = context.config.attributes.get("connection")
if given is not None:
    run(given)
else:
    name = context.get_x_argument(as_dictionary=True)["db"]
    with make_engine(Path(name), foreign_keys=False).begin() as opened:
        run(opened)
