"""Test results, copied from a paper: what an electrician measured, and when."""

from __future__ import annotations

from datetime import date
from typing import Annotated, ClassVar

from app.domain.record import choices
from app.domain.record._field import (
    LongText,
    Number,
    OneOf,
    Ref,
    RefTo,
    ShortText,
    field,
)
from app.domain.record.items import Item

RING = "Ring, end to end"
INSULATION = "Insulation"
RCD = "RCD"
SUPPLY = "At the board or the intake"


class Result(Item):
    """One row of results: of a circuit, a board, a device, or the supply.

    Nothing here is worked out; a later test is another result, never a new value of
    this one.  Columns as in the schedule of test results of BS 7671, appendix 6 (from
    memory).
    """

    sort: ClassVar[str] = "result"
    plural: ClassVar[str] = "results"
    noun: ClassVar[str] = "Test result"
    prefix: ClassVar[str] = "V"
    cannot_lose: ClassVar[tuple[str, ...]] = ("about",)

    about: Annotated[Ref, RefTo(("circuit", "board", "device", "intake"))] | None = (
        field("What was tested", hint="Left open: the supply of the home.", blank=True)
    )
    paper: Annotated[Ref, RefTo(("paper",))] | None = field("From which paper")
    tested_on: date | None = field("Tested on", come=True)
    tested_by: ShortText = field("By whom", "", hint="Private.", private="names")
    r1_ohm: Number | None = field("r1, line", unit="Ω", low=0, high=100000, group=RING)
    rn_ohm: Number | None = field(
        "rn, neutral", unit="Ω", low=0, high=100000, group=RING
    )
    r2_ohm: Number | None = field("r2, earth", unit="Ω", low=0, high=100000, group=RING)
    r1_r2_ohm: Number | None = field("R1+R2", unit="Ω", low=0, high=100000)
    r2_alone_ohm: Number | None = field("R2", unit="Ω", low=0, high=100000)
    live_live_mohm: Number | None = field(
        "Between live conductors", unit="MΩ", low=0, high=100000, group=INSULATION
    )
    live_live_over: Annotated[str, OneOf(choices.MEASURED)] = field(
        "How that reads", "exact", group=INSULATION
    )
    live_earth_mohm: Number | None = field(
        "Live to earth", unit="MΩ", low=0, high=100000, group=INSULATION
    )
    live_earth_over: Annotated[str, OneOf(choices.MEASURED)] = field(
        "How that one reads", "exact", group=INSULATION
    )
    polarity: Annotated[str, OneOf(choices.POLARITY)] = field("Polarity", "unknown")
    zs_ohm: Number | None = field("Zs, highest measured", unit="Ω", low=0, high=100000)
    rcd_ms: Number | None = field(
        "Time at IΔn", unit="ms", low=0, high=10000, group=RCD
    )
    rcd_button: Annotated[str, OneOf(choices.WORKED)] = field(
        "Test button", "unknown", group=RCD
    )
    ze_ohm: Number | None = field(
        "Ze or Zdb", unit="Ω", low=0, high=100000, group=SUPPLY
    )
    fault_current_ka: Number | None = field(
        "Prospective fault current", unit="kA", low=0, high=200, group=SUPPLY
    )
    note: LongText = field("Note", "")
