"""The pack that is handed over: the same content as PDF, HTML, document and tables."""

from __future__ import annotations

import base64
import hashlib
import io
import zipfile
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import date

from sqlalchemy import Connection

from app.domain.days import in_words
from app.domain.pack import Pack, holding, kept_back, pack
from app.domain.record import Record
from app.drawing.board import draw_board
from app.drawing.one_line import one_line_blocks
from app.drawing.render import render
from app.drawing.street import draw_street
from app.drawing.whole_house import house_bands
from app.interchange import to_document
from app.interchange.tables_csv import circuits_csv, points_csv
from app.report import Paper, as_pdf
from app.services.carried import hash_for_policy, script, style, templates
from app.services.drawings import board_file, house_file, one_line_file, street_file
from app.services.history import when
from app.services.homes import OpenHome
from app.services.pack_pictures import NOWHERE, Store, carried
from app.services.remarks import remarks_of
from app.store.changes import latest_changes

STYLES = ("tokens", "base", "components/drawing", "pack")
MANIFEST = "MANIFEST.sha256"
MOST_CHANGES = 500
READ_ME = """{title}
{day}

Begin with pack.pdf, or open pack.html in any browser: both say the same. No network and
no program is needed. record.json is the record, without what was kept back, for another
program; circuits.csv and points.csv are for a spreadsheet. {manifest} has the SHA-256
of every file: with GNU tools, "sha256sum -c {manifest}" checks them.

It is a record kept by whoever looks after the home, no certificate and no inspection
report. Prove everything at the point of work.
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """What goes into a pack.

    Attributes:
        record: The home.
        day: The day that the pack carries.
        without: What is kept back, codes of `PARTS`.
        changes: Sentences of the log of changes, newest first.
        store: Where the bytes of photographs and other files come from.
        seconds: How long the PDF may take.
    """

    record: Record
    day: date
    without: Collection[str]
    changes: tuple[str, ...] = ()
    store: Store = NOWHERE
    seconds: float = 120.0


def changes_told(connection: Connection, home: OpenHome) -> tuple[str, ...]:
    """Return the newest changes of a home, `MOST_CHANGES` at most, a sentence each."""
    found = latest_changes(connection, home.key, MOST_CHANGES)
    return tuple(f"{when(c.at)}: {c.sentence}" for c in found)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Content:
    """What page and PDF are made from.

    Attributes:
        pack: The sections, without what is kept back.
        record: The home, without what is kept back.
        drawings: Drawings that are whole, by name.
        parts: Drawings that stand in parts, each part by its own name.
        photos: The photographs shown, as JPEG, by name.
        ways: Reference and title of each way that a reply may be about.
        files: What of the store goes along, by its name in the pack.
    """

    pack: Pack
    record: Record
    drawings: Mapping[str, str]
    parts: Mapping[str, Mapping[str, str]]
    photos: Mapping[str, bytes]
    ways: tuple[tuple[str, str], ...]
    files: Mapping[str, bytes]


def pack_files(wanted: Wanted) -> dict[str, bytes]:
    """Return the files of a pack by their names, the manifest last.

    Raises:
        PaperError: The PDF could not be made.
    """
    made = _content(wanted)
    record, day = made.record, in_words(wanted.day)
    read_me = READ_ME.format(title=made.pack.title, day=day, manifest=MANIFEST)
    files = {
        "READ-ME.txt": read_me.encode(),
        "pack.pdf": _pdf(made, wanted.seconds),
        "pack.html": _html(made),
        "record.json": to_document(record).encode(),
        "circuits.csv": circuits_csv(record),
        "points.csv": points_csv(record),
        **_drawn(record),
        **made.files,
    }
    return files | {MANIFEST: _manifest(files)}


def pack_page(wanted: Wanted) -> bytes:
    """Return the page of a pack alone: no PDF is made for it."""
    return _html(_content(wanted))


def pack_pdf(wanted: Wanted) -> bytes:
    """Return the PDF of a pack alone.

    Raises:
        PaperError: It could not be made.
    """
    return _pdf(_content(wanted), wanted.seconds)


def _content(wanted: Wanted) -> _Content:
    originals = "originals" not in wanted.without
    along = carried(
        kept_back(wanted.record, wanted.without), wanted.store, originals=originals
    )
    record, photos = along.record, along.jpegs
    changes = () if "history" in wanted.without else wanted.changes
    made = pack(
        record,
        remarks_of(record, wanted.day),
        wanted.day,
        without=_left_out(wanted),
        changes=changes,
        there=frozenset(photos),
    )
    return _Content(
        pack=made,
        record=record,
        drawings=_drawings(record),
        parts=_parts(record),
        photos=photos,
        ways=tuple((d.ref, f"{d.title} ({d.ref})") for d in record.devices if d.way),
        files=along.files,
    )


def _left_out(wanted: Wanted) -> tuple[str, ...]:
    """Return what is kept back and was there."""
    there = {code: holding(wanted.record, code) for code in wanted.without}
    there["history"] = len(wanted.changes)
    return tuple(code for code in wanted.without if there[code])


def pack_zip(files: Mapping[str, bytes], folder: str, day: date) -> bytes:
    """Return the files as one zip, in one folder, the same each time for the day."""
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in files.items():
            stamp = (max(day.year, 1980), day.month, day.day, 0, 0, 0)
            entry = zipfile.ZipInfo(f"{folder}/{name}", stamp)
            entry.compress_type = zipfile.ZIP_DEFLATED
            entry.external_attr = 0o644 << 16
            archive.writestr(entry, content)
    return made.getvalue()


def _drawings(record: Record) -> dict[str, str]:
    """Return the drawings that the blocks of a pack name."""
    drawings = {"street": draw_street(record, _no_link)}
    for board in record.boards:
        name = f"board-{board.ref}"
        drawings[name] = draw_board(record, board.ref, _no_link, frozenset())
    return drawings


def _parts(record: Record) -> dict[str, dict[str, str]]:
    """Return the drawings that stand in parts, each part by its own name."""
    bands, key = house_bands(record, _no_link)
    house = [scene for band in bands for scene in band.blocks]
    sets = {
        "house": [*house, *key],
        "one-line": list(one_line_blocks(record, _no_link)),
    }
    return {
        name: {f"{name}-{at}": render(scene) for at, scene in enumerate(scenes, 1)}
        for name, scenes in sets.items()
    }


def _drawn(record: Record) -> dict[str, bytes]:
    """Return every drawing as a file of its own."""
    made = {
        "street": street_file(record),
        "house": house_file(record),
        "one-line": one_line_file(record),
        **{f"board-{b.ref}": board_file(record, b.ref) for b in record.boards},
    }
    return {f"drawings/{name}.svg": text.encode() for name, text in made.items()}


def _no_link(_ref: str) -> None:
    return None


def _pdf(made: _Content, seconds: float) -> bytes:
    values = made.pack.model_dump(mode="json", exclude={"title", "day"})
    paper = Paper(
        template="pack",
        title=made.pack.title,
        day=made.pack.day,
        data={
            **values,
            "ways": [title for _, title in made.ways],
            "parts": {name: list(every) for name, every in made.parts.items()},
        },
        drawings={
            **made.drawings,
            **{n: svg for p in made.parts.values() for n, svg in p.items()},
        },
        photos={f"{name}.jpg": photo for name, photo in made.photos.items()},
    )
    return as_pdf(paper, seconds=seconds)


def _html(made: _Content) -> bytes:
    looks, acts = style(*STYLES), script("pack")
    page = templates().get_template("pack/pack.html")
    return page.render(
        pack=made.pack,
        day=in_words(made.pack.day),
        home=made.record.home.ref,
        drawings=made.drawings,
        parts=made.parts,
        photos={name: _inline(photo) for name, photo in made.photos.items()},
        ways=made.ways,
        style=looks,
        style_hash=hash_for_policy(looks),
        script=acts,
        script_hash=hash_for_policy(acts),
    ).encode()


def _inline(photo: bytes) -> str:
    return f"data:image/jpeg;base64,{base64.b64encode(photo).decode()}"


def _manifest(files: Mapping[str, bytes]) -> bytes:
    """Return the SHA-256 of each file, as the usual tools write and check it."""
    lines = (f"{hashlib.sha256(c).hexdigest()}  {n}\n" for n, c in files.items())
    return "".join(lines).encode()
