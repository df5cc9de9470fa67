// The page begins here: who is asked, what is shown, and what happens when something changes.

import { byId, say } from "./elements.js";
import { Shelf } from "./shelf.js";
import { on, source, tell } from "./source.js";
import { Wrong } from "./wrong.js";
import { Zoom } from "./zoom.js";

const asked = await source();
const choose = (id) => tell("chosen", id);
const shelf = new Shelf(byId("shelf"), asked, choose);
const wrong = new Wrong(byId("wrong"), byId("outcome"), choose);
const zoom = new Zoom(byId("shelf"));
byId("tools").append(zoom.element);

let wanted = 0;
let busy = false;

async function refresh(version) {
  wanted = Math.max(wanted, version);
  if (busy) return;
  busy = true;
  try {
    let shown = -1;
    while (shown < wanted) {
      const state = await asked.state();
      if (!state) break;
      shown = state.version;
      show(state);
    }
  } catch {
    say("The shelf cannot be read from the page just now.");
  }
  busy = false;
}

function show(state) {
  byId("name").textContent = state.shelf ?? state.file;
  document.title = state.shelf ? `${state.shelf} · bookmaker` : "bookmaker";
  if (zoom.times === null && state.spaces.length) zoom.fit(state.spaces);
  shelf.show(state);
  wrong.show(state);
  requestAnimationFrame(() => requestAnimationFrame(() => {
    document.documentElement.dataset.version = state.version;
    document.documentElement.dataset.complete = state.complete ? "yes" : "no";
  }));
}

on("state", refresh);
on("restart", () => say("The work was broken off and begins anew."));
on("connected", (is) => { if (!is) say("bookmaker does not answer: was it ended? Start it again with: bookmaker show"); });
asked.listen();
await refresh(0);
