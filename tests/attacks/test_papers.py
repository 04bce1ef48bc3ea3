"""Hostile texts in what leaves the program: PDF, pack, CSV, SVG, calendar, headers."""

from __future__ import annotations

import csv
import io
import re
import zipfile
from urllib.parse import urlsplit
from xml.etree import ElementTree as ET

import html5lib
import pytest
from flask import Flask
from icalendar import Calendar
from werkzeug.test import TestResponse

from app.config import Config
from app.domain.record import Circuit, Record, specs
from app.interchange import from_document
from app.interchange.spreadsheet import workbook_from
from app.interchange.tables_csv import circuits_csv, plain_cell, points_csv
from tests.attacks.hostile import TEXTS, WORKED_OUT, hostile
from tests.attacks.test_script import stored
from tests.unit.report.pdf import letters_of, opened

HEADER = re.compile(r'(inline|attachment); filename="[A-Za-z0-9._-]+"')
PAPERS = (
"boards/B1/chart.pdf",
"isolate/plan.pdf?ref=B1", "isolate/whole-house.pdf",
    "tripped/sheet.pdf", "hand-over/pack.pdf?with=notes&with=names",
)  # fmt: skip
DRAWINGS = ("house/house.svg", "one-line/one-line.svg")
PACK = "hand-over/pack.zip?with=notes&with=names&with=history"
# What marks each hostile text whatever the width of the column that it stands in.
MARKS = ("document.title=", "javascript:", "{{911*977}}", "#read(", "&lt;zq&gt;")


def got(app: Flask, path: str) -> TestResponse:
    answer = app.test_client().get(f"/homes/demo/{path}")
    assert answer.status_code == 200, path
    assert HEADER.fullmatch(answer.headers["Content-Disposition"]), path
    return answer


@pytest.mark.parametrize("path", PAPERS)
def test_a_pdf_shows_texts_and_works_nothing_out(spoiled_app: Flask, path: str) -> None:
    made = got(spoiled_app, path).data
    letters = letters_of(made)
    shown = [mark for mark in MARKS if mark in letters]
    assert shown == list(MARKS) if "pack.pdf" in path else "911" in letters
    assert WORKED_OUT not in letters
    assert "root:" not in letters
    with opened(made) as document:
        found = [str(a.get("uri")) for p in document.pages for a in p.annots]
        assert [uri for uri in found if uri != "None"] == []
        assert {"OpenAction", "AA", "AcroForm"}.isdisjoint(document.doc.catalog)
        names = document.doc.catalog.get("Names")
        assert names is None or "JavaScript" not in str(names.resolve())
    assert b"/JavaScript" not in made


@pytest.mark.parametrize("path", DRAWINGS)
def test_a_drawing_is_drawn_of_its_own_elements_only(
    spoiled_app: Flask, path: str
) -> None:
    assert_plain_svg(got(spoiled_app, path).data)


def assert_plain_svg(made: bytes) -> None:
    root = ET.fromstring(made)  # noqa: S314 - made by this program
    for element in root.iter():
        tag = element.tag.rpartition("}")[2]
        assert tag not in ("script", "foreignObject", "image", "use", "iframe"), tag
        for name, value in element.attrib.items():
            assert not name.startswith("on"), name
            assert not name.endswith("href") or value.startswith("#"), value
    assert WORKED_OUT not in made.decode()


def test_the_pack_holds_nothing_that_acts(spoiled: Config, spoiled_app: Flask) -> None:
    with zipfile.ZipFile(io.BytesIO(got(spoiled_app, PACK).data)) as pack:
        files = {name: pack.read(name) for name in pack.namelist()}
    assert all(re.fullmatch(r"[A-Za-z0-9._/-]+", name) for name in files)
    assert not [name for name in files if ".." in name or name.startswith("/")]
    (page,) = [data for name, data in files.items() if name.endswith(".html")]
    assert_plain_page(page)
    for name, data in files.items():
        if name.endswith(".svg"):
            assert_plain_svg(data)
    (document,) = [d for name, d in files.items() if name.endswith("record.json")]
    assert from_document(document).circuits == stored(spoiled).circuits


