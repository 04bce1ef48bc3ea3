"""Label sheets of one's own: kept in the file, of no home."""

from __future__ import annotations

from sqlalchemy import Connection, delete, insert, select

from app.domain.labels.sheet import LabelSheet
from app.domain.record import specs
from app.store.tables import label_sheet

_COLUMNS = [label_sheet.c[spec.name] for spec in specs(LabelSheet)]


def own_sheets(connection: Connection) -> dict[int, LabelSheet]:
    """Return the sheets that were added, by their key, in the order of adding."""
    rows = connection.execute(
        select(label_sheet.c.id, *_COLUMNS).order_by(label_sheet.c.id)
    )
    found = [dict(row) for row in rows.mappings()]
    return {row.pop("id"): LabelSheet.model_validate(row) for row in found}


def add_sheet(connection: Connection, sheet: LabelSheet) -> int:
    """Keep a sheet; return its key, or that of one just like it."""
    for key, kept in own_sheets(connection).items():
        if kept == sheet:
            return key
    values = sheet.model_dump()
    return int(connection.execute(insert(label_sheet).values(values)).lastrowid)


def remove_sheet(connection: Connection, key: int) -> None:
    """Remove a sheet; one that is not there stays so."""
    connection.execute(delete(label_sheet).where(label_sheet.c.id == key))
