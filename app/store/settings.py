"""What is set for the whole file."""

from __future__ import annotations

from sqlalchemy import Connection, delete, insert, select

from app.store import tables

COMPUTER = "name of this computer"


def computer_name(connection: Connection) -> str:
    """Return what changes made on this computer are signed with; empty: nothing."""
    setting = tables.setting
    query = select(setting.c.value).where(setting.c.name == COMPUTER)
    return connection.execute(query).scalar() or ""


def set_computer_name(connection: Connection, name: str) -> None:
    """Write what changes made on this computer are signed with from now on."""
    setting = tables.setting
    connection.execute(delete(setting).where(setting.c.name == COMPUTER))
    connection.execute(insert(setting).values(name=COMPUTER, value=name))