def test_the_sheet_of_a_plan_holds_nothing_that_acts(spoiled_app: Flask) -> None:
    answer = spoiled_app.test_client().get("/homes/demo/isolate/plan/file?ref=B1")
    assert_plain_page(answer.data)


def assert_plain_page(made: bytes) -> None:
    root = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(
        made.decode()
    )
    policies = [e.get("content") for e in root.iter("meta") if e.get("http-equiv")]
    for element in root.iter():
        if not isinstance(element.tag, str):
            continue
        for name, value in element.attrib.items():
            assert not name.startswith("on"), name
            if name in ("href", "src", "action", "data"):
                assert urlsplit(value).scheme in ("", "data", "tel"), value[:80]
                assert not urlsplit(value).netloc
    own = [e for e in root.iter("script") if "zq" in "".join(e.itertext())]
    assert own == []
    assert WORKED_OUT not in made.decode()
    assert policies
    assert all("default-src 'none'" in policy for policy in policies)


@pytest.mark.parametrize("start", ["=1", "+1", "-1", "@A1", "\t=1", "'=1", "''-1"])
def test_no_cell_is_a_formula_and_each_comes_back_as_it_was(
    demo: Record, start: str
) -> None:
    named = [c.model_copy(update={"note": f"{start};a"}) for c in demo.circuits]
    written = circuits_csv(demo.having(circuits=tuple(named)))
    column = [spec.name for spec in specs(Circuit)].index("note")
    cells = [row[column] for row in rows_of(written)[1:]]
    assert set(cells) == {f"'{start};a"}
    (sheet,) = workbook_from(written, "circuits.csv").sheets
    assert {row[column] for row in sheet.rows[1:]} == {f"{start};a"}


def rows_of(written: bytes) -> list[list[str]]:
    text = written.decode("utf-8-sig")
    return list(csv.reader(io.StringIO(text, newline="")))


def test_no_cell_of_a_spoiled_home_is_a_formula(spoiled: Config) -> None:
    record = stored(spoiled)
    for written in (circuits_csv(record), points_csv(record)):
        cells = [cell for row in rows_of(written) for cell in row]
        assert not [c for c in cells if re.match(r"[=+\-@\t\r]", c)]
    cells = [plain_cell(c) for row in rows_of(circuits_csv(record)) for c in row]
    assert {c.name for c in record.circuits} <= set(cells)


@pytest.mark.parametrize("cell", ["'", "'x", "x=1", "", "''", "' =1", "O'Neil"])
def test_other_apostrophes_stay(cell: str) -> None:
    assert plain_cell(cell) == cell


def test_a_calendar_holds_its_own_properties_only(spoiled_app: Flask) -> None:
    made = got(spoiled_app, "reminders/calendar.ics").data
    lines = made.decode().split("\r\n")
    assert not [line for line in lines if "\n" in line or "\r" in line]
    assert max(len(line.encode()) for line in lines) <= 75
    unfolded = re.sub("\r\n[ \t]", "", made.decode()).split("\r\n")
    names = {re.split("[:;]", line)[0] for line in unfolded if line}
    assert names <= {
        "BEGIN", "END", "VERSION", "PRODID", "X-WR-CALNAME", "SUMMARY", "DTSTART",
        "DTSTAMP", "UID", "DESCRIPTION", "RRULE", "ACTION", "TRIGGER",
    }  # fmt: skip
    said = [str(e["summary"]) for e in Calendar.from_ical(made).walk("VEVENT")]
    assert any(text.split("\n")[0] in each for text in TEXTS for each in said)


def test_hostile_texts_stay_hostile_through_a_document(demo: Record) -> None:
    from app.interchange import to_document

    record = hostile(demo)
    assert from_document(to_document(record).encode()) == record
