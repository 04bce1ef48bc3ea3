"""What goes to the console and to the log: starts, upgrades, changes, failures."""

from __future__ import annotations

import logging
import os
import re
from io import TextIOWrapper
from logging.handlers import RotatingFileHandler
from pathlib import Path
from typing import Any

FORM = "%(asctime)s %(levelname)s %(name)s: %(message)s"
# Controls of both ranges: they end lines, and give a console that shows them orders.
CONTROLS = re.compile(r"[\x00-\x1f\x7f-\x9f\u2028\u2029]")
BUT_LINES = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f]")


class OneLine(logging.Formatter):
    """Writes a message on one line, so that no text in it passes for another."""

    def formatMessage(self, record: logging.LogRecord) -> str:  # noqa: N802
        """Return the line, its controls as codes."""
        return CONTROLS.sub(_code, super().formatMessage(record))

    def formatException(self, ei: Any) -> str:  # noqa: N802
        """Return where it went wrong, in lines that hold no other control."""
        return BUT_LINES.sub(_code, super().formatException(ei))


class OwnersFile(RotatingFileHandler):
    """A log that its owner only can read, where the system knows owners."""

    def _open(self) -> TextIOWrapper:
        handle = os.open(
            self.baseFilename, os.O_WRONLY | os.O_APPEND | os.O_CREAT, 0o600
        )
        return TextIOWrapper(os.fdopen(handle, "ab"), encoding="utf-8")


def _code(found: re.Match[str]) -> str:
    return found[0].encode("unicode_escape").decode()


def configure_logging(folder: Path | None) -> None:
    """Write warnings to the console and everything from INFO up to the log file."""
    console = logging.StreamHandler()
    console.setLevel(logging.WARNING)
    handlers: list[logging.Handler] = [console]
    if folder is not None:
        log = folder / "ways.log"
        handlers.append(OwnersFile(log, maxBytes=1_000_000, backupCount=3))
    for handler in handlers:
        handler.setFormatter(OneLine(FORM))
    logging.basicConfig(level=logging.INFO, handlers=handlers, force=True)
    # A browser asks for more at once than there are threads; that it waits a moment is
    # no news, and would push what the person is to read off the console.
    logging.getLogger("waitress.queue").setLevel(logging.ERROR)
    # A log that cannot be written, as on a full disk, is no news to the console.
    logging.raiseExceptions = False
