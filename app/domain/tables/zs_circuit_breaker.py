"""Largest Zs for circuit-breakers and RCBOs."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="zs-circuit-breaker",
    title="Largest Zs for circuit-breakers and RCBOs",
    unit="Ω",
    conditions=(
        "230 V to earth, Cmin 0.95, conductors at running temperature. Zs = 230 ×"
        " 0.95 ÷ (k × In), k = 5 for type B, 10 for C, 20 for D at 0.4 s."
    ),
    standard="BS 7671:2018+A2:2022, Table 41.3",
    columns=(
        "In, A",
        "B",
        "B as printed",
        "C",
        "C as printed",
        "D at 0.4 s",
        "D as printed",
        "D at 5 s",
    ),
    rows=(
        ("3", "14.5667", "14.57", "7.2833", None, "3.6417", None, "7.2833"),
        ("6", "7.2833", "7.28", "3.6417", "3.64", "1.8208", "1.82", "3.6417"),
        ("10", "4.37", "4.37", "2.185", "2.19", "1.0925", "1.09", "2.185"),
        ("13", "3.3615", None, "1.6808", None, "0.8404", None, "1.6808"),
        ("16", "2.7313", "2.73", "1.3656", "1.37", "0.6828", "0.68", "1.3656"),
        ("20", "2.185", "2.19", "1.0925", "1.09", "0.5463", "0.55", "1.0925"),
        ("25", "1.748", "1.75", "0.874", "0.87", "0.437", "0.44", "0.874"),
        ("32", "1.3656", "1.37", "0.6828", "0.68", "0.3414", "0.34", "0.6828"),
        ("40", "1.0925", "1.09", "0.5463", "0.55", "0.2731", "0.27", "0.5463"),
        ("45", "0.9711", None, "0.4856", None, "0.2428", None, "0.4856"),
        ("50", "0.874", "0.87", "0.437", "0.44", "0.2185", "0.22", "0.437"),
        ("63", "0.6937", "0.69", "0.3468", "0.35", "0.1734", "0.17", "0.3468"),
        ("80", "0.5463", "0.55", "0.2731", "0.27", "0.1366", "0.14", "0.2731"),
        ("100", "0.437", "0.44", "0.2185", "0.22", "0.1092", "0.11", "0.2185"),
        ("125", "0.3496", "0.35", "0.1748", "0.17", "0.0874", "0.09", "0.1748"),
    ),
    basis=(
        "from memory, agrees",
        "confirmed for type B; from memory, agrees, for C and D",
        "confirmed for type B; from memory, agrees, for C and D",
        "derived",
        "confirmed for type B; from memory, agrees, for C and D",
        "confirmed for type B; from memory, agrees, for C and D",
        "confirmed for type B; from memory, agrees, for C and D",
        "confirmed for type B; from memory, agrees, for C and D",
        "confirmed for type B; from memory, agrees, for C and D",
        "derived",
        "confirmed for type B; from memory, agrees, for C and D",
        "from memory, agrees",
        "from memory, agrees",
        "from memory, agrees",
        "from memory, agrees",
    ),
    notes=(
        "Types B and C: the same at 0.4 s and 5 s.",
        "Older types (BS 3871): 1, 2, 3 and 4 take k = 4, 7, 10 and 50; from memory.",
        (
            "Before July 2015 the tables left out Cmin: 1.44 Ω for a 32 A type B "
            "is such a value."
        ),
    ),
)
