// The walk, with a script: the same forms, a little quicker.  Nothing here is needed.

/** Say when each form is filled in, by this machine's own clock. */
function noteWhen(event) {
  const box = event.target.elements?.namedItem("made_at");
  if (box) box.value = `${new Date().toISOString().slice(0, 19)}Z`;
}

/** Choose a kind where a link would load the page again with that kind chosen. */
function chooseKind(event) {
  const link = event.target.closest?.("[data-walk-kind]");
  const plain = !(event.ctrlKey || event.metaKey || event.shiftKey || event.altKey);
  const form = document.querySelector("[data-walk-add]");
  if (!link || !plain || !form) return;
  const code = new URL(link.href).searchParams.get("kind");
  const radio = document.getElementById(`kind-${code}`);
  if (!radio) return;
  event.preventDefault();
  const folded = radio.closest("details");
  if (folded) folded.open = true;
  radio.checked = true;
  radio.focus();
  form.scrollIntoView();
}

/** Return what a form that is about to be sent would add, in words. */
function wordsOf(form) {
  const chosen = form.querySelector("[name=kind]:checked");
  const kind = chosen?.labels[0]?.firstChild?.textContent.trim() ?? "";
  const places = [form.dataset.walkAt, form.elements.namedItem("place").value.trim()];
  return [kind, ...places.filter(Boolean)].join(", ");
}

/** Remember which place was touched, to show it while it waits. */
function noteWhere(event) {
  const form = event.target;
  if (!form.matches("[data-walk-add]")) return;
  const button = event.submitter;
  form.dataset.walkAt = button?.name === "at" ? button.value : "";
}

/** Return a key that no other form has; it needs no secure page. */
function newKey() {
  const bytes = crypto.getRandomValues(new Uint8Array(8));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** Show what waits to be sent, and make the form ready for the next thing. */
function showWaiting(event) {
  const { form, entry } = event.detail ?? {};
  const section = document.querySelector("[data-waiting]");
  if (!form?.matches?.("[data-walk-add]") || !section) return;
  const line = document.createElement("li");
  line.textContent = `${wordsOf(form)}: waiting`;
  line.dataset.entry = entry?.id ?? entry?.key ?? "";
  section.querySelector("[data-waiting-list]").prepend(line);
  section.hidden = false;
  form.reset();
  for (const radio of form.querySelectorAll("[name=kind]")) radio.checked = false;
  form.elements.namedItem("once").value = newKey();
}

document.addEventListener("submit", noteWhen, true);
document.addEventListener("submit", noteWhere, true);
document.addEventListener("click", chooseKind);
addEventListener("outbox:queued", showWaiting);
