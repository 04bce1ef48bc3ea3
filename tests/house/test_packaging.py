"""The wheel holds all that the program needs, and runs from anywhere."""

from __future__ import annotations

import json
import os
import site
import subprocess
import sys
import venv
import zipfile
from pathlib import Path

import pytest

from app import __version__

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("wheel")
    run(
        *(sys.executable, "-m", "pip", "wheel", "--quiet", "--no-deps"),
        *("--no-build-isolation", "--wheel-dir", str(folder), str(ROOT)),
    )
    (made,) = folder.glob("*.whl")
    return made


def run(*command: str, cwd: Path | None = None) -> str:
    environment = {k: v for k, v in os.environ.items() if k != "PYTHONPATH"}
    result = subprocess.run(
        command, capture_output=True, check=False, cwd=cwd, env=environment
    )
    assert result.returncode == 0, result.stderr.decode()
    return result.stdout.decode()


def test_the_wheel_holds_the_programs_own_folders(wheel: Path) -> None:
    with zipfile.ZipFile(wheel) as packed:
        names = set(packed.namelist())
    wanted = {
        f"app/{path.relative_to(ROOT).as_posix()}"
        for folder in ("templates", "static", "migrations", "seed_demo")
        for path in (ROOT / folder).rglob("*")
        if path.is_file() and "__pycache__" not in path.parts
    }
    assert wanted <= names
    assert not [name for name in names if name.startswith("tests")]


def test_the_installed_program_runs_from_anywhere(wheel: Path, tmp_path: Path) -> None:
    place = tmp_path / "venv"
    venv.create(place, with_pip=False, symlinks=os.name != "nt")
    python = str(place / ("Scripts/python.exe" if os.name == "nt" else "bin/python"))
    own = Path(
        run(python, "-c", "import site; print(site.getsitepackages()[-1])").strip()
    )
    own_pip = [sys.executable, "-m", "pip", "--python", python]
    run(*own_pip, "install", "--quiet", "--no-deps", "--no-index", str(wheel))
    # What the program depends on is taken from where the tests run, but not the
    # program itself: a folder in a .pth file is not looked into for further ones.
    (own / "depends.pth").write_text("\n".join(site.getsitepackages()), "utf-8")
    ways = str(Path(python).with_name("ways"))
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    assert run(ways, "--version", cwd=elsewhere) == f"ways, version {__version__}\n"
    where = run(python, "-c", "import app; print(app.__file__)", cwd=elsewhere)
    assert Path(where.strip()).is_relative_to(place.resolve())
    assert json.loads(run(ways, "schema", cwd=elsewhere))["required"]
    house = str(ROOT / "tests" / "houses" / "h01.json")
    data = ("--data", str(tmp_path / "data"))
    assert "(h01)" in run(ways, "import", house, *data, cwd=elsewhere)
    point = json.loads(Path(house).read_text("utf-8"))["points"][0]["ref"]
    answer = run(ways, "ask", "point", point, "--json", *data, cwd=elsewhere)
    assert json.loads(answer)["point"]["ref"] == point
    page = (
        "from app.web import create_app; from app.config import Config;"
        "from pathlib import Path; import sys;"
        "c = create_app(Config(data=Path(sys.argv[1]), secret_key=b'k' * 32));"
        "print(c.test_client().get('/', follow_redirects=True).status_code)"
    )
    assert run(python, "-c", page, data[1], cwd=elsewhere).strip() == "200"
