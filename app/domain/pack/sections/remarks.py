"""What an experienced eye would remark on, and what cannot be told."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.pack.blocks import Block, Head, Lines, Section, Table, Text
from app.domain.record import Record
from app.domain.remarks import RANKS, Remark


def section(record: Record, remarks: tuple[Remark, ...]) -> Section:
    """Return the section: remarks by rank, those set aside with the reason."""
    return Section(
        code="remarks", title="Remarks", blocks=tuple(_blocks(record, remarks))
    )


def _blocks(record: Record, remarks: tuple[Remark, ...]) -> Iterator[Block]:
    yield Text(
        text="Remarks on what is written down, by its keepers. Nobody inspected "
        "anything for them, and none is a verdict on the installation."
    )
    told = [r for r in remarks if r.outcome == "remark" and r.aside != "set"]
    for rank, word in RANKS.items():
        own = [remark for remark in told if remark.rank == rank]
        if own:
            yield Head(text=word)
            yield Table(
                caption=f"{word}: {len(own)}",
                heads=("Remark", "What was found", "What to do", "Source"),
                widths=(3, 5, 4, 3),
                rows=tuple((r.title, r.sentence, r.to_do, r.source) for r in own),
            )
    yield Head(text="Cannot be told from this record")
    open_ones = (r.sentence for r in remarks if r.outcome == "cannot_tell")
    yield Lines(lines=tuple(dict.fromkeys(open_ones)), otherwise="Nothing.")
    yield Head(text="Set aside by the people who keep it")
    yield Lines(lines=tuple(_aside(record, remarks)), otherwise="None.")


def _aside(record: Record, remarks: tuple[Remark, ...]) -> Iterator[str]:
    reasons = {aside.ref: aside.reason for aside in record.asides}
    for remark in remarks:
        if remark.aside == "set":
            reason = reasons.get(remark.aside_ref or "", "")
            yield f"{remark.title}. {remark.sentence} Set aside: {reason}"
