"""Why the RCDs of one board differ in rated current, and whether it matters there."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.answers import Named
from app.domain.circuits import COMMON_PRACTICE
from app.domain.circuits._working import plain
from app.domain.load.loads import Load
from app.domain.load.rcd import MAKER, SOURCE, RcdLoading, rcd_loading
from app.domain.network import Network
from app.domain.protection import PEOPLE_MA
from app.domain.record import Board
from app.domain.record._field import Model, field

QUESTION = "Why do they differ, and does it matter here?"
PEOPLE = (
    "The figure in mA is what an RCD opens at, and guards people; the figure in A is "
    "what it can carry. Two of 30 mA guard people alike, whatever they carry."
)
WHY = (
    "A larger one is usually chosen for the group with more or heavier ways, or for a "
    "larger supply fuse; or one was replaced later with what was to hand."
)
NOT_RECORDED = "Why these were chosen, the record does not say and cannot show."
TWO_TESTS = (
    "An RCD does not open on overload. On paper it is guarded if it can carry as much "
    "as the nearest fuse or breaker before it, or as all the ways behind it together."
)


class Said(Model):
    """A sentence, and where it stands."""

    text: str = field("Sentence", ...)
    source: str = field("Where it stands; empty: it follows from the record", "")


class RcdsDiffer(Model):
    """One board whose RCDs differ, and the answer to the owner's question."""

    board: Named = field("Board", ...)
    question: str = field("Question", ...)
    answer: str = field("The answer in a sentence or two", ...)
    why: tuple[Said, ...] = field("Why they differ", ())
    each: tuple[RcdLoading, ...] = field("Each RCD with its two tests", ())
    matters: tuple[Said, ...] = field("Whether it matters here", ())


def rcds_differ(net: Network, loads: tuple[Load, ...]) -> tuple[RcdsDiffer, ...]:
    """Return each board with RCDs of 30 mA that differ in what they carry."""
    found = (_of_board(net, board, loads) for board in net.record.boards)
    return tuple(each for each in found if each)


def _of_board(net: Network, board: Board, loads: tuple[Load, ...]) -> RcdsDiffer | None:
    rcds = [
        rcd_loading(net, device, loads)
        for device in net.record.devices_of(board.ref)
        if device.kind == "rcd"
        and device.residual_current_ma
        and device.residual_current_ma <= PEOPLE_MA
    ]
    ratings = {found.rated_a for found in rcds if found.rated_a is not None}
    if len(ratings) < 2:
        return None
    names = " and ".join(f"{plain(rating)} A" for rating in sorted(ratings))
    return RcdsDiffer(
        board=Named(ref=board.ref, title=board.title),
        question=f"{board.title}: its RCDs are rated {names}. {QUESTION}",
        answer=_answer(rcds),
        why=(
            Said(text=PEOPLE, source=COMMON_PRACTICE),
            Said(text=WHY, source=COMMON_PRACTICE),
            Said(text=NOT_RECORDED),
        ),
        each=tuple(rcds),
        matters=(Said(text=TWO_TESTS, source=SOURCE), *_matters(rcds)),
    )


def _answer(rcds: list[RcdLoading]) -> str:
    wanting = [found for found in rcds if found.verdict == "not_shown"]
    open_ones = [found for found in rcds if found.verdict == "cannot_tell"]
    if wanting:
        return (
            f"It may matter: {_named(wanting)} not shown on paper to be guarded from "
            "overload. Ask an electrician; the data of its maker may settle it."
        )
    if open_ones:
        return (
            f"Cannot tell whether it matters: of {_list(open_ones)} something is "
            "missing from the record, named below."
        )
    return (
        "On paper it does not matter here: each is guarded from overload by what is "
        "before it or behind it."
    )


def _matters(rcds: list[RcdLoading]) -> Iterator[Said]:
    for found in rcds:
        yield Said(text=f"{found.rcd.title}: {_tests(found)}")
    if any(found.verdict == "cannot_tell" and not found.before for found in rcds):
        text = "Find out the rating of the supply fuse: it may settle the first test."
        yield Said(text=text)
    yield Said(text=MAKER, source=SOURCE)


def _tests(found: RcdLoading) -> str:
    if found.rated_a is None:
        return "its rated current is not recorded, so neither test can be made."
    rated = f"{plain(found.rated_a)} A"
    before = (
        f"before it {found.before.title}, {plain(found.before_a)} A"
        if found.before and found.before_a
        else "what is before it is not known"
    )
    total = f"{'at least ' if found.ways_unknown else ''}{plain(found.ways_a)} A"
    return (
        f"{rated}; {before}: {_held(found.by_before)}; behind it {total} together: "
        f"{_held(found.by_ways)}."
    )


def _held(holds: bool | None) -> str:  # noqa: FBT001 - the test itself
    return {True: "held", False: "not held", None: "cannot tell"}[holds]


def _named(rcds: list[RcdLoading]) -> str:
    return f"{_list(rcds)} {'is' if len(rcds) == 1 else 'are'}"


def _list(rcds: list[RcdLoading]) -> str:
    names = [f"{f.rcd.title} ({plain(f.rated_a)} A)" for f in rcds if f.rated_a]
    names += [f.rcd.title for f in rcds if not f.rated_a]
    return " and ".join(names)
