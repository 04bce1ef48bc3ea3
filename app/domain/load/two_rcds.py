"""Two RCDs of one board with different ratings: why, and whether it matters here.

That both 63 A and 80 A are common, that the rating is what the contacts carry and not
what they trip at, and that a board is often filled with what was in stock, is common
practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from app.domain.load.against import SHOWN, RcdLoad, rcd_loads
from app.domain.network import Network
from app.domain.record import Board

WHY = (
    "The rated current says what an RCD can carry for good, not what it trips at: "
    "that is IΔn. RCDs of 63 A and of 80 A are both common, and which one a side of a "
    "board got was often what the maker or the stock offered (common practice, no "
    "source)."
)
MAKER = "The maker's instructions for the board can decide otherwise; they go first."


@dataclass(frozen=True, slots=True, kw_only=True)
class TwoRcds:
    """The answer for one board.

    Attributes:
        board: The board.
        rcds: Its RCDs, each judged.
        differ: Whether their rated currents are known and differ.
        sentences: The answer, in plain words.
    """

    board: Board
    rcds: tuple[RcdLoad, ...]
    differ: bool
    sentences: tuple[str, ...]


def two_rcds(net: Network) -> tuple[TwoRcds, ...]:
    """Return the answer for each board with several RCDs."""
    judged = rcd_loads(net)
    found = []
    for board in net.record.boards:
        here = tuple(each for each in judged if each.device.board == board.ref)
        if len(here) > 1:
            ratings = {each.rated for each in here}
            found.append(
                TwoRcds(
                    board=board,
                    rcds=here,
                    differ=len(ratings) > 1 and None not in ratings,
                    sentences=tuple(_sentences(here)),
                )
            )
    return tuple(found)


def _sentences(rcds: Sequence[RcdLoad]) -> Iterator[str]:
    yield WHY
    for each in rcds:
        yield _one(each)
    judged = {each.verdict for each in rcds}
    if judged == {"ok"}:
        yield "So here, by the record, the difference does not matter."
    elif "not_shown" in judged:
        yield (
            "So here it may matter: ask an electrician, who can look up what the maker "
            "allows or see that the load is spread otherwise."
        )
    else:
        yield "So whether it matters here cannot be told until the ratings are known."
    yield MAKER


def _one(each: RcdLoad) -> str:
    name = each.device.title
    rated = f"{each.rated} A" if each.rated is not None else "a rating not known"
    return (
        f"{name}, {rated}: {_upstream(each)}, {_ways(each)}. It is "
        f"{SHOWN[each.verdict]}. What hangs on it comes to {each.demand.total:.0f} A "
        "with diversity, which is for information only."
    )


def _upstream(each: RcdLoad) -> str:
    if each.before is None:
        return "the fuse or breaker before it is not known"
    holds = {True: "no larger", False: "larger", None: "not to be compared"}
    return (
        f"before it stands {each.before_title} of {each.before} A, "
        f"{holds[each.by_upstream]}"
    )


def _ways(each: RcdLoad) -> str:
    if each.ways is None:
        return "not every way behind it has a known rating"
    holds = {True: "no more", False: "more", None: "not to be compared"}
    return f"the ways behind it add up to {each.ways} A, {holds[each.by_ways]}"
