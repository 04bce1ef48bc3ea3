"""Remarks hold on any home: none fails, none depends on the order of the record."""

from __future__ import annotations

import re
from datetime import date
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.domain.record import SORTS, Aside, Record
from app.domain.remarks import Remark, remarks
from tests.property.strategies import any_records, homes, random_home, raw_homes
from tests.property.whole_records import whole_records

TODAY = date(2026, 11, 25)
NEVER = re.compile(
    r"\b(dead|safe|compl(?:y|ies|iant)|pass(?:ed)?|certified|satisfactory|overdue|"
    r"illegal|C[123] |FI)\b",
)


def shuffled(record: Record, rng: Random) -> Record:
    lists = {
        cls.plural: tuple(rng.sample(record.of(cls), len(record.of(cls))))
        for cls in SORTS.values()
    }
    return record.having(**lists)


def check(record: Record) -> None:
    found = remarks(record, TODAY)
    assert found == remarks(record, TODAY)
    known = {*record.by_ref, record.home.ref}
    for remark in found:
        assert set(remark.about) <= known
        assert {need.ref for need in remark.needs} <= known
        assert (remark.outcome == "cannot_tell") == bool(remark.needs)
        assert remark.sentence.endswith(".")


def check_subjects(record: Record) -> None:
    """Where no reference is used twice, a code has one outcome for each subject."""
    keys = [(remark.code, remark.about[0]) for remark in remarks(record, TODAY)]
    assert sorted(set(keys)) == sorted(keys)


@given(st.one_of(homes, whole_records()))
def test_a_remark_is_known_by_its_code_and_its_subject(record: Record) -> None:
    check_subjects(record)


@given(homes)
def test_any_home(record: Record) -> None:
    check(record)


@given(raw_homes)
def test_any_home_that_contradicts_itself(record: Record) -> None:
    check(record)


@given(any_records)
def test_any_values(record: Record) -> None:
    check(record)


@given(whole_records())
def test_any_record_that_may_be_kept(record: Record) -> None:
    check(record)


@given(st.one_of(homes, raw_homes, whole_records()), st.randoms(use_true_random=False))
def test_the_order_of_the_record_does_not_count(record: Record, rng: Random) -> None:
    assert remarks(shuffled(record, rng), TODAY) == remarks(record, TODAY)


@pytest.mark.parametrize("seed", range(20))
def test_a_large_home(seed: int) -> None:
    check(random_home(Random(seed), most=200))  # noqa: S311


def said_of(found: tuple[Remark, ...]) -> str:
    return "\n".join(f"{r.title}. {r.to_do} {r.sentence}" for r in found)


def test_the_homes_in_any_order(houses: dict[str, Record], demo: Record) -> None:
    for record in (*houses.values(), demo):
        found = remarks(record, TODAY)
        check(record)
        check_subjects(record)
        for seed in range(3):
            rng = Random(seed)  # noqa: S311
            assert remarks(shuffled(record, rng), TODAY) == found


def test_a_remark_set_aside_comes_back_when_its_facts_change(demo: Record) -> None:
    """Every third is set aside, every third was and its facts have changed."""
    found = remarks(demo, TODAY)
    assert len(found) > 50
    for first in range(3):
        states = [("no", "set", "back")[(first + n) % 3] for n in range(len(found))]
        asides = tuple(
            aside_of(demo, remark, n, changed=state == "back")
            for n, (remark, state) in enumerate(zip(found, states, strict=True))
            if state != "no"
        )
        marked = remarks(demo.having(asides=asides), TODAY)
        assert [one.aside for one in marked] == states
        assert [(m.code, m.about, m.facts) for m in marked] == [
            (each.code, each.about, each.facts) for each in found
        ]


def test_one_remark_set_aside_is_the_only_one(demo: Record) -> None:
    found = remarks(demo, TODAY)
    for n in (0, len(found) // 2, len(found) - 1):
        one = demo.having(asides=(aside_of(demo, found[n], n, changed=False),))
        marked = [r.aside for r in remarks(one, TODAY)]
        assert [m for m, state in enumerate(marked) if state != "no"] == [n]


def aside_of(record: Record, remark: Remark, number: int, *, changed: bool) -> Aside:
    about = remark.about[0] if remark.about[0] != record.home.ref else None
    return Aside(
        ref=f"A{number}",
        remark=remark.code,
        about=about,
        reason="Known.",
        facts="other" if changed else remark.facts,
    )
