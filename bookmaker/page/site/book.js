// One book on the desk: in the hand, its pages, cover, thickness, sheets, steps and lines, and what may be changed.

import { button, element, refill, say } from "./elements.js";
import { inTheHand } from "./hand.js";
import { form } from "./form.js";
import { length } from "./lengths.js";
import { copied } from "./wrong.js";

const LEAVES = [
  ["hand", "In the hand"],
  ["change", "Change"],
  ["looks", "Looks"],
  ["pages", "Pages"],
  ["parts", "Cover and parts"],
  ["thickness", "Thickness"],
  ["sheets", "Sheets"],
  ["steps", "Steps"],
  ["lines", "In the file"],
];

export class Desk {
  constructor(place, room, asked, changes, looks) {
    this.place = place;
    this.room = room;
    this.asked = asked;
    this.changes = changes;
    this.looks = looks;
    this.id = null;
    this.leaf = LEAVES[0][0];
    this.opening = 0;
  }

  /** Put a book on the desk; null clears it. */
  async open(id) {
    if (id !== this.id) this.opening = 0;
    this.id = id;
    this.place.hidden = id === null;
    this.room.classList.toggle("open", id !== null);
    if (id === null) {
      this.text = undefined;
      return;
    }
    try {
      const told = await this.asked.get(`thing?id=${encodeURIComponent(id)}`);
      const text = JSON.stringify(told);
      if (this.id === id && (text !== this.text || this.place.childElementCount === 0)) {
        this.text = text;
        this.show(told);
      }
    } catch (refused) {
      say(refused.message);
    }
  }

  /** The shelf has changed: what lies here is looked at again. */
  async refresh(things) {
    if (this.id !== null || !this.place.hidden) await this.open(things[this.id] ? this.id : null);
  }

  show(told) {
    this.told = told;
    const offered = LEAVES.filter(([key]) => this.has(key));
    if (!offered.some(([key]) => key === this.leaf)) this.leaf = offered.find(([key]) => key !== "change")[0];
    const scrolled = this.place.scrollTop;
    const typed = this.typing();
    const tabs = offered.map(([key, words]) => button(words, () => this.turn(key), {
      role: "tab", id: `tab-${key}`, "aria-selected": String(key === this.leaf), "aria-controls": "leaf", tabindex: key === this.leaf ? 0 : -1, "data-key": `tab-${key}`,
    }));
    const list = element("div", { role: "tablist", "aria-label": "About this book", class: "tabs", onkeydown: (event) => this.stepped(event, offered) }, tabs);
    this.body = element("div", { id: "leaf", role: "tabpanel", "aria-labelledby": `tab-${this.leaf}`, tabindex: 0, class: "leaf" });
    refill(this.place,
      element("div", { class: "deskhead" },
        element("h2", {}, told.name),
        button("close", () => this.closed(), { "data-key": "close", "aria-label": "close the book" })),
      element("p", { class: "soft" }, [told.made_as, told.size ? `${length(told.size[2])} thick, ${length(told.size[1])} high, ${length(told.size[0])} deep` : null].filter(Boolean).join(" · ")),
      list, this.body);
    this.fill();
    this.place.scrollTop = scrolled;
    this.typedAgain(typed);
  }

  /** What somebody is typing into a field that did not change meanwhile. */
  typing() {
    const one = document.activeElement;
    return this.place.contains(one) && one.dataset.key && one.value !== undefined ? { key: one.dataset.key, before: one.defaultValue, value: one.value } : null;
  }

  typedAgain(typed) {
    const one = typed && this.place.querySelector(`[data-key="${CSS.escape(typed.key)}"]`);
    if (!one) return;
    if (one.defaultValue === typed.before) one.value = typed.value;
    one.focus();
  }

  closed() {
    const id = this.id;
    this.open(null);
    document.querySelector(`button.thing[data-thing="${CSS.escape(id)}"]`)?.focus();
  }

  has(key) {
    const told = this.told;
    if (key === "hand") return told.size !== null && Object.keys(told.faces).length > 0;
    if (key === "thickness") return told.layers.length > 0;
    if (key === "pages") return told.openings > 0;
    if (key === "looks") return this.asked.live && !told.fixed && told.form.some((group) => group.key === "design");
    if (key === "change") return this.asked.live;
    return true;
  }

  turn(key) {
    this.leaf = key;
    this.show(this.told);
    document.getElementById(`tab-${key}`)?.focus();
  }

  stepped(event, offered) {
    const step = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    if (!step) return;
    event.preventDefault();
    const at = offered.findIndex(([key]) => key === this.leaf);
    this.turn(offered[(at + step + offered.length) % offered.length][0]);
  }

