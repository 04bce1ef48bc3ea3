"""Hostile texts in every field: shown as they are everywhere, and nothing more."""

from __future__ import annotations

import json
import re
from urllib.parse import urlsplit

import pytest

from app.config import Config
from app.domain.record import SORTS, Home, Record
from app.domain.record._field import TURNING
from app.errors import InvalidError
from app.interchange import from_document, to_document
from app.interchange.reply import FORMAT, read_reply
from app.services.homes import open_home
from app.store.engine import make_engine, reading
from tests.attacks.hostile import LONGEST, TEXTS, WORKED_OUT, texts_of
from tests.pages import DIALS, XLINK, Page

LEADS = ("href", "src", "action", "formaction", "data", f"{XLINK}href", "poster")
OWN_SCRIPT = re.compile(r"/static/js/[a-z_]+\.js\?v=[0-9a-z]+")


def test_every_text_of_every_sort_is_hostile(spoiled: Config) -> None:
    record, kept = stored(spoiled), {TURNING.sub("", t) for t in (*TEXTS, LONGEST)}
    for cls in SORTS.values():
        items = record.of(cls)
        assert items, cls.sort
        for item in items:
            for spec in texts_of(cls):
                assert getattr(item, spec.name) in kept, (cls, spec.name)
    for spec in texts_of(Home):
        assert getattr(record.home, spec.name) in kept


def stored(config: Config) -> Record:
    with reading(make_engine(config.database)) as connection:
        return open_home(connection, "demo").record


def test_no_page_makes_anything_of_a_text(seen: dict[str, Page]) -> None:
    pages = [p for p in seen.values() if p.response.mimetype == "text/html"]
    assert len(pages) > 60
    assert [wrong for page in pages for wrong in made_of(page)] == []
    shown = " ".join(page.response.get_data(as_text=True) for page in pages)
    assert WORKED_OUT not in shown
    assert "root:" not in shown


def made_of(page: Page) -> list[str]:
    """Return every element and attribute that a text may have made."""
    found = []
    for element in page.root.iter():
        if not isinstance(element.tag, str):
            found.append("a comment")
            continue
        values = dict(element.attrib)
        if element.tag == "script" and not OWN_SCRIPT.fullmatch(values.get("src", "")):
            found.append("a script")
        found += [name for name in values if name.startswith("on") or "zq" in name]
        for name in LEADS:
            to = urlsplit(values.get(name, ""))
            away = to.netloc or to.scheme not in ("", "data")
            if away and not DIALS.fullmatch(values[name]):
                found.append(values[name])
    return [f"{page.response.request.path}: {each}" for each in found]


@pytest.mark.parametrize("letter", ["\x80", "\x9b", "\x9f", "\ufdd0", "\uffff"])
def test_no_control_comes_in_from_outside(demo: Record, letter: str) -> None:
    document = to_document(demo).replace("Kitchen", f"Kit{letter}chen")
    with pytest.raises(InvalidError) as refused:
        from_document(document.encode())
    problem = refused.value.problems[0]
    assert problem.place.endswith(".name")
    assert problem.reason == "It holds a control character."
    reply = {"format": FORMAT, "version": 1, "home": "demo", "by": letter}
    with pytest.raises(InvalidError, match="nothing was changed"):
        read_reply(json.dumps(reply).encode(), "demo")
