// Books dragged along a shelf, onto another shelf, or onto a stack; by pointer, by touch after a rest, or by keys.

import { element, say } from "./elements.js";

const REST = 350; // ms a finger rests on a book before it is lifted
const FAR = 5; // pixels a pointer moves before it drags
const EDGE = 48; // pixels from an edge of what is seen where a drag scrolls
const FASTEST = 14; // pixels a frame

export class Drag {
  constructor(shelf, changes) {
    this.shelf = shelf;
    this.changes = changes;
    this.held = null;
    this.mark = element("div", { class: "mark", hidden: true });
    shelf.place.addEventListener("pointerdown", (event) => this.down(event));
    document.addEventListener("pointermove", (event) => this.move(event));
    document.addEventListener("pointerup", (event) => this.up(event));
    document.addEventListener("pointercancel", () => this.drop());
    shelf.place.addEventListener("scroll", () => { this.places = null; }, { passive: true });
    shelf.place.addEventListener("touchmove", (event) => { if (this.held?.lifted) event.preventDefault(); }, { passive: false });
    shelf.place.addEventListener("click", (event) => { if (this.moved) { event.stopImmediatePropagation(); this.moved = false; } }, true);
    shelf.place.addEventListener("keydown", (event) => this.typed(event));
    document.addEventListener("keydown", (event) => { if (event.key === "Escape") this.drop(); });
  }

  down(event) {
    if (this.held) { // a second finger zooms
      this.drop();
      return;
    }
    const one = event.target.closest("button.thing");
    if (!one || event.button !== 0) return;
    const id = one.dataset.thing;
    this.held = { id, one, x: event.clientX, y: event.clientY, lifted: false, pointer: event.pointerId, touch: event.pointerType === "touch" };
    if (this.held.touch) this.held.timer = setTimeout(() => this.lift(), REST);
  }

  lift() {
    const { id, one } = this.held;
    const fixed = this.shelf.state.things[id]?.fixed;
    if (fixed) {
      say(`It cannot be moved here: ${fixed}.`);
      this.drop();
      return;
    }
    this.held.lifted = true;
    this.places = null;
    const box = one.getBoundingClientRect();
    const seen = one.querySelector("canvas");
    this.ghost = element("canvas", { class: "ghost", width: seen.width, height: seen.height });
    if (seen.width) this.ghost.getContext("2d").drawImage(seen, 0, 0);
    this.ghost.style.width = `${box.width}px`;
    this.ghost.style.height = `${box.height}px`;
    this.grip = { x: this.held.x - box.left, y: this.held.y - box.top };
    document.body.append(this.ghost);
    one.classList.add("lifted");
  }

  move(event) {
    const held = this.held;
    if (!held || event.pointerId !== held.pointer) return;
    const far = Math.hypot(event.clientX - held.x, event.clientY - held.y) > FAR;
    if (!held.lifted && far) {
      if (held.touch) { this.drop(); return; }
      this.lift();
    }
    if (!this.held?.lifted) return;
    this.at = { x: event.clientX, y: event.clientY };
    this.pending ??= requestAnimationFrame(() => this.follow());
  }

  /** Once a frame: the book under the pointer, and where it would go. */
  follow() {
    this.pending = null;
    if (!this.held?.lifted) return;
    this.ghost.style.transform = `translate(${this.at.x - this.grip.x}px, ${this.at.y - this.grip.y}px)`;
    this.goal = this.goalAt(this.at.x, this.at.y);
    if (this.scrolled()) this.pending = requestAnimationFrame(() => this.follow());
  }

  /** Near an edge the shelf scrolls on, faster the nearer; whether it did. */
  scrolled() {
    const place = this.shelf.place;
    const box = place.getBoundingClientRect();
    const speed = (from, to, at) => Math.max(0, 1 - (at - from) / EDGE) * -FASTEST + Math.max(0, 1 - (to - at) / EDGE) * FASTEST;
    const before = [place.scrollLeft, place.scrollTop];
    const limited = (value) => Math.min(Math.max(value, -FASTEST), FASTEST);
    place.scrollBy({ left: limited(speed(box.left, box.right, this.at.x)), top: limited(speed(box.top, box.bottom, this.at.y)), behavior: "instant" });
    return before[0] !== place.scrollLeft || before[1] !== place.scrollTop;
  }

  /** Where every book and every space is; measured once, until the shelf is scrolled or shown anew. */
  measured() {
    this.places ??= [...this.shelf.place.querySelectorAll(".space")].map((space) => {
      const recess = space.querySelector(".recess");
      const books = [...recess.querySelectorAll("button.thing")].map((one) => ({ id: one.dataset.thing, lies: one.dataset.lies === "yes", box: one.getBoundingClientRect() }));
      return { space, recess, books, box: space.getBoundingClientRect(), home: recess.getBoundingClientRect() };
    });
    return this.places;
  }

