"""The glossary: each word once, short, and its links lead somewhere."""

from __future__ import annotations

import ast
import inspect
import re

import pytest

from app.domain import glossary
from app.domain.glossary import TERMS

FORBIDDEN = re.compile(
    r"\b(dead|safe to work|compliant|certified|satisfactory|passed)\b", re.IGNORECASE
)


@pytest.mark.parametrize("slug", TERMS)
def test_term_is_explained_in_one_to_three_short_sentences(slug: str) -> None:
    text = TERMS[slug].text
    assert len(text) < 400
    assert re.match(r"[A-Z0-9].+\.$", text)
    assert "  " not in text
    assert 1 <= len(re.findall(r"\.(?: (?=[A-Z0-9])|$)", text)) <= 3


@pytest.mark.parametrize("slug", TERMS)
def test_term_leads_to_other_terms_that_exist(slug: str) -> None:
    see = TERMS[slug].see
    assert [link for link in see if link not in TERMS] == []
    assert slug not in see
    assert len(set(see)) == len(see)


@pytest.mark.parametrize("slug", TERMS)
def test_term_promises_nothing_that_a_record_cannot_know(slug: str) -> None:
    assert FORBIDDEN.findall(f"{TERMS[slug].word}. {TERMS[slug].text}") == []


def test_terms_promise_no_more_than_the_program_does() -> None:
    assert not {"round", "reading"} & set(TERMS)
    assert "change log" in TERMS["label-as-found"].text
    assert "for ever" not in TERMS["label-as-found"].text
    assert "shown first" not in TERMS["care"].text
    assert "no additional protection" in TERMS["circuit-breaker"].text


def test_slugs_can_stand_in_an_address_and_are_in_order() -> None:
    assert [slug for slug in TERMS if not re.fullmatch(r"[a-z0-9-]+", slug)] == []
    assert list(TERMS) == sorted(TERMS)


def test_no_term_is_defined_twice() -> None:
    tree = ast.parse(inspect.getsource(glossary))
    written = [
        key.value
        for table in ast.walk(tree)
        if isinstance(table, ast.Dict)
        for key in table.keys
        if isinstance(key, ast.Constant)
    ]
    assert written == list(TERMS)
    words = [term.word.lower() for term in TERMS.values()]
    assert len(set(words)) == len(words)


@pytest.mark.parametrize(
    "slug",
    ["way", "point", "cut-out", "tails", "ring-final", "spur", "rcd", "rcbo", "tie"],
)
def test_words_that_every_screen_uses_are_explained(slug: str) -> None:
    assert slug in TERMS
