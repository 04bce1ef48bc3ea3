"""The house by circuit, whole: its storeys as bands, and its key."""

from __future__ import annotations

from app.domain.record import Circuit, Record, Room, Source
from app.drawing.house import Block, House, house_of, in_parts
from app.drawing.house_key import key_scenes
from app.drawing.room import Lit, room_scene
from app.drawing.scene import Linker, Scene
from app.drawing.sheet import Band, one_sheet

SAID = (
    "By the record. Each circuit has a line of its own, with its tag at the head. "
    "Broken lines: not known."
)


def house_bands(
    record: Record, link: Linker, lit_ref: str = ""
) -> tuple[tuple[Band, ...], tuple[Scene, ...]]:
    """Return the storeys of a house with a drawing for each room, and the key.

    Args:
        record: The home.
        link: Address for a room, circuit, source or point, or None.
        lit_ref: The circuit, source or room to bring forward; empty for none.
    """
    house, lit = house_of(record), Lit(lit_ref)
    return _bands(house, link, lit), key_scenes(house, link, lit)


def house_scene(record: Record, link: Linker, lit_ref: str = "") -> Scene:
    """Return the whole house on one sheet; arguments as for `house_bands`."""
    bands, key = house_bands(record, link, lit_ref)
    last = Band(code="key", title="Every circuit", blocks=key)
    return one_sheet(
        [*bands, last] if key else bands,
        ident="house",
        title=f"House by circuit: {record.home.name}",
        said=" ".join([SAID, *forward_said(record, lit_ref)]),
    )


def forward_said(record: Record, lit_ref: str) -> tuple[str, ...]:
    """Say what is brought forward, if anything is."""
    item = record.by_ref.get(lit_ref)
    if not isinstance(item, Circuit | Room | Source):
        return ()
    return (f"Brought forward: {item.title}.",)


def _bands(house: House, link: Linker, lit: Lit) -> tuple[Band, ...]:
    return tuple(
        Band(
            code=storey.code,
            title=storey.title,
            blocks=tuple(
                room_scene(part, link, lit, ident=_ident(part))
                for block in storey.blocks
                for part in in_parts(block)
            ),
        )
        for storey in house.storeys
    )


def _ident(block: Block) -> str:
    return f"room-{block.code}" + (f"-part-{block.part}" if block.part > 1 else "")
