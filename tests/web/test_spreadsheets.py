"""A spreadsheet on the pages: chosen, matched, looked at, taken all or nothing."""

from __future__ import annotations

import os
from collections.abc import Callable
from urllib.parse import urlencode

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from app.config import Config
from app.domain.record import Record
from app.web.pages.spreadsheets import LISTS
from tests.pages import CheckedClient, Page, page_of
from tests.sheets import WRONG, as_csv, as_xlsx, points

Stored = Callable[..., Record]
START = "/homes/H1/spreadsheet"
CIRCUITS = [["No", "Circuit", "Way", "Device", "Odd"], ["3", "Up", "3", "B32", "x"]]


def choose(
    client: CheckedClient, data: bytes, kind: str = "circuits", name: str = "list.csv"
) -> Page:
    """Send a file as a browser does."""
    head = "Content-Disposition: form-data; name="
    fields = {"csrf_token": client.token(), "kind": kind}
    parts = [
        f'--edge\r\n{head}"{key}"\r\n\r\n{text}\r\n'.encode()
        for key, text in fields.items()
    ]
    parts += [f'--edge\r\n{head}"table"; filename="{name}"\r\n\r\n'.encode(), data]
    sent = client.post(
        START,
        data=b"".join([*parts, b"\r\n--edge--\r\n"]),
        content_type="multipart/form-data; boundary=edge",
    )
    return page_of(sent)


def matched(client: CheckedClient, page: Page, **more: str) -> Page:
    """Go on to the columns, leave them as they are guessed, and see what is made."""
    columns = client.go_on(page)
    sent = client.submit_on(columns, more, "See what it would make")
    return client.go_on(sent)


@pytest.mark.parametrize("make", [as_csv, as_xlsx])
def test_twenty_faults_are_named_and_nothing_is_stored_until_they_are_right(
    here: CheckedClient, stored: Stored, make: Callable[..., bytes], small: Record
) -> None:
    page = matched(here, choose(here, make(points(wrong=True)), "points"))
    assert page.h1 == "Nothing can be taken yet"
    assert [line.split(":")[0] for line in page.errors] == [
        f"Row {row}, column “{column}”" for row, column, _ in WRONG
    ]
    url = page.response.request.path
    assert here.send(url, {}).status == 422
    assert stored() == small
    page = matched(here, choose(here, make(points()), "points"))
    assert "It would make: 300 points, 200 ties." in page.main
    take, rows = (page.main.index(w) for w in ("Take all of it in", "Each row, and"))
    assert take < rows
    assert page.links["Back to what it would make"] == "#take"
    taken = here.submit_on(page, press="Take all of it in")
    done = here.see(taken.location.replace("/points/", "/sources/"))
    assert done.undo == "Brought in points from “list.csv”."
    record = stored()
    assert (len(record.points), len(record.ties)) == (303, 202)
    assert {tie.grade for tie in record.ties[2:]} == {"2"}
    here.go_on(here.submit_on(done, press="Undo"))
    assert stored() == small


def test_columns_are_guesses_shown_as_guesses_and_remembered(
    here: CheckedClient,
) -> None:
    page = here.go_on(choose(here, as_csv(CIRCUITS)))
    assert "Guessed from the headings" in page.main
    sent = page.values("See what it would make")
    held = [sent[f"c{n}"][0] for n in range(5)]
    assert held == ["number", "name", "way", "device", ""]
    change = {"c4": "note", "make_devices": "y"}
    looked = here.go_on(here.submit_on(page, change, "See what it would make"))
    assert "It would make: 1 device, 1 circuit." in looked.main
    again = here.go_on(choose(here, as_csv([CIRCUITS[0], ["4", "x", "", "", ""]])))
    assert "As you matched them last time." in again.main
    assert again.value("c4", "See what it would make") == "note"


