"""Labels, notices, label sheets and the circuit chart, as pages."""

from __future__ import annotations

from collections.abc import Callable
from html import unescape
from urllib.parse import parse_qsl, urlencode

import pytest

from app.domain.record import Record
from tests import builders as b
from tests.pages import SVG, CheckedClient, text_of
from tests.unit.report.pdf import text_of as text_of_pdf

HOME = "/homes/H1"
LABELS = f"{HOME}/boards/B1/labels"
CHART = f"{HOME}/boards/B1/chart"


def drawn(page: object) -> list[str]:
    """Return what each label of the preview says."""
    svgs = [e for e in page.all(f"{SVG}svg") if e.get("role") == "img"]  # type: ignore[attr-defined]
    return [e.get("aria-label").removeprefix("Label: ") for e in svgs]


def pdf_of(client: CheckedClient, url: str) -> str:
    answer = client.get(url)
    assert answer.status_code == 200
    assert answer.mimetype == "application/pdf"
    return " ".join(text_of_pdf(answer.get_data()).split())


def test_the_boards_are_listed_with_how_many_ways_are_confirmed(
    here: CheckedClient,
) -> None:
    page = here.see(f"{HOME}/labels/")
    assert page.links["Main board"] == LABELS
    assert page.links["Circuit chart"] == CHART
    row = text_of(next(r for r in page.all("tr") if "Main board" in text_of(r)))
    assert row == "Main board 2 0 Circuit chart"


def test_a_board_leads_to_its_labels_and_its_chart(here: CheckedClient) -> None:
    links = here.see(f"{HOME}/boards/B1/").links
    assert (links["Print its labels"], links["Circuit chart"]) == (LABELS, CHART)


def test_at_first_every_way_is_shown_with_its_query_mark(here: CheckedClient) -> None:
    page = here.see(LABELS)
    assert "2 ways: 0 confirmed, 2 with a query mark, 0 not known." in page.main
    assert drawn(page) == [
        "1 Kitchen sockets ? B32 Kitchen",
        "2 Lights ? B6 Hall",
    ]


def test_the_ways_chosen_are_shown_and_made(here: CheckedClient) -> None:
    query = "?manner=sheet&sheet=3x7-63.5&start=2&way=W2&way=MS"
    page = here.see(LABELS + query)
    assert drawn(page) == ["Main switch 100 A", "2 Lights ? B6 Hall"]
    text = pdf_of(here, unescape(page.links["Open the PDF"]))
    assert "Lights ?" in text
    assert "Kitchen" not in text


@pytest.mark.parametrize(
    ("query", "field", "sentence"),
    [
        ("width_mm=5&way=W1", "width_mm", "Enter a number from 15 to 190."),
        ("manner=sheet&start=22&way=W1", "start", "This sheet holds 21 labels."),
        ("manner=plain", "way", "Tick at least one."),
        ("manner=wide&way=W1", "manner", "Choose one from the list."),
        ("way=W1&right_mm=x", "right_mm", "Enter a number, such as 2.5."),
        ("sheet=none&way=W1", "sheet", "Choose one from the list."),
    ],
)
@pytest.mark.parametrize("ending", ["", ".pdf"])
def test_what_cannot_be_printed_is_said_beside_its_field(
    here: CheckedClient, query: str, field: str, sentence: str, ending: str
) -> None:
    usual = {"manner": "plain", "sheet": "3x7-63.5"}
    typed = dict(parse_qsl(query))
    url = f"{LABELS}{ending}?{urlencode(usual | typed)}"
    page = here.see(url, status=422)
    assert page.error(field) == sentence


def test_what_was_typed_is_kept(here: CheckedClient) -> None:
    page = here.see(f"{LABELS}?manner=strip&sheet=3x7-63.5&module_mm=abc&way=W1", 422)
    box = page.by_id["module_mm"]
    assert box.get("value") == "abc"
    assert "selected" in {
        k for e in page.all("option") if e.get("value") == "strip" for k in e.attrib
    }


def test_what_has_no_room_is_said_before_it_is_printed(here: CheckedClient) -> None:
    url = f"{LABELS}?manner=plain&sheet=3x7-63.5&width_mm=15&height_mm=8&way=W1"
    page = here.see(url)
    assert "Way 1: too long for this size. Left out: " in page.main


def test_problems_come_first_and_lead_to_the_way(
    visitor: CheckedClient, keep: Callable[[Record], int]
) -> None:
    fed = b.circuit("C1", b.socket("P1"), name="Mum's lights")
    keep(b.home(b.one_way(fed, way="1")))
    page = visitor.see(LABELS)
    main = page.main
    assert main.index("Misleading") < main.index("Personal") < main.index("Which, and")
    assert page.links["Open Way 1"] == f"{HOME}/devices/W1/"


