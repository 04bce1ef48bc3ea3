"""Every job in every nation, against a table written out by hand.

The verdicts are those of the four nations' rules as read in November 2026 (England:
Building Regulations 2010 reg 12(6A) and Approved Document P 2013; Wales: Schedule 4;
Scotland: SSI 2004/406 Schedule 3; Northern Ireland: none).  Each row: job, answers,
then verdict, rule and confidence for England, for Wales, for a Scottish house of two
storeys, and for a Scottish flat.
"""

from __future__ import annotations

import pytest

from app.domain.may_i import JOBS, Answer, may_i

NN, N, NW, WT, ASK, NY = (
    "no_notice",
    "notice",
    "no_warrant",
    "warrant",
    "ask",
    "not_yours",
)
H, M, L = "high", "medium", "low"
Expected = tuple[str, str, str]
REPLACED_E, REPLACED_W = (NN, "EN5", H), (NN, "WA2", H)
ANY_BUILDING = (NW, "SC1", H)
LOW_HOUSE, IN_A_FLAT = (NW, "SC3", H), (ASK, "SC5", L)
NEW_E, NEW_W = (N, "EN3", H), (N, "WA10", H)
NO_ONES_E, NO_ONES_W = (NY, "EN0", H), (NY, "WA0", H)
NO_ONES_S = (NY, "SC0", H)


def row(job: str, answers: str, *expected: Expected) -> object:
    given = dict(pair.split("=") for pair in answers.split())
    return pytest.param(job, given, expected, id=f"{job} {answers}".strip())


def replaced(job: str, answers: str = "new_cable=no") -> object:
    return row(job, answers, REPLACED_E, REPLACED_W, ANY_BUILDING, ANY_BUILDING)


def at_most(expected: Expected) -> Expected:
    return (*expected[:2], M)


