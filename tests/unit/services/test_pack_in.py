"""From a pack to another machine: the same record with its photographs, or nothing."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest

from app.config import Config
from app.domain.pack import PARTS, kept_back
from app.domain.record import Attachment, Record
from app.errors import InvalidError
from app.interchange import from_document
from app.services import files
from app.services.homes import open_home
from app.services.pack import MANIFEST, Wanted, pack_files, pack_zip
from app.services.pack_in import is_pack, unpacked
from app.services.pack_pictures import store_in
from app.store.engine import make_engine, reading
from tests import builders as b
from tests.photographs import COMMENT, MAKER, PDF, with_all_a_camera_writes

DAY = date(2026, 11, 25)
Pack = Callable[..., bytes]


@pytest.fixture
def record(config: Config) -> Record:
    """A home with a photograph that tells where it was taken, and a paper."""
    home = b.home(b.board("B1"))
    photo, paper = with_all_a_camera_writes(), PDF
    rows = []
    for ref, data, kind in (
        ("F1", photo, "image/jpeg"),
        ("F2", paper, "application/pdf"),
    ):
        sent = files.looked_at(data, f"{ref}.bin")
        files.keep(config.files, sent)
        rows.append(
            Attachment.model_validate(
                {
                    "ref": ref,
                    "of": ("B1",),
                    "sha256": sent.digest,
                    "media_type": kind,
                    "size": len(data),
                    "file_name": f"{ref}.bin",
                }
            )
        )
    return home.having(attachments=tuple(rows))


@pytest.fixture
def packed(config: Config, record: Record) -> Pack:
    def make(*without: str) -> bytes:
        wanted = Wanted(
            record=record, day=DAY, without=without, store=store_in(config.files)
        )
        return pack_zip(pack_files(wanted), "H1-pack", DAY)

    return make


def inside(packed: bytes) -> dict[str, bytes]:
    with zipfile.ZipFile(io.BytesIO(packed)) as archive:
        names = archive.namelist()
        return {name.partition("/")[2]: archive.read(name) for name in names}


def zipped(contents: dict[str, bytes]) -> bytes:
    return pack_zip(contents, "H1-pack", DAY)


def test_with_the_originals_the_record_is_the_same(
    packed: Pack, record: Record
) -> None:
    pack = unpacked(packed())
    assert pack.document.record == record
    assert {sent.digest for sent in pack.files} == {
        row.sha256 for row in record.attachments
    }


def test_without_them_pictures_go_as_they_are_shown(
    packed: Pack, record: Record
) -> None:
    made = packed("originals")
    contents = inside(made)
    for name, content in contents.items():
        assert not any(w in content for w in (COMMENT, MAKER, b"Exif\0")), name
    pack = unpacked(made)
    assert from_document(contents["record.json"]) == pack.document.record
    picture, paper = pack.document.record.attachments
    assert picture.sha256 != record.attachments[0].sha256
    assert paper == record.attachments[1]
    assert {sent.digest for sent in pack.files} == {picture.sha256, paper.sha256}


def test_where_they_are_kept_back_none_is_there(packed: Pack) -> None:
    contents = inside(packed(*PARTS))
    assert not any(name.startswith(("photographs/", "files/")) for name in contents)
    assert b"data:image" not in contents["pack.html"]


def test_the_page_and_the_pdf_show_the_photograph(packed: Pack) -> None:
    contents = inside(packed("originals"))
    assert contents["pack.html"].count(b"data:image/jpeg;base64,") == 1
    assert len(contents["pack.pdf"]) > len(inside(packed(*PARTS))["pack.pdf"])


def test_another_machine_has_the_same_home_and_its_files(
    packed: Pack, record: Record, tmp_path: Path, empty_database: Path
) -> None:
    from click.testing import CliRunner

    from app.cli import main

    pack = tmp_path / "pack.zip"
    pack.write_bytes(packed())
    other = tmp_path / "other"
    result = CliRunner().invoke(main, ["import", str(pack), "--data", str(other)])
    assert result.exit_code == 0, result.output
    assert "with 2 files" in result.output
    there = Config(data=other)
    with reading(make_engine(there.database)) as connection:
        assert open_home(connection, "H1").record == record
    assert list(files.unsound(there.files, record.attachments)) == []


def spoilt(contents: dict[str, bytes], what: str) -> bytes:
    changed = dict(contents)
    if what == "changed":
        changed["circuits.csv"] += b"x"
    if what == "missing":
        del changed["points.csv"]
    if what == "more":
        changed["more.txt"] = b"x"
    if what == "no manifest":
        del changed[MANIFEST]
    if what == "no record":
        del changed["record.json"]
    return zipped(changed)


@pytest.mark.parametrize(
    ("what", "place"),
    [
        ("changed", "circuits.csv"),
        ("missing", "points.csv"),
        ("more", "more.txt"),
        ("no manifest", MANIFEST),
        ("no record", "record.json"),
    ],
)
def test_a_pack_that_was_changed_is_refused_with_the_file(
    packed: Pack, what: str, place: str
) -> None:
    with pytest.raises(InvalidError) as refused:
        unpacked(spoilt(inside(packed(*PARTS)), what))
    assert [problem.place for problem in refused.value.problems] == [place]


@pytest.mark.parametrize("name", ["../x", "H1-pack/../../x", "/etc/x", "H1-pack/a\\b"])
def test_a_name_that_leads_elsewhere_is_refused(packed: Pack, name: str) -> None:
    made = io.BytesIO(packed(*PARTS))
    with zipfile.ZipFile(made, "a") as archive:
        archive.writestr(name, b"x")
    with pytest.raises(InvalidError):
        unpacked(made.getvalue())


def test_a_bomb_is_refused_before_it_is_unpacked() -> None:
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("H1-pack/record.json", b"0" * 50_000_000)
    assert is_pack(made.getvalue())
    with pytest.raises(InvalidError, match="larger than any"):
        unpacked(made.getvalue())


def test_a_pack_damaged_on_the_way_is_refused(packed: Pack) -> None:
    whole = packed(*PARTS)
    for at in range(60, len(whole), len(whole) // 40):
        broken = whole[:at] + bytes(255 - byte for byte in whole[at : at + 2])
        with pytest.raises(InvalidError):
            unpacked(broken + whole[at + 2 :])


def test_a_photograph_that_is_not_here_is_said_to_be_missing(record: Record) -> None:
    wanted = Wanted(record=record, day=DAY, without=())
    page = pack_files(wanted)["pack.html"].decode()
    assert "It is not in this pack: its file is not here." in page


@pytest.mark.parametrize("cut", [5, 100, -30])
def test_a_pack_cut_short_is_refused(packed: Pack, cut: int) -> None:
    with pytest.raises(InvalidError):
        unpacked(packed(*PARTS)[:cut])


def test_what_is_kept_back_leaves_no_row(record: Record) -> None:
    assert kept_back(record, ("photos",)).attachments == ()