def test_a_board_without_ways_has_nothing_to_print(
    visitor: CheckedClient, keep: Callable[[Record], int]
) -> None:
    keep(b.home(b.board("B1", name="Empty board")))
    page = visitor.see(LABELS)
    assert "No way of this board is written down yet." in page.main
    assert "Open the PDF" not in page.links
    assert "Its ways are not entered yet." in visitor.see(CHART).main
    assert "Empty board" in pdf_of(visitor, f"{CHART}.pdf")


def test_a_board_with_no_way_but_a_switch_asks_for_a_tick(
    visitor: CheckedClient, keep: Callable[[Record], int]
) -> None:
    keep(b.home(b.street(b.board("B1", b.main_switch("MS")))))
    assert drawn(visitor.see(LABELS)) == []


@pytest.mark.parametrize("page", ["labels", "labels.pdf", "chart", "chart.pdf"])
def test_a_board_that_is_not_there_is_not_found(here: CheckedClient, page: str) -> None:
    assert "no board" in here.see(f"{HOME}/boards/B9/{page}", status=404).main


def test_notices_are_made_as_ticked(here: CheckedClient) -> None:
    text = pdf_of(here, f"{HOME}/boards/B1/notices.pdf?notice=rcd&notice=working")
    assert "Test the RCD every six months" in text
    assert "Do not switch on" in text
    assert "More than one supply" not in text


def test_no_notice_ticked_is_said(here: CheckedClient) -> None:
    page = here.see(f"{HOME}/boards/B1/notices.pdf", status=422)
    assert "Tick at least one notice" in page.main


def test_the_check_of_the_printer_is_made(here: CheckedClient) -> None:
    url = f"{HOME}/labels/calibration.pdf?sheet=3x7-63.5"
    assert "Label sheet: 3 × 7, 63.5 × 38.1 mm" in pdf_of(here, url)


SHEET = {
    "columns": "4",
    "rows": "11",
    "width_mm": "45,7",
    "height_mm": "25.4",
    "left_mm": "9.7",
    "top_mm": "8.8",
    "gap_x_mm": "2.6",
    "gap_y_mm": "0",
}


def test_a_sheet_of_ones_own_is_kept_offered_and_removed(here: CheckedClient) -> None:
    sheets = f"{HOME}/labels/sheets"
    page = here.save(sheets, SHEET)
    name = "4 × 11, 45.7 × 25.4 mm"
    assert name in page.main
    assert name in here.see(LABELS).options("sheet")
    shown = here.see(f"{LABELS}?manner=sheet&sheet=own-1&way=W1")
    assert drawn(shown)[0].startswith("1 Kitchen")
    page = here.go_on(here.submit_on(page, press=f"Remove {name}"))
    assert name not in page.main


def test_the_same_sheet_twice_is_one(here: CheckedClient) -> None:
    sheets = f"{HOME}/labels/sheets"
    here.save(sheets, SHEET)
    page = here.save(sheets, SHEET)
    assert page.main.count("Remove 4 × 11") == 1


def test_a_sheet_over_the_edge_is_refused_and_kept_on_the_page(
    here: CheckedClient,
) -> None:
    page = here.submit(f"{HOME}/labels/sheets", {**SHEET, "columns": "5"})
    assert page.status == 422
    assert page.error("width_mm").startswith("Across it comes to 248.6 mm")
    assert page.value("columns") == "5"
    page = here.submit(f"{HOME}/labels/sheets", {**SHEET, "rows": ""})
    assert page.error("rows") == "Enter how many labels there are down."


def test_the_chart_shows_each_way_and_how_it_is_known(here: CheckedClient) -> None:
    page = here.see(CHART)
    rows = [text_of(row) for row in page.all("tr")]
    assert (
        "1 Circuit-breaker, B32 RCD Kitchen sockets ? Kitchen (1) none found "
        "seen: went off and came back, day not recorded, not recorded by whom “SKTS”"
    ) in rows
    assert "and says how each way is known; not tested." in page.main
    assert page.links["PDF, A5"] == f"{CHART}.pdf?paper=a5"


@pytest.mark.parametrize("paper", ["a4", "a5", "a3"])
def test_the_chart_is_made_on_paper(here: CheckedClient, paper: str) -> None:
    text = pdf_of(here, f"{CHART}.pdf?paper={paper}")
    assert "Circuit chart: Main board" in text
    assert "Kitchen sockets ?" in text


def test_an_address_that_says_little_gets_the_rest_filled_in(
    here: CheckedClient,
) -> None:
    page = here.see(f"{LABELS}?manner=strip&way=W1")
    assert page.by_id["module_mm"].get("value") == "17.5"
    assert len(drawn(page)) == 1


def test_an_address_cannot_turn_the_links_elsewhere(here: CheckedClient) -> None:
    hostile = {"_external": "1", "_scheme": "javascript", "ref": "B9", "home": "H9"}
    page = here.see(f"{LABELS}?{urlencode({'way': 'W1', **hostile})}")
    assert page.links["Open the PDF"] == f"{LABELS}.pdf?way=W1"
