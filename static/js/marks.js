// Marking points in a round: a mark shows at once, and whether it still waits.

const fieldOf = (entry, name) => entry.fields.find(([key]) => key === name)?.[1];

/** The list item that an entry is about, if it is of this page's round. */
function itemOf(entry) {
  const item = document.getElementById(`point-${fieldOf(entry, "point")}`);
  return item?.querySelector("form")?.action === entry.url ? item : null;
}

function press(item, seen) {
  for (const button of item.querySelectorAll("button[name=seen]")) {
    button.setAttribute("aria-pressed", String(button.value === seen));
  }
  const items = [...document.querySelectorAll(".marks__item")];
  const done = items.filter((each) => each.querySelector("[aria-pressed=true]")).length;
  document.querySelector("[data-marks-done]").textContent = String(done);
}

function say(item, text) {
  item.querySelector("[data-state]").textContent = text;
}

document.addEventListener("outbox:queued", ({ detail: { entry } }) => {
  const item = itemOf(entry);
  if (!item) return;
  press(item, fieldOf(entry, "seen"));
  say(item, entry.refused ? "Not taken; see above" : "Waits on this device");
});
document.addEventListener("outbox:sent", ({ detail: { entry } }) => {
  const item = itemOf(entry);
  if (item) say(item, "Saved");
});
document.addEventListener("outbox:refused", ({ detail: { entry } }) => {
  const item = itemOf(entry);
  if (item) say(item, "Not taken; see above");
});
