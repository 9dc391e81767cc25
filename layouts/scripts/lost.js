// On the page for addresses that lead nowhere: finds the codes of that van that
// are nearest to the one typed. Without it the page lists the vans.
"use strict";
(() => {
  const root = new URL("../", document.currentScript.src);
  const near = document.getElementById("near");
  const typed = decodeURIComponent(location.pathname.slice(root.pathname.length)).toUpperCase().split("/").filter(Boolean);
  if (!near || !typed.length) return;
  const links = [...document.querySelectorAll("main .links a")].filter((a) => a.querySelector(".tag"));
  const vans = links.map((a) => ({ code: a.querySelector(".tag").textContent, href: a.href, node: a }));

  // What is easily taken for something else, in print and in handwriting.
  const plain = (code) => code.replace(/[OQD]/g, "0").replace(/[IL]/g, "1").replace(/S/g, "5").replace(/B/g, "8").replace(/Z/g, "2");

  // How many letters one has to change, add or leave out; those that look alike
  // count a little.
  function distance(a, b) {
    let row = [...b, ""].map((_, i) => i);
    [...a].forEach((x, i) => {
      const next = [i + 1];
      [...b].forEach((y, k) => {
        const other = x === y ? 0 : plain(x) === plain(y) ? 0.3 : 1;
        next.push(Math.min(row[k] + other, row[k + 1] + 1, next[k] + 1));
      });
      row = next;
    });
    return row[b.length];
  }

  // nearest gives those at most two letters away, the nearest first.
  const nearest = (word, all, most) => all.map((one) => ({ ...one, far: distance(word, one.code) }))
    .filter((one) => one.far < Math.min(2, word.length)).sort((a, b) => a.far - b.far || a.code.length - b.code.length).slice(0, most);

  function show(found) {
    if (!found.length) return;
    near.querySelector("ul").replaceChildren(...found.map((one) => {
      const item = document.createElement("li"), link = document.createElement("a"), tag = document.createElement("span"), title = document.createElement("b");
      link.href = one.href;
      tag.className = "tag";
      tag.textContent = one.tag || one.code;
      title.textContent = one.title;
      link.append(tag, title);
      item.append(link);
      return item;
    }));
    near.hidden = false;
  }

  const van = nearest(typed[0], vans, 3).map((v) => ({ ...v, title: v.node.querySelector("b").textContent }));
  if (!van.length) return;
  if (typed.length < 2) {
    show(van);
    return;
  }
  const documents = document.createElement("script");
  documents.src = new URL("find.js", van[0].href);
  documents.onload = () => {
    const all = window.guideDocuments.documents.filter((d) => d.code)
      .map((d) => ({ code: d.code, tag: van[0].code + " " + d.code, title: d.title, href: new URL(d.path, van[0].href).href }));
    const found = nearest(typed[1], all, 4);
    show(found.length ? found : van);
  };
  documents.onerror = () => show(van);
  document.head.append(documents);
})();
