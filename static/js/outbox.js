// Forms that must not be lost: each is kept on this device first, then sent, in order,
// until the program has answered.  It counts once however often it is sent, for it
// carries a key of its own.
//
//   <form method="post" data-outbox data-outbox-label="Socket by the door">
//
// Events on document, which bubble: outbox:queued, outbox:sent, outbox:refused, each with
// detail {form, entry, answer}; form only while the page that it was sent from is open.
// An entry: id, url, page, label, fields, made (ms), refused (a sentence, once refused).

const STORE = "waiting";
const TURN = "turn";
const FIRST_WAIT_MS = 1000;
const LONGEST_WAIT_MS = 30000;
const ANSWER_WITHIN_MS = 10000;
// A page that died in its turn holds up the others no longer than this.
const TURN_MS = ANSWER_WITHIN_MS + 2000;
// A line that comes and goes under the thumb makes it miss.
const WORTH_SAYING_MS = 2000;
// Answers after which the same entry may be taken later.
const AGAIN_LATER = [408, 425, 429];
const FAULT = 500;
const MOST_FAULTS = 3;
const OWN = ["key", "made_at"];

const forms = new Map();
const faults = new Map();
const plainly = new WeakSet();
const me = nameOfPage();
const others = "BroadcastChannel" in globalThis ? new BroadcastChannel("outbox") : null;

let opening;
let sending = false;
let wanted = false;
let turn = false;
let failed = "";
let wait = FIRST_WAIT_MS;
let timer;
let later;

/** Open the device's own store; rejects where a browser has none. */
function open() {
  opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open("ways-outbox", 2);
    request.onupgradeneeded = ({ oldVersion }) => {
      const made = request.result;
      if (oldVersion < 1) made.createObjectStore(STORE, { keyPath: "id", autoIncrement: true });
      made.createObjectStore(TURN, { keyPath: "id" });
    };
    request.onsuccess = () => {
      const database = request.result;
      database.onclose = () => (opening = undefined);
      database.onversionchange = () => database.close() ?? database.onclose();
      resolve(database);
    };
    request.onerror = () => reject(request.error);
  });
  return opening;
}

/** Do one thing with a store; resolves once it is on the disk. */
async function within(mode, act, name = STORE) {
  const database = await open();
  return new Promise((resolve, reject) => {
    const options = mode === "readwrite" ? { durability: "strict" } : undefined;
    const transaction = database.transaction(name, mode, options);
    const request = act(transaction.objectStore(name));
    transaction.oncomplete = () => resolve(request.result);
    transaction.onerror = () => reject(transaction.error);
    transaction.onabort = () => reject(transaction.error);
  });
}

const all = () => within("readonly", (store) => store.getAll());
const put = (entry) => within("readwrite", (store) => store.put(entry));
const drop = (id) => within("readwrite", (store) => store.delete(id));

/** A key that no other form has; there is no randomUUID on a plain http page. */
function newKey() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** What this page is called among those of its browser; a reload keeps it. */
function nameOfPage() {
  const fresh = newKey();
  try {
    const name = sessionStorage.getItem(TURN) ?? fresh;
    sessionStorage.setItem(TURN, name);
    return name;
  } catch {
    return fresh;
  }
}

/** Take the turn to send, or keep it; only one page of a browser sends at a time. */
async function takeTurn() {
  let mine = false;
  const act = (store) => {
    const request = store.get(1);
    request.onsuccess = () => {
      const had = request.result;
      mine = !had || had.owner === me || had.until < Date.now();
      if (mine) store.put({ id: 1, owner: me, until: Date.now() + TURN_MS });
    };
    return request;
  };
  await within("readwrite", act, TURN);
  return mine;
}

/** Let another page of this browser have the turn. */
function giveTurn() {
  const act = (store) => {
    const request = store.get(1);
    request.onsuccess = () => request.result?.owner === me && store.delete(1);
    return request;
  };
  return within("readwrite", act, TURN);
}

function announce(name, entry, answer) {
  const detail = { form: forms.get(entry.id), entry, answer };
  const event = new CustomEvent(`outbox:${name}`, { bubbles: true, detail });
  document.dispatchEvent(event);
}

/** Tell this page what became of an entry, and the other pages of this browser. */
function tell(name, entry, answer) {
  announce(name, entry, answer);
  others?.postMessage({ name, entry, answer });
}