ELSEWHERE = "place=elsewhere new_circuit=no outdoor_wiring=no"
KITCHEN = "place=kitchen new_circuit=no outdoor_wiring=no"
ADDED_E, ADDED_W = (NN, "EN5", H), (NN, "WA8", H)
NOT_LISTED_W = (N, "WA10", H)
TABLE = (
    row("add-socket", ELSEWHERE, ADDED_E, ADDED_W, LOW_HOUSE, IN_A_FLAT),
    row("add-spur", ELSEWHERE, ADDED_E, ADDED_W, LOW_HOUSE, IN_A_FLAT),
    row("add-spur", KITCHEN, ADDED_E, NOT_LISTED_W, LOW_HOUSE, IN_A_FLAT),
    row(
        "outside-light",
        "outdoor_wiring=no new_circuit=no",
        *(ADDED_E, (NN, "WA8", M), LOW_HOUSE, IN_A_FLAT),
    ),
    row(
        "outside-light",
        "outdoor_wiring=yes new_circuit=no",
        *(ADDED_E, NOT_LISTED_W, LOW_HOUSE, IN_A_FLAT),
    ),
    row(
        "garden-lights",
        "new_circuit=no",
        *(ADDED_E, NOT_LISTED_W, LOW_HOUSE, IN_A_FLAT),
    ),
    row(
        "outside-socket",
        "new_circuit=no",
        *(ADDED_E, NOT_LISTED_W, LOW_HOUSE, IN_A_FLAT),
    ),
    replaced("replace-socket"),
    replaced("replace-switch"),
    replaced("replace-bath-light"),
    row(
        "replace-bath-light",
        "new_cable=yes place=bath_zone",
        *((N, "EN4", H), NOT_LISTED_W, LOW_HOUSE, IN_A_FLAT),
    ),
    row(
        "replace-socket",
        "new_cable=yes place=bath_zone",
        *((N, "EN4", H), NOT_LISTED_W, LOW_HOUSE, IN_A_FLAT),
    ),
    row(
        "replace-socket",
        "new_cable=yes place=elsewhere outdoor_wiring=no",
        *(ADDED_E, ADDED_W, LOW_HOUSE, IN_A_FLAT),
    ),
    row(
        "replace-switch",
        "new_cable=yes place=kitchen outdoor_wiring=no",
        *(ADDED_E, NOT_LISTED_W, LOW_HOUSE, IN_A_FLAT),
    ),
    replaced("replace-light"),
    replaced("replace-shower", "bigger=no"),
    row("replace-shower", "bigger=yes", NEW_E, NEW_W, LOW_HOUSE, IN_A_FLAT),
    row(
        "bath-fan",
        "place=bathroom new_circuit=no",
        *(ADDED_E, NOT_LISTED_W, LOW_HOUSE, IN_A_FLAT),
    ),
    row(
        "bath-fan",
        "place=bath_zone new_circuit=no",
        *((N, "EN4", H), NOT_LISTED_W, LOW_HOUSE, IN_A_FLAT),
    ),
    row("new-cooker", "", NEW_E, NEW_W, LOW_HOUSE, IN_A_FLAT),
    replaced("replace-cooker", "bigger=no"),
    row("new-shower", "", NEW_E, NEW_W, LOW_HOUSE, IN_A_FLAT),
    row(
        "move-kitchen-socket",
        "new_circuit=no",
        *(ADDED_E, NOT_LISTED_W, LOW_HOUSE, IN_A_FLAT),
    ),
    row(
        "replace-board",
        "",
        *((N, "EN2", H), NOT_LISTED_W, (NW, "SC3", M), IN_A_FLAT),
    ),
    row(
        "replace-breaker",
        "",
        *map(at_most, (REPLACED_E, REPLACED_W, ANY_BUILDING, ANY_BUILDING)),
    ),
    row(
        "breaker-to-rcbo",
        "",
        *map(at_most, (REPLACED_E, REPLACED_W, ANY_BUILDING, ANY_BUILDING)),
    ),
    row("rcbo-in-spare-way", "", NEW_E, NEW_W, LOW_HOUSE, IN_A_FLAT),
    row("supply-fuse", "", NO_ONES_E, NO_ONES_W, NO_ONES_S, NO_ONES_S),
    row("move-meter", "", NO_ONES_E, NO_ONES_W, NO_ONES_S, NO_ONES_S),
    row("shed-new-way", "", NEW_E, NEW_W, LOW_HOUSE, IN_A_FLAT),
    row(
        "shed-extend",
        "new_circuit=no",
        *((NN, "EN5", M), (N, "WA10", M), (NW, "SC3", M), IN_A_FLAT),
    ),
    row(
        "shed-socket",
        "outdoor_wiring=no new_circuit=no",
        *(ADDED_E, (NN, "WA8", M), LOW_HOUSE, IN_A_FLAT),
    ),
    row("vehicle-charger", "", NEW_E, NEW_W, LOW_HOUSE, IN_A_FLAT),
    row("heat-pump", "", NEW_E, NEW_W, LOW_HOUSE, IN_A_FLAT),
    row("solar", "", NEW_E, NEW_W, (NW, "SC3", M), IN_A_FLAT),
    row("battery", "", NEW_E, NEW_W, (NW, "SC3", M), IN_A_FLAT),
    row(
        "add-alarm",
        "place=elsewhere new_circuit=no",
        *(ADDED_E, (N, "WA10", L), LOW_HOUSE, IN_A_FLAT),
    ),
    row(
        "add-alarm",
        "place=elsewhere new_circuit=yes",
        *(NEW_E, NEW_W, LOW_HOUSE, IN_A_FLAT),
    ),
    replaced("replace-alarm", ""),
    row(
        "floor-heating",
        "place=bathroom new_circuit=no",
        *(ADDED_E, NOT_LISTED_W, LOW_HOUSE, IN_A_FLAT),
    ),
    row(
        "floor-heating",
        "place=bath_zone new_circuit=no",
        *((N, "EN4", H), NOT_LISTED_W, LOW_HOUSE, IN_A_FLAT),
    ),
    row(
        "floor-heating",
        "place=elsewhere new_circuit=yes",
        *(NEW_E, NEW_W, LOW_HOUSE, IN_A_FLAT),
    ),
    row(
        "hot-tub-plug",
        "",
        *((NN, "EN1", M), (NN, "WA1", M), (NW, "SC1", M), (NW, "SC1", M)),
    ),
    row("hot-tub-wired", "", NEW_E, NEW_W, LOW_HOUSE, IN_A_FLAT),
    row(
        "plug-or-fuse",
        "",
        *((NN, "EN1", H), (NN, "WA1", H), ANY_BUILDING, ANY_BUILDING),
    ),
    row(
        "repair-cable",
        "new_cable=no",
        *(REPLACED_E, (NN, "WA3", H), ANY_BUILDING, ANY_BUILDING),
    ),
    row(
        "repair-cable",
        "new_cable=yes place=bath_zone",
        *((N, "EN4", H), NOT_LISTED_W, LOW_HOUSE, IN_A_FLAT),
    ),
    row(
        "repair-cable",
        "new_cable=yes place=elsewhere",
        *(ADDED_E, (N, "WA10", L), LOW_HOUSE, IN_A_FLAT),
    ),
    replaced("smart-switch", ""),
    row(
        "smart-switch-cable",
        "place=elsewhere",
        *((NN, "EN5", M), (NN, "WA8", M), (NW, "SC3", M), IN_A_FLAT),
    ),
    row(
        "smart-switch-cable",
        "place=kitchen",
        *((NN, "EN5", M), (N, "WA10", M), (NW, "SC3", M), IN_A_FLAT),
    ),
    row(
        "replace-thermostat",
        "new_cable=no",
        *(REPLACED_E, (NN, "WA7", H), ANY_BUILDING, ANY_BUILDING),
    ),
    row(
        "heating-controls",
        "place=elsewhere new_circuit=no",
        *((NN, "EN5", M), (N, "WA10", M), (NW, "SC3", M), IN_A_FLAT),
    ),
    row(
        "bonding",
        "",
        *((NN, "EN5", M), (NN, "WA6", M), (NW, "SC3", M), (NW, "SC1", M)),
    ),
    replaced("immersion-element", ""),
    row("rewire", "", NEW_E, NEW_W, LOW_HOUSE, (WT, "SC4", H)),
    row("isolator", "", NO_ONES_E, NO_ONES_W, NO_ONES_S, NO_ONES_S),
    row(
        "something-else",
        "work=add thing=other special=none place=elsewhere new_circuit=no "
        "outdoor_wiring=no",
        *(ADDED_E, (N, "WA10", L), LOW_HOUSE, IN_A_FLAT),
    ),
    *(
        row(
            "something-else",
            f"work={work} new_circuit=no",
            *(REPLACED_E, (NN, rule, H), ANY_BUILDING, ANY_BUILDING),
        )
        for work, rule in (("enclosure", "WA4"), ("mechanical", "WA5"))
    ),
    row(
        "something-else",
        f"work=signal special=none {ELSEWHERE}",
        *(ADDED_E, (NN, "WA9", M), LOW_HOUSE, IN_A_FLAT),
    ),
    row(
        "something-else",
        "work=signal special=none place=bath_zone new_circuit=no outdoor_wiring=no",
        *((N, "EN4", H), NOT_LISTED_W, LOW_HOUSE, IN_A_FLAT),
    ),
    row(
        "add-socket",
        "place=bath_zone new_circuit=no outdoor_wiring=no",
        *((N, "EN4", H), NOT_LISTED_W, LOW_HOUSE, IN_A_FLAT),
    ),
    row("garden-lights", "new_circuit=yes", NEW_E, NEW_W, LOW_HOUSE, IN_A_FLAT),
    row(
        "shed-extend",
        "new_circuit=yes",
        *map(at_most, (NEW_E, NEW_W, LOW_HOUSE)),
        IN_A_FLAT,
    ),
    row(
        "smart-switch-cable",
        "place=bath_zone",
        *((N, "EN4", M), (N, "WA10", M), (NW, "SC3", M), IN_A_FLAT),
    ),
    row(
        "heating-controls",
        "place=bath_zone new_circuit=no",
        *((N, "EN4", M), (N, "WA10", M), (NW, "SC3", M), IN_A_FLAT),
    ),
    row(
        "heating-controls",
        "place=elsewhere new_circuit=yes",
        *((N, "EN3", M), (N, "WA10", M), (NW, "SC3", M), IN_A_FLAT),
    ),
    row(
        "floor-heating",
        "place=elsewhere new_circuit=no",
        *(ADDED_E, NOT_LISTED_W, LOW_HOUSE, IN_A_FLAT),
    ),
)
UNTOUCHED = {"separating_wall": "no", "building_change": "no"}


def short(answer: Answer) -> Expected:
    return answer.verdict, answer.rule, answer.confidence


@pytest.mark.parametrize(("job", "answers", "expected"), TABLE)
def test_a_job_in_every_nation(
    job: str, answers: dict[str, str], expected: tuple[Expected, ...]
) -> None:
    chosen = JOBS[job]
    house = {**answers, **UNTOUCHED, "building": "low_house"}
    flat = {**answers, **UNTOUCHED, "building": "flat"}
    found = (
        short(may_i("england", chosen, answers)),
        short(may_i("wales", chosen, answers)),
        short(may_i("scotland", chosen, house)),
        short(may_i("scotland", chosen, flat)),
    )
    assert found == expected
    ireland = may_i("northern_ireland", chosen, answers)
    not_yours = expected[0][0] == NY
    assert ireland.verdict == (NY if not_yours else "no_regime")
    assert ireland.rule == ("NI0" if not_yours else "NI1")


def test_every_job_stands_in_the_table() -> None:
    assert {case.values[0] for case in TABLE} == set(JOBS)  # type: ignore[attr-defined]
    assert len(TABLE) >= 40
