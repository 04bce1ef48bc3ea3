"""Short words for what is recorded of a thing, and for what is not."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from decimal import Decimal

from app.domain.kinds import INTAKE_KINDS
from app.domain.record import Device, IntakeItem
from app.domain.record.choices import (
    CABLE_ENTRIES,
    CONDITIONS,
    SERVICES,
    WHEN,
)

_MISSING = " not known"


def quantity(value: Decimal | None, unit: str) -> str:
    """Return a figure with its unit, or a query mark; a 0 is no figure."""
    return f"{value.normalize():f}\xa0{unit}" if value else f"?\xa0{unit}"


def joined(bits: Iterable[str]) -> str:
    """Join what there is to say on one line."""
    return " · ".join(bit for bit in bits if bit)


def hours(when: str) -> str:
    """Return when a supply comes and goes; nothing for always."""
    if when == "always":
        return ""
    return WHEN[when].lower() if when != "unknown" else "hours not known"


def rating_of(item: IntakeItem) -> tuple[str, bool]:
    """Return what is printed on an intake item, and whether all of it is known."""
    fields = INTAKE_KINDS[item.kind].fields
    said = [
        _told("rated_current_a", fields, _figure(item.rated_current_a, "A"), "rating"),
        _told("csa_mm2", fields, _figure(item.csa_mm2, "mm²"), "size"),
        _told("entry", fields, _choice(CABLE_ENTRIES, item.entry), "way in"),
        _told("service", fields, _choice(SERVICES, item.service), "what it bonds"),
    ]
    known = not any(words.endswith(_MISSING) for words in said)
    return joined([*said, f"“{item.printed}”" if item.printed else ""]), known


def seen_of(item: IntakeItem) -> str:
    """Return what is seen of its seal and condition, as far as anyone looked."""
    seals = {"yes": "seal there", "no": "no seal"}
    odd = CONDITIONS[item.condition].lower() if item.condition != "unknown" else ""
    return joined([seals.get(item.seal, ""), odd])


def device_rating(device: Device) -> str:
    """Return a device's rating as a face has it, such as "B 32" or "? A"."""
    if device.curve != "unknown" and device.rated_current_a:
        return f"{device.curve} {device.rated_current_a.normalize():f}"
    return quantity(device.rated_current_a, "A")


def residual(device: Device) -> str:
    """Return an RCD's IΔn and type, as far as recorded."""
    kind = f"type\xa0{device.rcd_type}" if device.rcd_type != "unknown" else ""
    return joined([quantity(device.residual_current_ma, "mA"), kind])


def _told(field: str, applies: tuple[str, ...], value: str, name: str) -> str:
    """Return a value; where it applies and is not recorded, that it is not known."""
    return value or (f"{name}{_MISSING}" if field in applies else "")


def _figure(value: Decimal | None, unit: str) -> str:
    return quantity(value, unit) if value else ""


def _choice(words: Mapping[str, str], code: str) -> str:
    return words[code].lower() if code != "unknown" else ""