def test_a_column_is_held_once_and_the_choice_is_kept(here: CheckedClient) -> None:
    page = here.go_on(choose(here, as_csv(CIRCUITS)))
    wrong = here.submit_on(page, {"c4": "name"}, "See what it would make")
    assert wrong.status == 422
    assert wrong.error("c4") == ("Column B is to hold the same. Choose one of them.")
    assert wrong.value("c4", "See what it would make") == "name"
    empty = {f"c{n}": "" for n in range(5)}
    none = here.submit_on(page, empty, "See what it would make")
    assert "at least one column" in none.error("c0")
    odd = here.submit_on(page, {"c1": "magic"}, "See what it would make")
    assert odd.error("c1") == "Choose one from the list."


def test_a_sheet_and_its_row_of_headings_are_chosen(
    here: CheckedClient, stored: Stored
) -> None:
    second = [["Name", "x"], ["Circuit", "Length"], ["Shed", "12"]]
    data = as_xlsx([["Notes"]], second, names=("Front", "Back"))
    page = here.go_on(choose(here, data))
    assert page.options("sheet") == {"Front": "0", "Back": "1"}
    url = page.response.request.path
    at = here.see(f"{url}?{urlencode({'sheet': 1, 'row': 1})}")
    assert at.value("c0", "See what it would make") == "name"
    at = here.see(f"{url}?sheet=1&row=0")
    looked = here.go_on(here.submit_on(at, press="See what it would make"))
    assert "Rows above the headings: 1." in looked.main
    here.go_on(here.submit_on(looked, press="Take all of it in"))
    new = stored().circuits[-1]
    assert (new.name, str(new.length_m)) == ("Shed", "12")
    assert here.get(f"{url}?sheet=99&row=9999999999").status_code == 404


def test_ways_are_made_on_the_board_that_is_chosen(
    here: CheckedClient, stored: Stored
) -> None:
    page = choose(
        here, as_csv([["Way", "Label", "Device"], ["7", "Loft", "B6"]]), "ways"
    )
    looked = matched(here, page, kind_unsaid="rcbo")
    done = here.go_on(here.submit_on(looked, press="Take all of it in"))
    assert done.h1 == "Main board"
    new = stored().devices[-1]
    assert (new.kind, new.label_found, new.curve) == ("rcbo", "Loft", "B")


def test_sent_twice_it_counts_once(here: CheckedClient, stored: Stored) -> None:
    page = matched(here, choose(here, as_csv([["Circuit"], ["Shed"]])))
    first = here.submit_on(page, press="Take all of it in")
    second = here.submit_on(page, press="Take all of it in")
    assert (first.status, second.status) == (303, 303)
    assert [c.name for c in stored().circuits].count("Shed") == 1
    here.see(page.response.request.path, 404)


def test_a_text_that_looks_like_a_formula_or_a_tag_stays_text(
    here: CheckedClient, stored: Stored
) -> None:
    nasty = "=cmd|'/C calc'!A0<script>alert(1)</script>"
    data = as_xlsx([["Circuit", nasty], [nasty, "+1"]])
    looked = matched(here, choose(here, data, name="<b>.xlsx"))
    assert nasty in looked.main
    here.go_on(here.submit_on(looked, press="Take all of it in"))
    assert stored().circuits[-1].name == nasty


@pytest.mark.parametrize(
    ("data", "kind", "name", "said"),
    [
        (b"", "circuits", "", "Choose a file first."),
        (b"a,b", "magic", "a.csv", "Choose what the file holds."),
        (b"PK\x03\x04", "points", "a.xlsx", "no whole archive"),
        (b"ab\x00c", "points", "a.csv", "byte 3"),
        (as_csv([["a"]] * 2001), "points", "a.csv", "Row 2001: 2000 filled rows"),
    ],
)
def test_a_file_that_cannot_be_taken_is_refused_with_its_place(
    here: CheckedClient, data: bytes, kind: str, name: str, said: str
) -> None:
    page = choose(here, data, kind, name)
    assert (page.status, said in page.main) == (422, True)


def test_a_file_beyond_all_measure_is_not_read(here: CheckedClient) -> None:
    assert choose(here, b"x" * (5 * 2**20 + 9)).status == 422
    assert choose(here, b"x" * (6 * 2**20 + 1)).status == 413


