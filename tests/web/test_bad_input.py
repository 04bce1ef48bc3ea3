"""Whatever is typed into whatever field: it is refused there or shown as it is.

The values come from what each field declares, so that a new field is tried too.
"""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import pytest
from flask import Flask
from flask.testing import FlaskClient
from markupsafe import escape

from app.domain.record import LONG, SORTS, FieldSpec, Home, Record, specs
from app.web.point_table import point_layout
from app.web.quick import Column, Layout
from app.web.way_table import way_layout
from tests.pages import CheckedClient, Page

NASTY = "<script>alert(1)</script>'\"&{{911*977}}"
REFUSED, TAKEN, EITHER = "refused", "taken", "either"
Trial = tuple[str | list[str], str]
NUMBERS = ("x", "1e999", "-1e999", "NaN", "inf", "--1", "0x10", "1 2 x", "1e-9", "½")
DAYS = ("yesterday", "2026-02-30", "2026-13-01", "99999-01-01", "01/02/2026", NASTY)
ITEMS = {
    "home": "",
    "room": "rooms/R1",
    "source": "sources/GRID",
    "intake": "intake/MET",
    "board": "boards/B1",
    "device": "devices/W1",
    "circuit": "circuits/C1",
    "point": "points/P1",
    "tie": "ties/T-P1-C1-feeds",
    "control": "controls/K-P3-P2",
}
CLASSES = {"home": Home, **SORTS}


def trials(spec: FieldSpec) -> Iterator[Trial]:
    """Yield what may be typed into a field, and what must become of it."""
    yield from TRIALS.get(spec.type, _choice)(spec)
    yield ["first", NASTY], EITHER


def _text(spec: FieldSpec) -> Iterator[Trial]:
    if spec.name == "ref":
        yield from (
            (v, REFUSED) for v in (NASTY, "", "../x", "٣", "x" * 33, "-", "a b")
        )
        return
    plain = EITHER if spec.name == "mpan" else TAKEN
    empty = REFUSED if spec.required else plain
    yield from ((value, empty) for value in ("", "  \t ", "\x00\x01\x1f\x85\uffff"))
    yield "x" * (spec.max_length + 1), REFUSED
    yield from ((v, plain) for v in (NASTY, "x" * spec.max_length, "🔌 é\u202e٣", "-"))
    yield "two\r\nlines", plain


def _long(_spec: FieldSpec) -> Iterator[Trial]:
    yield "x" * (LONG + 1), REFUSED
    yield from ((v, TAKEN) for v in (NASTY, "", "two\r\nlines", "\n\nx", "x" * LONG))


def _number(spec: FieldSpec) -> Iterator[Trial]:
    assert spec.low is not None
    assert spec.high is not None
    beyond = (str(spec.low - 1), str(spec.high + 1), f"{spec.high}.1", "9" * 400)
    yield from ((value, REFUSED) for value in (*NUMBERS, *beyond, NASTY))
    yield from ((value, TAKEN) for value in ("", str(spec.low), f" {spec.high} "))
    yield from ((value, EITHER) for value in ("٣", "1_0", "+5", "1.5", "1,5", "-0"))


def _day(_spec: FieldSpec) -> Iterator[Trial]:
    yield from ((value, REFUSED) for value in DAYS)
    yield from ((value, TAKEN) for value in ("", "2026-03-01", "0001-01-01"))


def _choice(spec: FieldSpec) -> Iterator[Trial]:
    yield from ((value, REFUSED) for value in ("nothing", NASTY, "P99", "H1", "~left"))
    open_ = spec.type in ("ref", "refs") and not spec.required
    yield "", TAKEN if open_ else REFUSED


TRIALS: dict[str, Callable[[FieldSpec], Iterator[Trial]]] = {
    "text": _text,
    "long": _long,
    "int": _number,
    "decimal": _number,
    "date": _day,
}


