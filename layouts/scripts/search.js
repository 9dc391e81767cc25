// Search of one van's guide. Documents and library are files of this site: it
// works without a network once the page has loaded them.
"use strict";
(() => {
  const form = document.getElementById("find");
  const input = document.getElementById("query");
  const list = document.getElementById("found");
  const status = document.getElementById("found-count");
  if (!form || !window.MiniSearch || !window.guideDocuments) {
    if (form) status.textContent = form.dataset.failed;
    return;
  }

  const words = (text) => text.toLowerCase().normalize("NFD").replace(/[\u0300-\u036f]/g, "")
    .replace(/(\d)[\s\u00a0]*v\b/g, "$1v").replace(/['\u2019]/g, "").split(/[^\p{L}\p{N}]+/u).filter(Boolean);

  // "hook up", "hook-up" and "hookup" are one thing to whoever looks for it:
  // neighbours are also written as one word.
  const joined = (list) => list.slice(1).map((word, i) => list[i] + word);

  // Words that carry no meaning in a question.
  const idle = new Set(form.dataset.idle ? form.dataset.idle.split(" ") : []);

  const index = new MiniSearch({
    fields: ["code", "title", "words", "text"],
    storeFields: ["code", "title", "about", "path", "kind"],
    tokenize: (text, field) => {
      const list = words(text);
      return field === "text" ? list : list.concat(joined(list));
    },
    searchOptions: {
      tokenize: (text) => {
        const list = words(text);
        const useful = list.filter((word) => !idle.has(word));
        const kept = useful.length ? useful : list;
        return kept.concat(joined(kept));
      },
      boost: { code: 8, title: 4, words: 3, text: 0.6 },
      prefix: (term, i, terms) => term.length > 1 && i >= terms.length - 2 || term.length > 3,
      fuzzy: (term) => (term.length > 7 ? 2 : term.length > 3 ? 1 : 0),
      weights: { fuzzy: 0.35, prefix: 0.6 },
    },
  });
  index.addAll(window.guideDocuments);

  // What people say, word for word: an entry of a page's own list counts double.
  const phrases = new Map(window.guideDocuments.map((d) =>
    [d.id, new Set(d.words.split(" \u00b7 ").map((phrase) => words(phrase).join(" ")))]));

  // A single word names a thing; several tell of trouble. Danger goes first.
  const weight = (kind, single) => kind === "danger" ? 1.6 : kind === "symptom" ? (single ? 0.6 : 1.15) : 1;

  const search = (query) => {
    const said = words(query);
    const hits = index.search(query, { boostDocument: (id, term, stored) => weight(stored.kind, said.length === 1) });
    for (const hit of hits) if (phrases.get(hit.id).has(said.join(" "))) hit.score *= 2;
    return hits.sort((a, b) => b.score - a.score);
  };

  const most = 8;
  const show = () => {
    const query = input.value.trim();
    list.replaceChildren();
    status.textContent = "";
    if (!query) return;
    const hits = search(query).slice(0, most);
    status.textContent = hits.length ? form.dataset.count.replace("#", hits.length) : form.dataset.none;
    for (const hit of hits) list.append(entry(hit));
  };

  const entry = (hit) => {
    const item = document.createElement("li");
    const link = document.createElement("a");
    link.href = hit.path;
    if (hit.code) link.append(part("span", "tag", hit.code));
    const what = part("span", "what", "");
    what.append(part("b", "", hit.title), part("span", "", hit.about));
    link.append(what);
    item.append(link);
    return item;
  };

  const part = (tag, className, text) => {
    const element = document.createElement(tag);
    if (className) element.className = className;
    element.textContent = text;
    return element;
  };

  input.addEventListener("input", show);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const first = list.querySelector("a");
    if (first) first.focus();
  });
  // A tap on Find anywhere leads here.
  const focus = () => { if (location.hash === "#find") input.focus(); };
  addEventListener("hashchange", focus);
  focus();
  show();
})();
