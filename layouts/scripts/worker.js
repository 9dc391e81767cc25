// The worker of one van: it keeps the whole guide on the phone and answers from
// there. Above stands what the publish wrote: const guide = {van, safety, files:
// [[path, sum], ...], spare: [[path, sum], ...], instead: [[path, path], ...], lost}.
//
// Every file is kept under the sum of its content, and a file whose content has
// another sum is not taken: so an error page, a login or a page of a half-way
// deploy is never kept, and files of two versions never mix. The list stands in
// this script: a new guide is a new worker, which comes to work only when all
// its pages are on the phone.
"use strict";
const root = new URL(".", self.location).pathname;
const start = root + guide.van;
const shelfName = "guide " + start; // of this van of this fleet and no other
const sums = new Map([...guide.files, ...guide.spare]);
const spare = new Map(guide.spare);
const instead = new Map(guide.instead);

const keyOf = (sum) => new URL(start + "/" + sum, self.location).href;
const stampKey = keyOf("safety");
const spareKey = keyOf("spare");
const types = { html: "text/html; charset=utf-8", js: "text/javascript; charset=utf-8", jpg: "image/jpeg", png: "image/png", webp: "image/webp" };
const typeOf = (path) => types[path.endsWith("/") ? "html" : path.split(".").pop()] || "application/octet-stream";
const isPicture = (path) => typeOf(path).startsWith("image/");

// keeping ---------------------------------------------------------------

const hex = (buffer) => Array.from(new Uint8Array(buffer), (byte) => byte.toString(16).padStart(2, "0")).join("");

// fetchFile keeps one file, if the network gives exactly what was published. A
// host that tells versions by their second may call an old copy in the browser's
// own store good: then the file is asked for past that store.
const fetchFile = async (shelf, path, sum) => {
  for (const cache of ["no-cache", "reload"]) {
    const response = await fetch(root + path, { cache, redirect: "error", signal: AbortSignal.timeout(60000) });
    if (!response.ok) return false;
    const data = await response.arrayBuffer();
    if (!hex(await crypto.subtle.digest("SHA-256", data)).startsWith(sum)) continue;
    await shelf.put(keyOf(sum), new Response(data, { headers: { "Content-Type": typeOf(path) } }));
    return true;
  }
  return false;
};

// list is what this phone keeps: pictures in the format of old browsers only where
// one was asked for, since whoever asks for one reads no other.
const list = async (shelf) => ((await shelf.match(spareKey)) ? [...guide.files, ...guide.spare] : guide.files);

// fill fetches what the shelf lacks, a few at a time, and gives the paths that
// could not be had. One that fails spoils no other.
const fill = async () => {
  const shelf = await caches.open(shelfName);
  const there = new Set((await shelf.keys()).map((request) => request.url));
  const wanted = (await list(shelf)).filter(([, sum]) => !there.has(keyOf(sum)));
  const missing = [];
  const next = async () => {
    for (let file; (file = wanted.shift()); ) {
      if (!(await fetchFile(shelf, ...file).catch(() => false))) missing.push(file[0]);
    }
  };
  await Promise.all([next(), next(), next(), next(), next(), next()]);
  return missing;
};

// prune takes off the shelf what no page of this guide shows.
const prune = async () => {
  const shelf = await caches.open(shelfName);
  const mine = new Set([spareKey, ...(await list(shelf)).map(([, sum]) => keyOf(sum))]);
  for (const request of await shelf.keys()) if (!mine.has(request.url)) await shelf.delete(request);
  await shelf.put(stampKey, new Response(guide.safety));
};

// critical reports whether what keeps people safe differs from what is shown now.
const critical = async () => {
  const stamp = await (await caches.open(shelfName)).match(stampKey);
  return !stamp || (await stamp.text()) !== guide.safety;
};

const tell = async (message) => {
  for (const client of await self.clients.matchAll({ includeUncontrolled: true })) client.postMessage(message);
};

const state = async () => {
  if (gone) return { van: start, gone };
  const shelf = await caches.open(shelfName);
  const there = new Set((await shelf.keys()).map((request) => request.url));
  return { van: start, kept: guide.files.filter(([, sum]) => there.has(keyOf(sum))).length, of: guide.files.length };
};

