"""What is set for the whole file."""

from __future__ import annotations

from sqlalchemy import Connection, delete, insert, select

from app.store import tables

COMPUTER = "name of this computer"
COPIES = "folder of the copies"
NEWEST_HOMES = "forms of the newest homes"
MOST_NEWEST = 20


def computer_name(connection: Connection) -> str:
    """Return what changes made on this computer are signed with; empty: nothing."""
    return _value(connection, COMPUTER)


def set_computer_name(connection: Connection, name: str) -> None:
    """Write what changes made on this computer are signed with from now on."""
    _set(connection, COMPUTER, name)


def copies_folder(connection: Connection) -> str:
    """Return the folder that copies go to as well; empty: none."""
    return _value(connection, COPIES)


def set_copies_folder(connection: Connection, folder: str) -> None:
    """Write the folder that copies go to as well from now on; empty: none."""
    _set(connection, COPIES, folder)


def home_sent_as(connection: Connection, once: str) -> str:
    """Return the home that the form of this key made; empty: none of the newest."""
    return dict(_newest_homes(connection)).get(once, "")


def set_home_sent_as(connection: Connection, once: str, ref: str) -> None:
    """Write which form made the newest home; the oldest is forgotten."""
    made = [(once, ref), *_newest_homes(connection)][:MOST_NEWEST]
    _set(connection, NEWEST_HOMES, "\n".join(f"{key} {home}" for key, home in made))


def _newest_homes(connection: Connection) -> list[tuple[str, str]]:
    lines = _value(connection, NEWEST_HOMES).splitlines()
    return [(key, ref) for key, _, ref in (line.partition(" ") for line in lines)]


def _value(connection: Connection, name: str) -> str:
    setting = tables.setting
    query = select(setting.c.value).where(setting.c.name == name)
    return connection.execute(query).scalar() or ""


def _set(connection: Connection, name: str, value: str) -> None:
    setting = tables.setting
    connection.execute(delete(setting).where(setting.c.name == name))
    connection.execute(insert(setting).values(name=name, value=value))
