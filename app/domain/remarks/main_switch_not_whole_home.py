"""No single switch turns the whole home off.

Looks at:
    Each switch at the head of a board next to the intake, and which circuits go off
    with it.
Why it matters:
    Who trusts the one marked main switch works on something live.
What to do:
    Write on each what it leaves on, and where the others are. Switch off all of them,
    in any order, before anyone takes the home to be off.
Source:
    BS 7671:2018+A2:2022, 514.11.1 and 462.1.201 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import CannotTell, Found, Need, Outcome, RemarkKind
from app.domain.remarks._sight import Sight, counted, is_supply, refs_of

KIND = RemarkKind(code="main-switch-not-whole-home", rank="knowing", group="switching")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield that every main switch leaves something on."""
    circuits = {c.ref for c in sight.record.circuits if not is_supply(c)}
    fed = {ref for ref in circuits if sight.before(ref)}
    heads = [h for b in sight.first_boards() for h in sight.heads(b)]
    switches = [h for h in heads if h.ref in sight.net.fed]
    left = {switch.ref: fed - sight.off_with(switch.ref) for switch in switches}
    loose = tuple(ref for ref in sorted(circuits - fed))
    if len(switches) > 0 and fed and all(left.values()):
        others = _whole(sight, fed)
        yield Found((sight.home, *left, *others), _sentence(sight, left, others))
    elif loose and fed:
        needs = tuple(Need(ref=ref, what="the way it starts from") for ref in loose)
        yield CannotTell((sight.home, *loose), needs)


def _whole(sight: Sight, fed: set[str]) -> tuple[str, ...]:
    """Return what at the intake turns all of it off, if a person may."""
    found = sight.intake_of("isolator", "switch_fuse")
    return refs_of(i for i in found if fed <= sight.off_with(i.ref))


def _sentence(sight: Sight, left: dict[str, set[str]], others: tuple[str, ...]) -> str:
    parts = [
        f"{sight.name(ref)} leaves {counted(len(on), 'circuit')} on"
        for ref, on in left.items()
    ]
    text = f"{'; '.join(parts)}."
    if others:
        return f"{text} What takes all of them off is {sight.names(others)}."
    return text
