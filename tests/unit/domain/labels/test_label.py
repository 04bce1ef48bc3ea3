from __future__ import annotations

from decimal import Decimal

import pytest

from app.domain.labels import Label, labels_of
from app.domain.labels.label import NOT_KNOWN, NOT_NAMED, SPARE
from app.domain.labels.printed import printed
from app.domain.network import network
from app.domain.record import Board, Device, Record
from tests import builders as b


def label_of(record: Record, ref: str = "W1") -> Label:
    board = record.find(Board, "B1")
    assert board is not None
    (label,) = [v for v in labels_of(network(record), board) if v.ref == ref]
    return label


def test_a_label_holds_number_name_device_and_rooms_in_the_order_of_the_walk() -> None:
    record = b.home(
        b.room("R2", name="Hall"),
        b.room("R1", name="Kitchen"),
        b.one_way(
            b.circuit(
                "C1", b.socket("P1", room="R1"), b.socket("P2", room="R2"), name="Ring"
            ),
            way="7",
            label_found="SKTS",
        ),
    )
    label = label_of(record)
    assert (label.number, label.name, label.printed) == ("7", "Ring", "B32")
    assert (label.rooms, label.found) == (("Hall", "Kitchen"), "SKTS")


def test_a_way_of_which_nothing_is_known_says_so() -> None:
    assert label_of(b.home(b.one_way())).text == NOT_KNOWN


def test_nothing_found_is_not_spare_unless_someone_said_so() -> None:
    assert label_of(b.home(b.one_way(in_use="unknown"))).name == NOT_KNOWN
    assert label_of(b.home(b.one_way(in_use="spare"))).text == f"{SPARE}\xa0?"


def test_a_circuit_without_a_name_is_not_named() -> None:
    record = b.home(b.one_way(b.circuit("C1", b.socket("P1"))))
    assert label_of(record).name == NOT_NAMED


def test_a_way_to_a_board_takes_its_name() -> None:
    sub = b.board("B2", b.main_switch("MS2"), name="Garage board", fed_from="C1")
    assert label_of(b.home(b.one_way(b.circuit("C1")), sub)).name == "Garage board"


def test_what_feeds_the_ways_beside_it_is_called_by_its_kind() -> None:
    inner = b.device("ISO", b.way("W1"), kind="isolator", rated_current_a=40)
    record = b.home(b.street(b.board("B1", b.main_switch("MS", inner))))
    label = label_of(record, "ISO")
    assert (label.text, label.outgoing) == ("Isolating switch", False)


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("Shower 40A", "Shower"),
        ("Shower (40 amp)", "Shower"),
        ("Shower 32A", "Shower 32A"),
        ("Shower 8.5 kW", "Shower 8.5 kW"),
        ("Bedroom 2 and 3", "Bedroom 2 and 3"),
    ],
)
def test_a_rating_that_was_not_read_is_not_printed(name: str, said: str) -> None:
    record = b.home(b.one_way(b.circuit("C1", b.socket("P1", tied="4"), name=name)))
    assert label_of(record).text == said


def device(**fields: object) -> Device:
    values = {"ref": "D", "board": "B", "kind": "rcbo", **fields}
    return Device.model_validate(values)


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({}, ""),
        ({"curve": "B"}, ""),
        ({"rated_current_a": Decimal(16)}, "16\xa0A"),
        ({"rated_current_a": Decimal(16), "curve": "2"}, "type\xa02, 16\xa0A"),
        (
            {
                "rated_current_a": Decimal(16),
                "curve": "C",
                "residual_current_ma": Decimal(30),
                "rcd_type": "A",
            },
            "C16, 30\xa0mA, type\xa0A",
        ),
        ({"residual_current_ma": Decimal(30)}, "30\xa0mA"),
    ],
)
def test_only_what_was_read_is_printed(fields: dict[str, object], said: str) -> None:
    assert printed(device(**fields)) == said
