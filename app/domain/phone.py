"""A telephone number as a person writes it, and as a telephone dials it."""

from __future__ import annotations

import re

FEWEST, MOST = 3, 15
_WRITTEN = re.compile(r"\+?[0-9()\s.-]+")


def checked_phone(text: str) -> str:
    """Return a number as written, spaces tidied; empty stays empty.

    Raises:
        ValueError: It is no number of three to fifteen digits (ITU-T E.164's most).
    """
    tidied = " ".join(text.split())
    if not tidied:
        return ""
    if not _WRITTEN.fullmatch(tidied) or not FEWEST <= len(_digits(tidied)) <= MOST:
        raise ValueError("is no telephone number: write digits and spaces")
    return tidied


def dialled(text: str) -> str:
    """Return a number as it is dialled: digits, with a leading plus if it has one."""
    return ("+" if text.startswith("+") else "") + _digits(text)


def _digits(text: str) -> str:
    return "".join(re.findall(r"[0-9]", text))
