"""A source has no switch of its own in the record.

Looks at:
    Sources that are there, and what stands between them and the circuits they reach.
Why it matters:
    Without one, nothing parts that source from the home for work.
What to do:
    Look for it near the source and write it down. If there is none, ask whoever looks
    after the source.
Source:
    BS 7671:2018+A2:2022, 551.2 and 712.537 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.kinds import DEVICE_KINDS
from app.domain.record import Device, IntakeItem, Point, Source
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="source-without-isolator", rank="electrician", group="sources")

OWN = ("solar", "battery", "generator", "vehicle")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each source that nothing in the record parts from what it feeds."""
    for source in sight.sources():
        if source.kind not in OWN:
            continue
        fed = sight.below(source.ref)
        if not fed and not source.joins:
            yield lacks(source.ref, "what it feeds, or where it joins")
        elif not any(_isolates(sight, ref) for ref in _beside(sight, source)):
            yield Found(
                (source.ref,), f"No switch is recorded for {sight.name(source.ref)}."
            )


def _beside(sight: Sight, source: Source) -> set[str]:
    """Return what stands near a source: fed by it, or before where it joins."""
    steps = {step.ref for step in sight.before(source.joins)} if source.joins else set()
    return steps | set(sight.below(source.ref)) | {source.joins or ""}


def _isolates(sight: Sight, ref: str) -> bool:
    item = sight.record.by_ref.get(ref)
    if isinstance(item, Point):
        return item.kind in ("isolator", "dc_isolator", "appliance_switch")
    if isinstance(item, Device):
        kind = DEVICE_KINDS[item.kind]
        return kind.opens != "none" and not kind.switches_itself
    return isinstance(item, IntakeItem) and item.kind in ("isolator", "switch_fuse")
