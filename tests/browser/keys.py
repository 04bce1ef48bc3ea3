"""A person at the keyboard: nothing is done with a pointer, and the focus is watched."""

from __future__ import annotations

from playwright.sync_api import Locator, Page, expect

MOST_STEPS = 250

# Returns what is wrong with where the focus stands, or nothing.
LOOK = """() => {
  const now = document.activeElement;
  const name = now.outerHTML.slice(0, 120);
  if (now === document.body) return "";
  const box = now.getBoundingClientRect();
  const style = getComputedStyle(now);
  const before = window.before?.isConnected ? window.before : null;
  window.before = now;
  if (style.outlineStyle === "none" || parseFloat(style.outlineWidth) < 2)
    return "no outline: " + name;
  if (box.width < 1 || box.height < 1) return "no size: " + name;
  const x = (Math.max(box.left, 0) + Math.min(box.right, innerWidth)) / 2;
  const y = (Math.max(box.top, 0) + Math.min(box.bottom, innerHeight)) / 2;
  const there = document.elementFromPoint(x, y);
  if (!there || !(now.contains(there) || there.contains(now)))
    return "covered or off the screen: " + name;
  if (!before) return "";
  if (before.compareDocumentPosition(now) & Node.DOCUMENT_POSITION_PRECEDING)
    return "out of order: " + name;
  const same = before.form && before.form === now.form;
  if (same && box.bottom <= before.getBoundingClientRect().top)
    return "goes up the form: " + name;
  return "";
}"""


class Keys:
    """The keys of one page."""

    def __init__(self, page: Page) -> None:
        self.page = page

    def go(self, role: str, name: str) -> None:
        """Go to a link or a button of the page's own matter, and press it."""
        self.skip()
        main = self.page.get_by_role("main")
        self.to(main.get_by_role(role, name=name, exact=True))  # type: ignore[arg-type]
        self.page.keyboard.press("Enter")

    def skip(self) -> None:
        """Skip what stands before the page's own matter."""
        self.page.evaluate("() => { window.before = null; }")
        self.page.keyboard.press("Tab")
        skip = self.page.get_by_role("link", name="Skip to the page")
        if _focused(skip):
            self._look()
            self.page.keyboard.press("Enter")
            expect(self.page.get_by_role("main")).to_be_focused()

    def to(self, target: Locator) -> None:
        """Press Tab until the focus is there, looking at every stop."""
        expect(target).to_have_count(1)
        for _ in range(MOST_STEPS):
            if _focused(target):
                return
            self.page.keyboard.press("Tab")
            self._look()
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

    def _look(self) -> None:
        assert self.page.evaluate(LOOK) == "", self.page.url


def _focused(target: Locator) -> bool:
    return bool(target.evaluate("e => e === document.activeElement"))
