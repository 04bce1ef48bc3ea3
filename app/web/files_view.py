"""Photographs and papers of a thing, as its page shows them; a page needs one line.

A view gives ``files=files_of(record, item)``; its template imports the macro ``files``
and says ``{{ files(page.files) }}``.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from flask import Flask, current_app, url_for

from app.domain.record import Attachment, Item, Record
from app.errors import NotFoundError
from app.services.files import is_here
from app.web.addresses import item_url
from app.web.session import opened
from app.web.words import day

# More than these are on the list, so that a page stays short.
MOST_ON_A_PAGE = 8
NOT_HERE = (
    "Its file is not here. Add the same file again, and it is known by its content."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Thumb:
    """A file as a list shows it.

    Attributes:
        title: Its caption, or its name.
        url: Its own page.
        small: Address of the small picture; None for a PDF, or when it is not here.
        word: What stands in the picture's place.
        about: Its day, how many spots are marked.
    """

    title: str
    url: str
    small: str | None
    word: str
    about: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FilesView:
    """The files of a thing, as its page shows them.

    Attributes:
        ref: Reference of the thing.
        title: What it is called.
        thumbs: The first of them.
        more: How many more there are.
        every: Address of all of them.
        add: Address where one more is added.
    """

    ref: str
    title: str
    thumbs: tuple[Thumb, ...]
    more: int
    every: str
    add: str


def init_app(app: Flask, folder: Path) -> None:
    """Tell the application where the bytes are."""
    app.extensions["files"] = folder


def folder() -> Path:
    """Return where the bytes are."""
    own: Path = current_app.extensions["files"]
    return own


def find_file(home: str, ref: str) -> Attachment:
    """Return a file's row.

    Raises:
        NotFoundError: There is no such one.
    """
    found = opened(home).record.find(Attachment, ref)
    if found is None:
        raise NotFoundError(f"There is no photograph or file “{ref}” in this home.")
    return found


def files_of(record: Record, item: Item) -> FilesView:
    """Return the files of a thing, and the pictures on which it is marked."""
    home, found = record.home.ref, record.attachments_of(item.ref)
    return FilesView(
        ref=item.ref,
        title=item.title,
        thumbs=thumbs(record, found[:MOST_ON_A_PAGE]),
        more=max(len(found) - MOST_ON_A_PAGE, 0),
        every=url_for("attachments.index", home=home, of=item.ref),
        add=url_for("uploads.new", home=home, of=item.ref),
    )


def thumbs(record: Record, found: Iterable[Attachment]) -> tuple[Thumb, ...]:
    """Return files as a list shows them."""
    return tuple(_thumb(record, attachment) for attachment in found)


def picture_url(home: str, attachment: Attachment, size: str) -> str:
    """Return the address of what is shown of a picture: new for another content."""
    return url_for(
        f"pictures.{size}", home=home, ref=attachment.ref, v=attachment.sha256[:12]
    )


def _thumb(record: Record, attachment: Attachment) -> Thumb:
    home, here = record.home.ref, is_here(folder(), attachment)
    shows = here and attachment.is_picture
    return Thumb(
        title=attachment.title,
        url=item_url(home, attachment),
        small=picture_url(home, attachment, "small") if shows else None,
        word="PDF" if here else "Its file is not here",
        about=_about(record, attachment),
    )


def _about(record: Record, attachment: Attachment) -> str:
    spots = len(record.spots_of(attachment.ref))
    parts = [day(attachment.taken_on)] if attachment.taken_on else []
    parts += ["1 spot" if spots == 1 else f"{spots} spots"] if spots else []
    return ", ".join(parts)
