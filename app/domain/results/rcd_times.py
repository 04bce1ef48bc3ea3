"""How long the RCD that was measured may take at its IΔn."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal

from app.domain.chain import Step, chains, is_rcd
from app.domain.network import Network
from app.domain.record import Device

# BS EN 61008-1 and 61009-1, as in the table of RCD times: a general one, and type S.
GENERAL_MS, DELAYED_MS = 300, 500
# The same: none of 30 mA or less is time-delayed (from memory).
NEVER_DELAYED_MA = Decimal(30)


def longest_ms(rcds: Iterable[Step | Device]) -> int | None:
    """Return the longest time of those in series [ms]; None where that is open.

    One that is not time-delayed opens before those that are, so its time counts.
    """
    delays = {_delayed(rcd) for rcd in rcds}
    if "no" in delays:
        return GENERAL_MS
    return DELAYED_MS if delays == {"yes"} else None


def longest_at(net: Network, ref: str) -> int | None:
    """Return the longest time at a circuit, or of an RCD [ms]; None: it is open."""
    line = [step for chain in chains(net, ref) for step in chain.steps]
    own = [step for step in line if step.ref == ref and is_rcd(step)]
    return longest_ms(own or [step for step in line if is_rcd(step)])


def _delayed(rcd: Step | Device) -> str:
    ma = rcd.residual_current_ma
    if rcd.time_delayed in ("yes", "no"):
        return rcd.time_delayed
    return "no" if ma and ma <= NEVER_DELAYED_MA else "open"
