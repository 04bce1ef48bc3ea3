"""Look after the file: copy it, and go back to a copy."""

from __future__ import annotations

import logging
from datetime import UTC, datetime
from pathlib import Path

from sqlalchemy.exc import SQLAlchemyError

from app.config import Config
from app.errors import DatabaseError
from app.store.backup import back_up, check, copy_to, put_back
from app.store.copies import ASKED
from app.store.engine import make_engine, reading, writing
from app.store.migrate import revision_of, upgrade
from app.store.phones import remove_all_phones
from app.store.settings import copies_folder, set_copies_folder

log = logging.getLogger(__name__)


def copy_of(config: Config, target: Path | None) -> Path:
    """Copy the file, to a path or among the copies; return where it is.

    Raises:
        DatabaseError: There is nothing to copy, or it cannot be written.
    """
    if target is None:
        now = datetime.now(UTC)
        return back_up(config.database, config.backups, note=ASKED, at=now)
    copy_to(config.database, target)
    return target


def restored(config: Config, copy: Path) -> Path | None:
    """Put a copy in the file's place, up to date; return where the file is kept.

    Raises:
        DatabaseTooNewError: A newer version of this program made the copy.
        DatabaseError: It is no record of this program, or it is damaged.
    """
    if revision_of(copy) is None:
        raise DatabaseError(f"{copy} holds no record. Nothing was changed.")
    check(copy)
    config.data.mkdir(mode=0o700, parents=True, exist_ok=True)
    chosen = _chosen(config)
    kept = put_back(copy, config.database, config.backups, at=datetime.now(UTC))
    upgrade(config.database, config.backups)
    # A copy may hold phones that were removed since; each is paired anew.
    with writing(make_engine(config.database)) as connection:
        remove_all_phones(connection)
        if chosen is not None:
            set_copies_folder(connection, chosen)
    log.info("restored from %s", copy)
    return kept


def _chosen(config: Config) -> str | None:
    """Return where copies go to as well; None where the present file does not say."""
    try:
        with reading(make_engine(config.database)) as connection:
            return copies_folder(connection)
    except SQLAlchemyError:
        return None
