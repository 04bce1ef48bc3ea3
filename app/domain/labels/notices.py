"""Notices to hang at a board: what each says, when it is called for, and its source.

The words are ours, but where a standard fixes them; the facts are those of the edition
named. Amendment 4 of 2026 is in force and was not available.
"""

from __future__ import annotations

from dataclasses import dataclass

from app.domain.board import main_switches, switch_name
from app.domain.network import Network, upstream
from app.domain.record import Board, Device
from app.domain.record.choices import SOURCE_KINDS

EDITION = "BS 7671:2018+A2:2022"
NOT_SEEN = "Amendment 4 (2026) is in force and was not available."


@dataclass(frozen=True, slots=True, kw_only=True)
class Notice:
    """One notice.

    Attributes:
        code: Names it in an address.
        title: Its large words.
        lines: What it says below.
        blanks: What is to be filled in by hand.
        where: Where it hangs.
        called_for: What the record says for hanging it.
        source: Where its facts or words come from.
    """

    code: str
    title: str
    lines: tuple[str, ...]
    blanks: tuple[str, ...]
    where: str
    called_for: str
    source: str


def notices_of(net: Network, board: Board) -> tuple[Notice, ...]:
    """Return the notices that a board may carry."""
    return (
        _rcd_test(net, board),
        _supplies(net),
        _switches(net, board),
        _working(),
        _earth(),
    )


def _rcd_test(net: Network, board: Board) -> Notice:
    devices = net.record.devices_of(board.ref)
    count = sum(d.kind in ("rcd", "rcbo") for d in devices)
    return Notice(
        code="rcd",
        title="Test the RCD every six months",
        lines=(
            "Warn the household, then press the button marked T or Test.",
            "It should switch off. Then switch it on again.",
            "If it stays on: call an electrician.",
            "Pressing it tries the RCD itself, not the wiring behind it.",
        ),
        blanks=(),
        where="At each RCD.",
        called_for=f"RCDs recorded on this board: {count}.",
        source=f"{EDITION}, 514.12.2: six-monthly (from memory). Our own words; the "
        "standard has a text of its own, and relaxes the notice in dwellings. The "
        f"maker’s instructions go first. {NOT_SEEN}",
    )


def _supplies(net: Network) -> Notice:
    sources = net.record.sources
    there = [SOURCE_KINDS[s.kind] for s in sources if s.present == "yes"]
    unknown = sorted({SOURCE_KINDS[s.kind] for s in sources if s.present == "unknown"})
    lines = [
        "Switching off one leaves the others live.",
        f"Recorded: {_listed(there) if there else 'none'}.",
    ]
    lines += [f"Not known whether there: {_listed(unknown)}."] if unknown else []
    return Notice(
        code="supplies",
        title="More than one supply",
        lines=(*lines, "Find and switch off each of them before any work."),
        blanks=(),
        where="At the origin, at the meter if it stands apart, at each board, and at "
        "each switch that isolates a supply.",
        called_for=f"Supplies recorded: {_listed(there) if there else 'none'}.",
        source=f"{EDITION}, 514.15.1. Our own words. {NOT_SEEN}",
    )


def _switches(net: Network, board: Board) -> Notice:
    record = net.record
    places = [
        f"{other.name}: {switch_name(device)}."
        for other in record.boards
        for device in main_switches(record.devices_of(other.ref))
        if not any(record.find(Device, ref) for ref in upstream(net, device.ref))
    ]
    return Notice(
        code="switches",
        title="More than one switch to isolate",
        lines=(
            "No single switch here isolates everything.",
            *places,
            "The wires into a switch stay live when it is off.",
        ),
        blanks=(),
        where=f"At {board.name}, and at each of the switches.",
        called_for=f"Switches at the head of a board recorded: {len(places)}.",
        source=f"{EDITION}, 514.11.1. Our own words. {NOT_SEEN}",
    )


def _working() -> Notice:
    return Notice(
        code="working",
        title="Do not switch on",
        lines=("Someone is working on this.",),
        blanks=("Who", "What is off", "Phone", "Day and time"),
        where="At what is switched off. A notice is no lock: lock it too.",
        called_for="Print a few, and keep them by the board.",
        source="HSE HSG85, 2013: a notice goes with the lock. Our own words.",
    )


def _earth() -> Notice:
    return Notice(
        code="earth",
        title="Safety Electrical Connection – Do Not Remove",
        lines=(),
        blanks=(),
        where="At the earth electrode, at bonding clamps, and at a main earthing "
        "terminal apart from the board. An electrician fits it.",
        called_for="Look whether each of these carries one.",
        source=f"{EDITION}, 514.13.1, which fixes the words (from memory). {NOT_SEEN}",
    )


def _listed(words: list[str]) -> str:
    return ", ".join(word.lower() if word[1:2].islower() else word for word in words)
