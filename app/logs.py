"""What goes to the console and to the log: starts, upgrades, changes, failures."""

from __future__ import annotations

import logging
from logging.handlers import RotatingFileHandler
from pathlib import Path

FORM = "%(asctime)s %(levelname)s %(name)s: %(message)s"


def configure_logging(folder: Path | None) -> None:
    """Write warnings to the console and everything from INFO up to the log file."""
    console = logging.StreamHandler()
    console.setLevel(logging.WARNING)
    handlers: list[logging.Handler] = [console]
    if folder is not None:
        log = folder / "ways.log"
        handlers.append(RotatingFileHandler(log, maxBytes=1_000_000, backupCount=3))
    logging.basicConfig(level=logging.INFO, format=FORM, handlers=handlers, force=True)
    # A browser asks for more at once than there are threads; that it waits a moment is
    # no news, and would push what the person is to read off the console.
    logging.getLogger("waitress.queue").setLevel(logging.ERROR)
    # A log that cannot be written, as on a full disk, is no news to the console.
    logging.raiseExceptions = False
