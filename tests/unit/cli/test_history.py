"""The past from a terminal: what was changed, the record as it stood, and along."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest
from click.testing import Result
from sqlalchemy import update

from app.domain import edits
from app.domain.record import Record
from app.interchange import document_schema, from_document
from app.services.answers import answer_schema
from app.services.homes import open_home, save
from app.store import tables
from app.store.engine import make_engine, writing
from tests import json_schema

Ways = Callable[..., Result]


@pytest.fixture
def ways(tmp_path: Path, ways: Ways, houses: dict[str, Record]) -> Ways:
    """Run the command where a home is recorded since March, with a change in May."""
    data = tmp_path / "data"
    ways("import", Path(__file__).parents[2] / "houses" / "h01.json")
    with writing(make_engine(data / "ways.sqlite3")) as connection:
        here = open_home(connection, "h01")
        point = houses["h01"].points[0]
        other = point.model_copy(update={"note": "by the door"})
        new = edits.replaced(here.record, point.ref, other)
        save(connection, here, new, f"Changed {point.ref}.")
        began = datetime(2026, 3, 1, 9, tzinfo=UTC).isoformat()
        changed = datetime(2026, 5, 1, 9, tzinfo=UTC).isoformat()
        connection.execute(update(tables.home).values(began_at=began))
        connection.execute(update(tables.change).values(at=changed))
    return ways


def test_what_was_changed_is_told(ways: Ways, houses: dict[str, Record]) -> None:
    ref = houses["h01"].points[0].ref
    text = ways("history").stdout
    assert text.startswith("1. 1 May 2026, 10:00 BST, from this computer\n")
    assert f"Changed {ref}." in text
    assert "Note: nothing → “by the door”" in text
    assert ways("history", "--item", ref).stdout == text
    assert ways("history", "--since", "2026-05-02").stdout == "Nothing was changed.\n"
    assert ways("history", "--since", "2026-05-01").stdout == text
    assert ways("history", "--since", "0001-01-01").stdout.startswith(text)


def test_what_was_changed_is_answered_as_its_schema_says(ways: Ways) -> None:
    (change,) = answer = json.loads(ways("history", "--json").stdout)
    assert json_schema.errors(answer, answer_schema("history")) == []
    assert (change["at"], change["undone_by"]) == ("2026-05-01T09:00:00Z", None)
    assert change["items"][0]["what"] == "changed"


def test_what_never_was_has_no_history(ways: Ways) -> None:
    refusal = ways("history", "--item", "NEVER", code=1).stderr
    assert "There is no “NEVER” in h01, and never was." in refusal
    assert "does not match the format" in ways("history", "--since", "x", code=2).stderr


def test_the_record_as_it_stood(
    ways: Ways, houses: dict[str, Record], tmp_path: Path
) -> None:
    text = ways("as-of", "2026-04-30", "export").stdout
    assert from_document(text.encode()) == houses["h01"]
    assert ways("as-of", "2026-05-01T09:59", "export").stdout == text
    assert ways("as-of", "2026-05-01T10:00", "export").stdout == ways("export").stdout
    file = tmp_path / "then.json"
    ways("as-of", "2026-04-30", "export", "-o", file)
    assert file.read_text("utf-8") == text


@pytest.mark.parametrize(
    ("when", "code", "said"),
    [
        ("2026-02-28", 1, "The record of this home begins on 1 March 2026, 09:00."),
        ("9000-01-01", 1, "That day is still to come."),
        ("yesterday", 2, "“yesterday” is no date: write it as 2026-03-01"),
        ("2026-03-01T25:00", 2, "is no date"),
    ],
)
def test_a_moment_that_cannot_be(ways: Ways, when: str, code: int, said: str) -> None:
    assert said in " ".join(ways("as-of", when, "export", code=code).stderr.split())


def test_two_days_are_compared(ways: Ways) -> None:
    text = ways("as-of", "2026-04-30", "compare", "2026-05-01").stdout
    assert "Note: nothing → “by the door”" in text
    assert ways("as-of", "2026-05-01", "compare", "2026-04-30").stdout == text
    same = ways("as-of", "2026-05-01", "compare", "2026-05-02").stdout
    assert "Nothing differs." in same
    answer = json.loads(
        ways("as-of", "2026-04-30", "compare", "2026-05-01", "--json").stdout
    )
    assert json_schema.errors(answer, answer_schema("compare")) == []


def test_a_history_goes_along(ways: Ways, tmp_path: Path) -> None:
    file = tmp_path / "home.json"
    ways("export", "--with-history", "-o", file)
    document = json.loads(file.read_text("utf-8"))
    assert json_schema.errors(document, document_schema()) == []
    assert document["began"] == "2026-03-01T09:00:00Z"
    assert "with 1 changes" in ways("import", file, "--as", "again").stdout
    then = ("as-of", "2026-04-30", "export", "--home")
    assert ways(*then, "again").stdout == ways(*then, "h01").stdout
    text = ways("history", "--home", "again").stdout
    assert "from another computer" in text
    assert "Taken in as again; it was h01." in text


def changed(document: Any, **values: Any) -> Any:
    document["history"][0] |= values
    return document


WRONG: dict[str, tuple[Callable[[Any], Any], str]] = {
    "another value after": (
        lambda d: changed(
            d, entries=[{"sort": "point", "before": None, "after": {"ref": "NONE"}}]
        ),
        (
            "history[0].entries[0].after: It does not lead to what comes after it. "
            "There is no point “NONE” then."
        ),
    ),
    "a field that is none": (
        lambda d: changed(
            d, entries=[{"sort": "home", "before": {}, "after": {"ref": "h01", "x": 1}}]
        ),
        "history[0].entries[0].after.x: It does not lead to what comes after it.",
    ),
    "a value that no field holds": (
        lambda d: changed(
            d,
            entries=[
                {
                    "sort": "home",
                    "before": {"ref": "h01", "storeys": "many"},
                    "after": {"ref": "h01"},
                }
            ],
        ),
        "history[0].entries[0].before.storeys:",
    ),
    "a thing that is there still": (
        lambda d: changed(
            d, entries=[{"sort": "point", "before": d["points"][0], "after": None}]
        ),
        "history[0]: It does not lead to what comes after it.",
    ),
    "nothing before or after": (
        lambda d: changed(d, entries=[{"sort": "point"}]),
        "history[0].entries[0]: It names no item, neither before nor after.",
    ),
    "an undoing of itself": (
        lambda d: changed(d, undoes=1),
        "history[0].undoes: It must be the place of one before.",
    ),
    "no time": (lambda d: changed(d, at="May"), "history[0].at:"),
    "a sort that is none": (
        lambda d: changed(d, entries=[{"sort": "house"}]),
        "history[0].entries[0].sort:",
    ),
    "no beginning": (lambda d: d.pop("began") and d, "began: Field required."),
}


@pytest.mark.parametrize(("spoil", "said"), WRONG.values(), ids=WRONG)
def test_a_history_that_does_not_lead_to_the_record_is_refused(
    ways: Ways, tmp_path: Path, spoil: Callable[[Any], Any], said: str
) -> None:
    document = json.loads(ways("export", "--with-history").stdout)
    file = tmp_path / "home.json"
    file.write_text(json.dumps(spoil(document)), "utf-8")
    refusal = ways("import", file, "--as", "again", code=1).stderr
    assert "nothing was changed" in refusal
    assert said in refusal
