"""Papers as they come out: measured in the file, read back, in the words allowed."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date
from typing import Any

import pytest

from app.domain.labels import SHEETS, Cell, Choice, labels_of, laid_out
from app.domain.labels.notices import notices_of
from app.domain.network import network
from app.domain.record import Board, Record
from app.services.papers import chart_pdf, labels_pdf, left_out, notices_pdf
from tests import builders as b
from tests.house.test_words import NEVER
from tests.unit.report.pdf import MM, assert_accessible, opened, text_of

DAY = date(2026, 3, 5)
LONG = "Sockets of the {n}th room on the left behind the long landing by the bathroom"


def board_of(record: Record, ref: str = "B1") -> Board:
    board = record.find(Board, ref)
    assert board is not None
    return board


@pytest.fixture(scope="module")
def full() -> Record:
    """A board of 24 ways with long names, each serving several rooms."""
    rooms = [b.room(f"R{n}", name=f"Room number {n} upstairs") for n in range(1, 25)]
    ways = [
        b.way(
            f"W{n}",
            b.circuit(
                f"C{n}",
                *(b.socket(f"P{n}-{k}", room=f"R{k}", tied="34"[n % 2])
                  for k in range(n, min(n + 4, 25))),
                name=LONG.format(n=n),
            ),
            way=str(n),
            label_found=f"OLD {n}",
        )
        for n in range(1, 25)
    ]  # fmt: skip
    switch = b.main_switch("MS", *ways, modules=2, label_found="MAIN SWITCH")
    return b.home(*rooms, b.street(b.board("B1", switch, name="Big board")))


def made(record: Record, **how: Any) -> tuple[bytes, tuple[Cell, ...]]:
    board = board_of(record)
    labels = labels_of(network(record), board)
    choice = Choice.model_validate(how)
    chosen = frozenset(label.ref for label in labels)
    cells = laid_out(labels, chosen, choice, SHEETS[0])
    return labels_pdf(board, cells, choice, DAY), cells


def chars_of(pdf: bytes) -> list[list[dict[str, Any]]]:
    with opened(pdf) as document:
        return [list(page.chars) for page in document.pages]


def in_mm(char: dict[str, Any]) -> tuple[float, float, float, float]:
    return (
        char["x0"] / MM,
        char["top"] / MM,
        char["x1"] / MM,
        char["bottom"] / MM,
    )


def inside(char: dict[str, Any], cell: Cell) -> bool:
    x0, top, x1, bottom = in_mm(char)
    across = cell.x - 0.2 <= x0 and x1 <= cell.x + cell.width + 0.2
    return across and cell.y - 0.2 <= top and bottom <= cell.y + cell.height + 0.2


HOW = [
    {"manner": "plain"},
    {"manner": "sheet", "start": 5},
    {"manner": "strip"},
    {"manner": "plain", "width_mm": "25", "height_mm": "12"},
]


@pytest.mark.parametrize("how", HOW)
def test_every_letter_lies_inside_its_label_and_all_are_there(
    full: Record, how: dict[str, Any]
) -> None:
    """24 ways with long names: nothing is cut, whatever they are printed on."""
    how = Choice.model_validate_strings(
        {k: str(v) for k, v in how.items()}
    ).model_dump()
    pdf, cells = made(full, **how)
    pages = chars_of(pdf)
    assert len([cell for cell in cells if cell.label]) == 25
    for cell in cells:
        found = [char for char in pages[cell.page] if inside(char, cell)]
        got = "".join(str(c["text"]) for c in found).replace("\xa0", " ")
        wanted = "".join(line.text for line in cell.fitted.lines).replace("\xa0", " ")
        assert sorted(got.replace(" ", "")) == sorted(wanted.replace(" ", ""))
    count = sum(len(page) for page in pages)
    in_cells = sum(any(inside(c, cell) for cell in cells if cell.page == n)
                   for n, page in enumerate(pages) for c in page)  # fmt: skip
    note = "Labels for Big board. Print at 100 %, no fit to page. ? not confirmed."
    notes = 0 if how["manner"] == "sheet" else len(pages) * len(note)
    assert count - in_cells == notes


def test_a_label_of_ordinary_size_holds_a_long_name_whole(full: Record) -> None:
    pdf, cells = made(full)
    assert [left_out(cell) for cell in cells if left_out(cell)] == []
    text = " ".join(text_of(pdf).split())
    assert "Sockets of the 24th room on the left" in text


def test_what_does_not_fit_is_said_beforehand(full: Record) -> None:
    _, cells = made(full, **Choice(manner="strip").model_dump())
    said = [left_out(cell) for cell in cells if left_out(cell)]
    assert len(said) > 20
    assert all("Take a larger label, or shorten the name." in line for line in said)


@pytest.mark.parametrize("manner", ["plain", "strip"])
def test_the_outlines_are_where_they_should_be_to_0_2_mm(
    full: Record, manner: str
) -> None:
    pdf, cells = made(full, manner=manner)
    with opened(pdf) as document:
        for number, page in enumerate(document.pages):
            wanted = [c for c in cells if c.page == number]
            got = [(r["x0"], r["top"], r["width"], r["height"]) for r in page.rects]
            assert len(got) == len(wanted)
            for rect, cell in zip(got, wanted, strict=True):
                design = (cell.x, cell.y, cell.width, cell.height)
                assert [v / MM for v in rect] == pytest.approx(design, abs=0.2)


def test_a_sheet_of_labels_gets_nothing_but_the_labels(full: Record) -> None:
    pdf, cells = made(full, manner="sheet", start=1)
    with opened(pdf) as document:
        assert [page.rects + page.lines for page in document.pages] == [[], []]
        first = document.pages[0]
        assert (first.width / MM, first.height / MM) == pytest.approx(
            (210, 297), abs=0.2
        )
        left = min(char["x0"] for char in first.chars) / MM
    assert left == pytest.approx(cells[0].x + 1.2, abs=0.5)


def test_labels_are_tagged_and_named(full: Record) -> None:
    assert_accessible(made(full)[0], "Labels for Big board")


@pytest.mark.parametrize("paper", ["a4", "a5"])
def test_an_ordinary_board_has_its_chart_on_one_page(
    houses: dict[str, Record], demo: Record, paper: str
) -> None:
    """Every board of the test homes: one page, its size, every name on it."""
    size = {"a4": (210, 297), "a5": (210, 148)}[paper]
    seen = 0
    for record in (demo, *houses.values()):
        net = network(record)
        for board in record.boards:
            with opened(chart_pdf(net, board, DAY, paper=paper)) as document:
                (page,) = document.pages
                assert (page.width / MM, page.height / MM) == pytest.approx(
                    size, abs=0.2
                )
                text = " ".join(page.extract_text().split())
                on_it = [in_mm(char) for char in page.chars]
            assert board.name.split()[0] in text
            assert all(x0 >= 0 and x1 <= size[0] and top >= 0 and bottom <= size[1]
                       for x0, top, x1, bottom in on_it)  # fmt: skip
            seen += 1
    assert seen > 10


def test_a_chart_too_long_for_a_page_goes_on_with_its_heads(full: Record) -> None:
    pdf = chart_pdf(network(full), board_of(full), DAY, paper="a5")
    with opened(pdf) as document:
        texts = [" ".join(page.extract_text().split()) for page in document.pages]
    assert len(texts) > 1
    assert all("How known" in text for text in texts)
    assert all(str(n) in " ".join(texts) for n in range(1, 25))


def test_a_chart_says_how_it_was_made_and_what_it_does_not_know(full: Record) -> None:
    text = " ".join(text_of(chart_pdf(network(full), board_of(full), DAY)).split())
    assert "and says how each way is known; not tested." in text
    assert "? not confirmed." in text
    assert "OLD 1" in text
    assert "5 March 2026" in text


def test_chart_and_notices_are_tagged_and_named(demo: Record) -> None:
    net, board = network(demo), demo.boards[1]
    assert_accessible(chart_pdf(net, board, DAY), f"Circuit chart of {board.name}")
    notices = notices_pdf(board, notices_of(net, board), DAY)
    assert_accessible(notices, f"Notices for {board.name}")


def papers(record: Record) -> Iterator[bytes]:
    net = network(record)
    for board in record.boards:
        labels = labels_of(net, board)
        chosen = frozenset(label.ref for label in labels)
        for manner in ("plain", "sheet", "strip"):
            choice = Choice(manner=manner)
            cells = laid_out(labels, chosen, choice, SHEETS[0])
            yield labels_pdf(board, cells, choice, DAY)
        for paper in ("a4", "a5"):
            yield chart_pdf(net, board, DAY, paper=paper)
        yield notices_pdf(board, notices_of(net, board), DAY)


def test_no_paper_says_what_is_never_said(demo: Record) -> None:
    texts = [" ".join(text_of(pdf).split()) for pdf in papers(demo)]
    assert len(texts) == 24
    words = r"\bdead\b|safe to work|compliant|certified|passed|satisfactory"
    for pattern in (*NEVER.values(), words):
        assert [t for t in texts if re.search(pattern, t, re.IGNORECASE)] == []


def test_the_same_day_gives_the_same_file(demo: Record) -> None:
    net, board = network(demo), demo.boards[0]
    assert chart_pdf(net, board, DAY) == chart_pdf(net, board, DAY)
