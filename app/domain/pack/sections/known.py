"""How well what is known is known, and the limits of it all."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from app.domain.network import Network
from app.domain.pack.blocks import Block, Lines, Section, Table, Text
from app.domain.record import Circuit
from app.domain.record.choices import GRADES

LIMITS = tuple(
    " ".join(words)
    for words in (
        (
            "This is the record of people who look after their own home. It is no",
            "certificate and no inspection report, and its keepers need not be",
            "electricians.",
        ),
        (
            "What is written here may be wrong or out of date. Nothing may be taken as",
            "parted from the supply because this record says so: prove it at the point",
            "of work, by the rules that bind you.",
        ),
        (
            "Figures marked as calculated rest on what is recorded. Tables are of",
            "BS 7671:2018+A2:2022 unless stated; many of them are from memory.",
            "Amendment 4 (2026) is in force and its tables were not available.",
        ),
        (
            "What is the network's, the meter operator's or the landlord's is",
            "theirs to open.",
        ),
    )
)


def section(net: Network) -> Section:
    """Return the section: by circuit, how the ties of its points are known."""
    blocks: Iterator[Block] = iter(
        (
            Text(
                text="A tie says that a circuit feeds a point. How many are known, and "
                "how; those with work since are counted again in the last column."
            ),
            Table(
                caption="Ties by circuit and by how they are known",
                heads=("Circuit", *GRADES.values(), "Work since"),
                widths=(4, 2, 2, 2, 2, 2, 2, 2),
                rows=tuple(_row(net, circuit) for circuit in net.record.circuits),
            ),
        )
    )
    return Section(code="known", title="How it is known", blocks=tuple(blocks))


def limits() -> Section:
    """Return what this is not."""
    return Section(
        code="limits", title="Limits and cautions", blocks=(Lines(lines=LIMITS),)
    )


def _row(net: Network, circuit: Circuit) -> tuple[str, ...]:
    ties = [
        t for t in net.record.ties if t.tied_to == circuit.ref and t.role == "feeds"
    ]
    grades = Counter(tie.grade for tie in ties)
    aged = sum(tie.ref in net.aged for tie in ties)
    counts = (grades[grade] for grade in GRADES)
    return (
        f"{circuit.title} ({circuit.ref})",
        *(str(count) if count else "–" for count in counts),
        str(aged) if aged else "–",
    )