// Where nothing may be kept, or there is no room, pages come from the network as
// before.
const orElse = (value) => () => value;

self.addEventListener("install", (event) => event.waitUntil((async () => {
  const missing = await fill().catch(orElse(null));
  const before = self.registration.active;
  if (before && missing === null) return;
  if (before && missing.some((path) => !isPicture(path))) throw new Error("the new guide is not complete yet");
  if (!before || (await critical().catch(orElse(true)))) await self.skipWaiting();
})()));

self.addEventListener("activate", (event) => event.waitUntil((async () => {
  await prune().catch(orElse());
  await self.clients.claim();
  await tell(await state().catch(orElse({})));
})()));

self.addEventListener("message", (event) => {
  if (event.data === "show") event.waitUntil(self.skipWaiting());
  if (event.data === "state") event.waitUntil(state().then((now) => event.source.postMessage(now), orElse()));
});

// answering -------------------------------------------------------------

// pathOf is an address as the list names it, undefined where it is not below
// the fleet. What a scanner adds as a query means nothing.
const pathOf = (url) => {
  if (url.origin !== self.location.origin || !url.pathname.startsWith(root)) return undefined;
  const path = url.pathname.slice(root.length).replace(/(^|\/)index\.html$/, "$1");
  return instead.get(path) || path;
};

const take = async (path) => {
  if (gone) return undefined;
  try {
    const kept = await (await caches.open(shelfName)).match(keyOf(sums.get(path)));
    // Made anew, it has no address of its own: links start from the one asked for.
    return kept && new Response(kept.body, { headers: kept.headers });
  } catch {
    return undefined; // there is nothing where nothing may be kept
  }
};

const lost = () => new Response(guide.lost.replaceAll("START", start + "/"), { status: 503, headers: { "Content-Type": types.html } });

const answer = async (request, path) => {
  const kept = await take(path);
  if (kept) return kept;
  try {
    return await fetch(request);
  } catch (error) {
    if (request.mode === "navigate") return lost();
    throw error;
  }
};

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const path = request.method === "GET" ? pathOf(new URL(request.url)) : undefined;
  if (path === undefined) return;
  const visit = request.mode === "navigate";
  const mine = path === guide.van || path.startsWith(guide.van + "/");
  if (visit && mine) event.waitUntil(behind());
  if (spare.has(path)) event.waitUntil(keepSpare().catch(orElse()));
  if (sums.has(path)) event.respondWith(answer(request, path));
  else if (visit && mine) event.respondWith(elsewhere(request, path));
});

// keepSpare keeps pictures in the format of old browsers too, from now on.
const keepSpare = async () => {
  const shelf = await caches.open(shelfName);
  if (gone || (await shelf.match(spareKey))) return;
  await shelf.put(spareKey, new Response("kept"));
  await fill();
};

// elsewhere answers for addresses that are not in the list as they stand: one
// without its last slash, one in small letters, or one that is not there.
const elsewhere = async (request, path) => {
  const folder = path.endsWith("/") ? path : path + "/";
  for (const name of [folder, folder.toUpperCase()]) {
    if (sums.has(name)) return Response.redirect(root + name, 302);
  }
  return fetch(request).catch(lost);
};

// checking behind what is shown -----------------------------------------

// One look after the other: a visit during one is followed by another.
let looked = Promise.resolve();
const behind = () => (looked = looked.then(look, look));

const look = async () => {
  try {
    if (await retired()) return await leave();
    await fill();
    await tell(await state());
  } catch {
    // no network, or nothing may be kept: next time
  }
};

// retired reports whether the fleet says that it has no such van any more. That
// an answer is missing says nothing.
const retired = async () => {
  const response = await fetch(root + "vans.json", { cache: "no-cache", redirect: "error" });
  if (!response.ok) return false;
  const { vans } = await response.json();
  return Array.isArray(vans) && vans.length > 0 && !vans.includes(guide.van);
};

// leave takes everything off the phone. Pages that are open load again, from the
// network; one that is only just opening asks for the state and is told then.
let gone = false;
const leave = async () => {
  gone = true;
  await (async () => caches.delete(shelfName))().catch(orElse());
  await self.registration.unregister();
  await tell({ van: start, gone });
};