def test_without_a_board_there_are_no_ways_to_bring(
    visitor: CheckedClient, keep: Callable[[Record], int], small: Record
) -> None:
    keep(Record(home=small.home))
    assert "Add a board" in visitor.see(START).links
    assert "Add the board first" in choose(visitor, b"Way\n1", "ways").main
    looked = matched(visitor, choose(visitor, b"Point,Circuit\nlight,x", "points"))
    assert "“x” is no circuit of this home" in looked.main


def test_what_waits_no_longer_is_said(here: CheckedClient, config: Config) -> None:
    page = here.go_on(choose(here, as_csv(CIRCUITS)))
    url = page.response.request.path
    assert (
        "columns" in here.see(url.replace("columns", "preview")).response.request.path
    )
    for file in config.waiting.iterdir():
        os.utime(file, (0, 0))
    gone = here.see(url, 404)
    assert "Choose it again" in gone.main
    here.see(f"{START}/{'0' * 32}/columns", 404)
    here.see(f"{START}/x/preview", 404)


def test_a_file_waits_for_its_own_home_only(
    here: CheckedClient, keep: Callable[[Record], int], small: Record
) -> None:
    keep(small.having(home=small.home.model_copy(update={"ref": "H2"})))
    page = here.go_on(choose(here, as_csv(CIRCUITS)))
    here.see(page.response.request.path.replace("H1", "H2"), 404)


def test_every_page_of_a_kind_leads_to_it(here: CheckedClient) -> None:
    for plural in (*LISTS, "boards"):
        page = here.see(f"/homes/H1/{plural}/")
        assert page.links["Bring in a spreadsheet"].startswith(START)
    assert here.see("/homes/H1/").links["Bring in a spreadsheet"] == START


CELL = st.text(max_size=12) | st.sampled_from(
    ["Circuit", "Way", "Device", "B32", "1", "board 1 way 7", "ring", "=x", "2.5/1.5"]
)


@settings(max_examples=15, suppress_health_check=list(HealthCheck))
@given(
    rows=st.lists(st.lists(CELL, max_size=5), max_size=6),
    kind=st.sampled_from(["circuits", "points", "ways"]),
)
def test_no_table_ends_in_an_error(
    here: CheckedClient, rows: list[list[str]], kind: str
) -> None:
    data = as_csv(rows, encoding="utf-8").replace(b"\x00", b"")
    page = choose(here, data, kind)
    assert page.status in (303, 422)
    if page.status == 303:
        columns = here.go_on(page)
        looked = here.submit_on(columns, press="See what it would make")
        assert looked.status in (303, 422)
        if looked.status == 303:
            assert here.go_on(looked).status == 200


LIST = "1 is taken\n7 Sockets up B32\n8 Spare"


