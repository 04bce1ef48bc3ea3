"""What the program never says, wherever it speaks."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
NEVER = {
    "a thing is dead": r"\b(?:is|are|now) (?:now )?dead\b",
    "work is safe": r"\bsafe to (?:work|touch|use|open)\b|\b(?:is|are) safe\b",
    "it complies": r"\b(?:compliant|complies|in compliance)\b",
    "it passed": r"\b(?:has|have|is|are) passed\b|\bpasses (?:the|its) test\b",
    "it is certified": r"\bcertified\b",
    "it is satisfactory": r"\b(?:un)?satisfactory\b",
    "inspection is late": r"\b(?:overdue|illegal)\b",
    "an inspection code": r"\bcode C[123]\b|\bFI code\b",
    "how to break a seal": r"\b(?:break|cut|remove) the seal\b",
}


def said_by_templates() -> Iterator[tuple[str, str]]:
    folder = ROOT / "templates"
    for path in sorted([*folder.rglob("*.html"), *folder.rglob("*.typ")]):
        text = re.sub(r"\{#.*?#\}", " ", path.read_text("utf-8"), flags=re.DOTALL)
        yield path.relative_to(ROOT).as_posix(), " ".join(text.split())


def said_by_code() -> Iterator[tuple[str, str]]:
    """Yield the texts of each module, without its docstrings."""
    for path in sorted((ROOT / "app").rglob("*.py")):
        tree = ast.parse(path.read_text("utf-8"))
        alone = {
            id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)
        }
        texts = [
            str(node.value)
            for node in ast.walk(tree)
            if isinstance(node, ast.Constant)
            and isinstance(node.value, str)
            and id(node) not in alone
        ]
        yield path.relative_to(ROOT).as_posix(), "\n".join(texts)


@pytest.fixture(scope="module")
def said() -> list[tuple[str, str]]:
    return [*said_by_templates(), *said_by_code()]


@pytest.mark.parametrize("pattern", NEVER.values(), ids=NEVER)
def test_nothing_says_it(said: list[tuple[str, str]], pattern: str) -> None:
    assert len(said) > 50
    found = [
        f"{name}: …{text[max(hit.start() - 30, 0) : hit.end() + 30]}…"
        for name, text in said
        for hit in re.finditer(pattern, text, re.IGNORECASE)
    ]
    assert found == []
