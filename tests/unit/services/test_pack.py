"""The pack: everything is in it, nothing that is kept back is, and it checks itself."""

from __future__ import annotations

import csv
import hashlib
import io
import zipfile
from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from functools import cache
from pathlib import Path

import html5lib
import pytest

from app.domain.isolation import house_off
from app.domain.network import network
from app.domain.pack import PARTS, kept_back, pack
from app.domain.pack.blocks import Table
from app.domain.record import Circuit, Item, Record, Result, specs
from app.domain.record._field import PRIVATE
from app.interchange import from_document
from app.interchange.tables_csv import circuits_csv
from app.services.documents import demo_record
from app.services.pack import MANIFEST, Wanted, pack_files, pack_page, pack_zip
from app.services.remarks import remarks_of
from tests import builders as b
from tests.unit.report.pdf import assert_accessible, letters_of

DAY = date(2026, 11, 25)
HOUSES = Path(__file__).parents[2] / "houses"
NAMES = ["demo", "h01", "h02", "h05", "h06", "h07", "h10"]
ALL = tuple(PARTS)
WORD = "Quixotically"
LOG = PARTS["history"]


@cache
def record_of(name: str) -> Record:
    if name == "demo":
        return demo_record()
    return from_document((HOUSES / f"{name}.json").read_bytes())


@cache
def files_of(name: str) -> Mapping[str, bytes]:
    return pack_files(Wanted(record=record_of(name), day=DAY, without=ALL))


def squeezed(text: str) -> str:
    return "".join(text.split())


@cache
def read_in(name: str) -> dict[str, str]:
    """What a reader of the PDF and of the page gets, without the spaces."""
    page = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(
        files_of(name)["pack.html"].decode()
    )
    return {
        "pdf": letters_of(files_of(name)["pack.pdf"]),
        "html": squeezed("".join(page.find("body").itertext())),
    }


def stands_in(said: str, text: str) -> bool:
    """Whole, or in two parts where a page ends within it."""
    if said in text:
        return True
    return any(said[:at] in text and said[at:] in text for at in range(1, len(said)))


@pytest.mark.parametrize("form", ["pdf", "html"])
@pytest.mark.parametrize("name", NAMES)
def test_everything_stands_in_it(name: str, form: str) -> None:
    record, text = kept_back(record_of(name), ALL), read_in(name)[form]
    things: tuple[Item, ...] = (
        *record.points, *record.circuits, *record.devices, *record.intake,
        *record.rooms, *record.boards, *record.works, *record.papers,
    )  # fmt: skip
    blanks = {d.ref for d in record.devices if d.kind == "blank"}
    for thing in things:
        assert squeezed(f"({thing.ref})") in text or thing.ref in blanks, thing.ref
    for unknown in house_off(network(record)).unknown:
        assert stands_in(squeezed(unknown), text), unknown
    for remark in remarks_of(record, DAY):
        assert stands_in(squeezed(remark.sentence), text), remark.sentence


@pytest.mark.parametrize("name", NAMES)
def test_the_pdf_can_be_read_by_everyone(name: str) -> None:
    title = f"{record_of(name).home.name}: the electrical installation"
    assert_accessible(files_of(name)["pack.pdf"], title)


def test_the_manifest_names_every_file_with_its_digest() -> None:
    files = dict(files_of("demo"))
    lines = files.pop(MANIFEST).decode().splitlines()
    found = {name: digest for digest, name in (line.split("  ") for line in lines)}
    assert found == {n: hashlib.sha256(c).hexdigest() for n, c in files.items()}


def test_the_record_in_it_is_what_was_handed_over() -> None:
    back = from_document(files_of("demo")["record.json"])
    assert back == kept_back(record_of("demo"), ALL)
    everything = pack_files(Wanted(record=record_of("h06"), day=DAY, without=()))
    assert from_document(everything["record.json"]) == record_of("h06")


def test_the_same_day_gives_the_same_zip() -> None:
    files = files_of("h01")
    first, again = (pack_zip(files, "h01-pack", DAY) for _ in range(2))
    assert first == again
    with zipfile.ZipFile(io.BytesIO(first)) as archive:
        assert archive.namelist() == [f"h01-pack/{name}" for name in files]
        assert archive.testzip() is None


