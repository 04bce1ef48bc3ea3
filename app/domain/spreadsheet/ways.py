"""One row of a sheet of a board's ways, or one line of a typed list of them."""

from __future__ import annotations

from typing import Any

from app.domain.board import left_feeder
from app.domain.kinds import DEVICE_KINDS
from app.domain.record import Board, Circuit, Device, specs
from app.domain.spreadsheet.circuits import device_facts, wanted_ref
from app.domain.spreadsheet.devices import a_device, device_said, settled
from app.domain.spreadsheet.growing import Making, the_board
from app.domain.spreadsheet.rows import MadeRow, RowIn
from app.domain.spreadsheet.there import device_there
from app.domain.spreadsheet.values import UnreadableError, plain

CIRCUIT_NAME = next(spec for spec in specs(Circuit) if spec.name == "name")
BOARDS_OWN = ("board", "the board", "supply", "incomer", "main", "tails")


def make_way(row: RowIn, making: Making) -> MadeRow | None:
    """Make the device of a row, and the circuit that it is said to feed."""
    values, by = device_said(row)
    try:
        board = the_board(making, "")
    except UnreadableError as error:
        row.fault("", f"The way {error}.")
        return None
    there = None if row.faults else device_there(making, board.ref, values)
    if making.leaves_out(row.number, there):
        return None
    _check_way(row, making, board, values.get("way", ""))
    if not values and not row.text("ways.circuit"):
        row.fault("", "The row says nothing of a way.")
    ref = wanted_ref(row, making, Device, values)
    fields = settled(row, values, by, making.asked.kind_unsaid)
    fields |= {"ref": ref, "board": board.ref}
    fields["fed_from"] = _fed_from(row, making, board, fields["kind"])
    name = _circuit_name(row, fields["kind"])
    device = None if row.faults else row.built(Device, fields, by)
    if device is None:
        return None
    making.growing.add(device)
    beside = _circuit(row, making, device, name) if name else ()
    return MadeRow(
        row=row.number,
        ref=device.ref,
        what=device.title,
        facts=device_facts(making, device),
        beside=beside,
    )


def _check_way(row: RowIn, making: Making, board: Board, way: str) -> None:
    """A way that the board has already, or that stands twice, is a fault."""
    key = board.ref, plain(way)
    here = [d for d in making.record.devices_of(board.ref) if d.way]
    if way and any(plain(d.way) == key[1] for d in here):
        row.fault("way", f"is on {board.name} already")
    if way and key in making.seen:
        what = "line" if row.line else "row"
        row.fault("way", f"stands in {what} {making.seen[key]} too")
    making.seen.setdefault(key, row.number)


def _fed_from(row: RowIn, making: Making, board: Board, kind: str) -> str | None:
    """Return what feeds it: as the row says, else as boards are usually built."""
    here = [d for d in making.growing.of(Device) if d.board == board.ref]
    text = row.text("fed_from")
    if not text:
        return left_feeder(here, kind)
    word = plain(text).removeprefix("way ")
    if word in BOARDS_OWN:
        return None
    found = [d for d in here if word in _names(d)]
    if not found:
        kinds = [d for d in here if plain(DEVICE_KINDS[d.kind].label) == word]
        found = kinds if len(kinds) == 1 else []
    if len(found) != 1:
        row.fault("fed_from", "is no one device to the left of it on this board")
        return None
    return found[0].ref


def _names(device: Device) -> tuple[str, ...]:
    own = (device.ref, device.way, device.label_found or "")
    return tuple(plain(name) for name in own if name)


def _circuit_name(row: RowIn, kind: str) -> str:
    name = row.text("ways.circuit")
    if name and not DEVICE_KINDS[kind].outgoing:
        what = a_device(kind)
        row.fault("ways.circuit", f"does not fit: {what} feeds no circuit")
    if len(name) > CIRCUIT_NAME.max_length:
        row.fault(
            "ways.circuit", f"is longer than {CIRCUIT_NAME.max_length} characters"
        )
    return name


def _circuit(row: RowIn, making: Making, device: Device, name: str) -> tuple[str, ...]:
    more: dict[str, Any] = {}
    if use := row.text("use"):
        more = {"use": use, "note": "Name and use are taken from the label."}
    fields = {"name": name, "number": device.way, "ways": (device.ref,), **more}
    ref = making.growing.new_ref(Circuit)
    circuit = row.built(Circuit, {**fields, "ref": ref}, {"name": "ways.circuit"})
    if circuit is None:
        return ()
    making.growing.add(circuit)
    for_use = next(s for s in specs(Circuit) if s.name == "use").choices
    said = f", used for: {for_use[circuit.use].lower()}" if use else ""
    return (f"Makes the circuit {name} ({circuit.ref}){said}.",)
