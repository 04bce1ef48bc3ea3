"""How wide a line is in the print face, so that a label can be fitted before printing.

Advance widths of Inter 4.1 in thousandths of the letter size, regular and semibold, at
its text cut, which is the wider one: measured, rounded up. An accent adds a little.
"""

from __future__ import annotations

import unicodedata

# From the space to the tilde.
_REGULAR = (
    282, 288, 466, 634, 642, 982, 645, 300, 365, 365, 501, 662, 289, 460, 289, 361, 631,
    368, 610, 618, 646, 594, 621, 521, 619, 621, 289, 302, 662, 662, 662, 512, 966, 690,
    655, 731, 722, 602, 566, 747, 744, 269, 571, 672, 566, 904, 754, 765, 639, 765, 639,
    642, 504, 745, 589, 884, 626, 535, 629, 365, 310, 365, 472, 457, 323, 562, 623, 582,
    613, 593, 355, 614, 592, 243, 243, 549, 243, 876, 591, 610, 623, 613, 377, 528, 333,
    592, 543, 819, 546, 543, 553, 427, 333, 427, 662,
)  # fmt: skip
_SEMIBOLD = (
    252, 322, 509, 644, 651, 1005, 663, 312, 374, 374, 540, 673, 319, 466, 319, 379,
    660, 384, 624, 637, 667, 613, 640, 531, 641, 640, 319, 330, 673, 673, 673, 544,
    1000, 728, 660, 737, 723, 606, 569, 750, 746, 277, 580, 704, 566, 923, 760, 769,
    637, 773, 648, 651, 517, 736, 621, 915, 664, 534, 653, 374, 329, 374, 482, 470, 352,
    575, 634, 593, 625, 602, 371, 626, 613, 262, 262, 570, 262, 901, 612, 619, 634, 625,
    388, 550, 358, 613, 563, 838, 568, 564, 566, 455, 359, 455, 673,
)  # fmt: skip
_ACCENT, _WIDEST = 100, 1020
# Pairs of letters are set a little closer or wider than the sum of the two.
_PAIRS = 1.01


def width(text: str, size: float, *, bold: bool = False) -> float:
    """Return how wide a line is at most, in the unit of its size."""
    table = _SEMIBOLD if bold else _REGULAR
    return sum(_advance(letter, table) for letter in text) * size * _PAIRS / 1000


def _advance(letter: str, table: tuple[int, ...]) -> int:
    if letter == "\xa0":
        return table[0]
    place = ord(letter) - 32
    if 0 <= place < len(table):
        return table[place]
    place = ord(unicodedata.normalize("NFD", letter)[0]) - 32
    return table[place] + _ACCENT if 0 <= place < len(table) else _WIDEST