/** What a form says in a line: its label, and the button that was pressed. */
function labelOf(form, submitter) {
  const label = form.dataset.outboxLabel ?? "";
  const pressed = submitter?.name ? submitter.textContent.trim() : "";
  return [label, pressed].filter(Boolean).join(": ");
}

/** Return what is kept of a form that was just sent off. */
function entryOf(form, submitter) {
  const data = new FormData(form);
  if (submitter?.name) data.append(submitter.name, submitter.value);
  const made = new Date();
  const fields = [...data].filter(
    ([name, value]) => !OWN.includes(name) && typeof value === "string",
  );
  fields.push(["key", newKey()], ["made_at", made.toISOString()]);
  return {
    url: form.action,
    page: location.href,
    label: labelOf(form, submitter),
    fields,
    made: made.getTime(),
  };
}

/** Keep a form on this device, then send what waits. */
async function keep(form, submitter) {
  const entry = entryOf(form, submitter);
  try {
    entry.id = await put(entry);
  } catch {
    sendPlainly(form, submitter);
    return;
  }
  forms.set(entry.id, form);
  tell("queued", entry);
  await show();
  send();
}

/** Send a form as if there were no script: where nothing can be kept. */
function sendPlainly(form, submitter) {
  cannotKeep();
  // A form cannot be sent while it is still being said that it is sent.
  setTimeout(() => {
    plainly.add(form);
    form.requestSubmit(submitter);
    plainly.delete(form);
  });
}

/** Ask the program to take one entry. */
async function post(entry, token) {
  const body = new URLSearchParams(entry.fields);
  if (token) body.set("csrf_token", token);
  const answer = await fetch(entry.url, {
    method: "POST",
    headers: { Accept: "application/json" },
    body,
    redirect: "manual",
    signal: AbortSignal.timeout(ANSWER_WITHIN_MS),
  });
  const json = answer.headers.get("Content-Type")?.includes("json");
  const said = json ? await answer.json() : null;
  if (said?.error === "token" && !token && (await takeTurn())) {
    return post(entry, said.token);
  }
  return { ok: answer.ok && json, status: answer.status, said };
}

/** Whether an answer is the last word on an entry. */
function isFinal({ status, said }, entry) {
  if (!said || AGAIN_LATER.includes(status)) return false;
  if (status >= 400 && status < FAULT) return true;
  if (status !== FAULT) return false;
  faults.set(entry.id, (faults.get(entry.id) ?? 0) + 1);
  return faults.get(entry.id) >= MOST_FAULTS;
}

/** Note on the page itself whether the program answered when it was last asked. */
function noteAnswered(answered) {
  document.documentElement.toggleAttribute("data-outbox-unanswered", !answered);
}

/** Send one entry; whether the next may follow. */
async function deliver(entry) {
  const answer = await post(entry);
  noteAnswered(answer.said);
  if (answer.ok) {
    await drop(entry.id);
    tell("sent", entry, answer.said);
    forms.delete(entry.id);
    return true;
  }
  failed = answer.said?.sentence ?? "";
  if (!isFinal(answer, entry)) return false;
  const refused = { ...entry, refused: answer.said.sentence ?? "It was not taken." };
  await put(refused);
  tell("refused", refused, answer.said);
  return true;
}

/** Send each that waits; when one has to wait, say for how long. */
async function sendEach() {
  for (;;) {
    const entry = (await all()).find((each) => !each.refused);
    if (!entry) return 0;
    turn = await takeTurn();
    if (!turn) return FIRST_WAIT_MS;
    failed = "";
    if (!(await deliver(entry).catch(() => noteAnswered(false)))) {
      const now = wait;
      wait = Math.min(wait * 2, LONGEST_WAIT_MS);
      return now;
    }
    wait = FIRST_WAIT_MS;
    await show();
  }
}

/** Send what waits, the oldest first; ask again later where no one answers. */
async function send() {
  wanted = true;
  if (sending) return;
  sending = true;
  clearTimeout(timer);
  let again = FIRST_WAIT_MS;
  try {
    while (wanted) {
      wanted = false;
      again = await sendEach();
      if (turn) await giveTurn();
      turn = false;
    }
  } finally {
    sending = false;
    if (again) timer = setTimeout(send, again);
  }
  await show();
}

