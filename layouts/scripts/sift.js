// Tables of the staff tree: rows that hold what one types, and sorting by the
// column whose head one taps. Without this script a table is all rows in order.
"use strict";
for (const table of document.querySelectorAll("table[data-sift]")) {
  const bodies = [...table.tBodies];
  const rows = bodies.flatMap((body) => [...body.rows]);
  const text = new Map();
  const told = document.createElement("span");
  const field = document.createElement("input");
  const label = document.createElement("label");
  const box = document.createElement("p");
  box.className = "sift";
  field.type = "search";
  field.autocomplete = "off";
  told.setAttribute("role", "status");
  label.append(table.dataset.sift + " ", field);
  box.append(label, told);
  table.closest("div").before(box);

  const said = (row) => {
    if (!text.has(row)) text.set(row, row.textContent.toLowerCase());
    return text.get(row);
  };
  const sift = () => {
    const wanted = field.value.toLowerCase().split(/\s+/).filter(Boolean);
    let count = 0;
    for (const body of bodies) {
      // In a table of several groups the first row is the heading of its group.
      const head = bodies.length > 1 ? body.rows[0] : null;
      let some = false;
      for (const row of body.rows) {
        if (row === head) continue;
        const whole = said(row) + (head ? " " + said(head) : "");
        row.hidden = !wanted.every((word) => whole.includes(word));
        if (!row.hidden) { some = true; count++; }
      }
      if (head) head.hidden = !some;
    }
    told.textContent = wanted.length ? table.dataset.count.replace("{$count}", count) : "";
  };
  field.addEventListener("input", sift);

  const heads = bodies.length > 1 ? [] : [...table.tHead.rows[0].cells];
  heads.forEach((head, column) => {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "sort";
    button.append(...head.childNodes);
    head.append(button);
    button.addEventListener("click", () => {
      const down = head.getAttribute("aria-sort") === "ascending";
      for (const other of heads) other.removeAttribute("aria-sort");
      head.setAttribute("aria-sort", down ? "descending" : "ascending");
      const key = (row) => row.cells[column].dataset.sort || row.cells[column].textContent.trim();
      const order = new Intl.Collator(document.documentElement.lang, { numeric: true });
      rows.map((row, i) => [key(row), i, row])
        .sort(([a, i], [b, k]) => (a === "") - (b === "") || (down ? order.compare(b, a) : order.compare(a, b)) || i - k)
        .forEach(([, , row]) => row.parentNode.append(row));
    });
  });
}
