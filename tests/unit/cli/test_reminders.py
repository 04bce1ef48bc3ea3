"""``ways reminders``: for a reader, a program, and a calendar."""

from __future__ import annotations

import json
from collections.abc import Callable

import pytest
from click.testing import CliRunner, Result
from icalendar import Calendar

from app.cli import main
from tests import json_schema


@pytest.fixture
def ways(tmp_path: object, monkeypatch: pytest.MonkeyPatch) -> Callable[..., Result]:
    """Run the command on a data folder that holds the demo home."""
    monkeypatch.setenv("WAYS_DATA", f"{tmp_path}/data")

    def run(*arguments: str) -> Result:
        result = CliRunner().invoke(main, list(arguments))
        assert result.exit_code == 0, result.output
        return result

    run("demo")
    return run


def test_reminders_for_each_kind_of_reader(ways: Callable[..., Result]) -> None:
    text = ways("reminders").stdout
    assert text.splitlines()[0] == "Now:"
    assert "Have the installation inspected. Last done on 14 June 2021." in text
    found = json.loads(ways("reminders", "--json").stdout)
    schema = json.loads(ways("schema", "--answer", "reminders").stdout)
    assert json_schema.errors(found, schema) == []
    events = Calendar.from_ical(ways("reminders", "--ics").stdout_bytes).walk("VEVENT")
    dated = [d for d in found if d["next_on"] and d["state"] in ("now", "later")]
    assert len(events) == len(dated) > 3
    assert len({str(event["uid"]) for event in events}) == len(events)