@dataclass
class Form:
    """A form that is sent again and again, each time to the same file."""

    client: FlaskClient
    url: str
    fields: dict[str, Any]
    database: Path
    kept: Path

    def send(self, typed: dict[str, Any]) -> tuple[int, str]:
        """Send it with some fields changed; put the file back as it was."""
        answer = self.client.post(self.url, data={**self.fields, **typed})
        text = answer.get_data(as_text=True)
        if answer.status_code == 303:
            shown = self.client.get(answer.headers["Location"])
            assert shown.status_code == 200, (typed, shown.status_code)
            text = shown.get_data(as_text=True)
            shutil.copy(self.kept, self.database)
        assert answer.status_code in (303, 422), (typed, answer.status_code)
        assert "<script>alert" not in text, typed
        assert "890047" not in text, typed
        return answer.status_code, text


@pytest.fixture
def opened(
    here: CheckedClient, app: Flask, database: Path, tmp_path: Path
) -> Callable[..., Form]:
    """Open a form to be sent; unchecked, for speed, unless it is asked for."""
    kept = tmp_path / "kept.sqlite3"
    shutil.copy(database, kept)

    def open_form(url: str, *, checked: bool = False) -> Form:
        values = here.see(url).values()
        client: FlaskClient = here
        if not checked:
            client = FlaskClient(app, app.response_class, use_cookies=True)
            cookie = here.get_cookie("ways")
            assert cookie is not None
            client.set_cookie("ways", cookie.value)
        return Form(client, url, values, database, kept)

    return open_form


def name_of(spec: FieldSpec) -> str:
    return f"{spec.name}_1" if spec.type == "refs" else spec.name


def expect(result: tuple[int, str], name: str, value: Any, what: str) -> None:
    status, text = result
    if what != EITHER:
        wanted = 422 if what == REFUSED else 303
        assert status == wanted, (name, value, what)
    if status == 422:
        assert f'id="{name}-error"' in text, (name, value)


@pytest.mark.parametrize("sort", ITEMS)
def test_each_field_by_itself(opened: Callable[..., Form], sort: str) -> None:
    form = opened(f"/homes/H1/{ITEMS[sort]}/edit".replace("//", "/"))
    for spec in specs(CLASSES[sort]):
        name = name_of(spec)
        assert name in form.fields or spec.type == "choices", name
        for value, what in trials(spec):
            result = form.send({name: value})
            expect(result, name, value, what)
            kept = spec.type in ("text", "int", "decimal") and isinstance(value, str)
            if kept and result[0] == 422 and value.isprintable():
                assert escape(value) in result[1], (name, value)


@pytest.mark.parametrize("sort", ITEMS)
def test_every_field_wrong_at_once(opened: Callable[..., Form], sort: str) -> None:
    """The page still keeps every rule, and names every field that is refused."""
    form = opened(f"/homes/H1/{ITEMS[sort]}/edit".replace("//", "/"), checked=True)
    tried = {name_of(s): list(trials(s)) for s in specs(CLASSES[sort])}
    for number in range(max(map(len, tried.values()))):
        typed = {name: some[number % len(some)] for name, some in tried.items()}
        result = form.send({name: value for name, (value, _) in typed.items()})
        refused = [name for name, (_, what) in typed.items() if what == REFUSED]
        assert (result[0] == 422) >= bool(refused)
        for name in refused:
            assert f'id="{name}-error"' in result[1], (name, typed[name])


@pytest.mark.parametrize("sort", ITEMS)
def test_a_form_with_no_field_at_all(opened: Callable[..., Form], sort: str) -> None:
    form = opened(f"/homes/H1/{ITEMS[sort]}/edit".replace("//", "/"), checked=True)
    token = {"csrf_token": form.fields["csrf_token"]}
    for fields in (token, {**token, "kind": NASTY}, {**token, "mark": NASTY}):
        answer = Page(form.client.post(form.url, data=fields))
        assert answer.status in (303, 409, 422)
        shutil.copy(form.kept, form.database)


def columns(layout: Layout) -> Iterator[tuple[str, list[Trial]]]:
    by_name = {spec.name: spec for spec in specs(layout.cls)}
    for column in layout.columns:
        yield column.name, list(_trials_of(column, by_name))


