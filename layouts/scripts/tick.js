// Rows of a table that can be ticked: what is ticked is added up and held
// against the limits. Without this script the table says the same in rows.
"use strict";
for (const figure of document.querySelectorAll("figure[data-tick]")) {
  const { title, sum, unit, limits } = JSON.parse(figure.dataset.tick);
  const rows = [...figure.querySelectorAll("tr[data-group]")];
  const boxes = rows.map((row) => {
    const head = row.cells[0];
    const label = document.createElement("label");
    const box = document.createElement("input");
    box.type = "checkbox";
    label.className = "tick";
    label.append(box, ...head.childNodes);
    head.append(label);
    return box;
  });

  const panel = document.createElement("div");
  panel.className = "sum";
  panel.setAttribute("role", "status");
  figure.querySelector(".scroll").after(panel);

  const line = (text, className) => {
    const p = document.createElement("p");
    if (className) p.className = className;
    p.textContent = text;
    return p;
  };

  const show = () => {
    const on = rows.filter((row, i) => boxes[i].checked);
    if (!on.length) {
      panel.replaceChildren(line(title));
      return;
    }
    // Whole thousandths: a sum of decimals must not miss a limit by its noise.
    const total = (i) => on.reduce((all, row) => all + Math.round(1000 * row.dataset.value.split(" ")[i]), 0) / 1000;
    const said = (number) => number.toLocaleString(document.documentElement.lang) + "\u00a0" + unit;
    const lines = [line(sum.replace("#", said(total(0))), "total")];
    for (const limit of limits) {
      const of = total(limit.sum || 0);
      const step = limit.steps.find((s) => s.upto === undefined || of <= Number(s.upto));
      // What is left rounds down, what is too much up.
      const left = Math.abs(Math.floor(((1000 * limit.left) - Math.round(1000 * of)) / 1000));
      lines.push(line(limit.name + ": " + step.text.replace("#", said(left)), step.tone));
    }
    panel.replaceChildren(...lines);
  };

  boxes.forEach((box, i) => box.addEventListener("change", () => {
    // Of one appliance's settings only one can be on.
    if (box.checked) boxes.forEach((other, j) => {
      if (j !== i && rows[j].dataset.group === rows[i].dataset.group) other.checked = false;
    });
    show();
  }));
  show();
}
