"""``ways faults``: where the record contradicts itself or stops short."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

from app.cli._base import (
    data_option,
    home_option,
    json_option,
    main,
    print_json,
    reading,
    say,
)


@main.command("faults")
@home_option
@json_option
@data_option
def faults_(home: str | None, data: Path | None, *, as_json: bool) -> None:
    """List where the record contradicts itself or stops short."""
    from app.domain.faults import faults
    from app.interchange.answer_text import faults_text
    from app.services import answers

    with reading(data) as connection:
        today = datetime.now().astimezone().date()
        found = faults(answers.the_home(connection, home).record, today)
    if as_json:
        print_json(answers.as_json(found, "faults"))
    else:
        say(faults_text(found))
