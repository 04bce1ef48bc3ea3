"""Handing over: nothing private goes along unless it is ticked."""

from __future__ import annotations

import io
import zipfile

from tests.pages import CheckedClient

PAGE = "/homes/H1/hand-over/"


def test_what_leaves_the_house_is_counted_and_private_parts_stay(
    here: CheckedClient,
) -> None:
    page = here.see(PAGE)
    assert "2 rooms, 1 board, 2 circuits, 3 points" in page.main
    assert "None of the above goes along." in page.main
    page = here.see(f"{PAGE}?with=notes&with=mpan")
    assert "With: The meter point number (MPAN); Notes." in page.main
    assert "with=notes" in page.links["Everything, as a zip file"]


def test_a_part_that_is_not_there_is_refused(here: CheckedClient) -> None:
    page = here.see(f"{PAGE}?with=secrets", 422)
    assert "There is no part “secrets”." in page.main


def test_the_log_goes_along_where_it_is_asked_for(here: CheckedClient) -> None:
    here.save("/homes/H1/points/P1/edit", place="by the hob")
    said = "Changed point Socket-outlet, size not noted, by the hob (P1)."
    assert said in here.get(f"{PAGE}pack.html?with=history").get_data(as_text=True)
    assert said not in here.get(f"{PAGE}pack.html").get_data(as_text=True)


def test_the_pack_is_given_as_a_file(here: CheckedClient) -> None:
    answer = here.get(f"{PAGE}pack.zip")
    assert answer.headers["Content-Disposition"] == 'attachment; filename="H1-pack.zip"'
    assert answer.headers["Cache-Control"] == "no-store"
    with zipfile.ZipFile(io.BytesIO(answer.get_data())) as archive:
        assert "H1-pack/pack.pdf" in archive.namelist()
