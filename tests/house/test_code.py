"""What every part of the program keeps to."""

from __future__ import annotations

import ast
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
MODULES = sorted((ROOT / "app").rglob("*.py"))
NAMES = [path.relative_to(ROOT).as_posix() for path in MODULES]
TREES = {
    name: ast.parse(path.read_text("utf-8"))
    for name, path in zip(NAMES, MODULES, strict=True)
}
Defined = ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef

MOST_LINES, MOST_LINES_OF_A_FUNCTION = 400, 40
# Words, not code: one entry a term, in the order of the alphabet.
LONG_MODULES = {"app/domain/glossary.py"}
COMMIT_IN = {"app/store/engine.py"}
# Who may say that text is safe markup, for they made and escaped it themselves.
MARKUP_IN: set[str] = set()
# The pack's page holds our own drawings, and its style and script under a hash.
SAFE_IN = {"components/svg.html", "pack/pack.html"}
TOP_LEVEL = {
    "DEVELOPERS.md",
    "README.md",
    "app",
    "migrations",
    "pyproject.toml",
    "seed_demo",
    "static",
    "templates",
    "tests",
}


def text_of(name: str) -> str:
    return (ROOT / name).read_text("utf-8")


def public(tree: ast.AST) -> Iterator[Defined]:
    for node in ast.iter_child_nodes(tree):
        if isinstance(node, Defined) and not node.name.startswith("_"):
            yield node
            if isinstance(node, ast.ClassDef):
                yield from public(node)


@pytest.mark.parametrize("name", NAMES)
def test_everything_public_has_a_docstring(name: str) -> None:
    assert ast.get_docstring(TREES[name])
    assert [
        node.name for node in public(TREES[name]) if not ast.get_docstring(node)
    ] == []


@pytest.mark.parametrize("name", NAMES)
def test_no_function_is_long(name: str) -> None:
    found = [
        f"{node.name}: {lines(node)} lines"
        for node in ast.walk(TREES[name])
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
        and lines(node) > MOST_LINES_OF_A_FUNCTION
    ]
    assert found == []


def lines(node: ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    """Count a function's lines, without its docstring."""
    first = node.body[0]
    said = first if ast.get_docstring(node) else None
    docstring = (said.end_lineno or 0) - said.lineno + 1 if said else 0
    return (node.end_lineno or 0) - node.lineno + 1 - docstring


def test_no_module_is_long() -> None:
    long = {name for name in NAMES if len(text_of(name).splitlines()) > MOST_LINES}
    assert long <= LONG_MODULES


def test_nobody_commits_but_the_engine() -> None:
    assert {name for name in NAMES if ".commit(" in text_of(name)} <= COMMIT_IN


def test_markup_is_made_where_it_is_known_to_be() -> None:
    assert {name for name in NAMES if "Markup(" in text_of(name)} <= MARKUP_IN


def test_text_is_called_safe_where_it_is_known_to_be() -> None:
    folder = ROOT / "templates"
    pages = {p.relative_to(folder).as_posix(): p for p in folder.rglob("*.html")}
    assert pages
    marked = re.compile(r"\|\s*safe\b|\bautoescape\s+false\b")
    found = {name for name, p in pages.items() if marked.search(p.read_text("utf-8"))}
    assert found <= SAFE_IN


def test_the_layers_hold() -> None:
    command = "from importlinter.cli import lint_imports_command as c; c()"
    result = subprocess.run(
        [sys.executable, "-c", command, "--no-cache"],
        capture_output=True,
        text=True,
        check=False,
        cwd=ROOT,
    )
    assert result.returncode == 0, result.stdout
    assert " 0 broken" in result.stdout


def test_the_top_folder_holds_only_what_belongs_there() -> None:
    files = subprocess.run(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard"],
        capture_output=True,
        text=True,
        check=False,
        cwd=ROOT,
    )
    if files.returncode:
        pytest.skip("this is no checkout")
    top = {line.partition("/")[0] for line in files.stdout.splitlines()}
    assert {name for name in top if not name.startswith(".")} <= TOP_LEVEL


def test_ci_runs_the_command_of_the_readme() -> None:
    (command,) = re.findall(r"^    (.*-m tests)$", text_of("README.md"), re.MULTILINE)
    assert text_of(".ci/run").splitlines()[-1] == command
