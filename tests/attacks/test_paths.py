"""Names that would lead out of the folder that they are meant for."""

from __future__ import annotations

import hashlib
import io
import zipfile
from collections.abc import Callable
from datetime import UTC, datetime

import pytest
from flask import Flask
from pydantic import ValidationError

from app.config import Config
from app.domain.record import Attachment, Home, Record
from app.errors import InvalidError
from app.interchange import to_document
from app.interchange.spreadsheet import shown_name
from app.services.pack import MANIFEST
from app.services.pack_in import unpacked
from app.store import waiting

OUT = (
    "../ways.sqlite3", "..", ".", "", "/etc/passwd", "..\\..\\key", "C:\\key",
    "%2e%2e/key", "....//key", "a/../../key", "key\x00", "//key", "~/key", "\\\\a\\b",
    "..%c0%afkey", "\uff0e\uff0e/key",
)  # fmt: skip
NOW = datetime(2026, 3, 5, 12, tzinfo=UTC)


@pytest.fixture
def secret(config: Config, keep: Callable[[Record], int], demo: Record) -> bytes:
    keep(demo)
    (config.data / "key").write_bytes(b"secret of the tests")
    config.waiting.mkdir()
    return b"secret of the tests"


@pytest.mark.parametrize("name", OUT)
def test_no_address_leads_out(app: Flask, secret: bytes, name: str) -> None:
    client = app.test_client()
    places = ("/static/{}", "/homes/demo/files/{}", "/homes/demo/files/{}/original",
              "/homes/demo/files/{}/large", "/homes/demo/spreadsheet/{}/columns",
              "/homes/demo/labels/sheets?sheet={}", "/help/{}", "/help/tables/{}",
              "/homes/demo/boards/{}/chart.pdf", "/homes/{}/document.json")  # fmt: skip
    for place in places:
        for shown in (name, name.replace("/", "%2f")):
            path = place.format(shown).encode().decode("latin-1")
            answer = client.get("/", environ_overrides={"PATH_INFO": path})
            assert answer.status_code in (200, 302, 308, 400, 404, 405, 422), path
            assert secret not in answer.data
            assert b"root:" not in answer.data
            assert b"SQLite format" not in answer.data


@pytest.mark.parametrize("name", OUT)
def test_no_token_leads_out(config: Config, secret: bytes, name: str) -> None:
    assert waiting.kept(config.waiting, name, NOW) is None
    waiting.let_go(config.waiting, name)
    assert (config.data / "key").read_bytes() == secret
    assert config.database.is_file()


@pytest.mark.parametrize("name", [*OUT, "a/b\r\nc.csv", "\x1b[2J.csv", "\u202evsc.x"])
def test_the_name_of_a_file_is_words_only(name: str) -> None:
    shown = shown_name(name)
    assert not set(shown) & set("/\\\r\n\x00\x1b\u202e")


def packed(record: Record, entry: str) -> bytes:
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w") as pack:
        content = {"record.json": to_document(record).encode(), entry: b"zq"}
        lines = [f"{hashlib.sha256(c).hexdigest()}  {n}" for n, c in content.items()]
        pack.writestr(f"home/{MANIFEST}", "\n".join(lines))
        for name, data in content.items():
            pack.writestr(f"home/{name}", data)
    return made.getvalue()


@pytest.mark.parametrize("name", ["../../zq", "/zq", "a\\..\\zq", "a/./zq", "a//zq"])
def test_no_entry_of_a_pack_leads_out(name: str) -> None:
    record = Record(home=Home(ref="a", name="A home"))
    assert unpacked(packed(record, "drawings/zq.svg")).document.record == record
    with pytest.raises(InvalidError) as refused:
        unpacked(packed(record, name))
    assert refused.value.problems[0].reason == "No pack has such a name."


@pytest.mark.parametrize("name", OUT)
def test_no_digest_leads_out(demo: Record, name: str) -> None:
    row = {"ref": "F1", "media_type": "image/jpeg", "size": 1}
    with pytest.raises(ValidationError):
        Attachment.model_validate({**row, "sha256": name})
