"""``ways remarks``: what an experienced eye would remark on."""

from __future__ import annotations

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


@main.command("remarks")
@home_option
@json_option
@data_option
def remarks_(home: str | None, data: Path | None, *, as_json: bool) -> None:
    """List what an experienced eye would remark on, the worst first."""
    from datetime import datetime

    from app.interchange.remark_text import remarks_text
    from app.services import answers
    from app.services.remarks import remarks_of

    with reading(data) as connection:
        record = answers.the_home(connection, home).record
    found = remarks_of(record, datetime.now().astimezone().date())
    if as_json:
        print_json(answers.as_json(found, "remarks"))
    else:
        say(remarks_text(found))
