// The picture of the shelf: every space with what stands in it, at the scale that the page has.

import { element } from "./elements.js";
import { length, screen } from "./lengths.js";

const WORDS = { over: "too full", tight: "tight", fits: "fits" };

const NEAR = "200px"; // spaces so near to what is seen have their pictures; others let them go
const NOTHING = "data:,";
const AT_ONCE = 8; // so many pictures that changed are drawn at once
const SLICE = 8; // so many ms pictures are drawn at a time, and then a frame is shown

/** Pictures that wait to be drawn, one after the other. */
const waiting = new Set();
let drawing = false;

async function draw() {
  if (drawing) return;
  drawing = true;
  let since = performance.now();
  for (const one of waiting) {
    waiting.delete(one);
    await one.load().catch(() => {});
    if (performance.now() - since > SLICE) {
      await new Promise((shown) => requestAnimationFrame(shown));
      since = performance.now();
    }
  }
  drawing = false;
}

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

/** What is seen in one place: a book, or another edge of what has several. */
class Shown {
  constructor(source, first) {
    this.source = source;
    this.first = first;
    this.image = element("canvas", { hidden: true });
    this.element = first
      ? element("button", { type: "button", class: "thing", tabindex: "-1", "aria-pressed": "false" }, this.image)
      : element("div", { class: "thing", "aria-hidden": "true" }, this.image);
  }

  /** Its picture begins, or is let go. */
  near(near) {
    if (near && this.picture !== this.loaded) this.wait();
    else if (!near) {
      waiting.delete(this);
      this.image.width = this.image.height = 0;
      this.image.hidden = true;
      this.loaded = null;
    }
  }

  wait() {
    waiting.add(this);
    draw();
  }

  /** Draw the picture as pixels, as many as there are on the screen: a thousand drawings would be heavy to move. */
  async load() {
    const wanted = (this.loaded = this.picture);
    this.image.hidden = !wanted;
    if (!wanted) return;
    const drawing = new Image();
    drawing.src = this.source.picture(wanted);
    await drawing.decode();
    if (this.loaded === wanted) this.ink(drawing, wanted);
    drawing.src = NOTHING; // its drawing, which takes a hundred times as much, is let go
  }

  ink(drawing, wanted) {
    const pixels = screen.pixelsPerMm * screen.times * devicePixelRatio;
    this.image.width = Math.ceil(this.size[0] * pixels);
    this.image.height = Math.ceil(this.size[1] * pixels);
    this.image.getContext("2d").drawImage(drawing, 0, 0, this.image.width, this.image.height);
    this.image.dataset.picture = wanted;
  }

  show({ thing, rect, lies, picture }, about, wrong, near) {
    const [x, y, wide, high] = rect;
    this.size = [wide, high];
    const place = `${x} ${y} ${wide} ${high}`;
    if (this.where !== place) {
      this.where = place;
      for (const [name, value] of [["--x", x], ["--y", y], ["--w", wide], ["--h", high]]) this.element.style.setProperty(name, value);
      this.element.dataset.x = x + wide / 2;
    }
    this.element.dataset.thing = thing;
    this.element.dataset.lies = lies ? "yes" : "no";
    const changed = this.picture !== picture;
    this.picture = picture;
    if (wrong) this.element.dataset.wrong = wrong;
    else delete this.element.dataset.wrong;
    if (this.first) this.label(about, wrong);
    return changed && near;
  }

  label(about, wrong) {
    const words = [about.name, `${length(about.thick)} thick`, `${length(about.high)} high`];
    if (about.noun !== "book") words.unshift(about.noun);
    if (wrong) words.push(wrong === "note" ? "with a note" : `with ${wrong === "error" ? "an error" : "a warning"}`);
    const label = words.join(", ");
    if (this.words !== label) {
      this.words = label;
      this.element.setAttribute("aria-label", label);
      this.element.title = about.name;
    }
  }
}
