"""Where a file may be sent, how large it may be, and the form that it is sent by."""

from __future__ import annotations

from dataclasses import dataclass

from app import pictures
from app.interchange import document, reply, spreadsheet

MB = 2**20


@dataclass(frozen=True, slots=True, kw_only=True)
class SentFile:
    """A form that takes a file.

    Attributes:
        most: How many bytes its whole request may have.
        form: Endpoint that shows it.
        refusal: What is said where the request has more, and so was not read.
    """

    most: int
    form: str
    refusal: str


def _limit(what: str, most: int) -> str:
    return f"{what} may have {most // MB} MB; this one has more."


NOTHING_CHANGED = "Nothing was changed."
BESIDE = "What was filled in beside it was not read and is to be filled in again."
# The file of each, and what its form says beside it.
SENT_FILES = {
    "documents.take": SentFile(
        most=129 * MB,
        form="documents.bring",
        refusal=f"A document may have {document.MOST_BYTES // MB} MB, a pack with its "
        f"photographs 128 MB; this one has more. {NOTHING_CHANGED}",
    ),
    "likenesses.create": SentFile(
        most=document.MOST_BYTES + MB,
        form="likenesses.new",
        refusal=f"{_limit('A document', document.MOST_BYTES)} {BESIDE} "
        f"{NOTHING_CHANGED}",
    ),
    "replies.take": SentFile(
        most=reply.MOST_BYTES + MB,
        form="replies.index",
        refusal=f"{_limit('What comes back', reply.MOST_BYTES)} {BESIDE} "
        f"{NOTHING_CHANGED}",
    ),
    "spreadsheets.take": SentFile(
        most=spreadsheet.MOST_BYTES + MB,
        form="spreadsheets.index",
        refusal=f"{_limit('A spreadsheet', spreadsheet.MOST_BYTES)} Leave out the "
        f"sheets and pictures that are not needed, or save the one sheet as CSV. "
        f"{NOTHING_CHANGED}",
    ),
    "uploads.create": SentFile(
        most=pictures.MOST_BYTES + MB,
        form="uploads.new",
        refusal=f"{_limit('A file', pictures.MOST_BYTES)} Take the picture smaller, or "
        f"scan the paper at 150 dots per inch. {BESIDE} {NOTHING_CHANGED}",
    ),
}
