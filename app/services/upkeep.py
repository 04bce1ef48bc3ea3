"""Look after the file: copy it, and go back to a copy."""

from __future__ import annotations

import logging
from datetime import UTC, datetime
from functools import partial
from pathlib import Path

from sqlalchemy.exc import SQLAlchemyError

from app.config import Config
from app.errors import DatabaseError
from app.services.copies import look_through, make_in
from app.services.running import not_running
from app.store.backup import copy_to, put_back
from app.store.copies import ASKED
from app.store.engine import make_engine, reading, writing
from app.store.migrate import revision_of, upgrade
from app.store.phones import remove_all_phones
from app.store.settings import copies_folder, set_copies_folder

log = logging.getLogger(__name__)


def copy_of(config: Config, target: Path | None) -> tuple[Path, int]:
    """Copy the file, to a path or among the copies; return where, and what it lacks.

    Raises:
        DatabaseError: There is nothing to copy, it does not open, or it cannot be
            written.
    """
    if target is None:
        return make_in(config, config.backups, ASKED, datetime.now(UTC))
    return target, copy_to(config.database, target, look=look_through)


def restored(config: Config, copy: Path) -> Path | None:
    """Put a copy in the file's place, up to date; return where the file is kept.

    Raises:
        DatabaseTooNewError: A newer version of this program made the copy.
        DatabaseError: It is no record of this program, it is damaged, or the program
            is running on these data.
    """
    if revision_of(copy) is None:
        raise DatabaseError(f"{copy} holds no record. Nothing was changed.")
    with not_running(config):
        config.data.mkdir(mode=0o700, parents=True, exist_ok=True)
        kept = put_back(
            copy,
            config.database,
            config.backups,
            at=datetime.now(UTC),
            prepare=partial(_made_ready, _chosen(config)),
        )
    log.info("restored from %s", copy)
    return kept


def _made_ready(chosen: str | None, ready: Path) -> None:
    """Bring a copy up to date, before it takes the file's place.

    It may hold phones that were removed since: each is paired anew.  Where copies go to
    stays as it is.
    """
    upgrade(ready, None)
    with writing(make_engine(ready)) as connection:
        remove_all_phones(connection)
        if chosen is not None:
            set_copies_folder(connection, chosen)


def _chosen(config: Config) -> str | None:
    """Return where copies go to as well; None where the present file does not say."""
    try:
        with reading(make_engine(config.database)) as connection:
            return copies_folder(connection)
    except SQLAlchemyError:
        return None
