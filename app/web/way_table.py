"""The quick table of a board's ways: what it is fed from, and the circuit it feeds."""

from __future__ import annotations

from typing import Any

from wtforms.fields.choices import SelectChoice  # type: ignore[attr-defined]
from wtforms.validators import ValidationError

from app.domain.board import left_feeder
from app.domain.edits import added, new_ref, replaced
from app.domain.record import SHORT, Board, Circuit, Device, Record, specs
from app.errors import InvalidError
from app.web.fields import NOTHING, ChoiceField, TextField
from app.web.quick import Beside, Column, Layout, Table

LEFT = "~left"
SEVERAL = "More than one: see the way"
NAME = next(spec for spec in specs(Circuit) if spec.name == "name")


def way_layout(board: Board) -> Layout:
    """Return the layout of a board's quick table."""
    return Layout(
        cls=Device,
        own={"board": board.ref},
        first="kind",
        columns=(
            Column(of="way", width="narrow"),
            Column(of="kind"),
            Column(of="rated_current_a", width="narrow"),
            Column(of="curve", width="choice"),
            Column(of="residual_current_ma", width="narrow"),
            Column(of="label_found", width="wide"),
            Column(of=_fed_from(board)),
            Column(of=_feeds(), width="wide"),
        ),
    )


def _fed_from(board: Board) -> Beside:
    return Beside(
        name="fed",
        label="Fed from",
        make=lambda record: ChoiceField(
            label="Fed from", choices=_feeders(record, board)
        ),
        read=lambda _record, device: device.fed_from or NOTHING,
        write=_write_feeder,
        start=LEFT,
    )


def _feeders(record: Record, board: Board) -> list[SelectChoice]:
    here = record.devices_of(board.ref)
    elsewhere = {d.fed_from for d in here if d.fed_from} - {d.ref for d in here}
    return [
        SelectChoice(NOTHING, "The board's own feed"),
        SelectChoice(LEFT, "RCD or switch to its left"),
        *(SelectChoice(d.ref, d.title) for d in here),
        *(SelectChoice(ref, record.by_ref[ref].title) for ref in sorted(elsewhere)),
    ]


def _write_feeder(record: Record, device: Device, typed: str) -> Record:
    feeder: str | None = typed or None
    if typed == LEFT:
        here = record.devices_of(device.board)
        before = here[: [d.ref for d in here].index(device.ref)]
        feeder = left_feeder(before, device.kind)
    stored = record.by_ref[device.ref]
    return replaced(record, device.ref, stored.model_copy(update={"fed_from": feeder}))


def _feeds() -> Beside:
    return Beside(
        name="feeds",
        label="Circuit it feeds",
        make=_circuit_field,
        read=_circuit_name,
        write=_write_circuit,
    )


def _circuit_field(_record: Record) -> Any:
    def short(_form: Any, field: Any) -> None:
        if len(field.data or "") > SHORT:
            raise ValidationError(f"Enter at most {SHORT} characters.")

    return TextField(
        label="Circuit it feeds",
        spec=NAME,
        validators=[short],
        render_kw={"autocomplete": "off"},
    )


def _circuit_name(record: Record, device: Device) -> str:
    circuits = record.circuits_of(device.ref)
    if len(circuits) > 1:
        return SEVERAL
    return circuits[0].name if circuits else NOTHING


def _write_circuit(record: Record, device: Device, typed: str) -> Record:
    """A name makes the way's circuit, or renames it; none takes the way out of it."""
    circuits = record.circuits_of(device.ref)
    if len(circuits) > 1 or typed == SEVERAL:
        raise InvalidError(
            f"{device.ref} feeds more than one circuit, or none of that name: change "
            f"that on the pages of the circuits, and leave “{SEVERAL}” as it is."
        )
    if not circuits:
        ref = new_ref(record, Circuit)
        new = Circuit(ref=ref, name=typed, number=device.way, ways=(device.ref,))
        return added(record, new) if typed else record
    circuit = circuits[0]
    others = tuple(way for way in circuit.ways if way != device.ref)
    change = {"name": typed} if typed else {"ways": others}
    return replaced(record, circuit.ref, circuit.model_copy(update=change))


def names_again(table: Table, record: Record) -> tuple[str, ...]:
    """Return the names of new circuits that another circuit has too."""
    had = {circuit.name.casefold() for circuit in record.circuits}
    again: dict[str, str] = {}
    for row in table.rows:
        name = row.form["feeds"].data or NOTHING
        if name and not record.circuits_of(row.key):
            if name.casefold() in had:
                again.setdefault(name.casefold(), name)
            had.add(name.casefold())
    return tuple(again.values())
