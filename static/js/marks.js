// A round on one page: one step at a time, a mark shown at once, and whether it waits.

const panels = [...document.querySelectorAll("[data-panel]")];
const fieldOf = (entry, name) => entry.fields.find(([key]) => key === name)?.[1];

/** Show the step that the address names; without one, the marks. */
function showPanel() {
  const named = document.getElementById(location.hash.slice(1));
  const panel = named ? named.closest("[data-panel]") : document.getElementById("marks");
  if (!panel) return;
  for (const each of panels) each.hidden = each !== panel;
  if (named && named !== panel) named.scrollIntoView();
}

/** Begin a step at its top. */
function beginPanel() {
  showPanel();
  const panel = panels.find((each) => `#${each.id}` === location.hash);
  if (!panel) return;
  panel.querySelector("h2").focus({ preventScroll: true });
  scrollTo(0, 0);
}

/** The list item that an entry is about, if it is of this page's round. */
function itemOf(entry) {
  const item = document.getElementById(`point-${fieldOf(entry, "point")}`);
  return item?.querySelector("form")?.action === entry.url ? item : null;
}

function press(item, seen) {
  for (const button of item.querySelectorAll("button[name=seen]")) {
    button.setAttribute("aria-pressed", String(button.value === seen));
  }
  item.dataset.marked = "";
  const done = document.querySelectorAll("[data-marked]").length;
  document.querySelector("[data-marks-done]").textContent = String(done);
}

/** Say how an entry fares, beside what it is about. */
function say(entry, text) {
  const item = itemOf(entry);
  const stage = document.querySelector("[data-stage-state]");
  if (item) item.querySelector("[data-state]").textContent = text;
  else if (stage?.closest("form").action === entry.url) stage.textContent = text;
}

/** Give the marks that follow another way of seeing. */
function seeWith(how) {
  for (const field of document.querySelectorAll(".marks__form [name=how]")) {
    field.value = how;
  }
}

document.addEventListener("outbox:queued", ({ detail: { entry } }) => {
  const item = itemOf(entry);
  if (item) press(item, fieldOf(entry, "seen"));
  say(entry, entry.refused ? "Not taken; see the top" : "Waits on this device");
});
document.addEventListener("outbox:sent", ({ detail: { form, entry, answer } }) => {
  say(entry, "Saved");
  if (form && answer?.next) location.assign(answer.next);
});
document.addEventListener("outbox:refused", ({ detail: { entry } }) => {
  say(entry, "Not taken; see the top");
});

const how = document.querySelector("[data-how]");
how?.querySelector("button").remove();
how?.addEventListener("change", ({ target }) => seeWith(target.value));
how?.addEventListener("submit", (event) => event.preventDefault());
addEventListener("hashchange", beginPanel);
// Once left, this page may not open again until the program is back.
addEventListener("beforeunload", (event) => {
  if (document.documentElement.hasAttribute("data-outbox-unanswered")) event.preventDefault();
});
showPanel();
