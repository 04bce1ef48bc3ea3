"""Two things timed in turn, so that what else the machine does meets both alike."""

from __future__ import annotations

import math
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from statistics import median

Act = Callable[[], object]


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A line of the table.

    Attributes:
        name: What was measured.
        value: The ratio or the exponent; NaN where there is only something to say.
        most: What it may be at most; None: nothing is asked for.
        said: What was measured on each side, in words.
    """

    name: str
    value: float
    most: float | None
    said: str

    @property
    def misses(self) -> bool:
        """Whether it is more than it may be."""
        return self.most is not None and self.value > self.most


def ratio(name: str, ours: Act, floor: Act, most: float | None, times: int) -> Row:
    """Time two things in turn; return how often the floor fits into ours."""
    ours(), floor()
    pairs = [(seconds(ours), seconds(floor)) for _ in range(times)]
    mine, least = (median(side) for side in zip(*pairs, strict=True))
    said = f"{mine * 1e3:.2f} ms against {least * 1e3:.2f} ms"
    return Row(name=name, value=mine / least, most=most, said=said)


def exponent(name: str, sizes: Sequence[int], taken: Sequence[float]) -> Row:
    """Return by which power of the size the time grows, by least squares of logs."""
    xs, ys = [math.log(size) for size in sizes], [math.log(t) for t in taken]
    mean_x, mean_y = sum(xs) / len(xs), sum(ys) / len(ys)
    over = sum((x - mean_x) * (y - mean_y) for x, y in zip(xs, ys, strict=True))
    slope = over / sum((x - mean_x) ** 2 for x in xs)
    said = ", ".join(
        f"{size}: {t * 1e3:.1f} ms" for size, t in zip(sizes, taken, strict=True)
    )
    return Row(name=name, value=slope, most=MOST_EXPONENT, said=said)


MOST_EXPONENT = 1.1


def seconds(act: Act) -> float:
    """Return how long something takes."""
    begun = time.perf_counter()
    act()
    return time.perf_counter() - begun


def best_of(act: Act, times: int) -> float:
    """Return the shortest of some tries, after one that counts for nothing."""
    act()
    return min(seconds(act) for _ in range(times))


def table(title: str, rows: Sequence[Row]) -> str:
    """Return the lines of a table, those that miss being marked."""
    lines = [f"\n{title}"]
    for row in rows:
        value = "" if math.isnan(row.value) else f"{row.value:.2f}"
        most = "" if row.most is None else f"≤ {row.most:g}"
        mark = "MISSES" if row.misses else ""
        lines.append(f"  {row.name:<34}{value:>7} {most:>6} {mark:<7} {row.said}")
    return "\n".join(lines)
