"""Whose some of the intake is, nobody has said.

Looks at:
    The owner of each item of the intake that carries the supply.
Why it matters:
    The owner decides who may open it, and who comes when it fails.
What to do:
    Ask the network, the supplier or, in a block, whoever manages it. Until then treat
    it as not yours.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.kinds import INTAKE_KINDS
from app.domain.remarks._kind import Found, Outcome, RemarkKind
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(
    code="owner-not-known",
    rank="record",
    group="network",
    always_tells="An owner is said or it is not.",
)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the items whose owner is not known, together."""
    whose = refs_of(
        item
        for item in sight.record.intake
        if item.owner == "unknown" and INTAKE_KINDS[item.kind].carries_supply
    )
    if whose:
        yield Found(whose, f"Whose these are is not known: {sight.names(whose)}.")
