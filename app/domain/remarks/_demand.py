"""What a circuit for one large thing draws, against the rating of its way."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record import Circuit
from app.domain.remarks._figures import by_part
from app.domain.remarks._kind import Outcome, lacks
from app.domain.remarks._sight import Sight


def over_rating(sight: Sight, circuit: Circuit) -> Iterator[Outcome]:
    """Yield that a load draws more than the way of its circuit is rated for."""
    part = sight.figures(circuit).part("load")
    if part is not None and part.sign is None:
        yield lacks(circuit.ref, "the connected load")
    else:
        yield from by_part(sight, circuit, "load")
