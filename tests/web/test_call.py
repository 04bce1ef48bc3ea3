"""Whom to call: the signs that cannot wait stand first, each number dials."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from app.domain.call import SIGNS
from app.domain.record import Record
from tests import builders as b
from tests.pages import CheckedClient, text_of

Keep = Callable[[Record], int]
NOW = [sign.short for sign in SIGNS if sign.urgency == "now"]


@pytest.mark.parametrize(
    ("facts", "dials"),
    [
        ({"nation": "england"}, {"999", "105"}),
        ({"nation": "northern_ireland"}, {"999"}),
        (
            {"nation": "northern_ireland", "network_phone": "01632 960 001"},
            {"999", "01632960001"},
        ),
        ({}, {"999", "105"}),
    ],
)
def test_each_nation_dials_its_own(
    visitor: CheckedClient, keep: Keep, facts: dict[str, str], dials: set[str]
) -> None:
    keep(b.home(**facts))
    for page in ("call/", "intake/"):
        assert visitor.see(f"/homes/H1/{page}").dials == dials


def test_northern_ireland_is_asked_for_its_number(
    visitor: CheckedClient, keep: Keep
) -> None:
    keep(b.home(nation="northern_ireland"))
    page = visitor.see("/homes/H1/call/")
    assert "105 does not reach it" in page.main
    form = page.links["Write down the number of your network operator"]
    visitor.save(form.partition("#")[0], network_phone="01632 960 001")
    assert "01632960001" in visitor.see("/homes/H1/call/").dials


def test_a_number_that_is_none_is_refused_beside_its_field(
    visitor: CheckedClient, keep: Keep
) -> None:
    keep(b.home())
    page = visitor.submit("/homes/H1/edit", network_phone="ring me")
    assert page.status == 422
    assert "is no telephone number" in page.error("network_phone")
    assert page.values()["network_phone"] == ["ring me"]


def test_the_signs_stand_first_at_the_intake_before_any_form(
    visitor: CheckedClient, keep: Keep
) -> None:
    keep(b.home(b.street(), nation="wales"))
    page = visitor.see("/homes/H1/intake/")
    main = page.by_id["main"]
    first = next(e for e in main.iter() if e.get("class") == "call__danger")
    everything = list(main.iter())
    forms = [e for e in everything if e.tag == "form" and "bar" not in str(e.attrib)]
    assert forms
    assert all(everything.index(first) < everything.index(form) for form in forms)
    for seen in NOW:
        assert seen in text_of(first)
        assert page.links[seen].startswith("/homes/H1/call/#")


def test_a_sign_that_is_recorded_is_named_with_its_item(
    visitor: CheckedClient, keep: Keep
) -> None:
    keep(b.home(b.meter("MET", condition="hot"), nation="scotland"))
    page = visitor.see("/homes/H1/call/")
    assert "Meter (MET): Heat, buzzing" in page.main


def test_every_sign_says_whom_what_and_what_not(here: CheckedClient) -> None:
    page = here.see("/homes/H1/call/")
    for sign in SIGNS:
        part = text_of(page.by_id[sign.code])
        assert sign.say in part
        assert sign.leave in part
        assert sign.basis in part
