"""``ways pack``: what is handed over to whoever works here next."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import click

from app.cli._base import (
    NewFile,
    config_of,
    data_option,
    home_option,
    main,
    reading,
    refuse_if_there,
    replace_option,
    say,
)

# As in app.domain.pack.PARTS, written again since --help must stay quick.
PARTS = ("mpan", "phones", "names", "notes", "photos", "originals", "history")


@main.command("pack")
@home_option
@click.option(
    "-o",
    "--out",
    type=NewFile(or_folder=True),
    help="File to write, .zip, or a folder that is not there yet; else REF-pack.zip.",
)
@replace_option
@click.option(
    "--with",
    "taken",
    multiple=True,
    type=click.Choice((*PARTS, "all")),
    help="What goes along though it is private; may be given again.",
)
@click.option(
    "--without",
    multiple=True,
    type=click.Choice(PARTS),
    help="What stays here, of all that --with names.",
)
@data_option
def pack_(
    home: str | None,
    out: Path | None,
    taken: tuple[str, ...],
    without: tuple[str, ...],
    data: Path | None,
) -> None:
    """Make the pack: PDF, page, document, tables and drawings, with a manifest."""
    from datetime import datetime

    from app.services import answers
    from app.services.pack import Wanted, changes_told, pack_files
    from app.services.pack_pictures import store_in

    with reading(data) as connection:
        here = answers.the_home(connection, home)
        changes = changes_told(connection, here)
    day = datetime.now().astimezone().date()
    along = (set(PARTS) if "all" in taken else set(taken)) - set(without)
    back = tuple(part for part in PARTS if part not in along)
    wanted = Wanted(
        record=here.record,
        day=day,
        without=back,
        changes=changes,
        store=store_in(config_of(data).files),
    )
    name = f"{here.record.home.ref}-pack"
    target = out or Path(f"{name}.zip")
    refuse_if_there(target)
    files = pack_files(wanted)
    _write(files, target, name, day)
    say(f"{target}: {len(files)} files. Kept back: {', '.join(back) or 'none'}.")


def _write(files: dict[str, bytes], target: Path, folder: str, day: date) -> None:
    from app.services.pack import pack_zip

    if target.suffix == ".zip":
        target.write_bytes(pack_zip(files, folder, day))
        return
    for name, content in files.items():
        place = target / name
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_bytes(content)