  fill() {
    const made = { hand: () => inTheHand(this.told, this.asked, this), change: () => form(this.told, this.asked, this.changes), looks: () => this.looks(this.told), pages: () => this.pages(), parts: () => this.parts(), thickness: () => this.thickness(), sheets: () => this.sheets(), steps: () => this.steps(), lines: () => this.lines() };
    this.body.replaceChildren(...[made[this.leaf]()].flat(Infinity).filter(Boolean));
  }

  image({ picture, size }, words, times = 4) {
    return element("img", { src: this.asked.picture(picture), alt: words, class: "drawn", style: null, onload: null, width: Math.round(size[0] * 3.78 * times), height: Math.round(size[1] * 3.78 * times) });
  }

  pages() {
    const count = this.told.openings;
    const frame = element("div", { class: "spread" });
    const told = element("p", { class: "soft", "aria-live": "polite" });
    const to = async (number) => {
      this.opening = Math.min(Math.max(number, 0), count - 1);
      told.textContent = `opening ${this.opening + 1} of ${count}`;
      slider.value = this.opening;
      const at = this.opening;
      try {
        const seen = await this.asked.get(`opening?id=${encodeURIComponent(this.told.id)}&number=${at}`);
        if (at === this.opening) frame.replaceChildren(this.image(seen, `opening ${at + 1}`, 8));
      } catch (refused) {
        say(refused.message);
      }
    };
    const slider = element("input", { type: "range", min: 0, max: count - 1, value: this.opening, "aria-label": "opening", oninput: () => to(Number(slider.value)) });
    to(this.opening);
    const back = button("leaf back", () => to(this.opening - 1));
    const on = button("leaf on", () => to(this.opening + 1));
    return [element("div", { class: "row" }, back, on, slider), frame, told];
  }

  parts() {
    const whole = this.told.faces;
    const folded = ["back", "spine", "front"].filter((role) => whole[role]).map((role) => this.image(whole[role], `${role} of ${this.told.name}`, 3));
    return [
      element("h3", {}, "Folded"), element("div", { class: "folded", tabindex: 0, role: "group", "aria-label": "folded cover" }, folded),
      element("h3", {}, "Flat, as printed"),
      this.told.parts.map((part) => element("figure", {},
        this.image(part, `${part.name}, flat`, 2.5), part.reverse ? this.image(part.reverse, `${part.name}, the reverse`, 2.5) : null,
        element("figcaption", {}, `${part.name}, ${length(part.size[0])} × ${length(part.size[1])}, of ${part.stock}`))),
    ];
  }

  thickness() {
    return this.told.layers.map((step) => element("table", {},
      element("caption", {}, step.measured === null ? `${step.name}: ${length(step.computed, 2)}` : `${step.name}: ${length(step.measured, 2)} measured, ${length(step.computed, 2)} computed`),
      element("thead", {}, element("tr", {}, ["layer", "count", "each", "in all"].map((words) => element("th", { scope: "col" }, words)))),
      element("tbody", {}, step.layers.map((layer) => element("tr", {},
        element("th", { scope: "row" }, layer.stock ? `${layer.what} (${layer.stock})` : layer.what),
        element("td", {}, String(Math.round(layer.count * 100) / 100)), element("td", {}, length(layer.each, 3)), element("td", {}, length(layer.total, 2)))))));
  }

  sheets() {
    if (!this.told.sheets.length) return element("p", {}, "No sheets with parts of it were made yet: press “make”.");
    return this.told.sheets.map((sheet) => element("figure", {},
      this.asked.live ? element("img", { class: "sheet", loading: "lazy", alt: `${sheet.file}, page ${sheet.page}`, src: `sheet?file=${encodeURIComponent(sheet.file)}&page=${sheet.page - 1}` }) : null,
      element("figcaption", {}, `${sheet.file}, page ${sheet.page}: ${sheet.parts.join(", ")}`)));
  }

  steps() {
    return [element("p", {}, this.told.steps.about), this.told.steps.makings.map((making) => [
      element("h3", {}, making.heading),
      making.tools.length ? element("p", { class: "soft" }, `Tools: ${making.tools.join("; ")}.`) : null,
      element("ol", {}, making.steps.map((step) => element("li", {}, step))),
      making.figures.map((figure) => element("figure", { class: "step" }, this.image(figure, figure.caption || `drawing: ${making.heading}`, 1.2), figure.caption ? element("figcaption", {}, figure.caption) : null)),
    ])];
  }

  lines() {
    return [element("div", { class: "row" }, element("strong", {}, this.told.lines.place), button("copy the place", () => copied(this.told.lines.place))), element("pre", { tabindex: 0 }, this.told.lines.text)];
  }
}
