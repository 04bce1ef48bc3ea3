"""A job as a nation's rules look at it, and what they answer."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal

Nation = Literal["england", "wales", "scotland", "northern_ireland"]
Work = Literal[
    "plug_in",
    "network_side",
    "replace",
    "repair",
    "enclosure",
    "mechanical",
    "bonding",
    "consumer_unit",
    "add",
    "control_wiring",
    "replace_control",
    "new_circuit",
    "rewire",
    "signal",
]
Thing = Literal["light_or_switch", "socket_or_spur", "other"]
Place = Literal[
    "elsewhere",
    "kitchen",
    "bath_zone",
    "bathroom",
    "bath_void",
    "pool_room",
    "outdoors",
    "outbuilding",
]
Special = Literal["none", "floor_heating", "generator", "low_voltage_lighting"]
Building = Literal["low_house", "high_house", "flat"]
VerdictCode = Literal[
    "no_notice",
    "notice",
    "no_warrant",
    "warrant",
    "ask",
    "not_yours",
    "no_regime",
    "depends",
]
Confidence = Literal["high", "medium", "low"]

VERDICTS: dict[VerdictCode, str] = {
    "no_notice": "No one has to be told",
    "notice": "Building control has to be told",
    "no_warrant": "No building warrant is needed",
    "warrant": "A building warrant is needed",
    "ask": "Ask first",
    "not_yours": "Not yours to do",
    "no_regime": "There is no rule about telling anyone",
    "depends": "It depends",
}
CONFIDENCES: dict[Confidence, str] = {
    "high": "The rule is plain",
    "medium": "Probably, but ask if it matters",
    "low": "Not settled: ask first",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """Everything that a nation's rules may turn on, with nothing left open.

    Attributes:
        work: What is done.
        thing: What is added, where something is.
        place: Where.
        new_circuit: Whether the board gets a new way, or the job a circuit of its own.
        outdoor_wiring: Whether new cable or joints lie outdoors.
        special: Whether the installation is of a kind that Wales names.
        building: House of one or two storeys, higher house, flat.
        separating_wall: Whether a wall or floor to someone else's home is cut into.
        building_change: Whether roof, structure, outside wall or floor area change.
    """

    work: Work
    thing: Thing
    place: Place
    new_circuit: bool
    outdoor_wiring: bool
    special: Special
    building: Building
    separating_wall: bool
    building_change: bool

    @property
    def makes_circuit(self) -> bool:
        """Whether a circuit is there afterwards that was not there before."""
        return self.new_circuit or self.work in ("new_circuit", "rewire")

    @property
    def renews(self) -> bool:
        """Whether what is there is only renewed or mended, where it is."""
        renewing = (
            "replace",
            "repair",
            "enclosure",
            "mechanical",
            "replace_control",
        )
        return self.work in renewing and not self.new_circuit


@dataclass(frozen=True, slots=True, kw_only=True)
class Ruling:
    """What one rule says of one case.

    Attributes:
        verdict: Which of :data:`VERDICTS`.
        rule: Name of the rule that was the first to fit.
        because: Why, in a sentence.
        grounds: What of the case it rests on, where the sentence needs it.
        cite: What the rule stands in, with what of it was read.
        confidence: Which of :data:`CONFIDENCES`.
    """

    verdict: VerdictCode
    rule: str
    because: str
    cite: str
    confidence: Confidence = "high"
    grounds: tuple[str, ...] = ()

    @property
    def says(self) -> str:
        """Why, with two of its grounds."""
        if not self.grounds:
            return self.because
        return f"{self.because.rstrip('.')}: {' and '.join(self.grounds[:2])}."


@dataclass(frozen=True, slots=True, kw_only=True)
class Route:
    """One way of telling, and the paper to end up with."""

    who: str
    when: str
    paper: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Rules:
    """One nation's rules as they were on a day.

    Attributes:
        nation: Which.
        checked: The day on which they were looked up.
        authority: What they stand in.
        decides: Who decides in the end.
        allowed: Whether a person may do it themselves, on their side of the meter.
        allowed_basis: How that is known.
        standard: To what standard the work is done all the same.
        routes: The ways of telling, for a verdict that asks for one.
        not_checked: What of them could not be read.
    """

    nation: Nation
    checked: date
    authority: str
    decides: str
    allowed: str
    allowed_basis: str
    standard: str
    routes: dict[VerdictCode, tuple[Route, ...]]
    not_checked: str
