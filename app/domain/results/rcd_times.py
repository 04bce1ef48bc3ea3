"""How long the RCD that was measured may take at its IΔn."""

from __future__ import annotations

from app.domain.chain import chains, is_rcd
from app.domain.network import Network
from app.domain.rcd_times import longest_ms


def longest_at(net: Network, ref: str) -> int | None:
    """Return the longest time at a circuit, or of an RCD [ms]; None: it is open."""
    line = [step for chain in chains(net, ref) for step in chain.steps]
    own = [step for step in line if step.ref == ref and is_rcd(step)]
    return longest_ms(own or [step for step in line if is_rcd(step)])
