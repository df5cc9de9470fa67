// The picture of the shelf: every space with what stands in it, at the scale that the page has.

import { element } from "./elements.js";
import { length } from "./lengths.js";
import { Shown } from "./shown.js";

const WORDS = { over: "too full", tight: "tight", fits: "fits" };

const NEAR = "200px"; // spaces so near to what is seen have their pictures; others let them go
const AT_ONCE = 8; // so many pictures that changed are drawn at once

/** Shows a shelf in an element, and changes only what changed since. */
export class Shelf {
  constructor(place, source, chosen) {
    this.place = place;
    this.source = source;
    this.chosen = chosen;
    this.spaces = new Map();
    this.state = { spaces: [], things: {}, problems: [] };
    this.eye = new IntersectionObserver((seen) => seen.forEach((one) => one.target.space.seen(one.isIntersecting)), { root: place, rootMargin: NEAR });
    place.addEventListener("click", (event) => this.pressed(event));
    place.addEventListener("keydown", (event) => this.typed(event));
  }

  /** Show another state; done once what changed in sight is painted. */
  show(state) {
    this.state = state;
    const changed = [];
    const worst = worstOf(state.problems);
    const before = this.spaces;
    this.spaces = new Map();
    state.spaces.forEach((space, number) => {
      const shown = before.get(space.name) ?? new Space(this.source, this.eye);
      before.delete(space.name);
      this.spaces.set(space.name, shown);
      changed.push(...shown.show(space, state.things, worst));
      if (this.place.children[number] !== shown.element) this.place.insertBefore(shown.element, this.place.children[number] ?? null);
    });
    for (const gone of before.values()) gone.leave();
    if (!this.place.querySelector('.thing[tabindex="0"]')) this.buttons()[0]?.setAttribute("tabindex", "0");
    if (changed.length <= AT_ONCE) return Promise.allSettled(changed.map((one) => one.load()));
    changed.forEach((one) => one.wait());
    return Promise.resolve();
  }

  /** The size has changed: what is near is drawn anew for it. */
  redraw() {
    for (const space of this.spaces.values()) {
      if (space.near) for (const one of space.things.values()) one.wait();
    }
  }

  /** Mark the thing that is being looked at. */
  mark(id) {
    for (const one of this.place.querySelectorAll('.thing[aria-pressed="true"]')) one.setAttribute("aria-pressed", "false");
    const found = this.button(id);
    if (found) {
      found.setAttribute("aria-pressed", "true");
      this.reach(found);
    }
    return found;
  }

  button(id) {
    return this.place.querySelector(`button.thing[data-thing="${CSS.escape(id)}"]`);
  }

  buttons() {
    return [...this.place.querySelectorAll("button.thing")];
  }

  /** Let the tab key lead to one of the books only: arrows lead from book to book. */
  reach(one) {
    for (const other of this.place.querySelectorAll('.thing[tabindex="0"]')) other.setAttribute("tabindex", "-1");
    one.setAttribute("tabindex", "0");
  }

  pressed(event) {
    const one = event.target.closest("[data-thing]");
    if (one) this.chosen(one.dataset.thing);
  }

  typed(event) {
    const one = event.target.closest("button.thing");
    if (!one || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const next = this.neighbour(one, event.key);
    if (!next) return;
    event.preventDefault();
    this.reach(next);
    next.focus();
  }

  neighbour(one, key) {
    const all = this.buttons();
    const at = all.indexOf(one);
    if (key === "ArrowRight") return all[at + 1];
    if (key === "ArrowLeft") return all[at - 1];
    if (key === "Home") return all[0];
    if (key === "End") return all.at(-1);
    if (key !== "ArrowDown" && key !== "ArrowUp") return undefined;
    const homes = [...this.spaces.values()].map((space) => space.element).filter((space) => space.querySelector("button.thing"));
    const home = homes[homes.indexOf(one.closest(".space")) + (key === "ArrowDown" ? 1 : -1)];
    const x = Number(one.dataset.x);
    const near = (other) => Math.abs(Number(other.dataset.x) - x);
    return home && [...home.querySelectorAll("button.thing")].sort((a, b) => near(a) - near(b))[0];
  }
}

function worstOf(problems) {
  const order = ["note", "warning", "error"];
  const worst = new Map();
  for (const { thing, severity } of problems) {
    if (thing && order.indexOf(severity) > order.indexOf(worst.get(thing))) worst.set(thing, severity);
  }
  return worst;
}

/** One space: its name, its room, its gauge. */
class Space {
  constructor(source, eye) {
    this.source = source;
    this.eye = eye;
    this.near = false;
    this.title = element("h2");
    this.room = element("div", { class: "recess" });
    this.gauge = element("div", { class: "gauge" });
    this.told = element("p", { class: "told" });
    this.element = element("section", { class: "space" }, this.title, element("div", { class: "board" }, this.room), this.gauge, this.told);
    this.things = new Map();
    this.element.space = this;
    eye.observe(this.element);
  }