/** Send at once when there is reason to think that someone answers again. */
function sendNow() {
  if (document.visibilityState === "hidden") return;
  wait = FIRST_WAIT_MS;
  send();
}

function button(text, act) {
  const made = document.createElement("button");
  made.type = "button";
  made.className = "button button--quiet";
  made.textContent = text;
  made.addEventListener("click", act);
  return made;
}

/** Let refused entries wait again, in the order in which they were made. */
async function sendAgain(entries) {
  for (const entry of entries) {
    faults.delete(entry.id);
    await put({ ...entry, refused: undefined });
  }
  send();
}

/** One entry that was refused: why, and what can be done with it. */
function refusal(entry) {
  const item = document.createElement("li");
  const text = document.createElement("p");
  text.textContent = `${entry.label}. ${entry.refused}`;
  item.append(text, button("Send again", () => sendAgain([entry])));
  item.append(button("Throw away", () => drop(entry.id).then(show)));
  if (entry.page && entry.page.split("#")[0] !== location.href.split("#")[0]) {
    const link = document.createElement("a");
    link.className = "button button--quiet";
    link.href = entry.page;
    link.textContent = "Where it was made";
    item.append(link);
  }
  return item;
}

/** What is said of those that wait; nothing while they are taken at once. */
function sentenceOf(waiting) {
  const slow = waiting.length && Date.now() - (waiting[0].made ?? 0) >= WORTH_SAYING_MS;
  if (!slow) return "";
  const number = waiting.length === 1 ? "1 entry waits" : `${waiting.length} entries wait`;
  const until = failed
    ? `. The program answered: ${failed} They are sent again by themselves.`
    : ", to be sent when the program answers. Leave this page open.";
  return `${number} on this device${until}`;
}

/** List what was refused; the list is left alone while it is the same. */
function showRefused(refused) {
  const list = document.querySelector("[data-outbox-refused]");
  const ids = refused.map((entry) => entry.id).join();
  list.hidden = !refused.length;
  document.querySelector("[data-outbox-look]").hidden = list.hidden;
  if (list.dataset.shown === ids) return;
  list.dataset.shown = ids;
  list.replaceChildren(...refused.map(refusal));
  if (refused.length < 2) return;
  list.appendChild(document.createElement("li")).append(
    button("Send all again", () => sendAgain(refused)),
  );
}

/** Say how many wait, and what was refused. */
async function show() {
  const entries = await all();
  const waiting = entries.filter((entry) => !entry.refused);
  const refused = entries.filter((entry) => entry.refused);
  document.documentElement.dataset.outboxWaiting = String(waiting.length);
  clearTimeout(later);
  if (waiting.length) later = setTimeout(show, WORTH_SAYING_MS);
  const bar = document.querySelector("[data-outbox-bar]");
  if (!bar) return;
  const none = refused.length ? `${refused.length} not taken.` : "";
  const text = [sentenceOf(waiting), none].filter(Boolean).join(" ");
  const line = bar.querySelector("[data-outbox-count]");
  if (line.textContent !== text) line.textContent = text;
  bar.hidden = !text;
  showRefused(refused);
}

/** Where nothing can be kept, forms are sent as ever, and the page says so. */
function cannotKeep() {
  const bar = document.querySelector("[data-outbox-bar]");
  if (!bar || !document.querySelector("form[data-outbox]")) return;
  bar.querySelector("[data-outbox-count]").textContent =
    "This browser keeps nothing on the device: entries are taken only while the program " +
    "answers.";
  bar.hidden = false;
}

/** Take hold of a form before the browser sends it. */
function caught(event) {
  const form = event.target;
  if (!form.matches("form[data-outbox]") || plainly.has(form)) return;
  event.preventDefault();
  keep(form, event.submitter);
}

async function begin() {
  document.addEventListener("submit", caught, { capture: true });
  try {
    for (const entry of await all()) announce("queued", entry);
  } catch {
    cannotKeep();
    return;
  }
  others?.addEventListener("message", ({ data }) => {
    announce(data.name, data.entry, data.answer);
    show();
  });
  addEventListener("online", sendNow);
  document.addEventListener("visibilitychange", sendNow);
  await show();
  document.documentElement.dataset.outbox = "ready";
  send();
}

begin();
