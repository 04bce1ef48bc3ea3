"""How long an RCD may take at its IΔn."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from app.domain.chain import Step
    from app.domain.record import Device

# BS EN 61008-1 and 61009-1, as in the table of RCD times: a general one, and type S.
GENERAL_MS, DELAYED_MS = 300, 500
# The same: none of 30 mA or less is time-delayed (from memory).
NEVER_DELAYED_MA = Decimal(30)


def longest_ms(rcds: Iterable[Step | Device]) -> int | None:
    """Return the longest time of those in series [ms]; None where that is open.

    One that is not time-delayed opens before those that are, so its time counts.
    """
    delays = {delay_of(rcd) for rcd in rcds}
    if "no" in delays:
        return GENERAL_MS
    return DELAYED_MS if delays == {"yes"} else None


def delay_of(rcd: Step | Device) -> str:
    """Return whether an RCD is time-delayed: ``yes``, ``no``, or ``open``."""
    ma = rcd.residual_current_ma
    if rcd.time_delayed in ("yes", "no"):
        return rcd.time_delayed
    return "no" if ma and ma <= NEVER_DELAYED_MA else "open"
