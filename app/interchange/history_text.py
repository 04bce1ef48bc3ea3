"""Changes as plain text for a terminal."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import datetime
from textwrap import fill

from app.domain.history import Compared, Happened
from app.domain.told import Told
from app.domain.uk_time import uk_time
from app.domain.words import day

WIDTH = 78
HERE = "this computer"


def history_text(found: Iterable[Happened], ref: str = "") -> str:
    """Return changes as text; of one item only what it met, if one is named."""
    lines = [line for each in found for line in _change(each, ref)]
    return "\n".join(lines) if lines else "Nothing was changed."


def compared_text(found: Compared) -> str:
    """Return what differs between two moments as text."""
    head = f"{_when(found.earlier)} → {_when(found.later)}"
    lines = [line for item in found.items for line in _item(item)]
    return "\n".join((head, *(lines or ["Nothing differs."])))


def _change(change: Happened, ref: str) -> Iterator[str]:
    state = ", undone since" if change.undone_by else ""
    by = change.made_by or HERE
    yield f"{change.number}. {_when(change.at)}, from {by}{state}"
    yield _wrapped(change.sentence, "  ")
    for item in change.items:
        if not ref or item.ref == ref:
            yield from _item(item)


def _item(item: Told) -> Iterator[str]:
    yield _wrapped(f"{item.name}: {item.what}", "  ")
    yield from (_wrapped(sentence, "    ") for sentence in item.sentences)


def _when(moment: str) -> str:
    local = uk_time(datetime.fromisoformat(moment))
    return f"{day(local)}, {local:%H:%M} {local:%Z}"


def _wrapped(text: str, before: str) -> str:
    return fill(text, WIDTH, initial_indent=before, subsequent_indent=f"{before}  ")