  /** The space has come near to what is seen, or is far from it. */
  seen(near) {
    this.near = near;
    for (const one of this.things.values()) one.near(near);
  }

  leave() {
    this.eye.unobserve(this.element);
    this.element.remove();
  }

  show(space, things, worst) {
    const name = space.name || "standing nowhere";
    this.title.textContent = name;
    this.element.setAttribute("aria-label", name);
    this.element.dataset.space = space.name;
    const high = Math.max(space.height, ...space.shown.map(({ rect }) => rect[1] + rect[3]));
    const wide = Math.max(space.width, ...space.shown.map(({ rect }) => rect[0] + rect[2]));
    this.room.style.setProperty("--wide", wide);
    this.room.style.setProperty("--high", high);
    this.element.style.setProperty("--high", high);
    this.element.style.setProperty("--wide", wide);
    this.room.style.setProperty("--clear", space.height);
    this.room.style.setProperty("--room", space.width);
    this.measure(space);
    const before = this.things;
    const counts = new Map();
    this.things = new Map();
    let previous = null;
    const changed = [];
    for (const shown of space.shown) {
      const count = counts.get(shown.thing) ?? 0;
      counts.set(shown.thing, count + 1);
      const key = `${shown.thing} ${count}`;
      const one = before.get(key) ?? new Shown(this.source, count === 0);
      before.delete(key);
      this.things.set(key, one);
      if (one.show(shown, things[shown.thing], worst.get(shown.thing), this.near)) changed.push(one);
      const at = previous ? previous.nextSibling : this.room.firstChild;
      if (at !== one.element) this.room.insertBefore(one.element, at);
      previous = one.element;
    }
    for (const gone of before.values()) gone.element.remove();
    return changed;
  }

  measure(space) {
    const known = space.verdict !== undefined;
    this.gauge.hidden = !known;
    this.told.hidden = !known;
    if (!known) return;
    const taken = space.width - space.room_left;
    this.gauge.style.setProperty("--room", space.width);
    this.gauge.style.setProperty("--taken", Math.min(taken, space.width));
    this.gauge.style.setProperty("--low", Math.max(taken - space.likely, 0));
    this.gauge.style.setProperty("--unsure", 2 * space.likely);
    const left = space.room_left >= 0 ? `${length(space.room_left)} left` : `${length(-space.room_left)} too little`;
    const out = space.stands_out.map((one) => `${one.title} is ${length(one.by)} too ${one.side}`);
    this.element.dataset.verdict = space.verdict;
    // the gauge is of the width: what is too tall or too deep is no matter of it
    this.element.dataset.row = out.length && space.room_left >= 0 ? "fits" : space.verdict;
    this.element.dataset.out = out.length ? "yes" : "no";
    const fit = out.length ? "does not fit" : WORDS[space.verdict];
    const words = [`${fit}: ${left} of ${length(space.width)}, ± ${length(space.likely, 2)} likely, ± ${length(space.one_way, 2)} if all err one way`];
    words.push(`${Math.round(space.sure * 100)} % sure that ${out.length ? "all fit" : "the row fits"}`);
    this.told.textContent = [...out, ...words].join(" · ");
  }
}