def test_labels_are_typed_as_a_list_looked_at_and_saved(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    url = here.see("/homes/H1/boards/B1/").links["Type them as a list"]
    wrong = here.submit(url, press="See what it makes", lines=LIST)
    assert wrong.status == 422
    assert "Line 1: “1” is on Main board already." in wrong.error("lines")
    assert wrong.value("lines", "See what it makes") == LIST
    good = LIST.partition("\n")[2]
    looked = here.submit_on(
        wrong, press="See what it makes", lines=good, kind_unsaid="circuit_breaker"
    )
    assert looked.status == 200
    assert "It would make: 2 devices, 1 circuit." in looked.main
    assert stored() == small
    other = here.submit_on(looked, press="Save all of it", lines=f"{good}\n9 Loft")
    assert (other.status, stored()) == (422, small)
    assert "The list was changed since you saw what it makes." in other.main
    done = here.go_on(here.submit_on(other, press="Save all of it"))
    assert done.undo == "Entered the ways of Main board (B1) from a list."
    new = stored().devices[-3:]
    assert [d.label_found for d in new] == ["Sockets up", "Spare", "Loft"]
    assert [c.name for c in stored().circuits[2:]] == ["Sockets up", "Loft"]


def test_a_list_needs_lines_and_its_board(here: CheckedClient) -> None:
    url = "/homes/H1/boards/B1/list"
    empty = here.submit(url, press="See what it makes")
    assert "Type one way a line" in empty.error("lines")
    long = here.submit(url, press="See what it makes", lines="7 " + "x" * 200)
    assert len(long.errors) == 1
    assert "200 characters long; 120 is the most" in long.error("lines")
    assert here.send(url, {"lines": "7 x", "kind_unsaid": "magic"}).status == 422
    here.see("/homes/H1/boards/B9/list", 404)


def test_a_home_is_begun_like_another(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    url = here.see("/homes/").links["Begin one like another"]
    page = here.submit(url, press="Begin the home", named="Next door")
    new = here.go_on(page)
    assert new.h1 == "Next door"
    record = stored("next-door")
    assert [r.name for r in record.rooms] == ["Kitchen", "Hall"]
    assert {tie.grade for tie in record.ties} == {"0"}
    assert stored() == small


def test_a_home_is_begun_like_a_document(visitor: CheckedClient, demo: Record) -> None:
    from io import BytesIO
    from secrets import token_hex

    from app.interchange import to_document

    def begin(data: bytes, **fields: str) -> Page:
        file = (BytesIO(data), "home.json")
        keys = {"csrf_token": visitor.token(), "once": token_hex(8)}
        sent = {**keys, "other": "", "document": file}
        return page_of(visitor.post("/like-another", data={**sent, **fields}))

    assert "Next" in visitor.go_on(begin(to_document(demo).encode(), named="Next")).h1
    refused = begin(b"{}", named="Next")
    assert (refused.status, "format" in refused.main) == (422, True)
    both = begin(to_document(demo).encode(), named="x", other="next")
    assert "not both" in both.main
    nameless = begin(to_document(demo).encode())
    assert nameless.error("named") == "Enter a name."
    nothing = visitor.send("/like-another", {"named": "x", "other": ""})
    assert "Choose a home, or a document." in nothing.main


POINTS = [["Room", "Point", "Where"], ["Kitchen", "light", "over the table"]]


def test_the_same_file_twice_makes_nothing_twice_unless_it_is_chosen(
    here: CheckedClient, stored: Stored
) -> None:
    def looked(rows: list[list[str]]) -> Page:
        return matched(here, choose(here, as_csv(rows), "points"))

    here.submit_on(looked(POINTS), press="Take all of it in")
    once = stored()
    page = looked(POINTS)
    assert "One row names what is here" in page.main
    assert "Nothing in it is new." in page.main
    assert "/homes/H1/points/P4/" in page.links.values()
    url = page.response.request.path
    unsaid = here.send(url, {})
    assert (unsaid.status, "Choose what becomes of it" in unsaid.main) == (422, True)
    assert stored() == once
    more = looked([*POINTS, ["Hall", "light", "by the stairs"]])
    assert "New in it: 1 point." in more.main
    here.submit_on(more, press="Take in only what is new")
    assert [p.room for p in stored().points] == ["R1", "R2", "R1", "R1", "R2"]
    here.submit_on(looked(POINTS), press="Take all of it in, once more")
    assert len(stored().points) == 6


def test_a_reference_that_is_here_can_be_left_out(
    here: CheckedClient, stored: Stored
) -> None:
    rows = [["ref", "Circuit"], ["C1", "Kitchen sockets"], ["C9", "Shed"]]
    page = matched(here, choose(here, as_csv(rows)))
    assert page.h1 == "What it would make"
    assert "Take all of it in, once more" not in page.main
    here.go_on(here.submit_on(page, press="Take in only what is new"))
    assert [c.ref for c in stored().circuits] == ["C1", "C2", "C9"]
    rows[2].append("x")
    page = matched(here, choose(here, as_csv([[*rows[0], "Length"], *rows[1:]])))
    assert [error.split(":")[0] for error in page.errors] == ["Row 3, column “Length”"]
