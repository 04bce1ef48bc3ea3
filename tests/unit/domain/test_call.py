"""Whom to call: what was told of each sign, and no number that differs by place."""

from __future__ import annotations

import re

import pytest

from app.domain.call import (
    NEEDS,
    SIGNS,
    Sign,
    contacts,
    network_of,
    signs_recorded,
    whose_of,
)
from app.domain.isolation.help import whom_to_call
from app.domain.kinds import INTAKE_KINDS
from app.domain.phone import checked_phone, dialled
from app.domain.record import Home
from app.domain.record.choices import CONDITIONS
from tests import builders as b

# Signs and how soon, written out by hand from the table of the trade's guides.
URGENCY = {
    "heat": "now",
    "open": "now",
    "water": "now",
    "struck": "now",
    # From memory.
    "tingle": "now",
    "pitch": "today",
    "seal": "report",
    "loose": "report",
    "looped": "report",
    "tails": "plan",
    "asbestos": "plan",
}


def home(nation: str, phone: str = "") -> Home:
    return Home(ref="H1", name="A", nation=nation, network_phone=phone)


def test_each_sign_is_as_urgent_as_the_guides_say() -> None:
    assert {sign.code: sign.urgency for sign in SIGNS} == URGENCY
    order = ["now", "today", "report", "plan"]
    places = [order.index(sign.urgency) for sign in SIGNS]
    assert places == sorted(places)


@pytest.mark.parametrize("sign", SIGNS, ids=lambda sign: sign.code)
def test_each_sign_says_everything(sign: Sign) -> None:
    assert all((sign.seen, sign.say, sign.meanwhile, sign.leave, sign.basis))
    assert sign.who
    if sign.urgency == "now":
        assert {"fire", "network"} <= set(sign.who)


@pytest.mark.parametrize("nation", ["england", "wales", "scotland"])
def test_105_serves_great_britain(nation: str) -> None:
    assert [c.number for c in network_of(home(nation))] == ["105"]
    assert [c.number for c in network_of(home(nation, "01632 960001"))] == [
        "105",
        "01632 960001",
    ]


def test_no_number_is_shipped_for_northern_ireland() -> None:
    (one,) = network_of(home("northern_ireland"))
    assert one.number == ""
    assert "105 does not reach it" in one.note
    (own,) = network_of(home("northern_ireland", "(028) 9018 0001"))
    assert (own.number, own.dial) == ("(028) 9018 0001", "02890180001")


def test_an_unknown_nation_is_told_both() -> None:
    assert [c.number for c in network_of(home("unknown"))] == ["105", ""]


def test_only_105_and_999_are_shipped() -> None:
    said = [
        c.number
        for nation in ("england", "northern_ireland", "unknown")
        for people in contacts(home(nation)).values()
        for c in people
    ]
    assert set(said) == {"", "105", "999"}
    texts = [f"{s.say} {s.meanwhile} {s.leave}" for s in SIGNS]
    texts += [f"{n.say} {n.meanwhile}" for n in NEEDS]
    assert set(re.findall(r"\d{3,}", " ".join(texts))) == {"999"}


def test_a_sign_in_the_record_is_named_the_worst_first() -> None:
    record = b.home(
        b.cutout("CUT", seal="no"),
        b.meter("MET", condition="hot"),
        b.tails("TAIL", seal="no"),
        b.intake("ISO", kind="isolator", condition="sound"),
        b.intake("ROD", kind="earth_electrode", condition="damaged"),
    )
    found = [(item.ref, sign.code) for item, sign in signs_recorded(record)]
    assert found == [("MET", "heat"), ("CUT", "seal")]


def test_every_condition_but_the_sound_ones_is_a_sign() -> None:
    known = {code for sign in SIGNS for code in sign.conditions}
    assert known == set(CONDITIONS) - {"sound", "unknown"}


def test_whom_to_call_follows_whose_it_is() -> None:
    record = b.home(b.cutout("CUT", owner="landlord"), b.meter("MET"))
    assert [(w.ref, w.who) for w in whose_of(record)] == [
        ("CUT", ("landlord",)),
        ("MET", ("supplier",)),
    ]
    usual = whose_of(b.home())
    assert len(usual) == len(INTAKE_KINDS)
    assert {w.owner for w in usual if w.title == "Cut-out"} == {"Usually network"}


@pytest.mark.parametrize(
    ("written", "digits"),
    [("105", "105"), ("  01632  960001 ", "01632960001"), ("+44 1632-1", "+4416321")],
)
def test_a_number_is_kept_as_written_and_dialled_as_digits(
    written: str, digits: str
) -> None:
    kept = checked_phone(written)
    assert kept == " ".join(written.split())
    assert dialled(kept) == digits


@pytest.mark.parametrize("text", ["12", "call me", "1" * 16, "+", "٣٤٥", "12<3>4"])
def test_what_is_no_number_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="is no telephone number"):
        checked_phone(text)


@pytest.mark.parametrize(
    ("nation", "said"),
    [
        ("northern_ireland", ["01632 960001"]),
        ("wales", ["105", "01632 960001"]),
    ],
)
def test_a_plan_for_switching_off_names_the_number_of_ones_own(
    nation: str, said: list[str]
) -> None:
    lines = whom_to_call(home(nation, "01632 960001"))[1:-2]
    assert len(lines) == len(said)
    assert all(number in line for number, line in zip(said, lines, strict=True))
    assert whom_to_call(home("northern_ireland"))[1].endswith("on your bill.")
