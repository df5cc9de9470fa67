// The page begins here: who is asked, what is shown, and what happens when something changes.

import { Changes } from "./changes.js";
import { Desk } from "./book.js";
import { Drag } from "./drag.js";
import { byId, say } from "./elements.js";
import { firstShelf } from "./first.js";
import { preferUnits } from "./lengths.js";
import { looksOf } from "./looks.js";
import { Shelf } from "./shelf.js";
import { on, source, tell } from "./source.js";
import { tools, unitWords } from "./tools.js";
import { Wrong } from "./wrong.js";
import { Zoom } from "./zoom.js";

const asked = await source();
const choose = (id) => tell("chosen", id);
const shelf = new Shelf(byId("shelf"), asked, choose);
const wrong = new Wrong(byId("wrong"), byId("outcome"), choose, asked);
const zoom = new Zoom(byId("shelf"), () => shelf.redraw());
let following;
const changes = new Changes(asked, (id) => { following = { id }; }, (id) => Boolean(shelf.state.things[id]));
const desk = new Desk(byId("desk"), byId("room"), asked, changes, looksOf(asked, changes));
byId("tools").append(...(asked.live ? [changes.element] : []), zoom.element, tools(asked, changes, shelf, zoom, () => show(shelf.state)));
if (asked.live) new Drag(shelf, changes);

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

let beginning = false;

function show(state) {
  if (state.missing) {
    if (!beginning) firstShelf(byId("shelf"), asked);
    beginning = true;
    byId("tools").hidden = true;
    byId("name").textContent = state.file;
    byId("outcome").textContent = "There is no such file yet.";
    document.documentElement.dataset.complete = "none";
    return;
  }
  if (beginning) byId("shelf").replaceChildren();
  beginning = false;
  byId("tools").hidden = false;
  preferUnits(state.inches);
  byId("units").textContent = unitWords();
  byId("name").textContent = state.shelf ?? state.file;
  document.title = state.shelf ? `${state.shelf} · bookmaker` : "bookmaker";
  if (zoom.times === null && state.spaces.length) zoom.fit(state.spaces);
  const focused = document.activeElement?.dataset?.thing;
  const painted = shelf.show(state);
  wrong.show(state);
  if (state.journal) changes.count(state.journal);
  if (state.complete && !state.broken) follow(state, focused);
  painted.then(() => requestAnimationFrame(() => requestAnimationFrame(() => {
    document.documentElement.dataset.version = state.version;
    document.documentElement.dataset.complete = state.complete ? "yes" : "no";
  })));
}

/** What is on the desk stays there, under whatever name it has now; so does the focus. */
async function follow(state, focused) {
  await changes.last;
  if (state !== shelf.state) return;
  if (following && desk.id !== null && !state.things[desk.id]) desk.id = following.id;
  following = undefined;
  await desk.refresh(state.things);
  if (focused && document.activeElement === document.body) shelf.button(focused)?.focus();
  if (desk.id) shelf.mark(desk.id);
}

on("chosen", (id) => { shelf.mark(id)?.scrollIntoView({ block: "nearest", inline: "nearest" }); desk.open(id); });
on("state", refresh);
on("restart", () => say("The work was broken off and begins anew."));
on("connected", (is) => { if (!is) say("bookmaker does not answer: was it ended? Start it again with: bookmaker show"); });
asked.listen();
await refresh(0);
