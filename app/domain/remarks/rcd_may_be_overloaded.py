"""Nothing in the record keeps an RCD from being overloaded.

Looks at:
    The rated current of each RCD, the nearest fuse or circuit-breaker before it, and
    the ways below it; ways that only bring in generation are left out.
Why it matters:
    An RCD does not guard itself against too much current. More than its rating, for
    long, overheats it.
What to do:
    Ask an electrician. What the maker of the RCD says goes first; diversity by itself
    is no answer.
Source:
    BS 7671:2018+A2:2022, 536.4.3.2 and 536.4.202 (from memory); that either the fuse
    before or the sum of the ways may show it, is a cautious rule of common practice.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.load import RcdLoading, rcd_loading
from app.domain.remarks._kind import (
    CannotTell,
    Found,
    Need,
    Outcome,
    RemarkKind,
    figure,
)
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="rcd-may-be-overloaded", rank="electrician", group="board")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each RCD that neither the fuse before it nor its ways keep within."""
    for rcd in sight.record.devices:
        if rcd.kind != "rcd" or rcd.ref not in sight.net.fed:
            continue
        loading = rcd_loading(sight.net, rcd, sight.loads)
        if loading.verdict == "not_shown":
            yield _found(sight, loading)
        elif loading.verdict == "cannot_tell":
            yield CannotTell((rcd.ref,), _needs(loading))


def _found(sight: Sight, loading: RcdLoading) -> Found:
    ref, before = loading.rcd.ref, loading.before
    figures = (
        figure("Rated current of the RCD", loading.rated_a or 0, "A"),
        figure("Fuse or circuit-breaker before it", loading.before_a or 0, "A"),
        figure("Ways below it, added up", loading.ways_a, "A", calculated=True),
    )
    return Found(
        (ref, *([before.ref] if before else [])),
        f"{sight.name(ref)} is rated {loading.rated_a} A, with {loading.ways_a} A of "
        f"ways below it and {loading.before_a} A before it.",
        figures,
    )


def _needs(loading: RcdLoading) -> tuple[Need, ...]:
    ref = loading.rcd.ref
    needs = [] if loading.rated_a else [Need(ref=ref, what="the rated current")]
    needs += [Need(ref=way.ref, what="the rating") for way in loading.ways_unknown]
    if loading.before_a is None:
        fuse = loading.before.ref if loading.before else ref
        needs.append(Need(ref=fuse, what="the rating of the fuse before it"))
    return tuple(needs) or (Need(ref=ref, what="the rating of what is beside it"),)
