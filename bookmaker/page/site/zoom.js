// How large the shelf is seen: from true size to eight times, on a screen that was told how large it is.

import { leaving, opened } from "./dialogs.js";
import { button, element, say } from "./elements.js";
import { remember, screen } from "./lengths.js";

const CARD = { wide: 85.6, high: 53.98 }; // ISO/IEC 7810, ID-1
const LEAST = 1;
const MOST = 8;
const STEP = 1.25;
const BOARD = 1.6; // mm of board around a space, as the style sheet has it
const BESIDE = 48; // pixels beside a space
const ABOVE = 110; // pixels for its name above and its room below
const SETTLED = 150; // ms without another size, until pictures are drawn for it

export class Zoom {
  constructor(shelf, settled) {
    this.shelf = shelf;
    this.settled = settled;
    this.times = null;
    this.slider = element("input", { type: "range", min: 0, max: 100, step: 1, id: "zoom", "aria-label": "how many times true size", oninput: () => this.slid() });
    this.told = element("output", { for: "zoom" });
    this.element = element("div", { class: "zoom", role: "group", "aria-label": "Size" },
      button("−", () => this.to(this.times / STEP), { "aria-label": "smaller" }),
      this.slider,
      button("+", () => this.to(this.times * STEP), { "aria-label": "larger" }),
      this.told,
      button("true size", () => this.to(1), { class: "when-wide" }),
    );
    shelf.addEventListener("wheel", (event) => this.wheeled(event), { passive: false });
    this.pinching(shelf);
  }

  /** Show so many times true size, with what lies at a point of the view kept where it is. */
  to(times, point = { x: this.shelf.clientWidth / 2, y: this.shelf.clientHeight / 2 }) {
    const before = this.times;
    this.times = screen.times = Math.min(Math.max(times, LEAST), MOST);
    document.documentElement.style.setProperty("--mm", `${this.times * screen.pixelsPerMm}px`);
    this.slider.value = (100 * Math.log(this.times)) / Math.log(MOST);
    this.told.textContent = `${Math.round(this.times * 100)} %`;
    clearTimeout(this.settling);
    this.settling = setTimeout(this.settled, SETTLED);
    if (before) {
      const grown = this.times / before;
      this.shelf.scrollLeft = (this.shelf.scrollLeft + point.x) * grown - point.x;
      this.shelf.scrollTop = (this.shelf.scrollTop + point.y) * grown - point.y;
    }
  }

  /** At first, so large that any space is seen as a whole, with its board and what is told of it. */
  fit(spaces) {
    const most = (side) => Math.max(...spaces.map((space) => space[side]), 1) + 2 * BOARD;
    const wide = (this.shelf.clientWidth - BESIDE) / most("width");
    const high = (this.shelf.clientHeight - ABOVE) / most("height");
    this.to(Math.min(wide, high) / screen.pixelsPerMm);
  }

  slid() {
    this.to(MOST ** (this.slider.value / 100));
  }

  wheeled(event) {
    if (!event.ctrlKey && !event.metaKey) return;
    event.preventDefault();
    const box = this.shelf.getBoundingClientRect();
    this.to(this.times * Math.exp(-event.deltaY / 300), { x: event.clientX - box.left, y: event.clientY - box.top });
  }

  pinching(shelf) {
    const fingers = new Map();
    let start = null;
    const apart = () => {
      const [one, other] = [...fingers.values()];
      return Math.hypot(one.x - other.x, one.y - other.y);
    };
    const between = () => {
      const [one, other] = [...fingers.values()];
      const box = shelf.getBoundingClientRect();
      return { x: (one.x + other.x) / 2 - box.left, y: (one.y + other.y) / 2 - box.top };
    };
    shelf.addEventListener("touchmove", (event) => { if (event.touches.length > 1) event.preventDefault(); }, { passive: false });
    shelf.addEventListener("pointerdown", (event) => {
      if (event.pointerType !== "touch") return;
      fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
      if (fingers.size === 2) start = { apart: apart(), times: this.times };
    });
    shelf.addEventListener("pointermove", (event) => {
      if (!fingers.has(event.pointerId)) return;
      fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
      if (fingers.size === 2 && start) this.to((start.times * apart()) / start.apart, between());
    });
    for (const end of ["pointerup", "pointercancel"]) {
      document.addEventListener(end, (event) => fingers.delete(event.pointerId));
    }
  }

  /** Ask how large the screen is, with a card held against it. */
  ask() {
    const card = element("div", { class: "card" });
    const slider = element("input", { type: "range", min: 2, max: 9, step: 0.005, value: screen.pixelsPerMm, "aria-label": "width of the rectangle" });
    const draw = () => {
      card.style.width = `${CARD.wide * slider.value}px`;
      card.style.height = `${CARD.high * slider.value}px`;
    };
    slider.addEventListener("input", draw);
    draw();
    const dialog = opened("How large is this screen?", { class: "asked" },
      element("p", {}, "Hold a bank card against the rectangle and move the slider until both are of one size. Then true size is true."),
      slider, card,
      element("div", { class: "row" },
        button("it fits", () => {
          screen.pixelsPerMm = Number(slider.value);
          remember("screen", slider.value);
          dialog.close();
          this.to(this.times);
          say("True size is now true on this screen.");
        }, { class: "main" }),
        leaving()));
  }
}
