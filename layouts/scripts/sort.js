// Tables of the fleet: a tap on a head sorts by its column, and a field above
// leaves only the rows in which every word stands. Without this script the
// tables are there as they are.
"use strict";
for (const table of document.querySelectorAll("table[data-filter]")) {
  const body = table.tBodies[0];
  const text = (row) => row.textContent.toLowerCase();

  const label = document.createElement("label");
  label.className = "filter";
  const input = document.createElement("input");
  input.type = "search";
  const count = document.createElement("output");
  label.append(table.dataset.filter, " ", input, " ", count);
  table.closest(".scroll").before(label);
  input.addEventListener("input", () => {
    const words = input.value.toLowerCase().split(/\s+/).filter(Boolean);
    let shown = 0;
    for (const row of body.rows) {
      row.hidden = !words.every((word) => text(row).includes(word));
      if (!row.hidden) shown++;
    }
    count.textContent = words.length ? `${shown}/${body.rows.length}` : "";
  });

  // Days and numbers go by their values, all else as people sort words.
  const value = (row, column) => {
    const cell = row.cells[column];
    return cell.dataset.value || cell.textContent.trim();
  };
  const compare = new Intl.Collator(document.documentElement.lang, { numeric: true, sensitivity: "base" }).compare;
  for (const head of table.tHead.rows[0].cells) {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "sort";
    button.append(...head.childNodes);
    head.append(button);
    button.addEventListener("click", () => {
      const column = head.cellIndex;
      const up = head.getAttribute("aria-sort") === "ascending";
      for (const other of table.tHead.rows[0].cells) other.removeAttribute("aria-sort");
      head.setAttribute("aria-sort", up ? "descending" : "ascending");
      const rows = [...body.rows].sort((a, b) => compare(value(a, column), value(b, column)) * (up ? -1 : 1));
      body.append(...rows);
    });
  }
}
