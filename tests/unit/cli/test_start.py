from __future__ import annotations

import subprocess
import sys
from pathlib import Path

HEAVY = {"alembic", "flask", "pydantic", "sqlalchemy", "waitress"}


def run(code: str, **environment: str) -> bytes:
    return subprocess.run(
        [sys.executable, "-c", code], check=True, capture_output=True, env=environment
    ).stdout


def test_help_is_quick_for_it_loads_nothing_heavy() -> None:
    loaded = run(
        "import sys; from click.testing import CliRunner; from app.cli import main;"
        "CliRunner().invoke(main, ['--help']); print(*sys.modules)"
    )
    assert HEAVY & set(loaded.decode().split()) == set()


def test_a_console_of_few_characters_gets_query_marks(tmp_path: Path) -> None:
    code = "from app.cli import main; main([{!r}, '--data', {!r}])"
    run(code.format("demo", str(tmp_path)))
    faults = code.format("faults", str(tmp_path))
    plain, whole = (
        run(faults, PYTHONIOENCODING=encoding).decode(encoding)
        for encoding in ("latin-1", "utf-8")
    )
    assert "“" in whole
    assert plain == whole.encode("latin-1", "replace").decode("latin-1")
