"""Additional protection by an RCD.

Source: BS 7671:2018+A2:2022, regulation 415.1.1: a rated residual operating current
(IΔn) not exceeding 30 mA. The limit itself is within; the next usual rating is not.
"""

from __future__ import annotations

from decimal import Decimal

import pytest

from app.domain.ask import without_30_ma
from app.domain.network import network
from app.domain.protection import PEOPLE_MA
from tests.builders import circuit, home, one_way, socket


def test_limit() -> None:
    assert Decimal(30) == PEOPLE_MA


@pytest.mark.parametrize(
    ("residual_current_ma", "without"),
    [("10", ()), ("30", ()), ("30.1", ("P1",)), ("100", ("P1",)), ("300", ("P1",))],
)
def test_points_by_rating(residual_current_ma: str, without: tuple[str, ...]) -> None:
    record = home(
        one_way(circuit("C1", socket("P1")), residual_current_ma=residual_current_ma)
    )
    assert without_30_ma(network(record)) == without
