"""The device that a row speaks of: what it says, and how that meets the record."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from app.domain.kinds import DEVICE_KINDS
from app.domain.record import Device, fields_of_kind, specs
from app.domain.spreadsheet.marks import whole_device
from app.domain.spreadsheet.rows import RowIn
from app.domain.spreadsheet.values import number

SPECS = {spec.name: spec for spec in specs(Device)}
OPEN = (None, "unknown", "")


def device_said(row: RowIn) -> tuple[dict[str, Any], dict[str, str]]:
    """Return what a row says of a device, and by which column."""
    values, by = row.said("device", _printed)
    row.take("device", _printed, values, by)
    return values, by


def settled(
    row: RowIn, values: dict[str, Any], by: Mapping[str, str], kind_unsaid: str
) -> dict[str, Any]:
    """Return the fields of a new device, with a kind.

    What a device of a known kind cannot have is a fault; of one that nobody knows, what
    is printed on it goes into its note, so that nothing is lost.
    """
    kind = values.get("kind", kind_unsaid)
    applying = fields_of_kind(Device, kind)
    beside = [name for name in values if name not in applying]
    kept = {name: value for name, value in values.items() if name in applying}
    if kind == "unknown":
        printed = "; ".join(f"{SPECS[n].label} {_shown(n, values[n])}" for n in beside)
        said = f"Marked: {printed}." if printed else ""
        kept["note"] = " ".join(filter(None, (values.get("note", ""), said)))
    else:
        for name in beside:
            what = SPECS[name].label
            row.fault(by[name], f"does not fit: {a_device(kind)} has no “{what}”")
    return {**kept, "kind": kind}


def a_device(kind: str) -> str:
    """Return a kind of device as it stands within a sentence: a fuse, an RCD."""
    label = DEVICE_KINDS[kind].label
    if label[1].isupper():
        return f"an {label}"
    return f"{'an' if label[0] in 'AEIOU' else 'a'} {label[0].lower()}{label[1:]}"


def filled_in(
    row: RowIn, device: Device, values: Mapping[str, Any], by: Mapping[str, str]
) -> Device:
    """Return a device that is there with its open facts filled in.

    A fact that the record has otherwise is a fault: which of the two is true must be
    settled by looking.
    """
    update: dict[str, Any] = {}
    kind = values.get("kind", device.kind)
    applying = fields_of_kind(Device, kind)
    for name, value in values.items():
        now = getattr(device, name)
        if now == value:
            continue
        if now not in OPEN:
            shown = _shown(name, now)
            row.fault(
                by[name], f"differs from the record, where {device.ref} has {shown}"
            )
        elif name not in applying:
            row.fault(by[name], f"does not fit: {device.ref} is of a kind without it")
        else:
            update[name] = value
    return device.model_copy(update=update) if update else device


def _printed(text: str) -> dict[str, Any]:
    """Return what is printed on a device, as far as its fields can hold it.

    Raises:
        UnreadableError: Something in it is no fact of a device, or cannot be held.
    """
    found = {}
    for name, value in whole_device(text).items():
        spec = SPECS[name]
        found[name] = number(spec, str(value)) if spec.type == "decimal" else value
    return found


def _shown(name: str, value: Any) -> str:
    spec = SPECS[name]
    words = spec.choices[value] if spec.type == "choice" else f"{value} {spec.unit}"
    return words.strip()
