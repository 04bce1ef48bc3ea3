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
from markupsafe import escape

from app.domain.record import LONG, SORTS, FieldSpec, Home, Record, specs
from app.web.point_table import point_layout
from app.web.quick import Column, Layout
from app.web.way_table import way_layout
from tests.pages import CheckedClient, page_of

NASTY = "<script>alert(1)</script>'\"&{{911*977}}"
REFUSED, TAKEN, EITHER = "refused", "taken", "either"
Trial = tuple[str | list[str], str]
Trials = dict[str, Trial]
CHECKED = ("ref", "mpan", "network_phone")
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
    plain = EITHER if spec.name in CHECKED else TAKEN
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
    yield from ((value, TAKEN) for value in ("", f" {spec.high} "))
    yield str(spec.low), REFUSED if spec.nonzero else TAKEN
    yield from ((value, EITHER) for value in ("٣", "1_0", "+5", "1.5", "1,5", "-0"))


def _day(spec: FieldSpec) -> Iterator[Trial]:
    yield from ((value, REFUSED) for value in DAYS)
    yield from ((value, TAKEN) for value in ("", "2026-03-01"))
    # Another field of the form may say a day that this one cannot be before.
    yield "0001-01-01", EITHER if spec.after else TAKEN
    yield "9999-12-31", REFUSED if spec.come else TAKEN


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

    client: CheckedClient
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
    here: CheckedClient, database: Path, tmp_path: Path
) -> Callable[[str], Form]:
    kept = tmp_path / "kept.sqlite3"
    shutil.copy(database, kept)
    return lambda url: Form(here, url, here.see(url).values(), database, kept)


def address(sort: str) -> str:
    return f"/homes/H1/{ITEMS[sort]}/edit".replace("//", "/")


def name_of(spec: FieldSpec) -> str:
    return f"{spec.name}_1" if spec.type == "refs" else spec.name


def mixtures(tried: dict[str, list[Trial]], which: set[str]) -> Iterator[Trials]:
    """Yield each field with one of its values at a time, until all had their turn."""
    some = {n: [t for t in ts if t[1] in which] for n, ts in tried.items()}
    some = {name: trials for name, trials in some.items() if trials}
    for turn in range(max(map(len, some.values()))):
        yield {
            name: trials[(turn + place) % len(trials)]
            for place, (name, trials) in enumerate(some.items())
        }


def expect(text: str, key: str, typed: Trials) -> None:
    """See that just those fields are refused that are to be."""
    for name, (value, what) in typed.items():
        said = f'id="{key}{name}-error"' in text
        assert what == EITHER or said == (what == REFUSED), (key, name, value, what)


@pytest.mark.parametrize("sort", ITEMS)
def test_what_cannot_be_is_refused_beside_its_field(
    opened: Callable[[str], Form], sort: str
) -> None:
    form = opened(address(sort))
    tried = {name_of(s): list(trials(s)) for s in specs(CLASSES[sort])}
    assert set(tried) <= set(form.fields) | {"care"}
    for typed in mixtures(tried, {REFUSED, TAKEN, EITHER}):
        status, text = form.send({name: value for name, (value, _) in typed.items()})
        assert status == 422 or not any(what == REFUSED for _, what in typed.values())
        if status == 422:
            expect(text, "", typed)


@pytest.mark.parametrize("sort", ITEMS)
def test_what_can_be_is_taken(opened: Callable[[str], Form], sort: str) -> None:
    form = opened(address(sort))
    tried = {name_of(s): list(trials(s)) for s in specs(CLASSES[sort])}
    for typed in mixtures(tried, {TAKEN}):
        sent = {name: value for name, (value, _) in typed.items()}
        assert form.send(sent)[0] == 303, sent


@pytest.mark.parametrize("sort", ITEMS)
def test_one_wrong_field_is_refused_with_all_others_right(
    opened: Callable[[str], Form], sort: str
) -> None:
    """Nothing that is refused slips through when it is the only thing amiss."""
    form = opened(address(sort))
    for turn, spec in enumerate(specs(CLASSES[sort])):
        refused = [t for t in trials(spec) if t[1] == REFUSED]
        if refused:
            one = {name_of(spec): refused[turn % len(refused)]}
            status, text = form.send({n: value for n, (value, _) in one.items()})
            assert status == 422, one
            expect(text, "", one)
            if isinstance(value := one[name_of(spec)][0], str) and spec.type == "int":
                assert escape(value) in text


@pytest.mark.parametrize("sort", ITEMS)
def test_a_form_with_no_field_at_all(opened: Callable[[str], Form], sort: str) -> None:
    form = opened(address(sort))
    token = {"csrf_token": form.fields["csrf_token"]}
    for fields in (token, {**token, "kind": NASTY}, {**token, "mark": NASTY}):
        answer = page_of(form.client.post(form.url, data=fields))
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
def test_what_cannot_be_is_refused_in_its_cell(
    opened: Callable[[str], Form], small: Record, table: str, key: str
) -> None:
    url, layout = tables(small)[table]
    form = opened(url)
    for typed in mixtures(dict(columns(layout)), {REFUSED, TAKEN, EITHER}):
        rows = (key, "new~1", "new~4")
        sent = {f"{r}-{n}": value for r in rows for n, (value, _) in typed.items()}
        status, text = form.send(sent)
        assert status == 422
        for row in rows:
            expect(text, f"{row}-", typed)


@pytest.mark.parametrize(("table", "key"), [("points", "P1"), ("ways", "W1")])
def test_what_can_be_is_taken_in_its_cell(
    opened: Callable[[str], Form], small: Record, table: str, key: str
) -> None:
    url, layout = tables(small)[table]
    form = opened(url)
    for typed in mixtures(dict(columns(layout)), {TAKEN}):
        kind = {"new~1-kind": {"points": "light", "ways": "rcbo"}[table]}
        sent = {f"{r}-{n}": v[0] for r in (key, "new~1") for n, v in typed.items()}
        assert form.send({**sent, **kind})[0] == 303, sent


def test_a_quick_table_of_rooms_takes_nasty_names(
    opened: Callable[[str], Form],
) -> None:
    form = opened("/homes/H1/rooms/quick/table")
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
        fields = {name: NASTY for name in texts if name not in CHECKED}
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
