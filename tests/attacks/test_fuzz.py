"""Anything may be typed, asked for and sent: it is taken or refused, never a failure.

``FUZZ=20`` in the environment makes it twenty times as long.
"""

from __future__ import annotations

import json
import os
import re
import shutil
from collections.abc import Callable
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path
from typing import Any, cast
from urllib.parse import quote

import pytest
from flask import Flask
from flask.testing import FlaskClient
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from app.config import Config
from app.domain.record import Record
from app.errors import AppError
from app.interchange import from_document, to_document
from app.services.demo_pictures import with_pictures
from app.services.homes import add_home
from app.services.remarks import remarks_of
from app.store.engine import make_engine, writing
from app.web import create_app
from tests import photographs
from tests.attacks.values import ANY_JSON, ANY_TEXT, RAW, TYPED
from tests.pages import CheckedClient, values_of
from tests.unit.domain.remarks.cases import TODAY
from tests.web.test_guard import crawl

pytestmark = pytest.mark.filterwarnings("ignore:Generating overly large repr")
LENGTH = int(os.environ.get("FUZZ", "1"))
LOOKED_AT = ("/homes/demo/", "/homes/")
DEEPER = st.sampled_from((True, True, True, False))
DIGITS = re.compile(r"[0-9]+")
LONG = "x" * 5000
WRONG = ("-", "a\nb", "a\x01b", "0001-01-01", "9999-12-31", "9" * 40, "1e9999")
UPLOADS = {
    "/import": "document",
    "/homes/demo/files/new": "file",
    "/homes/demo/spreadsheet?kind=points": "file",
    "/homes/demo/corrections/": "file",
}


def examples(count: int) -> Callable[[Any], Any]:
    return settings(
        max_examples=count * LENGTH,
        deadline=None,
        suppress_health_check=list(HealthCheck),
        phases=(Phase.explicit, Phase.reuse, Phase.generate),
    )


@dataclass(frozen=True)
class Form:
    """A form as a page has it: where it is sent, and what it would send."""

    action: str
    fields: tuple[tuple[str, tuple[str, ...]], ...]
    texts: frozenset[str]


@dataclass(frozen=True, repr=False)
class Target:
    """A program on the demo home, put back to its start before each try."""

    app: Flask
    config: Config
    fresh: Path
    forms: tuple[Form, ...]
    addresses: tuple[str, ...]

    def client(self) -> CheckedClient:
        shutil.copy(self.fresh, self.config.database)
        return cast("CheckedClient", self.app.test_client())


@pytest.fixture(scope="module")
def target(
    tmp_path_factory: pytest.TempPathFactory, empty_database: Path, demo: Record
) -> Target:
    config = Config(data=tmp_path_factory.mktemp("fuzz"), secret_key=b"fz" * 16)
    shutil.copy(empty_database, config.database)
    with writing(make_engine(config.database)) as connection:
        add_home(connection, with_pictures(demo, config.files))
    fresh = config.data / "fresh"
    shutil.copy(config.database, fresh)
    app = create_app(config)
    app.test_client_class = CheckedClient
    seen = crawl(cast("CheckedClient", app.test_client()), "/homes/demo/?done=1", 1)
    forms = {}
    for url, page in seen.items():
        if page.response.mimetype != "text/html":
            continue
        for form in page.all("form"):
            action = form.get("action") or page.response.request.full_path.rstrip("?")
            fields = tuple((n, tuple(v)) for n, v in values_of(form).items())
            if form.get("method") == "post":
                forms[action.partition("?")[0]] = Form(action, fields, texts_of(form))
        assert url
    return Target(app, config, fresh, tuple(forms.values()), tuple(seen))


def texts_of(form: Any) -> frozenset[str]:
    """Return the names of the boxes that words are typed into."""
    words = [e for e in form.iter("input") if e.get("type", "text") == "text"]
    boxes = [*words, *form.iter("textarea")]
    return frozenset(e.get("name") for e in boxes if e.get("name"))


def holds(client: CheckedClient, status: int) -> None:
    """No failure, and the record still opens; a home that is gone is not there."""
    assert status < 500, status
    for address in LOOKED_AT:
        assert client.get(address).status_code in (200, 302, 404)


@examples(60)
@given(
    number=st.integers(0, 999),
    changes=st.lists(st.tuples(st.integers(0, 99), ANY_TEXT), max_size=6),
    more=st.sampled_from(("", *TYPED[:40])),
    as_json=st.booleans(),
)
def test_any_form_takes_anything(
    target: Target,
    number: int,
    changes: list[tuple[int, str]],
    more: str,
    as_json: bool,
) -> None:
    form = target.forms[number % len(target.forms)]
    sent: dict[str, Any] = {name: list(values) for name, values in form.fields}
    names = list(sent) or ["more"]
    for place, text in changes:
        sent[names[place % len(names)]] = text
    if more:
        sent[more] = "1"
    client = target.client()
    sent["csrf_token"] = client.token()
    headers = {"Accept": "application/json"} if as_json else {}
    holds(client, client.post(form.action, data=sent, headers=headers).status_code)


