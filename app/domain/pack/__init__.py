"""The pack that is handed over: one document, in the order of its reader."""

from __future__ import annotations

from collections.abc import Collection
from datetime import date

from app.domain.network import network
from app.domain.pack.blocks import Block, Pack, Picture, Section
from app.domain.pack.private import PARTS, holding, kept_back
from app.domain.pack.sections import (
    boards,
    first,
    intake,
    isolation,
    kept,
    known,
    load,
    points,
    remarks,
)
from app.domain.record import Record
from app.domain.remarks import Remark

__all__ = [
    "PARTS",
    "Block",
    "Pack",
    "Picture",
    "Section",
    "holding",
    "kept_back",
    "pack",
]

LEDE = (
    "The record of a home's electrical installation, kept by whoever looks after it.",
    "Unknowns come first. References in brackets are those on the labels.",
)


def pack(
    record: Record,
    remarked: tuple[Remark, ...],
    day: date,
    *,
    without: Collection[str] = (),
    changes: tuple[str, ...] = (),
    there: Collection[str] = (),
) -> Pack:
    """Return the pack of a home.

    Args:
        record: The home, already without what is kept back.
        remarked: The remarks on it.
        day: The day that the pack carries.
        without: Codes of what there was and was kept back, to be said.
        changes: Sentences of the log of changes, newest first.
        there: Digests of the photographs that go along.
    """
    net = network(record)
    sections = (
        first.section(net, remarked),
        intake.section(net),
        boards.section(net),
        boards.schedule(net),
        points.section(net),
        points.house(net),
        isolation.section(net),
        load.section(net),
        remarks.section(record, remarked),
        kept.section(record, changes),
        kept.pictures(record, there),
        known.section(net),
        known.limits(),
    )
    return Pack(
        title=f"{record.home.name}: the electrical installation",
        day=day,
        lede=(*LEDE, *_home(record)),
        kept_back=tuple(PARTS[code] for code in PARTS if code in without),
        sections=tuple(section for section in sections if section.blocks),
    )


def _home(record: Record) -> tuple[str, ...]:
    return (record.home.notes,) if record.home.notes else ()
