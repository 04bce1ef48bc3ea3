"""A person at the keyboard: no pointer is used, and the focus is watched."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import ElementHandle, Locator, Page, expect

MOST_STEPS = 250
MOST_OPTIONS = 20

# Returns whether the focus is on the target, and what is wrong with where it stands.
LOOK = """([target, back]) => {
  const now = document.activeElement;
  const wrong = (what) => [now === target, what && `${what}: ${now.outerHTML}`];
  if (now === document.body) return wrong("");
  const box = now.getBoundingClientRect();
  const before = window.before?.isConnected ? window.before : null;
  window.before = now;
  const inDrawing = now.querySelector(":scope > .drawing__target");
  const style = getComputedStyle(inDrawing || now);
  const ring = inDrawing ? style.stroke !== "none" && style.strokeWidth
    : style.outlineStyle !== "none" && style.outlineWidth;
  if (!ring || parseFloat(ring) < 2) return wrong("not seen to have the focus");
  const x = (Math.max(box.left, 0) + Math.min(box.right, innerWidth)) / 2;
  const y = (Math.max(box.top, 0) + Math.min(box.bottom, innerHeight)) / 2;
  const there = document.elementFromPoint(x, y);
  if (!there || !(now.contains(there) || there.contains(now)))
    return wrong("covered, or off the screen");
  if (!before || before === now) return wrong("");
  const [first, then] = back ? [now, before] : [before, now];
  if (first.compareDocumentPosition(then) & Node.DOCUMENT_POSITION_PRECEDING)
    return wrong("out of order");
  const [above, below] = [first, then].map((e) => e.getBoundingClientRect());
  const same = first.form && first.form === then.form;
  return wrong(same && below.bottom <= above.top ? "goes up the form" : "");
}"""
PLACE = """(target) => {
  const now = document.activeElement;
  const place = target.compareDocumentPosition(now);
  const after = !!(place & Node.DOCUMENT_POSITION_FOLLOWING);
  return [now === target, now !== document.body && after];
}"""


class Keys:
    """The keys of one page."""

    def __init__(self, page: Page) -> None:
        self.page = page
        # From the start: a chooser that opens before it is waited for is not seen.
        page.on("filechooser", lambda _chooser: None)

    @property
    def main(self) -> Locator:
        """The page's own matter."""
        return self.page.get_by_role("main")

    def follow(self, name: str) -> None:
        """Follow a link of the page's own matter."""
        self.press(self.main.get_by_role("link", name=name, exact=True))

    def send(self, name: str) -> None:
        """Send a form by its button."""
        self.press(self.main.get_by_role("button", name=name, exact=True))

    def press(self, target: Locator) -> None:
        """Go to a link or a button, press it, and wait for where it leads."""
        self.to(target)
        # A form that came back writes its own address anew before another page comes.
        refused = self.page.locator("body[data-asked-here]").count()
        leads = self.page.expect_event("load") if refused else None
        with leads or self.page.expect_navigation():
            self.page.keyboard.press("Enter")

    def skip(self) -> None:
        """Skip what stands before the page's own matter, on a page just opened."""
        self._step()
        skip = self.page.get_by_role("link", name="Skip to the page")
        expect(skip).to_be_focused()
        self.page.keyboard.press("Enter")
        expect(self.main).to_be_focused()

    def to(self, target: Locator) -> None:
        """Press Tab, or Shift and Tab, until the focus is there."""
        wanted = target.element_handle()
        there, back = self.page.evaluate(PLACE, wanted)
        if not there and not back:
            there = self._step(wanted)
            back = self.page.evaluate(PLACE, wanted)[1]
        for _ in range(MOST_STEPS):
            if there:
                return
            there = self._step(wanted, back=back)
        raise AssertionError(f"never reached by keyboard: {target}")

    def write(self, target: Locator, text: str) -> None:
        """Write into a box, over what stands there."""
        self.to(target)
        self.page.keyboard.press("Control+a")
        self.page.keyboard.press("Delete")
        self.page.keyboard.type(text)
        expect(target).to_have_value(text)

    def write_day(self, target: Locator, day: str) -> None:
        """Write a day, as 2026-03-01, into a box for one: month, day and year."""
        self.to(target)
        year, month, date = day.split("-")
        self.page.keyboard.type(month + date + year)
        expect(target).to_have_value(day)

    def choose(self, target: Locator, option: str) -> None:
        """Choose from a list with the arrows."""
        self.to(target)
        names = target.locator("option").all_text_contents()
        there = int(target.evaluate("e => e.selectedIndex"))
        steps = names.index(option) - there
        for _ in range(abs(steps)):
            self.page.keyboard.press("ArrowDown" if steps > 0 else "ArrowUp")
        expect(target.locator("option:checked")).to_have_text(option)

    def open(self, place: str) -> None:
        """Open a page by its address, and skip to its matter."""
        self.page.goto(place)
        self.skip()

    def tick(self, target: Locator) -> None:
        """Tick a box, or choose a radio button, with the space bar."""
        self.to(target)
        self.page.keyboard.press("Space")
        expect(target).to_be_checked()

    def turn(self, chosen: Locator, wanted: Locator) -> None:
        """Go from the chosen radio button of a group to another with the arrows."""
        self.to(chosen)
        for _ in range(MOST_OPTIONS):
            if wanted.is_checked():
                return
            self.page.keyboard.press("ArrowDown")
        expect(wanted).to_be_checked()

    def unfold(self, name: str) -> None:
        """Unfold something by its line."""
        line = self.main.locator("summary").filter(has_text=name).first
        self.to(line)
        self.page.keyboard.press("Enter")
        expect(line.locator("xpath=..")).to_have_attribute("open", "")

    def give(self, target: Locator, file: Path) -> None:
        """Choose a file for a box that asks for one."""
        self.to(target)
        with self.page.expect_file_chooser() as chooser:
            self.page.keyboard.press("Space")
        chooser.value.set_files(file)

    def take(self, target: Locator) -> bytes:
        """Press what brings a file, and return what came."""
        self.to(target)
        with self.page.expect_download() as download:
            self.page.keyboard.press("Enter")
        return download.value.path().read_bytes()

    def turned_down(self, button: str) -> Locator:
        """Send what cannot be taken; return what says so, which has the focus."""
        self.send(button)
        summary = self.page.get_by_role("alert")
        expect(summary).to_be_focused()
        return summary

    def refused(self, button: str) -> None:
        """Send what cannot be taken; go by its summary to the first wrong box."""
        summary = self.turned_down(button)
        first = summary.get_by_role("link").first
        self._step()
        expect(first).to_be_focused()
        box = str(first.get_attribute("href"))
        self.page.keyboard.press("Enter")
        wrong = self.page.locator(f"[id='{box[1:]}']")
        expect(wrong).to_be_focused()
        wrong.evaluate("e => { window.before = e; }")

    def undo(self) -> None:
        """Take back what was just done, by the bar at the top."""
        self.press(self.page.locator(".bar--undo").get_by_role("button", name="Undo"))
        expect(self.main.get_by_role("link", name="Undone: ").first).to_be_visible()

    def _step(self, wanted: ElementHandle | None = None, *, back: bool = False) -> bool:
        """Take one step; return whether that is where one wanted to be."""
        self.page.keyboard.press("Shift+Tab" if back else "Tab")
        there, wrong = self.page.evaluate(LOOK, [wanted, back])
        assert not wrong, f"{self.page.url}: {wrong[:160]}"
        return bool(there)
