from __future__ import annotations

from decimal import Decimal

import pytest

from app.domain.labels import SHEETS, Choice, LabelSheet, labels_of, laid_out
from app.domain.labels.layout import Cell
from app.domain.labels.sheet import plain_paper
from app.domain.network import network
from app.domain.record import Board, Record
from tests import builders as b

SHEET = SHEETS[0]


def board_of(count: int, **fields: object) -> Record:
    ways = [b.way(f"W{n}", way=str(n), **fields) for n in range(1, count + 1)]
    return b.home(b.street(b.board("B1", b.main_switch("MS", *ways, modules=2))))


def cells(record: Record, *refs: str, **how: object) -> tuple[Cell, ...]:
    board = record.find(Board, "B1")
    assert board is not None
    labels = labels_of(network(record), board)
    chosen = frozenset(refs or [label.ref for label in labels])
    return laid_out(labels, chosen, Choice.model_validate(how), SHEET)


def test_the_sheets_are_named_by_their_geometry_and_fit_on_a4() -> None:
    assert SHEET.name == "3 × 7, 63.5 × 38.1 mm"
    assert [sheet.over_the_edge() for sheet in SHEETS] == [("", "")] * len(SHEETS)
    assert all(sheet.left_mm >= 0 and sheet.top_mm >= 0 for sheet in SHEETS)


def test_a_grid_over_the_edge_says_by_how_much() -> None:
    wide = SHEET.model_copy(update={"columns": 4})
    assert wide.over_the_edge()[0].startswith("Across it comes to 268.75 mm")
    tall = SHEET.model_copy(update={"rows": 8})
    assert tall.over_the_edge()[1].startswith("Down it comes to 319.95 mm")


def test_labels_begin_where_they_are_told_to_and_go_on_overleaf() -> None:
    found = cells(board_of(4), "W1", "W2", "W3", manner="sheet", start=20)
    places = [(c.page, round(c.x, 2), round(c.y, 2)) for c in found]
    assert places == [(0, 73.25, 243.75), (0, 139.25, 243.75), (1, 7.25, 15.15)]


def test_only_the_ways_chosen_are_there_in_the_order_of_the_board() -> None:
    found = cells(board_of(4), "W4", "W2")
    assert [c.label.ref for c in found if c.label] == ["W2", "W4"]


def test_an_offset_moves_all_of_it() -> None:
    still, moved = (
        cells(board_of(2), **how) for how in ({}, {"right_mm": Decimal("1.5")})
    )
    assert [c.x + 1.5 for c in still] == [c.x for c in moved]


def test_plain_paper_takes_as_many_as_it_holds() -> None:
    sheet = plain_paper(Decimal(60), Decimal(20))
    assert (sheet.columns, sheet.rows) == (3, 13)
    assert plain_paper(Decimal(190), Decimal(100)).over_the_edge() == ("", "")


def test_a_strip_is_as_wide_as_the_devices_and_breaks_between_them() -> None:
    found = cells(board_of(12), manner="strip")
    assert [c.width for c in found] == [35.0, *[17.5] * 12]
    assert [c.x for c in found[:3]] == [15.0, 50.0, 67.5]
    assert [round(c.x, 1) for c in found if c.y == found[-1].y] == [15, 32.5, 50, 67.5]


def test_a_module_that_was_measured_goes_first() -> None:
    found = cells(board_of(2), manner="strip", module_mm=Decimal("18.2"))
    assert [round(c.width, 2) for c in found] == [36.4, 18.2, 18.2]


def test_what_is_left_out_of_a_strip_keeps_its_width() -> None:
    found = cells(board_of(3), "W1", "W3", manner="strip")
    assert [c.label.ref if c.label else None for c in found] == [None, "W1", None, "W3"]


def test_a_blank_keeps_its_width_too() -> None:
    record = b.home(
        b.street(
            b.board("B1", b.main_switch("MS", b.device("X", kind="blank"), b.way("W1")))
        )
    )
    assert len(cells(record, "W1", manner="strip")) == 3


@pytest.mark.parametrize("field", ["columns", "rows", "width_mm", "height_mm"])
def test_a_sheet_needs_its_measures(field: str) -> None:
    values = SHEET.model_dump()
    with pytest.raises(ValueError, match=field):
        LabelSheet.model_validate({k: v for k, v in values.items() if k != field})
