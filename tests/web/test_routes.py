"""The routes are those written down, and each answers on every home."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from flask import Flask

from app.domain.record import Home, Record
from tests.pages import CheckedClient

ROUTES = Path(__file__).with_name("routes.txt")
HOMES = ["h01", "h02", "h05", "h06", "h07", "h10", "demo", "empty"]


def routes(app: Flask) -> list[str]:
    return sorted(
        f"{rule.rule} {' '.join(sorted(set(rule.methods or ()) & {'GET', 'POST'}))}"
        for rule in app.url_map.iter_rules()
    )


def test_the_routes_are_those_written_down(app: Flask) -> None:
    """A page more, or one less: write it into routes.txt, and into the tests."""
    assert routes(app) == ROUTES.read_text(encoding="utf-8").splitlines()


def pages(app: Flask, home: str) -> Iterator[str]:
    """Yield each page that needs to know no more than the home."""
    adapter = app.url_map.bind("localhost")
    for rule in app.url_map.iter_rules():
        if "GET" in (rule.methods or ()) and set(rule.arguments) <= {"home"}:
            yield adapter.build(rule.endpoint, dict.fromkeys(rule.arguments, home))
    for plural in ("rooms", "sources", "intake", "boards", "devices", "circuits"):
        yield f"/homes/{home}/new/{plural}"
    for plural in ("points", "ties", "controls"):
        yield f"/homes/{home}/new/{plural}"


@pytest.mark.parametrize("name", HOMES)
def test_every_page_answers(
    visitor: CheckedClient,
    app: Flask,
    keep: Callable[[Record], int],
    houses: dict[str, Record],
    demo: Record,
    name: str,
) -> None:
    empty = Record(home=Home(ref="empty", name="Nothing yet"))
    keep({**houses, "demo": demo, "empty": empty}[name])
    found = list(pages(app, name))
    assert len(found) > 20
    for url in found:
        if not url.endswith("/ask/go"):
            answer = visitor.get(url, follow_redirects=True)
            assert answer.status_code == 200, url


def test_every_test_home_is_looked_at(houses: dict[str, Record]) -> None:
    assert sorted(houses) == HOMES[:-2]


def test_every_kind_of_thing_has_its_pages(
    visitor: CheckedClient, keep: Callable[[Record], int], houses: dict[str, Record]
) -> None:
    """The first thing of each kind in any home: what it is, and its form."""
    seen = set()
    for name, record in houses.items():
        keep(record)
        for item in record.items():
            kind = (item.sort, getattr(item, "kind", getattr(item, "role", "")))
            if kind not in seen:
                seen.add(kind)
                base = f"/homes/{name}/{item.plural}/{item.ref}"
                assert visitor.see(f"{base}/edit").h1.endswith(item.ref)
                if item.sort in ("room", "board", "device", "circuit", "point"):
                    assert item.title.startswith(visitor.see(f"{base}/").h1)
    assert len(seen) > 50
