// What every page of a van does besides showing itself: it has the guide kept
// on the phone, and says so; it offers a newer guide; it has night colours.
"use strict";

// Night colours are chosen by hand and stay chosen. Without script a page follows
// the phone's own light and dark.
(() => {
  const button = document.getElementById("night");
  const page = document.documentElement;
  const show = () => button.setAttribute("aria-pressed", page.classList.contains("night"));
  if (!button) return;
  button.hidden = false;
  button.addEventListener("click", () => {
    const on = page.classList.toggle("night");
    try { if (on) localStorage.guideNight = "on"; else delete localStorage.guideNight; } catch { /* not kept, then */ }
    show();
  });
  show();
})();

(() => {
  const { worker, scope } = document.currentScript.dataset;
  let phone; // where storage is forbidden to ask may be an error
  try { phone = navigator.serviceWorker; } catch { return; }
  // From a folder without a server everything is on the device anyway.
  if (!phone || !worker || location.protocol === "file:") return;

  const kept = document.getElementById("kept");
  const newer = document.getElementById("newer");

  const offer = (registration) => {
    if (!registration.waiting || !phone.controller) return;
    newer.hidden = false;
    newer.querySelector("button").onclick = () => registration.waiting && registration.waiting.postMessage("show");
  };

  const watch = (registration) => {
    offer(registration);
    const check = () => registration.update().catch(() => {});
    // A guide that could not be had whole, as while a deploy is half-way, is looked
    // for again soon, and then less and less often.
    let later = 4000;
    const follow = (coming) => coming && coming.addEventListener("statechange", () => {
      offer(registration);
      if (coming.state !== "redundant") return;
      setTimeout(check, later);
      later *= 2;
    });
    follow(registration.installing);
    registration.addEventListener("updatefound", () => follow(registration.installing));
    check();
    document.addEventListener("visibilitychange", () => { if (!document.hidden) check(); });
  };

  phone.addEventListener("message", ({ data }) => {
    if (!data || data.van !== new URL(scope, location).pathname) return;
    if (data.gone) location.reload(); // this van left the fleet
    else kept.hidden = data.kept < data.of;
  });

  // A new guide has taken over: no page of the old one stays on the screen.
  let before = phone.controller;
  phone.addEventListener("controllerchange", () => {
    if (before) location.reload();
    before = phone.controller;
  });

  // A worker that answers already is not registered again: that would bring back
  // one that is about to go. Where a phone forbids workers, pages come from the
  // network as before.
  if (before && before.scriptURL === new URL(worker, location).href) {
    before.postMessage("state");
    phone.ready.then(watch);
  } else phone.register(worker, { scope, updateViaCache: "none" }).then(watch, () => {});
})();
