"""Spreadsheets as bytes: what is read, and what is refused whole, with where."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable, Mapping
from datetime import date, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st
from openpyxl import Workbook

from app.domain.spreadsheet.shapes import FORMULA
from app.errors import InvalidError
from app.interchange import spreadsheet
from app.interchange.spreadsheet import shown_name, workbook_from
from tests.sheets import as_csv, as_xlsx

ROWS = [["No", "Circuit", "mm²"], [], ["1", 'Two\n"lines"', "2,5"], ["2", "£", "°"]]
READ = (("No", "Circuit", "mm²"), (), ("1", 'Two\n"lines"', "2,5"), ("2", "£", "°"))


@pytest.mark.parametrize("separator", [",", ";", "\t", "|"])
@pytest.mark.parametrize(
    "encoding",
    ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252"],
)
def test_csv_is_read_whatever_wrote_it(separator: str, encoding: str) -> None:
    book = workbook_from(as_csv(ROWS, separator, encoding), "list.csv")
    assert book.sheets[0].rows == READ
    assert spreadsheet.SEPARATORS[separator] in book.read_as


def test_a_line_that_names_the_separator_is_a_row_with_nothing_in_it() -> None:
    [sheet] = workbook_from(b"sep=;\r\nA,a;B\r\n1;2\r\n", "x.csv").sheets
    assert sheet.rows == ((), ("A,a", "B"), ("1", "2"))


def test_xlsx_is_read_as_a_person_would_have_typed_it() -> None:
    rows: list[list[object]] = [[1, 2.5, 32.0, True, "=cmd()", date(2020, 1, 2)], []]
    rows.append(["", "x"])
    [sheet] = workbook_from(as_xlsx(rows), "x.xlsx").sheets
    assert sheet.rows == (
        ("1", "2.5", "32", "yes", "=cmd()", "2020-01-02"), (), ("", "x"),
    )  # fmt: skip


def test_every_sheet_is_read_with_its_name() -> None:
    book = workbook_from(as_xlsx([["a"]], [["b"]], names=("One", "Two")), "x.xlsx")
    assert [(s.name, s.rows) for s in book.sheets] == [
        ("One", (("a",),)),
        ("Two", (("b",),)),
    ]


def test_a_formula_counts_by_its_kept_result_only() -> None:
    """The writer keeps no results; one is put beside the formula by hand."""
    book = Workbook()
    sheet = book.worksheets[0]
    sheet["A1"], sheet["B1"], sheet["C1"] = "=1+1", "=2+2", datetime(2020, 1, 2, 3)  # noqa: DTZ001
    file = io.BytesIO()
    book.save(file)
    data = repacked(
        file.getvalue(), lambda _, text: text.replace(b"<v />", b"<v>4</v>", 1)
    )
    [read] = workbook_from(data, "x.xlsx").sheets
    assert read.rows == (("4", FORMULA, "2020-01-02 03:00:00"),)


def repacked(
    data: bytes,
    change: Callable[[str, bytes], bytes],
    more: Mapping[str, bytes] = {},
) -> bytes:
    """Return an archive with its parts changed, and some more."""
    file = io.BytesIO()
    with (
        zipfile.ZipFile(io.BytesIO(data)) as old,
        zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as new,
    ):
        for name in old.namelist():
            new.writestr(name, change(name, old.read(name)))
        for name, text in more.items():
            new.writestr(name, text)
    return file.getvalue()


def same(_name: str, text: bytes) -> bytes:
    return text


def refusal(data: bytes) -> str:
    with pytest.raises(InvalidError) as refused:
        workbook_from(data, "x")
    said = [refused.value.sentence]
    said += [f"{p.place}: {p.reason}" for p in refused.value.problems]
    assert "othing was changed" in said[0]
    return " ".join(said)


PLAIN = as_xlsx([["a"]])


BAD: dict[str, tuple[bytes, str]] = {
    "nothing": (b"", "no cell with anything in it"),
    "blank": (b"\n\n,,\n", "no cell with anything in it"),
    "noughts": (b"a,b\x00c", "byte 4: This is no text"),
    "no letter": (b"a,\x81", "byte 3: This is no letter"),
    "half a letter": (b"\xff\xfea\x00\x00\xd8", "no letter"),
    "an old workbook": (b"\xd0\xcf\x11\xe0rest", "older kind of workbook"),
    "no archive": (b"PK\x03\x04nothing", "no whole archive"),
    "half an archive": (PLAIN[:-40], "no whole archive"),
    "large": (b"x" * (5 * 2**20 + 1), "larger than 5 MB"),
    "long": (as_csv([["a"]] * 2001), "Row 2001: 2000 filled rows are the most"),
    "long workbook": (as_xlsx([["a"]] * 2001), "Sheet: Row 2001: 2000 filled rows"),
    "wide": (as_csv([["a"] * 61]), "Row 1 reaches to column BI"),
    "a full cell": (as_csv([["a"], ["c", "x" * 4001]]), "Cell B2 holds more than 4000"),
    "a huge cell": (as_csv([["x" * 131_073]]), "no row of cells"),
    "half a sheet": (
        repacked(PLAIN, lambda n, t: t[:9] if "sheet1" in n else t),
        "cannot be read",
    ),
    "a type": (repacked(PLAIN, same, {"xl/x.xml": b"<!DOCTYPE a>"}), "entities"),
    "an entity": (
        repacked(PLAIN, same, {"xl/x.xml": "<!ENTITY a>".encode("utf-16-le")}),
        "entities",
    ),
    "a large part": (
        repacked(PLAIN, same, {"xl/styles2.xml": b" " * (4 * 2**20 + 1)}),
        "larger than it ever needs",
    ),
    "a bomb": (
        repacked(PLAIN, same, {"xl/media/a": b"\0" * (41 * 2**20)}),
        "Unpacked it has 41 MB; 40 MB is the most",
    ),
    "many parts": (
        repacked(PLAIN, same, {f"x{n}": b"" for n in range(1001)}),
        "parts; 1000 is the most",
    ),
}


@pytest.mark.parametrize("what", BAD)
def test_a_file_that_cannot_be_taken_is_refused_with_its_place(what: str) -> None:
    data, said = BAD[what]
    assert said in refusal(data)


def test_a_sheet_that_is_too_large_is_refused_only_where_it_is_chosen() -> None:
    book = workbook_from(as_xlsx([["a"]], [["b"]] * 2001), "x.xlsx")
    assert book.sheets[0].rows == (("a",),)
    assert "Row 2001" in book.sheets[1].refusal


def test_the_extent_that_a_sheet_gives_itself_is_not_believed() -> None:
    def claim(name: str, text: bytes) -> bytes:
        wide = text.replace(b'ref="A1:A1"', b'ref="A1:XFD1048576"')
        assert wide != text or "sheet1" not in name
        return wide

    assert workbook_from(repacked(PLAIN, claim), "x").sheets[0].rows == (("a",),)


def test_a_row_beyond_all_rows_is_not_waited_for() -> None:
    def far(name: str, text: bytes) -> bytes:
        return text.replace(b'<row r="1"', b'<row r="999999999"')

    said = refusal(repacked(PLAIN, far))
    assert "no cell with anything in it" in said or "too many" in said


def test_links_to_other_workbooks_are_not_followed() -> None:
    link = b'<Relationships xmlns="x"><Relationship TargetMode="External"/>'
    data = repacked(PLAIN, same, {"xl/externalLinks/_rels/a.xml.rels": link})
    assert workbook_from(data, "x").sheets[0].rows == (("a",),)


@pytest.mark.parametrize(
    ("given_name", "shown"),
    [
        ("../../etc/list.csv", "list.csv"),
        ("C:\\me\\list.csv", "list.csv"),
        ("", "a file without a name"),
        ("a\x00\nb.csv", "ab.csv"),
        ("x" * 200, "x" * 80),
    ],
)
def test_a_name_is_shown_without_its_folders(given_name: str, shown: str) -> None:
    assert shown_name(given_name) == shown


@given(st.binary(max_size=300), st.sampled_from([b"", b"\xff\xfe", b"PK\x03\x04"]))
def test_any_bytes_are_read_or_refused(data: bytes, start: bytes) -> None:
    try:
        book = workbook_from(start + data, "x")
    except InvalidError as error:
        assert error.sentence  # noqa: PT017 - either is an answer
    else:
        assert book.sheets


@given(st.integers(0, len(PLAIN) - 1), st.integers(0, 255))
def test_a_damaged_workbook_is_read_or_refused(at: int, byte: int) -> None:
    data = PLAIN[:at] + bytes([byte]) + PLAIN[at + 1 :]
    try:
        assert workbook_from(data, "x").sheets
    except InvalidError as error:
        assert error.sentence  # noqa: PT017 - either is an answer
