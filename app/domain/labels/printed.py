"""What is printed on a device, as far as it was read; nothing that was not."""

from __future__ import annotations

import re
from decimal import Decimal

from app.domain.record import Device

_AMPERES = re.compile(r"\(?\b(\d{1,3}(?:[.,]\d+)?)\s?(?:A|amps?)\b\)?", re.IGNORECASE)


def printed(device: Device) -> str:
    """Return the rating as it stands on the device, such as "B32, 30 mA, type A"."""
    said = (_current(device), _residual(device))
    return ", ".join(part for part in said if part)


def _current(device: Device) -> str:
    if not device.rated_current_a:
        return ""
    rated = f"{device.rated_current_a.normalize():f}"
    if device.curve in ("B", "C", "D"):
        return f"{device.curve}{rated}"
    kind = f"type\xa0{device.curve}, " if device.curve != "unknown" else ""
    return f"{kind}{rated}\xa0A"


def _residual(device: Device) -> str:
    if not device.residual_current_ma:
        return ""
    kind = f", type\xa0{device.rcd_type}" if device.rcd_type != "unknown" else ""
    return f"{device.residual_current_ma.normalize():f}\xa0mA{kind}"


def ratings_not_read(text: str, device: Device) -> tuple[str, ...]:
    """Return the ratings in a text that are not the one read from the device."""
    found = _AMPERES.finditer(text)
    return tuple(hit[0].strip("()") for hit in found if not _is_read(hit, device))


def without_ratings_not_read(text: str, device: Device) -> str:
    """Return a text without ratings that were not read from the device."""
    kept = _AMPERES.sub(lambda hit: hit[0] if _is_read(hit, device) else "", text)
    return " ".join(kept.split()).strip(" ,-")


def _is_read(hit: re.Match[str], device: Device) -> bool:
    return Decimal(hit[1].replace(",", ".")) == device.rated_current_a
