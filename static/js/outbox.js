// Forms that must not be lost: each is kept on this device first, then sent, in order,
// until the program has answered.  It counts once however often it is sent, for it
// carries a key of its own.
//
//   <form method="post" data-outbox data-outbox-label="Socket by the door">
//
// Events on document: outbox:queued, outbox:sent, outbox:refused, each with detail
// {entry, answer}.  An entry: id, url, fields, label, refused.

const STORE = "waiting";
const FIRST_WAIT_MS = 1000;
const LONGEST_WAIT_MS = 30000;
const ANSWER_WITHIN_MS = 10000;
// Answers after which the same entry may be taken later.
const AGAIN_LATER = [408, 425, 429];

let opening;
let sending = false;
let wait = FIRST_WAIT_MS;
let timer;

/** Open the device's own store; rejects where a browser has none. */
function open() {
  opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open("ways-outbox", 1);
    request.onupgradeneeded = () =>
      request.result.createObjectStore(STORE, { keyPath: "id", autoIncrement: true });
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  return opening;
}

/** Do one thing with the store; resolves once it is on the disk. */
async function within(mode, act) {
  const database = await open();
  return new Promise((resolve, reject) => {
    const options = mode === "readwrite" ? { durability: "strict" } : undefined;
    const transaction = database.transaction(STORE, mode, options);
    const request = act(transaction.objectStore(STORE));
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

function tell(name, entry, answer) {
  document.dispatchEvent(new CustomEvent(`outbox:${name}`, { detail: { entry, answer } }));
}

/** Keep a form on this device, then send what waits. */
async function keep(form, submitter) {
  const fields = [...new FormData(form, submitter)].filter(
    ([name, value]) => name !== "key" && typeof value === "string",
  );
  fields.push(["key", newKey()], ["made_at", new Date().toISOString()]);
  const entry = { url: form.action, fields, label: form.dataset.outboxLabel ?? "" };
  entry.id = await put(entry);
  tell("queued", entry);
  await show();
  send();
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
  if (said?.error === "token" && !token) return post(entry, said.token);
  return { ok: answer.ok && json, status: answer.status, said };
}

/** Send one entry; whether the next may follow. */
async function deliver(entry) {
  const answer = await post(entry);
  if (answer.ok) {
    await drop(entry.id);
    tell("sent", entry, answer.said);
    return true;
  }
  const final = answer.said && answer.status >= 400 && answer.status < 500;
  if (!final || AGAIN_LATER.includes(answer.status)) return false;
  await put({ ...entry, refused: answer.said.sentence ?? "It was not taken." });
  tell("refused", entry, answer.said);
  return true;
}

/** Send what waits, the oldest first; ask again later where no one answers. */
async function send() {
  if (sending) return;
  sending = true;
  clearTimeout(timer);
  try {
    for (;;) {
      const entry = (await all()).find((each) => !each.refused);
      if (!entry) break;
      const went = await deliver(entry).catch(() => false);
      if (!went) {
        timer = setTimeout(send, wait);
        wait = Math.min(wait * 2, LONGEST_WAIT_MS);
        break;
      }
      wait = FIRST_WAIT_MS;
      await show();
    }
  } finally {
    sending = false;
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

/** One entry that was refused: why, and what can be done with it. */
function refusal(entry) {
  const item = document.createElement("li");
  const text = document.createElement("p");
  text.textContent = `${entry.label}: ${entry.refused}`;
  const again = button("Send again", async () => {
    await put({ ...entry, refused: undefined });
    send();
  });
  const away = button("Throw away", async () => {
    await drop(entry.id);
    show();
  });
  item.append(text, again, away);
  return item;
}

/** Say how many wait. */
async function show() {
  const bar = document.querySelector("[data-outbox-bar]");
  if (!bar) return;
  const entries = await all();
  const waiting = entries.filter((entry) => !entry.refused).length;
  const refused = entries.filter((entry) => entry.refused);
  const text = waiting
    ? `${waiting} ${waiting === 1 ? "entry waits" : "entries wait"} on this device, ` +
      "to be sent when the program answers. Leave this page open."
    : "";
  const line = bar.querySelector("[data-outbox-count]");
  if (line.textContent !== text) line.textContent = text;
  bar.querySelector("[data-outbox-refused]").replaceChildren(...refused.map(refusal));
  bar.hidden = entries.length === 0;
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

async function begin() {
  try {
    await open();
  } catch {
    cannotKeep();
    return;
  }
  document.addEventListener(
    "submit",
    (event) => {
      if (!event.target.matches("form[data-outbox]")) return;
      event.preventDefault();
      keep(event.target, event.submitter);
    },
    { capture: true },
  );
  for (const entry of await all()) tell("queued", entry);
  addEventListener("online", sendNow);
  document.addEventListener("visibilitychange", sendNow);
  await show();
  document.documentElement.dataset.outbox = "ready";
  send();
}

begin();
