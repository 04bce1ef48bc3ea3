"""Chains on a page: the drawing, and the sentence that introduces it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from app.domain.chain import Chain
from app.domain.record import Record
from app.domain.record.choices import OWNERS, WHEN
from app.drawing.chain import draw_chain
from app.web.addresses import links


@dataclass(frozen=True, slots=True, kw_only=True)
class ChainView:
    """A chain as a page shows it.

    Attributes:
        heading: Where it begins, and when it is live.
        drawing: The chain, as SVG.
    """

    heading: str
    drawing: str


def chain_views(
    record: Record, chains: Iterable[Chain], prefix: str = "chain"
) -> tuple[ChainView, ...]:
    """Return chains with their drawings."""
    link = links(record)
    return tuple(
        ChainView(
            heading=_heading(chain),
            drawing=draw_chain(chain, link, OWNERS, id_prefix=f"{prefix}{number}"),
        )
        for number, chain in enumerate(chains, 1)
    )


def _heading(chain: Chain) -> str:
    if not chain.begins_at_source:
        begins = "Where it comes from is not recorded"
    else:
        begins = f"From {chain.steps[0].title}"
    times = [WHEN[when].lower() for when in chain.when]
    return f"{begins} ({', '.join(times)})" if times else begins
