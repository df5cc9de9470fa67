// Changes made on the page: sent to the file, taken back, made again; one at a time, in the order in which they came.

import { button, element, say } from "./elements.js";
import { on } from "./source.js";

export class Changes {
  constructor(asked, followed, isThere) {
    this.asked = asked;
    this.followed = followed;
    this.isThere = isThere;
    this.renamed = new Map();
    this.last = Promise.resolve();
    this.undo = button("undo", () => this.back("undo"), { disabled: true, "aria-keyshortcuts": "Control+Z" });
    this.redo = button("redo", () => this.back("redo"), { disabled: true, "aria-keyshortcuts": "Control+Shift+Z" });
    this.element = element("div", { class: "row", role: "group", "aria-label": "Changes" }, this.undo, this.redo);
    on("journal", (counts) => this.count(counts));
    document.addEventListener("keydown", (event) => this.typed(event));
  }

  count([done, undone]) {
    this.undo.disabled = done === 0;
    this.redo.disabled = undone === 0;
  }

  /** Make a change of one thing; what comes back is why not, if it was refused, which is said unless `told` elsewhere. */
  make(wanted, words, told = false) {
    return this.after(async () => {
      const { thing } = await this.asked.post("change", { ...wanted, ...this.named(wanted.thing) });
      if (wanted.thing && thing !== wanted.thing) this.renamed.set(wanted.thing, thing);
      this.followed(wanted.remove ? null : thing);
    }, words, told);
  }

  /** Ask for something that changes the files; what comes back is why not, if it was refused. */
  post(path, value, words) {
    return this.after(() => this.asked.post(path, value), words);
  }

  /** Do something once all before it is done. */
  after(act, words, told = false) {
    this.last = this.last.then(async () => {
      try {
        await act();
        if (words) say(words);
        return undefined;
      } catch (refused) {
        if (!told) say(refused.message);
        return refused;
      }
    });
    return this.last;
  }

  /** What a thing is called by now, if a change before this one gave it another name. */
  named(thing) {
    return thing && !this.isThere(thing) && this.renamed.has(thing) ? { thing: this.renamed.get(thing) } : {};
  }

  /** Take the last change back, or make it again, once all before it are made. */
  back(path) {
    return this.post(path, {}, path === "undo" ? "Taken back." : "Made again.");
  }

  typed(event) {
    const typing = event.target.closest?.("input, textarea, select");
    if (typing || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z") return;
    event.preventDefault();
    this.back(event.shiftKey ? "redo" : "undo");
  }
}
