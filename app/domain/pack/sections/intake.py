"""The intake: whose each part is, and what the supply is."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.kinds import INTAKE_KINDS
from app.domain.network import Network
from app.domain.pack.blocks import (
    Block,
    Head,
    Lines,
    Picture,
    Pictures,
    Section,
    Table,
    Text,
)
from app.domain.pack.words import item_name, known, number
from app.domain.record import Home, IntakeItem, Record
from app.domain.record.choices import (
    BASES,
    CONDITIONS,
    EARTHINGS,
    OWNERS,
    PHASES,
    SUPPLY_BASES,
    YES_NO,
)


def section(net: Network) -> Section:
    """Return the section: the drawing, each item with its owner, the supply."""
    return Section(
        code="intake",
        title="Intake, and whose it is",
        blocks=tuple(_blocks(net.record)),
    )


def _blocks(record: Record) -> Iterator[Block]:
    yield Text(
        text="What is the network's or the meter operator's is opened by them alone.",
        caution=True,
    )
    yield Picture(
        name="street", wide=True, alt="The supply from the street to the boards."
    )
    yield Table(
        caption="Each item, from the street",
        heads=("Item", "Whose", "Fed from", "Printed or seen", "Condition"),
        widths=(3, 2, 3, 3, 2),
        rows=tuple(_row(record, item) for item in record.intake),
    )
    yield Lines(lines=tuple(_supply(record.home)))
    yield Head(text="One-line diagram")
    yield Pictures(
        name="one-line",
        said="From the street to the circuits. A broken line: not known.",
    )


def _row(record: Record, item: IntakeItem) -> tuple[str, ...]:
    kind = INTAKE_KINDS[item.kind].label
    facts = (
        kind if kind != item.title else "",
        number(item.rated_current_a, "A"),
        number(item.csa_mm2, "mm²"),
        item.printed,
        BASES[item.basis].lower() if item.basis != "unknown" else "",
    )
    return (
        f"{item.title} ({item.ref})",
        OWNERS[item.owner],
        item_name(record, item.fed_from) if item.fed_from else "not recorded",
        known(", ".join(fact for fact in facts if fact)),
        CONDITIONS[item.condition],
    )


def _supply(home: Home) -> Iterator[str]:
    basis = SUPPLY_BASES[home.ze_basis].lower()
    current_basis = SUPPLY_BASES[home.fault_current_basis].lower()
    yield f"Earthing: {EARTHINGS[home.earthing]}."
    yield f"Phases: {PHASES[home.phases]}."
    yield f"Looped with next door: {YES_NO[home.looped]}."
    yield f"Ze: {known(number(home.ze_ohm, 'Ω'))}; how known: {basis}."
    current = known(number(home.fault_current_ka, "kA"))
    yield f"Prospective fault current: {current}; how known: {current_basis}."
    if home.mpan:
        yield f"Meter point number (MPAN): {home.mpan}."
