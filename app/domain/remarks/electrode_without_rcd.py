"""A circuit of a home on an earth electrode has no RCD before it.

Looks at:
    Each circuit that is earthed by an electrode (TT): the RCDs before it, and whether
    its loop impedance, by a paper or worked out, is low enough for its device. An RCD
    that failed does not count.
Why it matters:
    In a fault to earth an electrode lets so little current through that a fuse or a
    circuit-breaker may never open. Metal then stays live.
What to do:
    Touch no metal of it that tingles. Ask an electrician for an RCD before it.
Source:
    BS 7671:2018+A2:2022, 411.5.2 (from memory) and 411.5.3: in a TT system an RCD cuts
    off, unless the loop impedance is low enough, lastingly, for the device.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.chain import Chain, is_rcd, may_be_rcd
from app.domain.circuits import Working
from app.domain.protection import ELSEWHERE
from app.domain.record import Circuit
from app.domain.remarks._figures import GUESSED
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of
from app.domain.results.over_time import latest

KIND = RemarkKind(code="electrode-without-rcd", rank="electrician", group="rcd")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each circuit on an electrode that no RCD stands before."""
    unsaid, not_known = [], []
    for circuit in sight.record.circuits:
        lines = sight.chains(circuit.ref)
        guarded = all(_rcds(line) for line in lines)
        earthing = "" if guarded else _earthing(sight, circuit)
        if earthing == "unknown":
            unsaid.append(circuit.ref)
        elif earthing != "tt" or _is_low_enough(sight, circuit):
            continue
        elif any(_is_bare(line) for line in lines):
            yield _found(sight, circuit, lines)
        else:
            not_known.append(circuit.ref)
    if unsaid:
        yield lacking(tuple(unsaid), "how it is earthed, for no RCD stands before it")
    if not_known:
        what = "what feeds it, and whether an RCD stands before it"
        yield lacking(tuple(not_known), what)


def _rcds(line: Chain) -> bool:
    return any(is_rcd(step) and not step.failed for step in line.steps)


def _is_bare(line: Chain) -> bool:
    """Whether the record holds all of a chain, and no RCD that works on it."""
    whole = line.begins_at_source and line.steps[0].kind not in ELSEWHERE
    return whole and not _rcds(line) and not any(map(may_be_rcd, line.steps))


def _earthing(sight: Sight, circuit: Circuit) -> str:
    """Return how a circuit is earthed; a board that nobody asked about as the home."""
    ways = sight.ways(circuit)
    boards = [b for b in sight.record.boards if b.ref in {way.board for way in ways}]
    own = {board.earthing for board in boards} or {"supply"}
    home = sight.record.home.earthing
    found = {home if each in ("supply", "unknown") else each for each in own}
    return "tt" if "tt" in found else "unknown" if "unknown" in found else ""


def _is_low_enough(sight: Sight, circuit: Circuit) -> bool:
    """Whether its device opens in time by itself, by a paper or worked out for sure."""
    figures = sight.figures(circuit)
    result = latest(sight.record, circuit.ref, "zs_ohm")
    if result and result.zs_ohm is not None:
        most = figures.part("zs-measured")
        limit = most.found if most else None
        return isinstance(limit, Working) and result.zs_ohm <= limit.value
    part = figures.part("zs")
    guessed = part and any(text.startswith(GUESSED) for text in part.assumes)
    return bool(part and part.sign == "within" and not guessed)


def _found(sight: Sight, circuit: Circuit, lines: tuple[Chain, ...]) -> Found:
    ways = refs_of(sight.ways(circuit))
    failed = {s.ref: s.failed for line in lines for s in line.steps if is_rcd(s)}
    said = "".join(f" {sight.name(r)}: {why}." for r, why in failed.items() if why)
    return Found(
        tuple(dict.fromkeys((circuit.ref, *ways, *failed))),
        f"{sight.name(circuit.ref)} is earthed by an electrode, and no RCD "
        f"{'to count on ' if said else ''}stands before it.{said}",
    )
