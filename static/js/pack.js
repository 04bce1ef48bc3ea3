/* In the pack that is handed over: finds words, and saves the reply as a file.
   Everything is read without it. */
"use strict";

const find = document.querySelector(".find");
const rows = [...document.querySelectorAll("[data-find]")];
const texts = rows.map((row) => row.textContent.toLowerCase());

find.hidden = false;
find.addEventListener("submit", (event) => event.preventDefault());
find.querySelector("input").addEventListener("input", (event) => {
  const words = event.target.value.toLowerCase().split(/\s+/).filter(Boolean);
  let count = 0;
  rows.forEach((row, index) => {
    const there = words.every((word) => texts[index].includes(word));
    row.hidden = !there;
    count += there ? 1 : 0;
  });
  const found = document.querySelector("#found");
  found.textContent = words.length ? `${count} of ${rows.length} lines.` : "";
});

const reply = document.querySelector(".reply");
reply.querySelector("button").hidden = false;
reply.addEventListener("submit", (event) => {
  event.preventDefault();
  const ways = [...reply.querySelectorAll("[data-way]")];
  const said = {
    format: "ways-and-points reply",
    version: 1,
    home: reply.dataset.home,
    by: reply.elements.by.value,
    paper: reply.elements.paper.value,
    dated: reply.elements.dated.value || null,
    ways: ways.filter((way) => way.value.trim())
      .map((way) => ({ ref: way.name, feeds: way.value.trim() })),
    other: reply.elements.other.value.trim(),
  };
  const file = new Blob([JSON.stringify(said, null, 1)], { type: "application/json" });
  const link = document.createElement("a");
  link.href = URL.createObjectURL(file);
  link.download = "reply.json";
  link.click();
  URL.revokeObjectURL(link.href);
});
