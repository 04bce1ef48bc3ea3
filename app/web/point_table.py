"""The quick table of a room's points: each with the tie that says what feeds it."""

from __future__ import annotations

from wtforms.fields.choices import SelectChoice  # type: ignore[attr-defined]

from app.domain.edits import added, new_ref, removed, replaced
from app.domain.record import Point, Record, Room, Tie, specs
from app.domain.record.choices import GRADES
from app.web.fields import NOTHING, ChoiceField, choices_of
from app.web.quick import Beside, Column, Layout

TIED_TO = next(spec for spec in specs(Tie) if spec.name == "tied_to")
SEVERAL = "~several"


def point_layout(room: Room) -> Layout:
    """Return the layout of a room's quick table."""
    return Layout(
        cls=Point,
        own={"room": room.ref},
        first="kind",
        columns=(
            Column(of="kind"),
            Column(of="place", width="wide"),
            Column(of="count", width="narrow"),
            Column(of="fuse_a", width="narrow"),
            Column(of=_tied_column(room)),
            Column(of=KNOWN),
        ),
    )


def _tied_column(room: Room) -> Beside:
    return Beside(
        name="tied",
        label="Fed from",
        make=lambda record: _tied_field(record, room),
        read=_tied,
        write=_write_tie,
    )


def _tied_field(record: Record, room: Room) -> ChoiceField:
    """Offer the circuits and sources, the points of this room, and what is chosen."""
    points = record.points_of(room.ref)
    ties = [tie for point in points for tie in _feeds(record, point)]
    chosen = {tie.tied_to for tie in ties}
    near = {point.ref for point in points} | chosen
    choices = [
        choice
        for choice in choices_of(TIED_TO, record)
        if choice.value in near or record.find(Point, choice.value) is None
    ]
    first = [
        SelectChoice(NOTHING, "Not recorded"),
        SelectChoice(SEVERAL, "More than one: see the point"),
    ]
    offered = [*first, *(choice for choice in choices if choice.value)]
    field: ChoiceField = ChoiceField(label="Fed from", choices=offered)
    return field


def _known_field(_record: Record) -> ChoiceField:
    choices = [SelectChoice(code, word) for code, word in GRADES.items()]
    field: ChoiceField = ChoiceField(label="How known", choices=choices)
    return field


def _feeds(record: Record, point: Point) -> list[Tie]:
    return [tie for tie in record.ties_of(point.ref) if tie.role == "feeds"]


def _tied(record: Record, point: Point) -> str:
    ties = _feeds(record, point)
    if len(ties) > 1:
        return SEVERAL
    return ties[0].tied_to if ties else NOTHING


def _known(record: Record, point: Point) -> str:
    ties = _feeds(record, point)
    return ties[0].grade if len(ties) == 1 else "0"


def _write_tie(record: Record, point: Point, typed: str) -> Record:
    ties = _feeds(record, point)
    if typed == SEVERAL or len(ties) > 1 or typed == _tied(record, point):
        return record
    if not typed:
        return removed(record, ties[0].ref)
    if ties:
        tie = ties[0].model_copy(update={"tied_to": typed})
        return replaced(record, tie.ref, tie)
    tie = Tie(ref=new_ref(record, Tie), point=point.ref, tied_to=typed)
    return added(record, tie)


def _write_grade(record: Record, point: Point, typed: str) -> Record:
    ties = _feeds(record, point)
    if len(ties) != 1 or ties[0].grade == typed:
        return record
    tie = ties[0].model_copy(update={"grade": typed})
    return replaced(record, tie.ref, tie)


KNOWN = Beside(
    name="known",
    label="How known",
    make=_known_field,
    read=_known,
    write=_write_grade,
    start="0",
)
