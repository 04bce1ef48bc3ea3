"""The test buttons of RCDs: which there are, how often, and when last."""

from __future__ import annotations

from datetime import date

from app.domain.kinds import DEVICE_KINDS
from app.domain.record import Device, Record

# BS 7671:2018+A2:2022, 514.12.2 (from memory); notices before 2018 asked for three.
MONTHS = 6
BASIS = (
    "Six months: BS 7671:2018+A2:2022, 514.12.2, from memory. What stands on it "
    "or in its maker's instructions goes before; notices from before 2018 said three."
)


def rcds_of(record: Record) -> tuple[Device, ...]:
    """Return every device on a board that has a test button."""
    return tuple(
        device
        for device in record.devices
        if device.residual_current_ma
        or "earth_leakage" in DEVICE_KINDS[device.kind].protects
    )


def months_of(rcd: Device) -> tuple[int, str]:
    """Return how often its button is asked for, in months, and where that stands."""
    if rcd.button_every_months:
        return rcd.button_every_months, "As it stands on the device, or beside it."
    return MONTHS, BASIS


def last_pressed(record: Record, rcd: Device) -> date | None:
    """Return the day on which its button was last pressed and it tripped."""
    days = (*_days(record, rcd.ref, "worked"), rcd.button_pressed_on)
    return max(filter(None, days), default=None)


def last_failed(record: Record, about: str | None) -> date | None:
    """Return the day on which a button failed; None once it was seen to work later.

    Args:
        record: The home.
        about: What its pressing was written down for: an RCD, a board, the home.
    """
    failed = max(_days(record, about, "failed"), default=None)
    rcd = record.find(Device, about)
    worked = last_pressed(record, rcd) if rcd else None
    worked = max(_days(record, about, "worked"), default=None) if not rcd else worked
    return failed if failed and (worked is None or worked <= failed) else None


def _days(record: Record, about: str | None, outcome: str) -> list[date]:
    return [
        occasion.done_on
        for occasion in record.occasions
        if (occasion.kind, occasion.about) == ("rcd_button", about)
        and occasion.outcome == outcome
    ]
