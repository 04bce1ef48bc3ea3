"""The questions that can turn a verdict, each with what its answers set."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace
from typing import Any


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One question, its answers in order, and what each sets in the case.

    Attributes:
        code: Its name in addresses and on the command line.
        text: The question, as it is put to the person.
        hint: How to find the answer.
        answers: Code of each answer, with its words.
        sets: Code of each answer, with the fields of the case that it sets.
    """

    code: str
    text: str
    hint: str
    answers: Mapping[str, str]
    sets: Mapping[str, Mapping[str, Any]]


def narrowed(question: Question, codes: Collection[str]) -> Question:
    """Return a question with only some of its answers; with all, if none would stay."""
    answers = {code: words for code, words in question.answers.items() if code in codes}
    if not answers:
        return question
    sets = {code: question.sets[code] for code in answers}
    return replace(question, answers=answers, sets=sets)


def _yes_no(code: str, text: str, hint: str, **when_yes: Any) -> Question:
    names = {"yes": "Yes", "no": "No"}
    sets = {"yes": when_yes, "no": {}}
    return Question(code=code, text=text, hint=hint, answers=names, sets=sets)


def _one_of(
    code: str, text: str, hint: str, field: str, answers: Mapping[str, str]
) -> Question:
    sets = {answer: {field: answer} for answer in answers}
    return Question(code=code, text=text, hint=hint, answers=answers, sets=sets)


PLACES = {
    "elsewhere": "Another room, or a hall, loft or attached garage",
    "kitchen": "Kitchen, or the part of a room with the sink and worktop",
    "bath_zone": "Close to a bath or shower",
    "bathroom": "In a room with a bath or shower, but not close to it",
    "bath_void": "Above the ceiling or under the bath or shower",
    "pool_room": "In a room with a swimming pool or a sauna",
    "outdoors": "Outdoors, or on an outside wall",
    "outbuilding": "In a detached shed, garage or greenhouse",
}
_WORKS = {
    "plug_in": "It only plugs in, or is a plug, a flex or a plug's fuse",
    "network_side": "On the service cable, cut-out, meter or their seals",
    "replace": "Something is replaced where it is, by the same kind",
    "repair": "Damaged cable of one circuit is replaced along the same route",
    "enclosure": "An enclosure of what is there is fixed again or replaced",
    "mechanical": "Existing cable gets a cover against knocks",
    "bonding": "Bonding to gas, water or the like is put in or made bigger",
    "consumer_unit": "A consumer unit or fuse board is replaced",
    "add": "Something is added to a circuit, or moved",
    "control_wiring": "New wiring for heating controls",
    "replace_control": "A control is replaced on the wiring that is there",
    "new_circuit": "There is a new circuit",
    "rewire": "The home is rewired, in whole or in part",
    "signal": "Telephone, data, bell or other extra-low-voltage wiring",
}
_THINGS = {
    "light_or_switch": "A light or a switch",
    "socket_or_spur": "A socket or a fused spur",
    "other": "Something else, such as a fan, an alarm or a heater",
}
_SPECIALS = {
    "none": "None of these",
    "floor_heating": "Electric heating in a floor or ceiling",
    "generator": "Solar panels, a battery or another generator",
    "low_voltage_lighting": "Low-voltage lighting that is not a ready-made set",
}
_BUILDINGS = {
    "low_house": "A house of one or two storeys",
    "high_house": "A house of three storeys or more",
    "flat": "A flat or maisonette",
}

_QUESTIONS = (
    _one_of(
        "work",
        "What is done?",
        "Choose the nearest. Replacing what is there is let off almost everywhere.",
        "work",
        _WORKS,
    ),
    _one_of(
        "place",
        "Where is it?",
        "Close to a bath or shower means within 0.6 m of its edge (1.2 m of the head, "
        "where there is no tray) and below 2.25 m, or the shower head if it is higher. "
        "An open kitchen is usually taken to reach 3 m from its sink.",
        "place",
        PLACES,
    ),
    _one_of(
        "thing",
        "What is added?",
        "Wales lets off lights, switches, sockets and fused spurs, and little else.",
        "thing",
        _THINGS,
    ),
    _one_of(
        "special",
        "Is it one of these?",
        "In Wales these are told wherever they are.",
        "special",
        _SPECIALS,
    ),
    _yes_no(
        "new_circuit",
        "Does it need a new way on the board, or a circuit of its own?",
        "Also yes for a new cable from a spare way, or one circuit made into two. "
        "The rules do not define it; this is the usual reading.",
        new_circuit=True,
    ),
    _yes_no(
        "new_cable",
        "Does it need new fixed cable, or go to another place?",
        "A longer flex is no fixed cable; a cable clipped or in the wall is.",
        work="add",
    ),
    _yes_no(
        "bigger",
        "Is it rated higher, so that cable or device have to change?",
        "Compare the kW on both rating plates.",
        new_circuit=True,
    ),
    _yes_no(
        "outdoor_wiring",
        "Does new cable or a joint lie outdoors?",
        "No, if the cable comes straight through the wall into the fitting.",
        outdoor_wiring=True,
    ),
    _one_of(
        "building",
        "What kind of building is it?",
        "Scotland's rules look at the building. A flat has someone else's home above "
        "or below.",
        "building",
        _BUILDINGS,
    ),
    _yes_no(
        "separating_wall",
        "Is a wall or floor to someone else's home cut into?",
        "A socket box let into a party wall counts.",
        separating_wall=True,
    ),
    _yes_no(
        "building_change",
        "Do roof, structure, outside wall or floor area change?",
        "Fixing panels to a roof may count.",
        building_change=True,
    ),
)
QUESTIONS: dict[str, Question] = {question.code: question for question in _QUESTIONS}
