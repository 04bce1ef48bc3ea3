"""What feeds a point and what guards it, in words, for the top of its page."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from app.domain.answers import Named, Overcurrent, PointAnswer, Rcd
from app.domain.chain import Chain, Step, is_rcd, isolates
from app.domain.failed import named_failures
from app.domain.kinds import POINT_KINDS
from app.domain.protection import doubts_of_cover
from app.domain.record.choices import POLES
from app.web.ledes import listed

COVER = {
    "yes": "Yes, on every feed in the record",
    "failed": "By the record yes",
    "no": "No: none before it that counts, by the record",
    "some": "On some of its feeds only",
    "unknown": None,
    "not_mains": "Not a mains point",
}


def sentence(answer: PointAnswer) -> str:
    """Return what feeds a point, every feed of it, in one or two sentences."""
    feeds = list(dict.fromkeys(_feed(answer, chain) for chain in answer.chains))
    known = [feed for feed in feeds if feed]
    if not known:
        return "What feeds it is not recorded. Treat it as live."
    if len(answer.chains) == 1:
        return f"By the record it is {known[0]}."
    if len(feeds) == 1:
        more = f"further up that has {len(answer.chains)} feeds, shown below"
        return f"By the record it is {known[0]}; {more}."
    open_end = " Another feed of it is not recorded." if "" in feeds else ""
    return (
        f"By the record it has {len(feeds)} feeds: it is "
        f"{'; and '.join(known)}.{open_end} Each of them has to be off."
    )


def _feed(answer: PointAnswer, chain: Chain) -> str:
    """Say one feed: its circuit and what that starts from, or its source."""
    on = answer.neutral_circuits if chain.role == "neutral" else answer.circuits
    circuits = {circuit.ref for circuit in on}
    begins = chain.steps[0]
    for before, step in pairwise(chain.steps):
        if step.ref in circuits:
            start = f"on {step.title} ({step.ref}), from {before.title} ({before.ref})"
            mains = begins.kind == "network" or not chain.begins_at_source
            return start if mains else f"{start}, fed by {begins.title}"
    if any(step.ref in circuits for step in chain.steps):
        return f"on {begins.title} ({begins.ref}), whose way is not recorded"
    if not chain.begins_at_source:
        return ""
    return f"fed by {begins.title} ({begins.ref}), without a circuit of this home"


def cautions(answer: PointAnswer) -> tuple[str, ...]:
    """Return what a hurried person must not miss about a point."""
    found = []
    if answer.neutral_circuits:
        names = listed(n.title for n in answer.neutral_circuits)
        found.append(
            f"Its neutral belongs to {names}. The line alone being off is not enough: "
            "both must be off, by switches that break line and neutral."
        )
    if answer.also_present:
        names = listed(n.title for n in answer.also_present)
        found.append(f"Conductors of {names} are in its box too, whatever else is off.")
    if answer.present_before:
        names = listed(n.title for n in answer.present_before)
        found.append(f"Conductors of {names} are in a box that feeds it.")
    if answer.within_30_ma != "yes":
        found += [f"{failed}. Count on no RCD here." for failed in _failed(answer)]
    return (*found, *feed_back(answer.can_feed_back))


def failed_before(chains: Iterable[Chain]) -> tuple[str, ...]:
    """Return a sentence for each RCD on the chains that is not to be counted on."""
    steps = {s.ref: s for chain in chains for s in chain.steps if is_rcd(s)}
    return tuple(
        f"{step.title}: {step.failed}. Do not count on it."
        for step in steps.values()
        if step.failed
    )


def _failed(answer: PointAnswer) -> tuple[str, ...]:
    return tuple(f"{rcd.title}: {rcd.failed}" for rcd in answer.rcds if rcd.failed)


def feed_back(sources: Iterable[Named]) -> tuple[str, ...]:
    """Return a sentence for each source that can feed a thing from behind."""
    return tuple(
        f"{source.title}: by the record it may feed back into this supply, and has to "
        "be off too."
        for source in sources
    )


def protection_rows(answer: PointAnswer) -> tuple[tuple[str, str | None], ...]:
    """Return what guards a point and what can switch it, label and words."""
    return (
        ("Overload and short circuit", _join(map(_overcurrent, answer.overcurrent))),
        ("RCDs before it", _join(map(_rcd, answer.rcds)) or _no_rcd(answer)),
        ("RCD of 30 mA or less", _cover(answer)),
        ("RCD in the point itself", _own_rcd(answer)),
        *_switches(answer),
        ("Other conductors in its box", _join(n.title for n in answer.also_present)
         or "None recorded"),
    )  # fmt: skip


def _join(parts: Iterable[str]) -> str | None:
    return "; ".join(parts) or None


def _overcurrent(device: Overcurrent) -> str:
    if device.rated_current_a is None:
        return f"{device.title}, rating not known"
    curve = f" {device.curve}" if device.curve and device.curve != "unknown" else ""
    return f"{device.title},{curve} {device.rated_current_a} A"


def _cover(answer: PointAnswer) -> str | None:
    words = COVER[answer.within_30_ma]
    failed = named_failures((rcd.title, rcd.failed) for rcd in answer.rcds)
    if words and failed and answer.within_30_ma in ("failed", "some"):
        words = f"{words}, but {failed}: count on no RCD"
    return f"{words}{_doubts(answer)}" if words else None


def _doubts(answer: PointAnswer) -> str:
    past, earthing = answer.past_rcd, answer.earthing_open
    if answer.within_30_ma == "not_mains":
        return ""
    return doubts_of_cover((s.title for s in past), (s.title for s in earthing))


def _rcd(rcd: Rcd) -> str:
    known = rcd.rcd_type not in (None, "unknown")
    facts = (
        f"{rcd.residual_current_ma} mA" if rcd.residual_current_ma else "IΔn not known",
        f"type {rcd.rcd_type}" if known else "type not known",
        "time-delayed" if rcd.time_delayed == "yes" else "",
        rcd.failed,
    )
    return ", ".join((rcd.title, *(fact for fact in facts if fact)))


def _no_rcd(answer: PointAnswer) -> str | None:
    return "None in the record" if answer.within_30_ma == "no" else None


def _own_rcd(answer: PointAnswer) -> str:
    if not answer.own_rcd_ma:
        return "None recorded"
    if POINT_KINDS[answer.kind].guards_onward:
        guards = "it guards what is behind it, not its own supply side"
    else:
        guards = "whether it guards what is behind the point too is not recorded"
    return f"{answer.own_rcd_ma} mA: {guards}"


def _switches(answer: PointAnswer) -> tuple[tuple[str, str | None], ...]:
    """Say what can switch a point; of several feeds, what switches each of them."""
    feeds = _by_feed(answer)
    if len({*feeds.values()}) < 2:
        return (("What can switch it", _join(map(_switch, answer.opens))),)
    steps = {step.ref: step for step in answer.opens}
    for_all = frozenset(steps).intersection(*feeds.values())

    def among(refs: frozenset[str]) -> str | None:
        return _join(_switch(step) for ref, step in steps.items() if ref in refs)

    return (
        (
            "What can switch it",
            among(for_all) or "No one switch alone",
        ),
        *(
            (feed, among(refs - for_all) or "Nothing that is recorded")
            for feed, refs in feeds.items()
        ),
    )


def _by_feed(answer: PointAnswer) -> dict[str, frozenset[str]]:
    """Return what switches each feed of a point, the neutral's apart, in words."""
    found: dict[str, frozenset[str]] = {}
    for chain in (*answer.chains, *answer.neutral_chains):
        what = "its neutral," if chain.role == "neutral" else "where it is"
        feed = _feed(answer, chain) or "fed by what is not recorded"
        refs = frozenset(s.ref for s in chain.steps[:-1] if isolates(s))
        name = f"Only {what} {feed}"
        found[name] = found[name] & refs if name in found else refs
    return found


def _switch(step: Step) -> str:
    poles = POLES.get(step.opens, step.opens).lower()
    if step.opens_basis != "usual":
        return f"{step.title}: {poles}"
    if step.opens == "line":
        return f"{step.title}: the line; whether the neutral too is not recorded"
    return f"{step.title}: usually {poles}; not recorded"