def _trials_of(column: Column, by_name: dict[str, FieldSpec]) -> Iterator[Trial]:
    if isinstance(column.of, str):
        yield from trials(by_name[column.of])
    elif column.of.name == "feeds":
        yield from trials(replace(by_name["way"], name="feeds"))
    else:
        yield from ((value, REFUSED) for value in ("nothing", NASTY, "P99", "H1"))


def tables(small: Record) -> dict[str, tuple[str, Layout]]:
    return {
        "points": ("/homes/H1/rooms/R1/points", point_layout(small.rooms[0])),
        "ways": ("/homes/H1/boards/B1/ways", way_layout(small.boards[0])),
    }


@pytest.mark.parametrize(("table", "key"), [("points", "P1"), ("ways", "W1")])
def test_each_cell_of_a_quick_table(
    opened: Callable[..., Form], small: Record, table: str, key: str
) -> None:
    url, layout = tables(small)[table]
    form = opened(url)
    kind = {"points": "light", "ways": "rcbo"}[table]
    for name, some in columns(layout):
        for value, what in some:
            expect(form.send({f"{key}-{name}": value}), f"{key}-{name}", value, what)
            new = {"new~1-kind": kind, f"new~1-{name}": value}
            if name != "kind":
                expect(form.send(new), f"new~1-{name}", value, what)


@pytest.mark.parametrize(("table", "key"), [("points", "P1"), ("ways", "W1")])
def test_a_quick_table_wrong_all_over(
    opened: Callable[..., Form], small: Record, table: str, key: str
) -> None:
    url, layout = tables(small)[table]
    form = opened(url, checked=True)
    cells = dict(columns(layout))
    for number in range(max(map(len, cells.values()))):
        typed = {name: some[number % len(some)] for name, some in cells.items()}
        sent = {
            f"{row}-{name}": value
            for row in (key, "new~1", "new~2")
            for name, (value, _) in typed.items()
        }
        _, text = form.send(sent)
        for name, (value, what) in typed.items():
            if what == REFUSED:
                assert f'id="{key}-{name}-error"' in text, (name, value)


def test_a_quick_table_of_rooms_takes_nasty_names(
    opened: Callable[..., Form],
) -> None:
    form = opened("/homes/H1/rooms/quick/table", checked=True)
    status, text = form.send({"R1-name": NASTY, "new~1-name": NASTY})
    assert status == 303
    assert text.count(str(escape(NASTY))) >= 2
    status, text = form.send({"R1-name": "", "new~1-name": "x" * 121})
    assert status == 422
    assert 'id="R1-name-error"' in text
    assert 'id="new~1-name-error"' in text


def test_nasty_words_are_shown_as_they_are_on_every_page(
    here: CheckedClient,
) -> None:
    """Each name, label, note and reference of the home holds a script."""
    pages = ["", "intake/", "boards/", "circuits/", "rooms/", "points/", "sources/"]
    pages += ["ask/", "open-questions/", "changes/", "document", "delete"]
    for sort, place in ITEMS.items():
        url = f"/homes/H1/{place}/edit".replace("//", "/")
        page = here.see(url)
        texts = [s.name for s in specs(CLASSES[sort]) if s.type in ("text", "long")]
        fields = {name: NASTY for name in texts if name not in ("ref", "mpan")}
        here.go_on(here.submit_on(page, fields))
        if sort in ("room", "board", "device", "circuit", "point"):
            pages += [f"{place}/", f"{place}/delete"]
    pages += ["boards/B1/?lit=W1", "boards/B1/?lit=R1", "search/?q=script"]
    pages += ["rooms/quick/table", "rooms/R1/points", "boards/B1/ways"]
    for url in pages:
        text = here.get(f"/homes/H1/{url}").get_data(as_text=True)
        assert "<script>alert" not in text, url
    nasty = "/homes/H1/search/?q=%3Cscript%3Ealert(1)%3C%2Fscript%3E"
    assert here.see(nasty).h1.startswith("Found for “<script>")
