"""The house by circuit and the one-line diagram, as pages and as files."""

from __future__ import annotations

from collections.abc import Callable
from xml.etree import ElementTree as ET

import pytest

from app.domain.record import Record
from tests import builders as b
from tests.big_home import big_home
from tests.pages import CheckedClient

Keep = Callable[[Record], int]
HOUSE, LINE = "/homes/H1/house/", "/homes/H1/one-line/"
SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture
def here(visitor: CheckedClient, keep: Keep) -> CheckedClient:
    """A visitor to a home with a ring through two rooms."""
    ring = b.circuit("C1", b.socket("P1", room="R1"), b.socket("P2", room="R2"))
    lights = b.circuit("C2", b.light("P3", room="R1"), name="Lights")
    switch = b.main_switch("MS", b.way("W1", ring), b.way("W2", lights))
    rooms = (b.room("R1", name="Kitchen"), b.room("R2", name="Hall"))
    loose = b.point("P4", kind="unknown", room="R2")
    keep(b.home(*rooms, b.street(b.board("B1", switch)), loose))
    return visitor


def test_the_house_is_drawn_by_storey_with_a_key(here: CheckedClient) -> None:
    page = here.see(HOUSE)
    assert "4 points in 2 rooms; what feeds them is not known for 1." in page.main
    assert [h.text for h in page.all("h2")] == ["Ground floor", "Every circuit"]
    titles = [e.text for d in page.all(f"{SVG}svg") for e in d.findall(f"{SVG}title")]
    assert titles == ["Kitchen", "Hall", "Key: A board"]


def test_a_circuit_is_brought_forward_by_its_address(here: CheckedClient) -> None:
    page = here.see(f"{HOUSE}?lit=C1")
    assert "Brought forward: Circuit C1, 2 points." in page.main
    assert page.links["Open Circuit C1"] == "/homes/H1/circuits/C1/"
    assert page.links["All alike again"] == HOUSE
    [chosen] = [o for o in page.all("option") if o.get("selected") is not None]
    assert chosen.get("value") == "C1"
    lit = [e for e in page.root.iter() if "--lit" in (e.get("class") or "")]
    refs = {e.get("data-ref") for e in lit} - {None}
    assert refs == {"C1", "P1", "P2"}


def test_a_cable_on_which_no_point_is_drawn_says_so(at_demo: CheckedClient) -> None:
    page = at_demo.see("/homes/demo/house/?lit=C12")
    assert "Brought forward: Cable to the garage board, no points." in page.main


def test_it_leads_to_each_room_where_it_is(here: CheckedClient) -> None:
    hrefs = [a.get("href") for a in here.see(f"{HOUSE}?lit=C2").all("a")]
    assert "#room-R1" in hrefs
    assert "#room-R2" not in hrefs
    assert "not known for 1." in here.see(f"{HOUSE}?lit=R2").main


def test_touching_a_room_or_a_circuit_brings_it_forward(here: CheckedClient) -> None:
    drawn = {a.get("data-ref"): a.get("href") for a in here.see(HOUSE).all(f"{SVG}a")}
    assert drawn["R1"] == f"{HOUSE}?lit=R1#drawn"
    assert drawn["C2"] == f"{HOUSE}?lit=C2#drawn"
    assert drawn["P1"] == "/homes/H1/points/P1/"


@pytest.mark.parametrize("address", [f"{HOUSE}?lit=", f"{HOUSE}house.svg?lit="])
def test_what_is_not_there_is_not_brought_forward(
    here: CheckedClient, address: str
) -> None:
    for lit in ("C9", "P1", "<b>"):
        page = here.see(f"{address}{lit}", 404)
        assert f"There is no circuit or room “{lit}” in this home." in page.main


@pytest.mark.parametrize(
    ("address", "name", "words"),
    [
        (f"{HOUSE}house.svg?lit=C1", "H1-house.svg", "Brought forward: Circuit C1."),
        (f"{LINE}one-line.svg", "H1-one-line.svg", "One-line diagram: A home"),
    ],
)
def test_a_drawing_is_kept_as_a_file(
    here: CheckedClient, address: str, name: str, words: str
) -> None:
    answer = here.get(address)
    assert answer.mimetype == "image/svg+xml"
    kept = answer.headers["Content-Disposition"]
    assert kept == f'attachment; filename="{name}"'
    root = ET.fromstring(answer.data)  # noqa: S314 - made by ourselves a moment ago
    assert words in "".join(root.itertext())
    assert not [e for e in root.iter() if "href" in e.attrib]


def test_the_page_offers_the_file_of_what_it_shows(here: CheckedClient) -> None:
    offered = here.see(f"{HOUSE}?lit=C1").links["Keep it as a drawing (SVG)"]
    assert offered == f"{HOUSE}house.svg?lit=C1"


def test_the_diagram_leads_to_boards_ways_and_circuits(here: CheckedClient) -> None:
    page = here.see(LINE)
    drawn = {a.get("data-ref"): a.get("href") for a in page.all(f"{SVG}a")}
    assert drawn["W1"] == "/homes/H1/devices/W1/"
    assert drawn["C1"] == "/homes/H1/circuits/C1/"
    assert drawn["B1"] == "/homes/H1/boards/B1/"
    assert page.links["The same as lists: boards"] == "/homes/H1/boards/"


@pytest.mark.parametrize(
    ("page", "link"),
    [
        ("", "The house by circuit"),
        ("", "the one-line diagram"),
        ("boards/", "One-line diagram"),
        ("boards/B1/", "One-line diagram"),
        ("circuits/", "House by circuit"),
        ("circuits/", "One-line diagram"),
        ("circuits/C1/", "See it in the house"),
        ("rooms/R1/", "See it in the house"),
    ],
)
def test_other_pages_lead_to_them(here: CheckedClient, page: str, link: str) -> None:
    leads = here.see(f"/homes/H1/{page}").links[link]
    assert leads.startswith((HOUSE, LINE))
    assert here.get(leads).status_code == 200


def test_an_empty_home_says_where_to_begin(visitor: CheckedClient, keep: Keep) -> None:
    keep(b.home())
    house, line = visitor.see(HOUSE), visitor.see(LINE)
    assert house.links["Enter the rooms"] == "/homes/H1/walk/rooms"
    assert "No board is recorded yet" in line.main


def test_a_large_home_is_shown_whole(visitor: CheckedClient, keep: Keep) -> None:
    house = big_home()
    keep(house)
    page = visitor.see(HOUSE)
    refs = [a.get("data-ref") for a in page.all(f"{SVG}a")]
    assert sorted(r for r in refs if r[0] == "P") == sorted(p.ref for p in house.points)
    assert page.main.count("not sure") == sum(t.grade == "0" for t in house.ties)
