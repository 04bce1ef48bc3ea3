"""Each reference table against its source, with figures typed here once more.

Sources: BS 7671:2018+A2:2022 by table, BS EN 60228, BS EN 60898-1, the IET On-Site
Guide, SI 2002/2665 and ENA ER P23/1, as each line names. How each figure is known
(several sources, one, worked out, from memory) stands with it in the table and is
checked here too.
"""

from __future__ import annotations

from decimal import Decimal
from typing import NamedTuple

import pytest

from app.domain.tables import BASES, TABLES, OutsideTableError


class Printed(NamedTuple):
    """A figure as it is printed, and how well it is known."""

    slug: str
    key: str
    column: str
    figure: str
    basis: str


FIGURES = (
    # BS 7671 Table 41.3; 1.37 Ω for B32 in a training text and in a trade forum.
    Printed("breaker-zs", "6", "B", "7.28", "C"),
    Printed("breaker-zs", "32", "B", "1.37", "C"),
    Printed("breaker-zs", "40", "C", "0.55", "MD"),
    Printed("breaker-zs", "63", "D, 0.4 s", "0.17", "MD"),
    Printed("breaker-zs", "45", "B", "0.97", "D"),
    # BS EN 60898-1, bands of B, C, D; BS 3871 types from memory.
    Printed("breaker-multiples", "C", "Multiple", "10", "C"),
    Printed("breaker-multiples", "2", "Multiple", "7", "M"),
    # BS 7671 Tables 41.2 and 41.4, BS 3036.
    Printed("rewirable-zs", "5", "0.4 s", "9.1", "S"),
    Printed("rewirable-zs", "30", "0.4 s", "1.04", "S"),
    Printed("rewirable-zs", "30", "5 s", "2.51", "MD"),
    # BS 7671 Appendix 3, Figure 3A2; 90 A for 15 A in a textbook (T. Linsley).
    Printed("rewirable-current", "15", "0.4 s", "90", "S"),
    # BS 7671 Tables 41.2 and 41.4, BS 88-3; 0.91 Ω in a trade magazine of 2015.
    Printed("bs88-3-zs", "32", "0.4 s", "0.91", "C"),
    Printed("bs88-3-zs", "45", "0.4 s", "0.57", "M"),
    # BS 7671:2008 Tables 41.2 and 41.4, times 0.95.
    Printed("bs1361-zs", "30", "0.4 s", "1.09", "MD"),
    Printed("bs1361-zs", "30", "2008, 0.4 s", "1.15", "MD"),
    # BS 7671 Tables 41.2 and 41.4, BS 1362; from memory.
    Printed("bs1362-zs", "13", "0.4 s", "2.3", "MD"),
    # BS 7671 Table 41.5.
    Printed("rcd-zs", "30", "Limit", "1667", "C"),
    Printed("rcd-zs", "300", "Limit", "167", "D"),
    # BS 7671 Appendix 3, the 0.8 of a cold measurement.
    Printed("measured-factor", "cold", "Factor", "0.8", "C"),
    # BS EN 60228 Tables 1 and 2; a trade guide's Appendix 4 (D. Locke).
    Printed("conductor", "1", "Resistance", "18.1", "C"),
    Printed("conductor", "2.5", "Resistance", "7.41", "C"),
    Printed("conductor", "6", "Resistance", "3.08", "S"),
    # IET On-Site Guide, Table I1.
    Printed("r1r2", "2.5/1.5", "R1+R2", "19.51", "C"),
    Printed("r1r2", "2.5/1", "R1+R2", "25.51", "D"),
    # IET On-Site Guide, Tables I2 and I3.
    Printed("warmth", "in cable, 70 °C", "Factor", "1.2", "C"),
    Printed("warmth", "separate, 70 °C", "Factor", "1.04", "M"),
    # BS 7671 Table 4D5; from memory but for what a few posts and texts quote.
    Printed("flat-twin-and-earth", "2.5", "100", "21", "M"),
    Printed("flat-twin-and-earth", "10", "103", "32", "S"),
    Printed("flat-twin-and-earth", "6", "C", "47", "M"),
    Printed("flat-twin-and-earth", "1.5", "C", "20", "S"),
    # BS 7671 Tables 4D1A and 4D1B.
    Printed("singles", "2.5", "B", "24", "S"),
    Printed("singles", "6", "B", "41", "M"),
    # BS 7671 Tables 4D2A and 4D2B; a shower maker's handbook for 6 to 16 mm².
    Printed("multicore", "10", "A", "43", "C"),
    Printed("multicore", "6", "B", "38", "S"),
    # BS 7671 Tables 4D4A, 4E4A and 4D1A, from memory.
    Printed("armoured-70", "4", "D", "37", "M"),
    Printed("armoured-90", "4", "C", "49", "M"),
    Printed("tails", "25", "C", "114", "M"),
    # BS 5467 and BS 6346, in a trade guide's Table 4.4.
    Printed("armour", "4", "Three cores", "7.5", "S"),
    # BS 7671 Tables 4B1, 4C1 and 52.2.
    Printed("ambient", "35", "70 °C cable", "0.94", "C"),
    Printed("ambient", "25", "70 °C cable", "1.03", "S"),
    Printed("grouping", "8", "In a bunch", "0.52", "S"),
    Printed("grouping", "2", "In a bunch", "0.8", "M"),
    Printed("insulation", "100", "Factor", "0.78", "S"),
    Printed("insulation", "500", "Factor", "0.5", "C"),
    # BS 7671 433.1.202 and 433.1.204.
    Printed("fuse-factor", "rewirable", "Factor", "0.725", "C"),
    Printed("ring-rule", "smallest capacity of the cable (A)", "Figure", "20", "S"),
    # BS 7671 525.202 and Table 41.1.
    Printed("voltage-limits", "lighting", "Drop (V)", "6.9", "C"),
    Printed("voltage-limits", "other uses", "Share", "5", "C"),
    Printed("times", "final", "TN", "0.4", "C"),
    Printed("times", "other", "TT", "1", "C"),
    # BS 7671 Tables 43.1 and 54.2 to 54.6; a pocket guide of 2018.
    Printed("adiabatic-k", "copper, 70 °C PVC, in cable", "k", "115", "C"),
    Printed("adiabatic-k", "steel conduit, 90 °C XLPE", "k", "58", "S"),
    # BS 7671 Tables 54.1, 54.7, 54.8.
    Printed("bonding", "earthing conductor with 25 mm² tails", "Size", "16", "C"),
    Printed("bonding", "main bonding, TN-C-S, neutral up to 35", "Size", "10", "S"),
    # IET On-Site Guide, Table H2.1.
    Printed("standard-circuits", "ring", "Smallest size (mm²)", "2.5", "S"),
    # Breaking capacities, by the standards of the devices.
    Printed("short-circuit", "rewirable fuse, S2", "Breaks", "2", "C"),
    Printed("short-circuit", "plug fuse, BS 1362", "Breaks", "6", "M"),
    # SI 2002/2665, regulations 27 and 28; ENA ER P23/1.
    Printed("supply", "declared voltage (V)", "Figure", "230", "C"),
    Printed("supply", "Ze, TN-C-S (Ω)", "Figure", "0.35", "C"),
    Printed("supply", "Ze, TN-S (Ω)", "Figure", "0.8", "C"),
)
# Tables of words, by the source that says so: row, column, words.
WORDS = {
    "protective-conductor": ("over 16 to 35 mm²", "16 mm²", "Table 54.7"),
    "point-demand": ("2 A socket-outlet", "at least 0.5 A", "Table A1"),
    "diversity": ("lighting", "66 % of all of it", "Table A2"),
    "rcd-times": ("61008/61009 general", "300", "Table 3A"),
    "rcd-types": ("A", "that, and pulsating direct current", "531.3.3"),
    "bath-zones": (
        "zone 2",
        "0.6 m beyond zone 1, as high; none without a tray",
        "701",
    ),
    "dates": ("board enclosure that does not burn", "1 January 2016", "several"),
    "colours": ("neutral", "black", "Table 51"),
    "test-button": ("18th edition, from 2018", "6", "514.12.2"),
    "rcd-rating": ("used here", "nearest fuse or breaker", "536.4.3.2"),
}


