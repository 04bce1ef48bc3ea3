from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from app.cli import main


@pytest.fixture
def ways(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[..., Result]:
    """Run the command on a data folder of the test's own; it ends with a code."""
    monkeypatch.setenv("WAYS_DATA", str(tmp_path / "data"))

    def run(*arguments: str | Path, code: int = 0) -> Result:
        result = CliRunner().invoke(main, [str(argument) for argument in arguments])
        assert result.exit_code == code, result.output
        return result

    return run
