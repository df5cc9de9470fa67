// What is seen in one place of a shelf: its picture, drawn as pixels when it comes near to what is seen.

import { element } from "./elements.js";
import { length, screen } from "./lengths.js";

const NOTHING = "data:,";
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

/** What is seen in one place: a book, or another edge of what has several. */
export class Shown {
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
      delete this.element.dataset.inked;
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
    if (!wanted) {
      delete this.element.dataset.inked;
      return;
    }
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
    this.element.dataset.inked = "yes";
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
