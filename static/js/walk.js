// The walk where a script runs: what is added shows at once and waits on the device until
// the program has it (see outbox.js); the list is then read anew without loading the page.
// With the program gone, the next room is shown as it was when it was last read.

const ANSWER_WITHIN_MS = 4000;
const STALE_MS = 10 * 60 * 1000;
const COPY = "walk:";

// Entries of the outbox that wait or were refused, by their id.
const waiting = new Map();
// Ids of entries from forms sent since the page was opened.
const ownUrls = new Set();
let reading = 0;

const part = () => document.querySelector("[data-walk]");
const addForm = () => document.querySelector("[data-walk-add]");
const fieldOf = (entry, name) => entry.fields.find(([key]) => key === name)?.[1] ?? "";

/** Whether a form of this page makes such entries. */
function isOurs(entry) {
  const forms = [...(part()?.querySelectorAll("form[data-outbox]") ?? [])];
  return forms.some((form) => form.action === entry.url);
}

/** What an entry adds, in words. */
function wordsOf(entry) {
  const label = document.querySelector(`label[for="kind-${CSS.escape(fieldOf(entry, "kind"))}"]`);
  const words = [label?.firstChild?.textContent.trim() ?? entry.label];
  words.push(fieldOf(entry, "at"), fieldOf(entry, "place").trim());
  const count = Number(fieldOf(entry, "count"));
  if (count > 1) words.push(`${count} alike`);
  return words.filter(Boolean).join(", ");
}

/** List what waits of this room, above what the program has. */
function showWaiting() {
  const section = document.querySelector("[data-waiting]");
  if (!section) return;
  const ours = [...waiting.values()].filter((entry) => isOurs(entry)).reverse();
  const lines = ours.map((entry) => {
    const line = document.createElement("li");
    const adds = entry.url === addForm().action;
    const state = entry.refused ? "not taken, see above" : "waiting";
    line.textContent = `${adds ? wordsOf(entry) : entry.label}: ${state}`;
    return line;
  });
  section.querySelector("[data-waiting-list]").replaceChildren(...lines);
  section.hidden = lines.length === 0;
}

/** Make the form ready for the next thing. */
function clearForm() {
  const form = addForm();
  const within = form.contains(document.activeElement);
  form.reset();
  for (const radio of form.elements.namedItem("kind")) radio.checked = false;
  if (within) form.querySelector("[name=kind]").focus({ preventScroll: true });
}

/** Let no form wait that cannot be taken: the browser says which box is wrong. */
function checkFirst(event) {
  const form = event.target;
  if (!form.matches("[data-walk] form[data-outbox]")) return;
  if (form.checkValidity()) {
    ownUrls.add(form.action);
    return;
  }
  event.preventDefault();
  event.stopImmediatePropagation();
  form.reportValidity();
}

async function pageAt(url) {
  const answer = await fetch(url, { signal: AbortSignal.timeout(ANSWER_WITHIN_MS) });
  if (!answer.ok) throw new Error(`${answer.status}`);
  return answer.text();
}

const parsed = (text) => new DOMParser().parseFromString(text, "text/html");

/** Read the room anew: its list, what is offered, what can be undone; not the form. */
async function readAnew(url) {
  reading += 1;
  const mine = reading;
  const text = await pageAt(url).catch(() => null);
  if (text === null || mine !== reading) return;
  const fresh = parsed(text);
  if (fresh.querySelector("[data-walk-add]")?.action !== addForm()?.action) return;
  keep(url, text);
  for (const old of document.querySelectorAll("[data-live]")) {
    const now = fresh.querySelector(`[data-live="${old.dataset.live}"]`);
    if (now) old.replaceChildren(...now.childNodes);
  }
  for (const label of addForm().querySelectorAll("[name=kind] + label")) {
    const now = fresh.querySelector(`label[for="${label.htmlFor}"]`);
    if (now) label.replaceChildren(...now.childNodes);
  }
  showWaiting();
}

document.addEventListener("outbox:queued", ({ detail: { entry } }) => {
  waiting.set(entry.id, entry);
  if (ownUrls.has(entry.url) && entry.url === addForm()?.action) clearForm();
  showWaiting();
});

