"""``ways may-i``: the rules from a terminal, with a home behind them or none."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from app.cli import main
from app.domain.may_i import JOBS
from app.domain.record import Record
from app.interchange import to_document
from tests import builders as b
from tests.json_schema import errors

FAN = ("--job", "bath-fan", "--answer", "new_circuit=no")


def ways(*arguments: str, data: Path) -> Result:
    return CliRunner().invoke(main, ["may-i", *arguments, "--data", str(data)])


def answered(*arguments: str, data: Path) -> Any:
    result = ways(*arguments, "--json", data=data)
    assert result.exit_code == 0, result.output
    value = json.loads(result.output)
    shape = CliRunner().invoke(main, ["schema", "--answer", "may-i"]).output
    assert errors(value, json.loads(shape)) == []
    return value


def keep(data: Path, record: Record) -> None:
    file = data / f"{record.home.ref}.json"
    file.write_text(to_document(record), encoding="utf-8")
    done = CliRunner().invoke(main, ["import", str(file), "--data", str(data)])
    assert done.exit_code == 0, done.output


def flat() -> Record:
    bath = b.room("R1", name="Bathroom", kind="bathroom", has_bath="yes")
    far = b.point("P1", kind="extractor", room="R1", from_bath_m="1.5")
    return b.home(bath, far, nation="scotland", dwelling="flat")


def test_every_job_is_listed(tmp_path: Path) -> None:
    text = ways("--jobs", data=tmp_path).output
    for code, job in JOBS.items():
        assert code in text
        assert job.title in text


def test_without_a_home_the_nation_is_enough(tmp_path: Path) -> None:
    near = answered("--nation", "england", "--place", "bath_zone", *FAN, data=tmp_path)
    assert (near["verdict"], near["rule"]) == ("notice", "EN4")
    assert near["checked"] == "2026-11-25"
    far = answered("--nation", "england", "--place", "bathroom", *FAN, data=tmp_path)
    assert (far["verdict"], far["rule"]) == ("no_notice", "EN5")


def test_the_home_says_nation_building_and_place(tmp_path: Path) -> None:
    keep(tmp_path, flat())
    answers = ("--answer", "separating_wall=no", "--answer", "building_change=no")
    found = answered(*FAN, *answers, "--at", "P1", data=tmp_path)
    assert (found["nation"], found["rule"]) == ("scotland", "SC5")
    england = answered(*FAN, "--at", "P1", "--nation", "england", data=tmp_path)
    assert england["rule"] == "EN5"


def test_with_new_cable_a_place_counts(tmp_path: Path) -> None:
    keep(tmp_path, flat().having(home=b.home(nation="england").home))
    for job in ("replace-socket", "replace-switch", "repair-cable"):
        cable = ("--job", job, "--answer", "new_cable=yes")
        near = answered(*cable, "--place", "bath_zone", data=tmp_path)
        assert (near["verdict"], near["rule"]) == ("notice", "EN4")
        by_room = answered(*cable, "--at", "R1", data=tmp_path)
        assert by_room["verdict"] == "depends"
        assert answered(*cable, data=tmp_path)["verdict"] == "depends"


def test_a_place_that_the_record_contradicts_is_asked(tmp_path: Path) -> None:
    room = b.room("R1", name="Kitchen", kind="kitchen")
    keep(tmp_path, b.home(room, b.socket("P1", room="R1"), nation="wales"))
    socket = ("--job", "shed-socket", "--at", "P1", "--answer", "new_circuit=no")
    asked = answered(*socket, "--answer", "outdoor_wiring=no", data=tmp_path)
    assert [each["code"] for each in asked["missing"]] == ["place"]
    shed = (*socket, "--answer", "outdoor_wiring=no", "--place", "outbuilding")
    assert answered(*shed, data=tmp_path)["rule"] == "WA8"


def test_text_says_rule_day_and_what_is_open(tmp_path: Path) -> None:
    text = ways("--nation", "england", "--job", "bath-fan", data=tmp_path).output
    assert "It depends." in text
    assert "--place bath_zone" in text
    assert "--answer new_circuit=yes" in text
    done = ways("--nation", "wales", *FAN, data=tmp_path).output
    assert "Rule WA10: Building Regulations 2010, Schedule 4 (Wales)" in done
    assert "Looked up on 25 November 2026." in done
    assert "May I do it myself?  Yes, on your side of the meter" in done


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("--job", "fly"), "There is no job “fly”"),
        (("--job", "rewire"), "There is no home here yet"),
        (("--job", "rewire", "--nation", "mars"), "Say in which nation"),
        (("--job", "bath-fan", "--place", "roof"), "“roof” does not answer place"),
        (("--job", "bath-fan", "--answer", "x=y"), "There is no question “x”"),
        (
            ("--job", "rewire", "--nation", "wales", "--place", "kitchen"),
            "“Rewire, in whole or in part” does not ask place. It asks: building",
        ),
        (
            ("--job", "bath-fan", "--nation", "wales", "--place", "kitchen"),
            "“kitchen” does not answer place here. There is: bath_zone",
        ),
        ((), "Name a job"),
        (("--jobs", "--job", "rewire"), "Name a job"),
    ],
)
def test_what_cannot_be_answered_is_said(
    tmp_path: Path, arguments: tuple[str, ...], said: str
) -> None:
    result = ways(*arguments, data=tmp_path)
    assert result.exit_code in (1, 2)
    assert said in result.output


def test_what_the_record_does_not_hold_is_refused(tmp_path: Path) -> None:
    keep(tmp_path, flat())
    result = ways(*FAN, "--at", "ZZ", data=tmp_path)
    assert result.exit_code == 1
    assert "is called ZZ in H1" in result.output
    keep(tmp_path, b.home(ref="H2"))
    several = ways(*FAN, data=tmp_path)
    assert "say which, --home" in several.output
    unknown = ways(*FAN, "--home", "H2", data=tmp_path)
    assert "Say in which nation" in unknown.output
