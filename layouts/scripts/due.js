// What falls due, held against the day on which the page is read. Without this
// script the page gives the days alone.
"use strict";
{
  const table = document.querySelector("table[data-soon]");
  const day = (text) => Date.UTC(...text.split("-").map((n, i) => Number(n) - (i === 1))) / 86400000;
  const now = new Date();
  const today = Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / 86400000;
  for (const row of table ? table.tBodies[0].rows : []) {
    const left = day(row.querySelector("time").dateTime) - today;
    const state = left < 0 ? "late" : left <= Number(table.dataset.soon) ? "near" : "";
    if (!state) continue;
    row.className = state;
    const word = document.createElement("b");
    word.className = "verdict";
    word.textContent = table.dataset[state];
    row.querySelector("time").after(" ", word);
  }
}