def with_secrets() -> Record:
    """The demo home with a word in everything that can be kept back."""
    record = record_of("demo")
    lists = {
        cls.plural: tuple(_told(item) for item in record.of(cls))
        for cls in {type(item) for item in record.items()}
    }
    home = record.home.model_copy(
        update={"notes": WORD, "earthing_note": WORD, "mpan": "1312345678907"}
    )
    return record.having(**lists, home=home)


def _told(item: Item) -> Item:
    private = [s.name for s in specs(type(item)) if s.private in ("notes", "names")]
    if getattr(item, "grade", "") == "5":
        private.remove("seen_by")
    return item.model_copy(update=dict.fromkeys(private, WORD))


def test_what_is_kept_back_is_in_no_file() -> None:
    wanted = Wanted(
        record=with_secrets(), day=DAY, without=ALL, changes=(f"Changed {WORD}.",)
    )
    files = pack_files(wanted)
    for name, content in files.items():
        text = letters_of(content) if name.endswith(".pdf") else content.decode()
        assert WORD not in text, name
        assert "1312345678907" not in text, name


def test_what_goes_along_is_there() -> None:
    wanted = Wanted(
        record=with_secrets(), day=DAY, without=(), changes=(f"Changed {WORD}.",)
    )
    page = pack_files(wanted)["pack.html"].decode()
    assert "1312345678907" in page
    assert page.count(WORD) > 10
    assert f"Changed {WORD}." in page


def test_only_what_was_there_is_said_to_be_kept_back() -> None:
    def told(record: Record, *changes: str) -> str:
        wanted = Wanted(record=record, day=DAY, without=ALL, changes=changes)
        text = pack_page(wanted).decode()
        return text.partition("Kept back by")[2].partition("</p>")[0]

    assert told(b.home()) == ""
    assert told(b.home(), "Added P1.") == f" whoever keeps this record: {LOG}."
    secret = told(with_secrets())
    assert PARTS["notes"] in secret
    assert LOG not in secret


def test_every_text_of_a_person_can_be_kept_back() -> None:
    for cls in (type(item) for item in record_of("demo").items()):
        for spec in specs(cls):
            assert spec.private in ("", *PRIVATE)
            by_whom = spec.name.endswith("_by") and spec.type == "text"
            if spec.type == "long" or by_whom:
                assert spec.private, f"{cls.__name__}.{spec.name}"


def test_each_measured_figure_is_the_newest_of_its_kind() -> None:
    record = b.home(b.one_way(b.circuit("C1", b.socket("P1"))))
    old, new = date(2024, 5, 1), date(2025, 5, 1)
    low = Decimal("0.02")
    results = (
        Result(ref="V1", about="C1", tested_on=old, zs_ohm=Decimal("1.9")),
        Result(ref="V2", about="C1", tested_on=new, live_live_mohm=low),
    )
    made = pack(record.having(results=results), (), DAY)
    (section,) = [s for s in made.sections if s.code == "circuits"]
    (table,) = [t for t in section.blocks if getattr(t, "caption", "") == "Figures"]
    assert isinstance(table, Table)
    assert table.rows[0][2:] == (
        "–",
        "–",
        "1.9 Ω, 1 May 2024",
        "live to live 0.02 MΩ, 1 May 2025",
    )


def test_an_empty_home_has_a_pack() -> None:
    files = pack_files(Wanted(record=b.home(), day=DAY, without=ALL))
    assert b"No board is recorded." in files["pack.html"]
    assert_accessible(
        files["pack.pdf"], f"{b.home().home.name}: the electrical installation"
    )


def test_a_spreadsheet_finds_no_formula() -> None:
    hostile = '=HYPERLINK("x")'
    circuits = (Circuit(ref="C1", name=hostile), Circuit(ref="C2", note="-1+1"))
    text = circuits_csv(b.home().having(circuits=circuits)).decode("utf-8-sig")
    rows = list(csv.DictReader(io.StringIO(text)))
    assert rows[0]["name"] == f"'{hostile}"
    assert rows[1]["note"] == "'-1+1"


def test_markup_in_a_name_stays_text() -> None:
    home = b.home(name="<script>alert(1)</script>")
    page = pack_files(Wanted(record=home, day=DAY, without=ALL))["pack.html"]
    assert b"<script>alert" not in page
    assert b"&lt;script&gt;alert" in page
