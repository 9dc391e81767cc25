// Search of one van's guide. Library and documents are files of this site that
// are loaded when somebody first looks for something; it works without a network
// once they are on the phone.
"use strict";

// guideFinder gives the function that finds pages. data holds the documents, the
// words that carry no meaning in a question (idle), those that tell of trouble
// (trouble) and the endings of words that mean the same without (endings), all of
// the guide's language.
const guideFinder = (MiniSearch, { documents, idle, trouble, endings }) => {
  const split = (text) => text.toLowerCase().normalize("NFD").replace(/[\u0300-\u036f]/g, "")
    .replace(/(\d)[\s\u00a0]*v\b/g, "$1v").replace(/['\u2019]/g, "").split(/[^\p{L}\p{N}]+/u).filter(Boolean);

  // "hook up", "hook-up" and "hookup" are one thing to whoever looks for it:
  // neighbours are also written as one word.
  const joined = (list) => list.slice(1).map((word, i) => list[i] + word);
  const idleWords = new Set(idle.split(" "));
  const troubleWords = new Set(trouble.split(" "));

  const index = new MiniSearch({
    fields: ["code", "title", "words", "about", "lines"],
    storeFields: ["kind"],
    extractField: (page, field) => (Array.isArray(page[field]) ? page[field].join(" \u00b7 ") : page[field]),
    tokenize: (text, field) => {
      const list = split(text);
      return field === "lines" || field === "about" ? list : list.concat(joined(list));
    },
  });
  index.addAll(documents);

  // What people say, word for word.
  const phrases = documents.map((page) => [page.title, ...page.words.split(" \u00b7 ")].map(split));
  const exact = phrases.map((list) => new Set(list.map((phrase) => phrase.join(" "))));

  // Spellings of a word that mean the same: "taps", "tripping", "tripped".
  const known = new Map();
  const variants = (word) => {
    if (!known.has(word)) known.set(word, without(word));
    return known.get(word);
  };
  const without = (word) => {
    const list = [];
    for (const ending of endings.split(" ")) {
      const stem = word.slice(0, -ending.length);
      if (!word.endsWith(ending) || stem.length < 3) continue;
      list.push(stem);
      if (stem.at(-1) === stem.at(-2)) list.push(stem.slice(0, -1));
    }
    return list;
  };

  const options = (last, word, fuzzy) => ({
    tokenize: (text) => [text],
    boost: { code: 8, title: 4, words: 3, about: 1, lines: 0.5 },
    prefix: last || word.length > 3,
    fuzzy: fuzzy && word.length > 3 ? (word.length > 7 ? 2 : 1) : 0,
    weights: { prefix: 0.55, fuzzy: 0.4 },
  });

  // hits gives what finds one word, by document: number -> score. Only a word
  // that nothing begins with is taken for misspelt.
  const kept = new Map(); // a sentence is searched again with each letter of its last word
  const hits = (word, last) => {
    const key = word + (last ? " last" : "");
    if (!kept.has(key)) kept.set(key, look(word, last));
    return kept.get(key);
  };
  const look = (word, last) => {
    const found = new Map();
    const take = (list, weight) => {
      for (const hit of list) found.set(hit.id, Math.max(found.get(hit.id) || 0, weight * hit.score));
    };
    take(index.search(word, options(last, word)), 1);
    for (const variant of variants(word)) take(index.search(variant, options(true, variant)), 0.8);
    if (!found.size) take(index.search(word, options(last, word, true)), 1);
    return found;
  };

  // A word names a thing; words such as "not" or "stuck" tell of trouble. Danger
  // goes first.
  const weight = (kind, troubled, single) => {
    if (kind === "danger") return single ? 1.1 : 1.6;
    if (kind === "symptom") return troubled ? 1.9 : single ? 0.5 : 0.9;
    // What a van no longer has is found by its old code, and where nothing else is.
    return kind === "gone" ? 0.2 : 1;
  };

  // said tells how much of a question stands in one of a page's phrases.
  const said = (id, words) => {
    const forms = words.map((word) => [word, ...variants(word)]);
    let most = 0;
    for (const phrase of phrases[id]) {
      const long = phrase.filter((word) => !idleWords.has(word)).length || 1;
      const common = forms.filter((list) => phrase.some((word) => list.includes(word) || variants(word).includes(list[0]))).length;
      most = Math.max(most, common / Math.max(words.length, long));
    }
    return most;
  };

  const find = (query) => {
    const typed = split(query);
    const useful = typed.filter((word) => !idleWords.has(word));
    const all = useful.length ? useful : typed;
    const found = all.map((word, i) => hits(word, i === all.length - 1));
    const both = joined(all).map((pair, i) => hits(pair, i === all.length - 2));
    // What nobody wrote anywhere does not count against the rest.
    const some = all.map((_, i) => i).filter((i) => found[i].size || (i < both.length && both[i].size) || (i > 0 && both[i - 1].size));
    const words = some.map((i) => all[i]);
    const troubled = typed.some((word) => troubleWords.has(word));
    const scores = new Map();
    for (const list of [...found, ...both]) for (const id of list.keys()) scores.set(id, 0);
    for (const id of scores.keys()) {
      const best = some.map((i) => Math.max(found[i].get(id) || 0, (i < both.length && both[i].get(id)) || 0, (i > 0 && both[i - 1].get(id)) || 0));
      const covered = best.filter(Boolean).length / best.length;
      const sum = best.reduce((total, score) => total + score, 0);
      const page = documents[id];
      const near = said(id, words);
      const text = words.join(" "), whole = typed.join(" ");
      scores.set(id, sum * covered ** 2 * (1 + near) * weight(page.kind, troubled, typed.length === 1)
        // Word for word goes before all else, but for danger and label codes.
        + (exact[id].has(text) || exact[id].has(whole) ? 1000 : 0)
        + (page.kind === "danger" && typed.length > 1 && covered === 1 && near > 0.7 ? 2000 : 0)
        + (page.code && typed.includes(page.code.toLowerCase()) ? 10000 : 0));
    }
    return [...scores.keys()].sort((a, b) => scores.get(b) - scores.get(a) || a - b).map((id) => documents[id]);
  };

  // nearest gives pages for a query that finds none: its words taken for badly
  // misspelt ones.
  const nearest = (query) => {
    const far = split(query).filter((word) => word.length > 4);
    const list = far.flatMap((word) => index.search(word, { tokenize: (text) => [text], fuzzy: 0.4, fields: ["title", "words"] }));
    return [...new Set(list.sort((a, b) => b.score - a.score).map((hit) => hit.id))].map((id) => documents[id]);
  };

  // sentence gives what to show under a result: the sentence of the page in which
  // most of the words stand, as pieces of text and of text that was looked for.
  const sentence = (page, query) => {
    const words = split(query).filter((word) => !idleWords.has(word)).flatMap((word) => [word, ...variants(word)]);
    const known = (text) => words.some((word) => text === word || (word.length > 2 && text.startsWith(word)));
    let best = page.about, most = 0;
    for (const text of [page.about, ...page.lines]) {
      const n = new Set(split(text).filter(known)).size;
      if (n > most) [best, most] = [text, n];
    }
    return best.split(/([\p{L}\p{N}\u2019']+)/u).map((piece) => ({ piece, hit: split(piece).some(known) }));
  };

  return { find, nearest, sentence };
};

(() => {
  const form = document.getElementById("find");
  if (!form) return;
  const input = document.getElementById("query");
  const list = document.getElementById("found");
  const none = document.getElementById("found-none");
  const status = document.getElementById("found-count");
  const most = 8;
  let finder;

  const fetchScript = (src) => new Promise((resolve, reject) => {
    const script = document.createElement("script");
    script.src = src;
    script.onload = resolve;
    script.onerror = reject;
    document.head.append(script);
  });

  let loading;
  const load = () => loading ||= Promise.all(form.dataset.load.split(" ").map(fetchScript)).then(() => {
    finder = guideFinder(MiniSearch, guideDocuments);
    form.dataset.ready = "yes";
    show();
  }).catch(() => {
    loading = undefined; // perhaps the next word finds a network
    if (input.value.trim()) status.textContent = form.dataset.failed;
  });

  const show = () => {
    const query = input.value.trim();
    if (!finder) return;
    const hits = query ? finder.find(query).slice(0, most) : [];
    const near = query && !hits.length ? finder.nearest(query).slice(0, 3) : [];
    list.replaceChildren(...(hits.length ? hits : near).map((page) => entry(page, query)));
    none.hidden = !query || hits.length > 0;
    status.textContent = !query ? "" : hits.length ? form.dataset.count.replace("#", hits.length) : near.length ? form.dataset.near : form.dataset.none;
  };

  const entry = (page, query) => {
    const item = document.createElement("li");
    const link = document.createElement("a");
    link.href = page.path;
    if (page.code) link.append(part("span", "tag", page.code));
    const what = part("span", "what", "");
    const line = part("span", "", "");
    for (const { piece, hit } of finder.sentence(page, query)) line.append(hit ? part("mark", "", piece) : piece);
    what.append(part("b", "", page.title), line);
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

  input.addEventListener("focus", load);
  input.addEventListener("input", () => { load(); show(); });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const first = list.querySelector("a");
    if (first) first.focus();
  });
  // A tap on Find anywhere leads here.
  const focus = () => { if (location.hash === "#find") input.focus(); };
  addEventListener("hashchange", focus);
  focus();
  if (input.value) load();
})();
