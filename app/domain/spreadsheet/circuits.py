"""One row of a sheet of circuits."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from app.domain.board import left_feeder
from app.domain.kinds import DEVICE_KINDS
from app.domain.record import Board, Circuit, Device, IntakeItem
from app.domain.spreadsheet.devices import device_said, filled_in, settled
from app.domain.spreadsheet.growing import Making, find_way
from app.domain.spreadsheet.marks import cable_sizes
from app.domain.spreadsheet.rows import MadeRow, RowIn, facts_of
from app.domain.spreadsheet.there import circuit_there
from app.domain.spreadsheet.values import UnreadableError

NOT_MADE = (
    "What the sheet says of devices is not taken, since making them is not asked for."
)
SPLIT = re.compile(r"\s*(?:[,;&+]|\band\b)\s*", re.IGNORECASE)


def make_circuit(row: RowIn, making: Making) -> MadeRow | None:
    """Make the circuit of a row, and its device if that is asked for."""
    values, by = row.said("circuit")
    row.take("sizes", cable_sizes, values, by)
    said, said_by = device_said(row)
    if said and not making.asked.make_devices:
        making.note(NOT_MADE)
        said = {}
    there = circuit_there(making, values, _ways_there(row, making))
    if making.leaves_out(row.number, there):
        return None
    ways = list(_ways(row, making, said, said_by))
    if not (values.keys() & {"name", "number", "use"} or ways or row.faults):
        row.fault("", "The row names no circuit: no name, number, use or way.")
    if row.faults:
        return None
    refs = tuple(dict.fromkeys(device.ref for device, _ in ways))
    ref = wanted_ref(row, making, Circuit, values)
    circuit = row.built(Circuit, {**values, "ref": ref, "ways": refs}, by)
    if circuit is None or row.faults:
        return None
    making.growing.add(circuit)
    return MadeRow(
        row=row.number,
        ref=circuit.ref,
        what=circuit.title,
        facts=facts_of(circuit, "name"),
        beside=tuple(sentence for _, sentence in ways),
    )


def wanted_ref(row: RowIn, making: Making, cls: Any, values: dict[str, Any]) -> str:
    """Return the reference that a row asks for, if it is free; else the next one."""
    wanted: str = values.pop("ref", "")
    if not wanted:
        return making.growing.new_ref(cls)
    if not making.growing.hold(wanted):
        row.fault("ref", "is taken already")
    return wanted


def _ways(
    row: RowIn, making: Making, said: dict[str, Any], by: dict[str, str]
) -> Iterator[tuple[Device | IntakeItem, str]]:
    """Yield each way that the row names, with a sentence; those not there are made.

    A circuit may also start in the intake, at an item named by its reference.
    """
    text = row.text("way")
    if not text:
        if said:
            code = next(iter(by.values()))
            row.fault(code, "is on no way: the row does not say which")
        return
    for part in _parts(making, text, row.text("board")):
        if found := _way(row, making, part, said, by):
            yield found


def _ways_there(row: RowIn, making: Making) -> tuple[str, ...] | None:
    """Return the ways that a row names; None where one of them is not there yet."""
    text, found = row.text("way"), []
    for part in _parts(making, text, row.text("board")) if text else ():
        way: object = _in_intake(making, part)
        if way is None:
            try:
                way = find_way(making, part, row.text("board"))
            except UnreadableError:
                return None
        if not isinstance(way, Device | IntakeItem):
            return None
        found.append(way.ref)
    return tuple(found)


def _way(
    row: RowIn, making: Making, part: str, said: dict[str, Any], by: dict[str, str]
) -> tuple[Device | IntakeItem, str] | None:
    """Return what one name stands for, with a sentence; None, and a fault, if none."""
    if item := _in_intake(making, part):
        return item, f"Wired to {item.title} ({item.ref})."
    try:
        found = find_way(making, part, row.text("board"))
    except UnreadableError as error:
        row.fault("way", str(error))
        return None
    if isinstance(found, Device):
        return _there(row, making, found, said, by)
    if making.asked.make_devices:
        return _new(row, making, found, said, by)
    row.fault("way", f"is no way of {_name(making, found[0])}. {HOW}")
    return None


HOW = "Add it first, or have the devices made"


def _parts(making: Making, text: str, board: str) -> list[str]:
    """Return the ways that a text names: one that has it, else each of several."""
    try:
        if isinstance(find_way(making, text, board), Device):
            return [text]
    except UnreadableError:
        pass
    return list(filter(None, SPLIT.split(text)))


def _in_intake(making: Making, text: str) -> IntakeItem | None:
    ref = text.casefold()
    return next((i for i in making.record.intake if i.ref.casefold() == ref), None)


def _name(making: Making, ref: str) -> str:
    return next(b.name for b in making.growing.of(Board) if b.ref == ref)


def _there(
    row: RowIn, making: Making, device: Device, said: dict[str, Any], by: dict[str, str]
) -> tuple[Device, str]:
    filled = filled_in(row, device, said, by) if said else device
    where = f"{_name(making, device.board)}: {device.title}"
    if filled is device:
        return device, f"Wired to {where} ({device.ref})."
    making.growing.put(filled)
    facts = set(facts_of(filled)) - set(facts_of(device))
    words = ", ".join(f"{label} {value}" for label, value in sorted(facts))
    return filled, f"Wired to {where} ({device.ref}), which gains: {words}."


def _new(
    row: RowIn,
    making: Making,
    place: tuple[str, str],
    said: dict[str, Any],
    by: dict[str, str],
) -> tuple[Device, str] | None:
    board, way = place
    values = settled(row, said, by, making.asked.kind_unsaid)
    if row.faults:
        return None
    here = [d for d in making.growing.of(Device) if d.board == board]
    fed = left_feeder(here, values["kind"])
    ref = making.growing.new_ref(Device)
    own = {"ref": ref, "board": board, "way": way, "fed_from": fed}
    device = row.built(Device, {**values, **own}, by)
    if device is None:
        return None
    making.growing.add(device)
    return device, f"Makes {_name(making, board)}: {_made_words(making, device)}"


def device_facts(making: Making, device: Device) -> tuple[tuple[str, str], ...]:
    """Return what is recorded of a device that is made, with what it would be fed from.

    Also that its kind is not known; and its note, which may hold what is printed on it.
    """
    feeder = [d for d in making.growing.of(Device) if d.ref == device.fed_from]
    fed = feeder[0].title if feeder else "as the board is"
    facts = facts_of(device, "kind", "way", "label_found", "note")
    kind = ("What it is", DEVICE_KINDS[device.kind].label)
    note = (("Note", device.note),) if device.note else ()
    return (kind, *facts, ("Fed from", fed), *note)


def _made_words(making: Making, device: Device) -> str:
    facts = device_facts(making, device)
    return f"{device.title}. {'; '.join(f'{label}: {words}' for label, words in facts)}"
