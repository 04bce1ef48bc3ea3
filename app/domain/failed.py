"""RCDs that failed by what is written down, so that nobody should count on them.

A button that did not trip its RCD, or a time at IΔn that was measured too long, takes
an RCD out of what guards a person, until it was seen to work on a later day.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from app.domain.buttons import last_failed, last_pressed, rcds_of
from app.domain.days import in_words
from app.domain.network import Network, network, upstream
from app.domain.rcd_times import DELAYED_MS, GENERAL_MS, longest_ms
from app.domain.record import Board, Circuit, Device, Item, Point, Record, Result


@dataclass(frozen=True, slots=True, kw_only=True)
class Failure:
    """Why an RCD is not to be counted on.

    Attributes:
        day: The day of it; None where that is not known.
        says: What was seen, to stand behind the RCD's name.
        short: The same in two words.
        button: Whether it was the button that failed, not the measured time.
    """

    day: date | None
    says: str
    short: str = "button failed"
    button: bool = True


def failed_rcds(net: Network) -> Mapping[str, Failure]:
    """Return the RCDs that failed and were not seen to work since, by reference."""
    return net.keep("failed_rcds", lambda: _failed(net))


def failed_in(record: Record) -> Mapping[str, Failure]:
    """Return the same of a record whose network is not built yet."""
    return failed_rcds(network(record)) if any(_told(record)) else {}


def doubt(title: str, ref: str, says: str) -> str:
    """Return what an RCD that failed leaves open, in a sentence."""
    return f"Whether {title} ({ref}) still guards anybody is not known: {says}."


def doubts(net: Network, refs: Iterable[str]) -> tuple[str, ...]:
    """Return such a sentence for each of these things that is an RCD that failed."""
    failed, here = failed_rcds(net), frozenset(refs)
    return tuple(
        doubt(net.record.by_ref[ref].title, ref, failure.says)
        for ref, failure in failed.items()
        if ref in here
    )


def _told(record: Record) -> Iterator[bool]:
    """Yield for everything that may tell of a failure whether it does."""
    yield from (o.outcome == "failed" for o in record.occasions)
    yield from (r.rcd_button == "failed" for r in record.results)
    yield from (bool(r.rcd_ms and r.rcd_ms > GENERAL_MS) for r in record.results)


def _failed(net: Network) -> dict[str, Failure]:
    """What was pressed goes before a paper, and a button before a measured time."""
    found: dict[str, Failure] = {}
    if any(_told(net.record)):
        for ref, failure in (*_pressed(net), *_copied(net), *_measured(net)):
            found.setdefault(ref, failure)
    return found


def _pressed(net: Network) -> Iterator[tuple[str, Failure]]:
    """What was pressed is outdone only by what was pressed later, by no paper."""
    record = net.record
    times = [o for o in record.occasions if o.kind == "rcd_button"]
    for about in dict.fromkeys(o.about for o in times):
        failed_on = last_failed(record, about)
        for rcd in _meant(net, about) if failed_on else ():
            if failed_on and not _is_later(_last_pressed(record, rcd), failed_on):
                says = f"{_button(record, rcd, about)} failed on {in_words(failed_on)}"
                yield rcd.ref, Failure(day=failed_on, says=says)


def _copied(net: Network) -> Iterator[tuple[str, Failure]]:
    record = net.record
    for result in record.results:
        day, about = result.tested_on, result.about
        for rcd in _meant(net, about) if result.rcd_button == "failed" else ():
            if not _worked_since(record, rcd, about, day):
                says = f"{_button(record, rcd, about)} failed, {_paper(day)}"
                yield rcd.ref, Failure(day=day, says=says)


def _measured(net: Network) -> Iterator[tuple[str, Failure]]:
    """Only the newest time of a thing counts, as for the remark on it."""
    timed = [result for result in net.record.results if result.rcd_ms is not None]
    newest: dict[str | None, Result] = {}
    for result in sorted(timed, key=lambda r: r.tested_on or date.min):
        newest[result.about] = result
    for about, result in newest.items():
        for rcd in _meant(net, about):
            if _is_slow(result, rcd) and not _faster_since(newest, result, rcd):
                says = (
                    f"it took {result.rcd_ms} ms, too long, {_paper(result.tested_on)}"
                )
                yield (
                    rcd.ref,
                    Failure(
                        day=result.tested_on,
                        says=says,
                        short="too slow",
                        button=False,
                    ),
                )


def _is_slow(result: Result, rcd: Item) -> bool:
    longest = longest_ms([rcd]) if isinstance(rcd, Device) else GENERAL_MS
    return bool(result.rcd_ms and result.rcd_ms > (longest or DELAYED_MS))


def _faster_since(newest: Mapping[str | None, Result], slow: Result, rcd: Item) -> bool:
    own = newest.get(rcd.ref)
    later = own and _is_later(own.tested_on, slow.tested_on)
    return bool(own and later and not _is_slow(own, rcd))


def _meant(net: Network, about: str | None) -> tuple[Item, ...]:
    """Return the RCDs that are meant: where several may be, each of them."""
    record = net.record
    item = record.by_ref.get(about or "")
    every = rcds_of(record)
    if item in every or (isinstance(item, Point) and item.residual_current_ma):
        return (item,)
    if isinstance(item, Board):
        return tuple(rcd for rcd in every if rcd.board == item.ref)
    if isinstance(item, Circuit | Device | Point):
        above = upstream(net, item.ref)
        return tuple(rcd for rcd in every if rcd.ref in above)
    return every if about is None else ()


def _worked_since(
    record: Record, rcd: Item, about: str | None, failed_on: date | None
) -> bool:
    """Return whether it was seen to work on a later day; without a day nobody knows."""
    pressed = _last_pressed(record, rcd)
    papers = (
        result.tested_on
        for result in record.results
        if result.about in (about, rcd.ref) and result.rcd_button == "worked"
    )
    return any(_is_later(day, failed_on) for day in (pressed, *papers))


def _last_pressed(record: Record, rcd: Item) -> date | None:
    return last_pressed(record, rcd) if isinstance(rcd, Device) else None


def _is_later(day: date | None, than: date | None) -> bool:
    return bool(day and than and day > than)


def _button(record: Record, rcd: Item, about: str | None) -> str:
    if about == rcd.ref:
        return "its button"
    item = record.by_ref.get(about or "")
    if isinstance(item, Circuit | Device | Point):
        return f"a button before {item.title}"
    return f"a button of {item.title if item else record.home.name}"


def _paper(day: date | None) -> str:
    return f"by a paper of {in_words(day)}" if day else "by a paper without a day"


def named_failures(things: Iterable[tuple[str, str]]) -> str:
    """Return titles with what was seen of each; of one, only what was seen."""
    every = [(title, says) for title, says in things if says]
    if len(every) == 1:
        return every[0][1]
    return "; ".join(f"{title}: {says}" for title, says in every)
