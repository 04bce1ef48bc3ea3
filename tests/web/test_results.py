"""Copying a sheet of results: read, questioned, kept whole, put right, shown."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from app.domain.edits import added
from app.domain.inspection import inspection_of
from app.domain.record import Circuit, Record, Result
from app.services.homes import open_home, save
from app.store.engine import make_engine, writing
from tests.pages import CheckedClient, Page

Stored = Callable[..., Record]
COPY = "/homes/H1/results/board/B1/copy"
REPORT = "condition_report"
HEAD = {"paper": "new", "number": "17", "by": "A. Person", "tested_on": "2021-06-14"}


def copy(here: CheckedClient, url: str = COPY, **typed: str) -> None:
    cells = {name.replace("__", "-"): text for name, text in typed.items()}
    here.save(url, HEAD | cells)


def test_a_sheet_is_kept_as_one_change_with_its_paper(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    page = here.see(COPY)
    assert "Kitchen sockets" in page.main
    after = here.save(
        COPY,
        HEAD
        | {
            "kind": REPORT,
            "r1_ohm-C1": "0,41", "rn_ohm-C1": "0.42", "r2_ohm-C1": "680 mΩ",
            "live_earth_mohm-C1": ">200", "zs_ohm-C2": "1.1", "ze_ohm-B1": "0.28",
        },
    )  # fmt: skip
    assert after.undo == "Copied test results of Main board (B1)."
    record = stored()
    (paper,) = record.papers
    assert (paper.kind, paper.number, paper.dated) == (REPORT, "17", date(2021, 6, 14))
    found = {r.about: r for r in record.results}
    assert set(found) == {"B1", "C1", "C2"}
    assert found["C1"].r2_ohm == Decimal("0.68")
    assert found["C1"].live_earth_over == "over"
    assert found["C1"].paper == paper.ref
    assert "0.41 Ω; 0.42 Ω; 0.68 Ω" in after.main
    here.go_on(here.submit_on(after, press="Undo"))
    assert stored() == small


def test_what_cannot_be_read_is_said_beside_its_cell_and_kept(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    typed = {"zs_ohm-C1": "much", "zs_ohm-C2": "1.1"}
    page = here.submit(COPY, HEAD | typed)
    assert page.status == 422
    assert "Kitchen sockets, Zs: Enter a number in Ω, such as 0.35, or" in page.main
    assert page.value("zs_ohm-C1") == "much"
    assert page.value("zs_ohm-C2") == "1.1"
    assert page.value("number") == "17"
    assert stored() == small


@pytest.mark.parametrize(
    ("cell", "says"),
    [
        ("rcd_ms-C1", "Kitchen sockets, RCD: Enter a number in ms, such as 21, or"),
        ("live_live_mohm-C1", "Kitchen sockets, Live to live: Enter a number in MΩ"),
        ("ze_ohm-B1", "Main board, Ze or Zdb: Enter a number in Ω, such as 0.35"),
    ],
)
def test_what_cannot_be_read_is_said_with_its_row_and_its_column(
    here: CheckedClient, cell: str, says: str
) -> None:
    page = here.submit(COPY, HEAD | {cell: "much"})
    assert [each.startswith(says) for each in page.errors] == [True]


def test_what_nobody_said_to_be_a_report_is_no_inspection(
    here: CheckedClient, stored: Stored
) -> None:
    page = here.see(COPY)
    assert page.value("kind") == "unknown"
    here.go_on(here.submit_on(page, {"tested_on": "2021-06-14", "zs_ohm-C1": "0.62"}))
    assert [paper.kind for paper in stored().papers] == ["unknown"]
    assert inspection_of(stored()).last_on is None
    here.save(COPY, HEAD | {"kind": REPORT, "zs_ohm-C1": "0.62"})
    assert inspection_of(stored()).last_on == date(2021, 6, 14)


@pytest.mark.parametrize("paper", ["new", ""])
@pytest.mark.parametrize("typed", [{}, {"zs_ohm-C1": "LIM", "rcd_ms-C2": "n/a"}])
def test_a_sheet_without_a_value_is_refused(
    here: CheckedClient,
    stored: Stored,
    small: Record,
    typed: dict[str, str],
    paper: str,
) -> None:
    page = here.submit(COPY, HEAD | typed | {"paper": paper})
    assert page.status == 422
    (said,) = page.errors
    assert said.startswith("Nothing is filled in: enter at least one value.")
    assert page.value("zs_ohm-C1") == typed.get("zs_ohm-C1", "")
    assert stored() == small


def test_what_was_copied_may_be_emptied(here: CheckedClient, stored: Stored) -> None:
    copy(here, zs_ohm__C1="0.62")
    page = here.see(f"{COPY}?paper={stored().papers[0].ref}")
    here.go_on(here.submit_on(page, {"zs_ohm-C1": ""}))
    assert stored().results == ()


def test_a_slip_is_asked_about_and_can_be_confirmed(
    here: CheckedClient, stored: Stored
) -> None:
    page = here.submit(COPY, HEAD | {"r1_r2_ohm-C1": "1.2k"})
    assert page.status == 422
    assert "R1+R2 of 1200 Ω? Did you mean 1.2 Ω?" in page.main
    assert stored().results == ()
    after = here.go_on(here.submit_on(page, ticked(page, "r1_r2_ohm-C1")))
    assert after.undo
    assert stored().results[0].r1_r2_ohm == 1200


def ticked(page: Page, cell: str) -> dict[str, str]:
    """Return what ticking the question beside a cell sends."""
    return {f"ok-{cell}": page.by_id[f"ok-{cell}"].get("value")}


def test_a_tick_holds_for_the_value_that_was_ticked_only(
    here: CheckedClient, stored: Stored
) -> None:
    cell = "r1_r2_ohm-C1"
    page = here.submit(COPY, HEAD | {cell: "1.2k"})
    tick = ticked(page, cell)
    # Another odd value typed beside the tick, or an error elsewhere in between.
    page = here.submit_on(page, {**tick, cell: "3k"})
    assert page.status == 422
    assert "R1+R2 of 3000 Ω?" in page.main
    assert page.by_id[f"ok-{cell}"].get("checked") is None
    page = here.submit_on(page, {**ticked(page, cell), "zs_ohm-C2": "much"})
    assert page.by_id[f"ok-{cell}"].get("checked") is not None
    assert stored().results == ()
    # Asked of the same value for another reason: it was not that which was ticked.
    here.save("/homes/H1/boards/B1/edit", earthing="tn_s")
    page = here.submit(COPY, HEAD | {"zs_ohm-C1": "25", cell: "30"})
    ticks = ticked(page, "zs_ohm-C1") | ticked(page, cell)
    page = here.submit_on(page, {**ticks, cell: "5"})
    assert page.status == 422
    assert "Zs of 25 Ω? Did you mean 0.025 Ω?" in page.main
    assert stored().results == ()


def test_a_later_paper_never_changes_an_earlier_one(
    here: CheckedClient, stored: Stored
) -> None:
    copy(here, zs_ohm__C1="0.62")
    here.save(COPY, HEAD | {"tested_on": "2026-06-14", "zs_ohm-C1": "0.80"})
    found = sorted((str(r.tested_on), str(r.zs_ohm)) for r in stored().results)
    assert found == [("2021-06-14", "0.62"), ("2026-06-14", "0.8")]


def test_what_was_copied_wrongly_is_put_right_on_its_paper(
    here: CheckedClient, stored: Stored
) -> None:
    copy(here, zs_ohm__C1="0.62", zs_ohm__C2="1.1")
    paper = stored().papers[0].ref
    page = here.see(f"{COPY}?paper={paper}")
    assert "This puts right what was copied" in page.main
    assert page.value("zs_ohm-C1") == "0.62"
    here.go_on(here.submit_on(page, {"zs_ohm-C1": "0.26", "zs_ohm-C2": ""}))
    (result,) = stored().results
    assert (result.about, result.zs_ohm) == ("C1", Decimal("0.26"))


def test_what_someone_else_put_right_meanwhile_is_not_overwritten(
    here: CheckedClient, stored: Stored
) -> None:
    copy(here, zs_ohm__C1="0.62")
    url = f"{COPY}?paper={stored().papers[0].ref}"
    old = here.see(url)
    here.go_on(here.submit_on(here.see(url), {"zs_ohm-C1": "0.26"}))
    page = here.submit_on(old, {"zs_ohm-C1": "0.99"})
    assert page.status == 409
    assert page.value("zs_ohm-C1") == "0.99"
    assert stored().results[0].zs_ohm == Decimal("0.26")


def test_sent_twice_it_counts_once(here: CheckedClient, stored: Stored) -> None:
    page = here.see(COPY)
    for _ in range(2):
        here.submit_on(page, HEAD | {"zs_ohm-C1": "0.62"})
    assert len(stored().results) == len(stored().papers) == 1


def test_a_day_to_come_is_refused(here: CheckedClient) -> None:
    page = here.submit(COPY, HEAD | {"tested_on": "2999-01-01", "zs_ohm-C1": "1"})
    assert page.status == 422
    assert "still to come" in page.error("tested_on")


def test_measured_stands_beside_calculated(here: CheckedClient) -> None:
    figures = "/homes/H1/circuits/C1/figures/"
    assert "No test result of this circuit is copied yet." in here.see(figures).main
    here.save("/homes/H1/boards/B1/edit", earthing="tn_s")
    copy(here, zs_ohm__C1="0.62")
    page = here.see(figures)
    assert "Zs 0.62 Ω" in page.main
    assert "14 June 2021" in page.main
    assert "A. Person" in page.main
    # 0.95 of 230 V by five times 32 A, and four fifths of that.
    assert "A measured one may reach 1.093 Ω" in page.main


def test_the_paper_shows_what_was_copied_from_it(
    here: CheckedClient, stored: Stored
) -> None:
    copy(here, zs_ohm__C1="0.62")
    page = here.see(f"/homes/H1/papers/{stored().papers[0].ref}/")
    assert "0.62 Ω" in page.main
    assert page.links["Main board"].endswith(f"?paper={stored().papers[0].ref}")
    assert "1 row of results" in here.see("/homes/H1/papers/").main


def test_a_board_that_is_not_there(here: CheckedClient) -> None:
    assert here.see("/homes/H1/results/board/B9/copy", 404).h1


ELSEWHERE = (
    Result(ref="V1", about="W1", rcd_ms=Decimal(28), tested_on=date(2021, 6, 14)),
    Result(ref="V2", about="CUT", ze_ohm=Decimal("0.2")),
    Result(ref="V3", about="C9", zs_ohm=Decimal("1.2")),
    Result(ref="V4", about="C1", zs_ohm=Decimal("0.6")),
    Result(ref="V5", ze_ohm=Decimal("0.35")),
)


@pytest.fixture
def with_results(here: CheckedClient, database: Path, small: Record) -> CheckedClient:
    """A home with results that no sheet of a board and no paper shows."""
    with writing(make_engine(database)) as connection:
        start = open_home(connection, "H1")
        loose = added(start.record, Circuit(ref="C9", name="Bell"))
        save(connection, start, loose.having(results=ELSEWHERE), "Copied.")
    return here


@pytest.mark.parametrize("ref", [result.ref for result in ELSEWHERE])
def test_whatever_a_result_is_of_it_is_listed_put_right_and_deleted(
    with_results: CheckedClient, stored: Stored, ref: str
) -> None:
    page = with_results.see("/homes/H1/results/")
    (url,) = {to for text, to in page.links.items() if f"({ref})" in text}
    page = with_results.see(url)
    assert page.h1 == f"Test result {ref}"
    after = with_results.save(page.links["Change"], zs_ohm="0,41")
    assert after.undo == f"Changed test result Test result {ref} ({ref})."
    assert "Zs 0.41 Ω" in after.main
    found = stored().find(Result, ref)
    assert found is not None
    assert found.zs_ohm == Decimal("0.41")
    assert found.about == next(r for r in ELSEWHERE if r.ref == ref).about
    after = with_results.save(after.links["Delete"], press="Delete")
    assert f"({ref})" in after.undo
    assert stored().find(Result, ref) is None


@pytest.mark.parametrize(
    ("url", "ref"), [("devices/W1/", "V1"), ("intake/", "V2"), ("circuits/C9/", "V3")]
)
def test_a_thing_leads_to_its_results(
    with_results: CheckedClient, url: str, ref: str
) -> None:
    page = with_results.see(f"/homes/H1/{url}")
    assert f"/homes/H1/results/{ref}/" in page.links.values()
    # Nobody is asked to measure in the intake.
    assert any("a test result" in text for text in page.links) == (url != "intake/")


def test_a_device_is_given_a_result_on_its_page(
    here: CheckedClient, stored: Stored
) -> None:
    page = here.see("/homes/H1/devices/RCD/")
    (form,) = {to for text, to in page.links.items() if "a test result" in text}
    after = here.save(form, rcd_ms="28", tested_on="2021-06-14")
    assert "14 June 2021 (V1): RCD 28 ms" in after.main
    assert stored().results[0].about == "RCD"
    page = here.submit(form, rcd_ms="28", tested_on="2999-01-01")
    assert "still to come" in page.error("tested_on")


def test_what_is_odd_is_asked_about_on_its_page_too(
    here: CheckedClient, stored: Stored
) -> None:
    here.save("/homes/H1/new/results", about="C1", r1_r2_ohm="1200")
    assert "Did you mean 1.2 Ω?" in here.see("/homes/H1/results/V1/").main


def test_a_result_that_is_not_there(here: CheckedClient) -> None:
    assert here.see("/homes/H1/results/V9/", 404).h1


def test_what_was_copied_before_is_not_written_over_from_an_empty_sheet(
    here: CheckedClient, stored: Stored
) -> None:
    copy(here, r1_ohm__C1="0.41", zs_ohm__C2="1.1")
    before = stored()
    paper = before.papers[0].ref
    page = here.submit(COPY, {"paper": paper, "zs_ohm-C1": "0.4"})
    for _ in range(2):
        assert page.status == 422
        assert "copied from this paper already" in page.error("paper")
        assert page.value("zs_ohm-C1") == "0.4"
        assert stored() == before
        page = here.submit_on(page)
    here.go_on(here.submit_on(page, {"paper": ""}))
    assert len(stored().results) == len(before.results) + 1
