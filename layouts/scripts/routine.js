// The ticks of a routine are kept on this phone, by van and routine, so that
// they outlive a reload and need no network. A tick belongs to the words of its
// step: a step that says something else than before is not done yet. Without
// this script the list is one to print.
"use strict";
(() => {
  const list = document.querySelector("ol[data-key]");
  const boxes = [...list.querySelectorAll("input")];
  const { key, left, none, clear } = list.dataset;

  // A short name for the words of a step, with what it is about and where; the
  // same words a second time are another step.
  const names = new Map();
  for (const box of boxes) {
    let name = 0;
    for (const part of box.closest("li").querySelectorAll(".step, .meta")) {
      for (const letter of part.textContent) name = (Math.imul(name, 31) + letter.codePointAt(0)) | 0;
    }
    while ([...names.values()].includes(name)) name++;
    names.set(box, name);
  }
  const tally = document.createElement("p");
  tally.className = "sum tally";
  tally.setAttribute("role", "status");
  const button = document.createElement("button");
  button.className = "button";
  button.textContent = clear;
  list.after(tally, button);

  // A browser that keeps nothing still counts.
  const kept = () => {
    try { return JSON.parse(localStorage.getItem(key)) || []; } catch { return []; }
  };
  const keep = (done) => {
    try { done.length ? localStorage.setItem(key, JSON.stringify(done)) : localStorage.removeItem(key); } catch {}
  };
  const count = () => {
    const open = boxes.filter((box) => !box.checked).length;
    tally.textContent = open ? left.replace("#", open) : none;
    button.hidden = open === boxes.length;
  };
  const show = () => {
    const done = kept();
    for (const box of boxes) box.checked = done.includes(names.get(box));
    count();
  };

  list.addEventListener("change", () => {
    keep(boxes.filter((box) => box.checked).map((box) => names.get(box)));
    count();
  });
  button.addEventListener("click", () => {
    keep([]);
    show();
  });
  addEventListener("storage", show);
  addEventListener("pageshow", show);
  show();
})();