@pytest.mark.parametrize(
    "printed", FIGURES, ids=lambda p: f"{p.slug}-{p.key}-{p.column}"
)
def test_figure_is_as_its_source_prints_it(printed: Printed) -> None:
    value = TABLES[printed.slug].at(printed.key, printed.column)
    assert (value.value, value.basis) == (Decimal(printed.figure), printed.basis)


@pytest.mark.parametrize("slug", sorted(WORDS))
def test_words_are_those_of_the_source(slug: str) -> None:
    row_name, words, number = WORDS[slug]
    table = TABLES[slug]
    row = next(row for row in table.rows if row.cells[0] == row_name)
    assert any(words in str(cell) for cell in row.cells[1:])
    assert number in table.source


def test_every_table_has_a_figure_or_words_here() -> None:
    assert {p.slug for p in FIGURES} | set(WORDS) == set(TABLES)


@pytest.mark.parametrize("slug", sorted(TABLES))
def test_a_table_says_what_it_holds_for_and_how_well(slug: str) -> None:
    table = TABLES[slug]
    assert table.title
    assert table.conditions
    assert table.source
    for row in table.rows:
        assert len(row.cells) == len(row.bases) == len(table.columns)
        assert set(row.bases) <= set(BASES)
    assert len({row.cells[0] for row in table.rows}) == len(table.rows)


@pytest.mark.parametrize(
    ("slug", "key", "column"),
    [
        ("breaker-zs", Decimal(33), "B"),
        ("breaker-zs", Decimal(200), "B"),
        ("conductor", Decimal("2.9"), "Resistance"),
        ("rewirable-zs", Decimal(60), "0.4 s"),
        ("rewirable-zs", Decimal(100), "0.4 s"),
        ("flat-twin-and-earth", Decimal(25), "C"),
        ("grouping", Decimal(12), "In one layer"),
        ("bs88-3-zs", Decimal(30), "0.4 s"),
    ],
)
def test_a_table_refuses_to_leave_its_range(
    slug: str, key: Decimal, column: str
) -> None:
    with pytest.raises(OutsideTableError, match=r"has no row|gives no figure"):
        TABLES[slug].at(key, column)


@pytest.mark.parametrize(
    ("slug", "beyond"), [("ambient", 61), ("grouping", 21), ("insulation", 501)]
)
def test_a_factor_refuses_to_go_past_its_last_row(slug: str, beyond: int) -> None:
    with pytest.raises(OutsideTableError, match="ends at"):
        TABLES[slug].next_at(Decimal(beyond))


def test_between_two_rows_the_cautious_one_is_taken() -> None:
    row, value = TABLES["ambient"].next_at(Decimal(36), "70 °C cable")
    assert (row, value.value) == (Decimal(40), Decimal("0.87"))
    row, value = TABLES["grouping"].next_at(Decimal(10), "In a bunch")
    assert (row, value.value) == (Decimal(12), Decimal("0.45"))


def test_nothing_from_memory_hides_it() -> None:
    for table in TABLES.values():
        memory = any("M" in b for row in table.rows for b in row.bases)
        assert table.from_memory is memory
