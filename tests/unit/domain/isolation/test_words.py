"""What no plan ever says, whatever the record: every sentence of every plan is read."""

from __future__ import annotations

import re

import pytest

from app.domain.isolation import house_off, plan
from app.domain.isolation.shapes import Switch
from app.domain.isolation.steps import switch_name
from app.domain.network import network
from tests.unit.domain.test_houses import NAMES, record_of

NEVER = re.compile(
    r"\bsafe\b|\bsafely\b|\bcompliant\b|\bcertified\b|\bpassed\b|\bsatisfactory\b"
    r"|\bC[123]\b(?=\s*code)|!|—",
    re.IGNORECASE,
)
# "Prove dead" names a step, and "cannot be made dead" says the reverse.
DEAD = re.compile(r"\bdead\b", re.IGNORECASE)
MAY = re.compile(r"\bprove dead\b|\bcannot be made dead\b", re.IGNORECASE)


def said(name: str) -> list[str]:
    """Every sentence of the plans of a home, room by room, and of the whole of it."""
    net = network(record_of(name))
    plans = [plan(net, [i.ref]) for i in (*net.record.rooms, *net.record.boards)]
    found = [house_off(net).model_dump_json()]
    for one in plans:
        found += [one.model_dump_json(exclude={"home_name", "aim", "rooms"})]
    return found


@pytest.mark.parametrize("name", NAMES)
def test_no_plan_says_it(name: str) -> None:
    for text in said(name):
        assert NEVER.findall(text) == []
        assert DEAD.findall(MAY.sub("", text)) == []


@pytest.mark.parametrize(
    ("kind", "name"),
    [
        ("Rewirable fuse (BS 3036)", "Way 1 (W1), rewirable fuse (BS 3036)"),
        ("RCBO", "Way 1 (W1), RCBO"),
        ("Way", "Way 1 (W1)"),
    ],
)
def test_a_kind_keeps_the_letters_of_its_standard(kind: str, name: str) -> None:
    assert switch_name(Switch(ref="W1", title="Way 1", kind=kind)) == name


def test_the_test_can_fail() -> None:
    assert NEVER.search("It is safe now")
    assert DEAD.findall(MAY.sub("", "Prove dead. The board is dead.")) == ["dead"]