document.addEventListener("outbox:sent", ({ detail: { entry, answer } }) => {
  waiting.delete(entry.id);
  showWaiting();
  if (!isOurs(entry) || !answer?.url) return;
  const leadsOn = fieldOf(entry, "looked_at") && ownUrls.has(entry.url);
  if (leadsOn && waiting.size === 0) location.assign(answer.url);
  else if (!fieldOf(entry, "looked_at")) readAnew(answer.url);
});

document.addEventListener("outbox:refused", ({ detail: { entry } }) => {
  waiting.set(entry.id, { ...entry, refused: true });
  showWaiting();
});

/** Choose a kind where the link would load the page again with that kind chosen. */
function chooseKind(link) {
  const code = new URL(link.href).searchParams.get("kind");
  const radio = document.getElementById(`kind-${code}`);
  if (!radio) return false;
  const folded = radio.closest("details");
  if (folded) folded.open = true;
  radio.checked = true;
  radio.focus({ preventScroll: true });
  addForm().scrollIntoView();
  return true;
}

const keyOf = (url) => COPY + new URL(url, location.href).pathname;
const copyOf = (url) => JSON.parse(sessionStorage.getItem(keyOf(url)) ?? "null");

function keep(url, text) {
  sessionStorage.setItem(keyOf(url), JSON.stringify({ at: Date.now(), text }));
}

/** Keep a copy of each room from one on, as far as its links of a kind lead. */
async function keepFrom(link, step) {
  for (let url = link?.href; url; ) {
    const kept = copyOf(url);
    const fresh = kept && Date.now() - kept.at < STALE_MS;
    const text = fresh ? kept.text : await pageAt(url);
    const page = parsed(text);
    if (!page.querySelector("[data-walk]")) return;
    if (!fresh) keep(url, text);
    url = page.querySelector(step)?.href;
  }
}

/** Keep a copy of every room, for when the program is gone. */
async function keepCopies() {
  keep(location.href, document.documentElement.outerHTML);
  for (const step of [".thumb__link--next", ".thumb__link--back"]) {
    await keepFrom(document.querySelector(step), step);
  }
}

/** Show a room as it was when it was kept; whether there is a copy. */
function showCopy(url) {
  const kept = copyOf(url);
  const page = kept && parsed(kept.text);
  const room = page?.querySelector("[data-walk]");
  if (!room) return false;
  part().replaceWith(room);
  document.title = page.title;
  document.querySelector("[data-live=undo]").replaceChildren();
  const time = new Date(kept.at).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" });
  say(`The program does not answer. This is the room as it was at ${time}.`);
  showWaiting();
  scrollTo(0, 0);
  return true;
}

function say(text) {
  const line = document.querySelector("[data-walk-said]");
  if (!line) return;
  line.textContent = text;
  line.hidden = !text;
}

/** Go to another room; with the program gone, to its copy, and never to an empty page. */
async function goOn(url) {
  const copied = await fetch(url, { signal: AbortSignal.timeout(ANSWER_WITHIN_MS) })
    .then(() => false)
    .catch(() => true);
  if (!copied) location.assign(url);
  else if (showCopy(url)) history.pushState(null, "", url);
  else say("The program does not answer. Stay here: what you add is kept on this device.");
}

/** Under a thumb the kinds fold away: bring what is asked next to the same place. */
function bringPlaces(event) {
  const folds = event.target.matches("[data-walk-add] .choose__what > ul [name=kind]");
  if (folds && matchMedia("(pointer: coarse)").matches) addForm().scrollIntoView();
}

function click(event) {
  const link = event.target.closest?.("a");
  const plain = !(event.ctrlKey || event.metaKey || event.shiftKey || event.altKey);
  if (!link || !plain || !part()) return;
  if (link.matches("[data-walk-kind]") && chooseKind(link)) event.preventDefault();
  if (link.matches(".thumb__link")) {
    event.preventDefault();
    goOn(link.href);
  }
}

document.addEventListener("submit", checkFirst, true);
document.addEventListener("change", bringPlaces);
document.addEventListener("click", click);
addEventListener("popstate", () => location.hash || showCopy(location.href) || location.reload());
keepCopies().catch(() => {});
