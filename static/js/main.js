// What a page gains from a script.  Every page works without it, and it asks nothing of
// the network.

const SECOND_PRESS_MS = 2000;
// Nobody reads what a button takes away in so short a time.
const TOO_SOON_MS = 500;
const CONTROLS = "input:not([type=hidden]), select, textarea";

/** Bring the reader to what there is to put right; where the address leads comes second. */
function focusErrors() {
  const summary = document.querySelector(".error-summary");
  summary?.focus();
  addEventListener("load", () => {
    if (document.activeElement?.id === "main") summary?.focus();
  });
}

/** Send a form once when its button is pressed twice; the form itself is left alone. */
function guardSecondPress() {
  const sent = new WeakSet();
  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (event.defaultPrevented) return;
    if (sent.has(form)) {
      event.preventDefault();
      return;
    }
    const button = event.submitter;
    leaveRefused();
    sent.add(form);
    button?.setAttribute("aria-disabled", "true");
    setTimeout(() => {
      sent.delete(form);
      button?.removeAttribute("aria-disabled");
    }, SECOND_PRESS_MS);
  });
}

/** A form that came back refused is left for good by sending it, or by a link. */
function leaveRefused() {
  if ("askedHere" in document.body.dataset) history.replaceState(null, "", location.href);
}

function leaveByLink(event) {
  if (event.target.closest?.("a[href]:not([href^='#'])")) leaveRefused();
}

/**
 * A double click is one press, also where its first half led here from another page, and
 * so is a key that is held down.
 */
function pressOnce() {
  let pressed;
  const shown = performance.now();
  const asks = location.pathname.endsWith("/delete");
  document.addEventListener("click", (event) => {
    const button = event.target.closest?.("button");
    const again = button && event.detail > 1 && (pressed === undefined || pressed === button);
    const soon = asks && event.detail > 0 && performance.now() - shown < TOO_SOON_MS;
    if (again || (soon && button)) event.preventDefault();
    pressed = button;
  }, { capture: true });
  document.addEventListener("keydown", (event) => {
    const held = event.repeat && event.key === "Enter";
    if (held && !event.target.closest?.("textarea, a, .quick")) event.preventDefault();
  });
}

/** Return the controls of a row that can be seen, in order. */
function controlsOf(row) {
  return [...row.querySelectorAll(CONTROLS)].filter((control) => !control.disabled);
}

/** Return the next or the former row of a quick table. */
function rowBeside(row, step) {
  const rows = [...row.closest(".quick").querySelectorAll(".quick__row")];
  return rows[rows.indexOf(row) + step];
}

/** Go down a column with Enter; from the last row, on to the form's button. */
function goDown(event) {
  const control = event.target;
  const row = control.closest?.(".quick .quick__row");
  const plain = event.key === "Enter" && !event.isComposing && !event.shiftKey;
  if (!row || !plain || !control.matches("input, select")) return;
  event.preventDefault();
  const below = rowBeside(row, 1);
  if (below) controlsOf(below)[controlsOf(row).indexOf(control)]?.focus();
  else control.form?.querySelector("button[type=submit]")?.focus();
}

/** Copy the row above into this one, but for what is a row's own. */
function copyRowAbove(event) {
  const row = event.target.closest?.("[data-copy]")?.closest(".quick__row");
  const above = row && rowBeside(row, -1);
  if (!above) return;
  const from = controlsOf(above);
  const into = controlsOf(row);
  into.forEach((control, place) => {
    const source = from[place];
    if (!source || "own" in control.dataset || control.type === "file") return;
    if (control.matches("[type=checkbox], [type=radio]")) control.checked = source.checked;
    else control.value = source.value;
  });
  into[0]?.focus();
}

/** Show the copy buttons, where there is a row above. */
function showCopyButtons() {
  for (const button of document.querySelectorAll("[data-copy]")) {
    button.hidden = !rowBeside(button.closest(".quick__row"), -1);
  }
}

/** Unfold the thing that the address leads to. */
function unfoldTarget() {
  const folded = document.querySelector("details:target");
  if (folded) folded.open = true;
}

guardSecondPress();
pressOnce();
showCopyButtons();
focusErrors();
unfoldTarget();
addEventListener("hashchange", unfoldTarget);
document.addEventListener("keydown", goDown);
document.addEventListener("click", copyRowAbove);
document.addEventListener("click", leaveByLink);