def test_every_form_is_tried_with_one_box_wrong(target: Target) -> None:
    """All else is as the page has it, or good: so what is behind a check runs too."""
    tried: set[tuple[object, str]] = set()
    client = target.client()
    for form in target.forms:
        to = target.app.url_map.bind("").match(form.action.partition("?")[0], "POST")[0]
        good: dict[str, Any] = {name: list(values) for name, values in form.fields}
        good |= {name: "1" for name in form.texts if good.get(name) == [""]}
        good["csrf_token"] = client.token()
        for name in sorted(good):
            box = (to, DIGITS.sub("#", name))
            if box in tried or name == "csrf_token":
                continue
            tried.add(box)
            odd = LONG if name in form.texts else WRONG[len(tried) % len(WRONG)]
            for wrong in {odd, *WRONG[1:LENGTH]}:
                data = good | {name: wrong}
                # Sent without a look at the page that comes back: there are many.
                sent = FlaskClient.open(client, form.action, method="POST", data=data)
                assert sent.status_code < 500, (form.action, name, wrong)
                if sent.status_code < 400:
                    client = target.client()
                    good["csrf_token"] = client.token()
    assert len(tried) > 100


def test_every_form_is_tried_with_each_box_wrong(target: Target) -> None:
    """Each form once, with something wrong in every box."""
    for number, form in enumerate(target.forms):
        client = target.client()
        sent: dict[str, Any] = {
            name: TYPED[(number + place) % len(TYPED)]
            for place, (name, _) in enumerate(form.fields)
        }
        sent["csrf_token"] = client.token()
        holds(client, client.post(form.action, data=sent).status_code)
    assert len(target.forms) > 40


@examples(80)
@given(st.data())
def test_any_address_can_be_asked_for(target: Target, data: st.DataObject) -> None:
    client = cast("CheckedClient", target.app.test_client())
    path, _, query = data.draw(st.sampled_from(target.addresses)).partition("?")
    parts = path.split("/")
    if data.draw(st.booleans()):
        place = data.draw(st.integers(1, len(parts) - 1))
        parts[place] = quote(data.draw(ANY_TEXT)[:300], safe="")
    names = [pair.partition("=")[0] for pair in query.split("&") if pair]
    names += ["q", "ref", "kind", "filter", "done", "first", "lit", "to", "at", "day"]
    pairs = data.draw(
        st.lists(st.tuples(st.sampled_from(names), ANY_TEXT.map(lambda t: t[:300])))
    )
    asked = "&".join(f"{name}={quote(text)}" for name, text in pairs)
    answer = client.get(f"{'/'.join(parts)}?{asked}")
    assert answer.status_code < 500, (path, pairs)


@pytest.mark.parametrize("address", UPLOADS)
@examples(8)
@given(data=st.data())
def test_any_file_can_be_sent(
    target: Target, address: str, data: st.DataObject
) -> None:
    client = target.client()
    whole = data.draw(
        st.sampled_from((*RAW, photographs.PDF, photographs.picture(), photographs.SVG))
        | st.binary(max_size=400)
    )
    cut = data.draw(st.integers(0, len(whole)) | st.just(len(whole)))
    name = data.draw(st.sampled_from(("x.json", "x.csv", "x.xlsx", "../x", "x" * 999)))
    fields = {"csrf_token": client.token(), "kind": "points", "caption": "", "of": ""}
    file = {UPLOADS[address]: (BytesIO(whole[:cut]), name)}
    answer = client.post(address, data={**fields, **file})
    answer.request.environ["wsgi.input"].close()
    holds(client, answer.status_code)


@examples(60)
@given(st.data())
def test_a_document_with_anything_in_it_is_taken_or_refused(
    houses: dict[str, Record], data: st.DataObject
) -> None:
    name = data.draw(st.sampled_from(sorted(houses)))
    document = json.loads(to_document(houses[name]))
    for _ in range(data.draw(st.integers(1, 4))):
        spoil(document, data)
    try:
        record = from_document(json.dumps(document).encode())
    except AppError:
        return
    assert from_document(to_document(record).encode()) == record
    remarks_of(record, TODAY)


def spoil(document: Any, data: st.DataObject) -> None:
    """Put anything in the place of something, or take it away, or twice."""
    here, key = document, data.draw(st.sampled_from(sorted(document)))
    while isinstance(here[key], dict | list) and here[key] and data.draw(DEEPER):
        here = here[key]
        keys = list(here) if isinstance(here, dict) else list(range(len(here)))
        key = data.draw(st.sampled_from(keys))
    act = data.draw(st.sampled_from(("put", "remove", "twice")))
    if act == "remove":
        del here[key]
    elif act == "twice" and isinstance(here, list):
        here.append(here[key])
    else:
        here[key] = data.draw(ANY_JSON)


@pytest.mark.parametrize("raw", RAW, ids=[str(n) for n in range(len(RAW))])
def test_what_is_no_document_is_refused(raw: bytes) -> None:
    with pytest.raises(AppError):
        from_document(raw)
