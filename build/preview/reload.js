// Loads the page again when there is a newer one, where the reader was, and
// shows over it what keeps a newer one from being made.
"use strict";
(() => {
  const shown = Number(document.currentScript.dataset.site);
  const key = "preview " + location.pathname;
  let board = null;

  const kept = sessionStorage.getItem(key);
  if (kept !== null) {
    sessionStorage.removeItem(key);
    const place = () => scrollTo({ top: Number(kept), behavior: "instant" });
    place();
    addEventListener("load", place);
  }

  // Styles are set one by one: the page's own policy allows no sheet but its own.
  const styles = {
    position: "fixed", inset: "auto 0 0 0", zIndex: "2147483647", maxHeight: "70vh", overflow: "auto", margin: "0",
    padding: "1em", background: "#7a1210", color: "#fff", font: "14px/1.5 ui-monospace, monospace", whiteSpace: "pre-wrap",
  };

  function show(text) {
    if (!text) {
      if (board) board.remove();
      board = null;
      return;
    }
    if (!board) {
      board = document.createElement("div");
      board.id = "preview-wrong";
      board.setAttribute("role", "alert");
      Object.assign(board.style, styles);
      document.body.append(board);
    }
    board.textContent = "This page is the last good one.\n\n" + text;
  }

  new EventSource("/-preview/events").onmessage = (event) => {
    const state = JSON.parse(event.data);
    show(state.wrong);
    if (!state.wrong && state.site !== shown) {
      sessionStorage.setItem(key, String(scrollY));
      location.reload();
    }
  };
})();