  /** Where a book would go: a space, before which book, in which stack. */
  goalAt(x, y) {
    this.mark.hidden = true;
    const found = this.measured().find((one) => within(one.box, x, y));
    if (!found || found.space.dataset.space === "") return null;
    const { recess, home } = found;
    const name = found.space.dataset.space;
    const others = found.books.filter((other) => other.id !== this.held.id);
    const things = this.shelf.state.things;
    const lying = others.find((other) => other.lies && things[other.id].stack && within(other.box, x, y));
    if (lying) {
      this.show(recess, home, lying.box, true);
      return { space: name, stack: things[lying.id].stack, before: lying.id };
    }
    const list = things[this.held.id].list;
    const may = others.filter((other) => this.mayStandBefore(things, this.held.id, other.id));
    const after = may.find((other) => other.box.left + other.box.width / 2 > x);
    // one that stays in its row or table stands behind the others of it, or behind what the file has before it
    const before = list ? (may.length ? may : others.filter((other) => things[other.id].number < things[this.held.id].number)) : others;
    const last = before.at(-1);
    const edge = after ? after.box.left : last ? last.box.right : home.left;
    this.show(recess, home, { left: edge, top: home.top, width: 0, height: home.height }, false);
    return { space: name, stack: null, before: after ? after.id : null };
  }

  /** What is written in a row or a table stays in it, and nothing else comes between its books. */
  mayStandBefore(things, id, other) {
    const { list } = things[id];
    return this.isFree(things, other) && (list ? things[other].list === list : !things[other].list || things[other].first);
  }

  isFree(things, id) {
    return things[id].noun === "book" && !this.heldIn(things).has(id);
  }

  /** All that stands in something else. */
  heldIn(things) {
    if (this.of !== things) {
      this.of = things;
      this.inside = new Set(Object.values(things).flatMap((one) => one.held));
    }
    return this.inside;
  }

  show(recess, home, box, whole) {
    if (this.mark.parentNode !== recess) recess.append(this.mark);
    this.mark.hidden = false;
    this.mark.style.left = `${box.left - home.left}px`;
    this.mark.style.top = `${box.top - home.top}px`;
    this.mark.style.width = whole ? `${box.width}px` : "3px";
    this.mark.style.height = `${whole ? 4 : box.height}px`;
  }

  up(event) {
    const held = this.held;
    if (!held || event.pointerId !== held.pointer) return;
    if (held.lifted) {
      this.at = { x: event.clientX, y: event.clientY };
      this.follow();
    }
    const goal = held.lifted ? this.goal : null;
    this.moved = held.lifted;
    setTimeout(() => { this.moved = false; }, 50);
    this.drop();
    if (goal) this.place(held.id, goal);
  }

  place(id, goal) {
    const name = this.shelf.state.things[id].name;
    this.changes.make({ thing: id, place: true, ...goal }, `${name} stands on ${goal.space}${goal.stack ? `, in the stack ${goal.stack}` : ""}.`);
  }

  drop() {
    if (!this.held) return;
    clearTimeout(this.held.timer);
    this.held.one.classList.remove("lifted");
    this.ghost?.remove();
    this.mark.hidden = true;
    this.held = this.goal = null;
  }

  /** Shift and an arrow: one place on, or to the next shelf. */
  typed(event) {
    const one = event.target.closest("button.thing");
    if (!one || !event.shiftKey || !event.key.startsWith("Arrow")) return;
    event.preventDefault();
    const id = one.dataset.thing;
    const things = this.shelf.state.things;
    if (things[id].fixed) { say(`It cannot be moved here: ${things[id].fixed}.`); return; }
    const { space, stack } = things[id];
    if (event.key === "ArrowUp" || event.key === "ArrowDown") {
      const names = this.shelf.state.spaces.map((other) => other.name).filter(Boolean);
      const next = names[names.indexOf(space) + (event.key === "ArrowDown" ? 1 : -1)];
      if (next !== undefined) this.place(id, { space: next, stack: null, before: null });
      return;
    }
    const beside = this.shelf.state.spaces.find((other) => other.name === space)?.shown.map((shown) => shown.thing) ?? [];
    const free = [...new Set(beside)].filter((other) => other === id || this.mayStandBefore(things, id, other));
    const at = free.indexOf(id);
    const to = event.key === "ArrowLeft" ? free[at - 1] : free[at + 2];
    if (event.key === "ArrowLeft" ? at > 0 : at < free.length - 1) this.place(id, { space, stack, before: to ?? null });
  }
}

function within(box, x, y) {
  return x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;
}
