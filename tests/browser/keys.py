"""A person at the keyboard: nothing is done with a pointer, and the focus is watched."""

from __future__ import annotations

from playwright.sync_api import Locator, Page, expect

MOST_STEPS = 250

# Returns what is wrong with where the focus stands, or nothing.
LOOK = """(back) => {
  const now = document.activeElement;
  const name = now.outerHTML.slice(0, 120);
  if (now === document.body) return "";
  const box = now.getBoundingClientRect();
  const inDrawing = now.querySelector(":scope > .drawing__target");
  const style = getComputedStyle(inDrawing || now);
  const ring = inDrawing ? style.stroke !== "none" && style.strokeWidth
    : style.outlineStyle !== "none" && style.outlineWidth;
  const before = window.before?.isConnected ? window.before : null;
  window.before = now;
  if (!ring || parseFloat(ring) < 2) return "not seen to have the focus: " + name;
  if (box.width < 1 || box.height < 1) return "no size: " + name;
  const x = (Math.max(box.left, 0) + Math.min(box.right, innerWidth)) / 2;
  const y = (Math.max(box.top, 0) + Math.min(box.bottom, innerHeight)) / 2;
  const there = document.elementFromPoint(x, y);
  if (!there || !(now.contains(there) || there.contains(now)))
    return "covered or off the screen: " + name;
  if (!before || before === now) return "";
  const [first, then] = back ? [now, before] : [before, now];
  if (first.compareDocumentPosition(then) & Node.DOCUMENT_POSITION_PRECEDING)
    return "out of order: " + name;
  const same = first.form && first.form === then.form;
  const [above, below] = [first, then].map((e) => e.getBoundingClientRect());
  if (same && below.bottom <= above.top) return "goes up the form: " + name;
  return "";
}"""
BEFORE = """(target) => {
  const now = document.activeElement;
  if (now === document.body) return false;
  return !!(target.compareDocumentPosition(now) & Node.DOCUMENT_POSITION_FOLLOWING);
}"""


class Keys:
    """The keys of one page."""

    def __init__(self, page: Page) -> None:
        self.page = page

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
        with self.page.expect_navigation():
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
        expect(target).to_have_count(1)
        if not _focused(target):
            self._step()
        back = bool(target.evaluate(BEFORE))
        for _ in range(MOST_STEPS):
            if _focused(target):
                return
            self._step(back=back)
        raise AssertionError(f"never reached by keyboard: {target}")

    def write(self, target: Locator, text: str) -> None:
        """Write into a box, over what stands there."""
        self.to(target)
        self.page.keyboard.press("Control+a")
        self.page.keyboard.type(text)
        expect(target).to_have_value(text)

    def choose(self, target: Locator, option: str) -> None:
        """Choose from a list with the arrows."""
        self.to(target)
        names = target.locator("option").all_text_contents()
        there = int(target.evaluate("e => e.selectedIndex"))
        steps = names.index(option) - there
        for _ in range(abs(steps)):
            self.page.keyboard.press("ArrowDown" if steps > 0 else "ArrowUp")
        expect(target.locator("option:checked")).to_have_text(option)

    def _step(self, *, back: bool = False) -> None:
        """Take one step and look where the focus stands."""
        self.page.keyboard.press("Shift+Tab" if back else "Tab")
        wrong = self.page.evaluate(LOOK, back)
        assert not wrong, f"{self.page.url}: {wrong}"


def _focused(target: Locator) -> bool:
    return bool(target.evaluate("e => e === document.activeElement"))
