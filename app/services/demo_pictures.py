"""Two pictures of the demo home's first board: as found, and with new labels."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from app.domain.record import Attachment, Record, Spot
from app.pictures.drawn import board_with_labels, middle_of
from app.services.files import keep, looked_at

FOUND_ON, RENEWED_ON = date(2026, 3, 7), date(2026, 4, 18)
MOST_WAYS = 6


def with_pictures(record: Record, folder: Path) -> Record:
    """Return a record with two drawn pictures of its first board, their files kept."""
    board = record.boards[0]
    ways = [d for d in record.devices_of(board.ref) if d.way][:MOST_WAYS]
    found = [way.label_found or "?" for way in ways]
    new = [f"{way.way}" for way in ways]
    before = _picture(folder, "F1", board.ref, found).model_copy(
        update={"caption": f"{board.name}, as found", "taken_on": FOUND_ON}
    )
    after = _picture(folder, "F2", board.ref, new).model_copy(
        update={"caption": f"{board.name}, with new labels", "taken_on": RENEWED_ON}
    )
    across, down = middle_of(found, 0)
    spot = Spot(
        ref="L1",
        attachment="F1",
        across=across,
        down=down,
        about=ways[0].ref,
        words="The label is hard to read",
    )
    return record.having(attachments=(before, after), spots=(spot,))


def _picture(folder: Path, ref: str, of: str, labels: list[str]) -> Attachment:
    sent = looked_at(board_with_labels(labels), f"{ref}.jpg")
    keep(folder, sent)
    return Attachment(
        ref=ref,
        of=(of,),
        sha256=sent.digest,
        media_type=sent.media_type,
        size=len(sent.data),
        file_name=sent.file_name,
    )
