"""Writing into the record what was found, and saying beforehand what that changes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

from app.domain.edits import new_ref
from app.domain.network import Network
from app.domain.record import Circuit, Device, Point, Record, Tie
from app.domain.trace.readings import ways_of
from app.domain.trace.state import PointState
from app.domain.trace.words import NEVER_LIVE, naming, pairs_of

FOUND, CONFIRMED = "3", "4"


@dataclass(frozen=True, slots=True, kw_only=True)
class Proposal:
    """A point about which nothing is written, and why; a person decides."""

    point: str
    sentence: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Applied:
    """The record with what was found.

    Attributes:
        record: The new record.
        changes: What differs, a sentence for each point, in the order of the walk.
        left_alone: What was not written, and why.
    """

    record: Record
    changes: tuple[str, ...]
    left_alone: tuple[Proposal, ...]


@dataclass(slots=True)
class _Writing:
    """What is to be written into a record, gathered point by point."""

    net: Network
    day: date
    by: str
    ties: dict[str, Tie] = field(default_factory=dict)
    circuits: dict[str, Circuit] = field(default_factory=dict)
    changes: list[str] = field(default_factory=list)
    left_alone: list[Proposal] = field(default_factory=list)

    def write(self, state: PointState) -> None:
        point = self.net.record.find(Point, state.point)
        if point is None:
            return
        if state.status == "more_than_one_way":
            pairs = pairs_of(state, naming(self.net.record))
            self._leave(
                point, f"it depends on two ways, {pairs}; have an electrician look"
            )
        if state.status == "unaffected" and self._said_on_a_way(point):
            said = self._said(self._feeding(point))
            self._leave(point, f"seen on none of the ways, the record says {said}")
        if state.status != "found" or state.way is None:
            return
        if not state.was_live:
            self._leave(point, f"{NEVER_LIVE}; look at it with everything on")
            return
        grade = CONFIRMED if state.confirmed else FOUND
        circuit = self._circuit(state.way)
        if circuit is None:
            self._leave(point, self._why_no_circuit(state.way))
            return
        self._tie(point, circuit, grade)

    def record(self) -> Record:
        """Return the record with all that was gathered."""
        record = self.net.record
        ties = [self.ties.pop(tie.ref, tie) for tie in record.ties]
        return record.having(
            circuits=(*record.circuits, *self.circuits.values()),
            ties=(*ties, *self.ties.values()),
        )

    def _tie(self, point: Point, circuit: Circuit, grade: str) -> None:
        feeding = self._feeding(point)
        same = [tie for tie in feeding if tie.tied_to == circuit.ref]
        if same:
            self._raise(point, same[0], grade)
            if others := [tie for tie in feeding if tie not in same]:
                self._keep(point, circuit, others)
        elif not feeding:
            self._add(point, circuit, grade)
        elif self.net.circuits_at.get(point.ref, ()) == (circuit.ref,):
            return  # It is behind another point of that circuit, as the record says.
        elif len(feeding) > 1 or feeding[0].grade >= grade:
            self._leave(point, f"the record says otherwise: {self._said(feeding)}")
        else:
            self._turn(point, feeding[0], circuit, grade)

    def _said_on_a_way(self, point: Point) -> bool:
        circuits = self.net.circuits_at.get(point.ref, ())
        found = (self.net.record.find(Circuit, ref) for ref in circuits)
        return any(ways_of(self.net, circuit) for circuit in found if circuit)

    def _feeding(self, point: Point) -> list[Tie]:
        ties = self.net.record.ties_of(point.ref)
        return [tie for tie in ties if tie.role == "feeds"]

    def _raise(self, point: Point, tie: Tie, grade: str) -> None:
        if tie.grade < grade:
            self._put(tie, grade=grade)
            self.changes.append(f"{point.title}: {self._words(tie.tied_to)}, now seen.")

    def _add(self, point: Point, circuit: Circuit, grade: str) -> None:
        ref = new_ref(self.net.record, Tie, self.ties)
        self.ties[ref] = Tie(
            ref=ref,
            point=point.ref,
            tied_to=circuit.ref,
            grade=grade,
            seen_on=self.day,
            seen_by=self.by,
        )
        self.changes.append(f"{point.title}: on {circuit.title}.")

    def _turn(self, point: Point, tie: Tie, circuit: Circuit, grade: str) -> None:
        before = self._words(tie.tied_to)
        self._put(tie, tied_to=circuit.ref, grade=grade)
        self.changes.append(f"{point.title}: on {circuit.title}, no longer {before}.")

    def _put(self, tie: Tie, **values: str) -> None:
        fields = {**tie.model_dump(), **values}
        fields |= {"seen_on": self.day, "seen_by": self.by}
        self.ties[tie.ref] = Tie(**fields)

    def _circuit(self, way: str) -> Circuit | None:
        """Return the one circuit of a way, made if there is none yet."""
        if way in self.circuits:
            return self.circuits[way]
        known = self._circuits(way)
        if known:
            alone = len(known) == 1 and ways_of(self.net, known[0]) == (way,)
            return known[0] if alone else None
        device = self.net.record.find(Device, way)
        number = device.way if device else ""
        taken = {circuit.ref for circuit in self.circuits.values()}
        ref = new_ref(self.net.record, Circuit, taken)
        made = Circuit(ref=ref, number=number, ways=(way,))
        self.circuits[way] = made
        self.changes.append(f"{made.title} is made, on {self._words(way)}.")
        return made

    def _circuits(self, way: str) -> list[Circuit]:
        circuits = self.net.record.circuits
        return [c for c in circuits if way in ways_of(self.net, c)]

    def _why_no_circuit(self, way: str) -> str:
        if len(self._circuits(way)) > 1:
            return "several circuits are wired to its way"
        return "the circuit of its way is recorded on another way too"

    def _leave(self, point: Point, why: str) -> None:
        sentence = f"{point.title} is left as it is: {why}."
        self.left_alone.append(Proposal(point=point.ref, sentence=sentence))

    def _keep(self, point: Point, circuit: Circuit, others: list[Tie]) -> None:
        sentence = (
            f"{point.title} was seen on {circuit.title} alone; that the record also "
            f"says {self._said(others)} is left as it is."
        )
        self.left_alone.append(Proposal(point=point.ref, sentence=sentence))

    def _said(self, ties: list[Tie]) -> str:
        return " and ".join(self._words(tie.tied_to) for tie in ties)

    def _words(self, ref: str) -> str:
        item = self.net.record.by_ref.get(ref)
        return item.title if item else ref


def applied(
    net: Network, known: Mapping[str, PointState], day: date, by: str
) -> Applied:
    """Return the record with ties for what was found, at grade 3, confirmed at 4.

    What was never seen live at the time of day at which it was seen dead is left as it
    is: nobody saw it go off. No tie of the same or a higher grade is changed, and
    labels stay as they were found.

    Args:
        net: The network of the record.
        known: What is known of each point.
        day: The day it was seen.
        by: Who saw it.
    """
    writing = _Writing(net=net, day=day, by=by)
    for state in known.values():
        writing.write(state)
    return Applied(
        record=writing.record(),
        changes=tuple(writing.changes),
        left_alone=tuple(writing.left_alone),
    )
