"""Old and new wire colours are in the home together.

Looks at:
    The conductor colours of each circuit.
Why it matters:
    Black was neutral and may now be a line; blue was a line and is now neutral. Colour
    alone tells nothing here.
What to do:
    Never go by colour. A notice at the board helps whoever comes next.
Source:
    BS 7671:2001+A2:2004, table 51; the notice, 514.14.1, until 2022 (from memory).
Not retrospective:
    New colours since 31 March 2004, and only they since 1 April 2006.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="old-and-new-colours", rank="knowing", group="switching")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the circuits with both, or old and new ones side by side."""
    circuits = sight.record.circuits
    both = refs_of(circuit for circuit in circuits if circuit.colours == "both")
    old = refs_of(circuit for circuit in circuits if circuit.colours == "old")
    new = refs_of(circuit for circuit in circuits if circuit.colours == "harmonised")
    unknown = refs_of(circuit for circuit in circuits if circuit.colours == "unknown")
    if both or (old and new):
        yield Found(
            (sight.home, *both, *old, *new), _sentence(sight, both or old, len(both))
        )
    elif unknown:
        yield lacking(unknown, "the colours")


def _sentence(sight: Sight, refs: tuple[str, ...], both: int) -> str:
    words = "have both" if both else "have the old colours, others the new"
    return f"{sight.names(refs)} {words}."
