// What is wrong, by weight, with its place and what to do; a press puts the place on the clipboard.

import { button, element, refill, say } from "./elements.js";
import { manualLink } from "./linked.js";

const ORDER = ["error", "warning", "note"];
const FEW = 4;

export class Wrong {
  constructor(place, outcome, choose, asked) {
    this.asked = asked;
    this.place = place;
    this.outcome = outcome;
    this.choose = choose;
    this.all = false;
  }

  show(state) {
    this.state = state;
    const problems = [...state.problems].sort((a, b) => ORDER.indexOf(a.severity) - ORDER.indexOf(b.severity));
    this.outcome.textContent = outcomeOf(state);
    this.outcome.dataset.state = state.broken ? "broken" : problems.some((one) => one.severity === "error") ? "wrong" : "sound";
    this.place.hidden = problems.length === 0;
    const grave = problems.filter((one) => one.severity !== "note");
    const notes = problems.filter((one) => one.severity === "note");
    const shown = this.all ? grave : grave.slice(0, FEW);
    const more = grave.length - shown.length;
    const unfolded = this.place.querySelector("details")?.open ?? false;
    const folded = notes.length
      ? element("details", {}, element("summary", { "data-key": "notes" }, notes.length === 1 ? "1 note" : `${notes.length} notes`), element("ul", {}, notes.map((one) => this.told(one))))
      : null;
    if (folded) folded.open = unfolded;
    refill(this.place,
      state.broken ? element("p", { class: "kept" }, "The file cannot be used as it is now. The picture is that of the last good one.") : null,
      shown.length ? element("ul", {}, shown.map((one) => this.told(one))) : null,
      more > 0 ? button(`${more} more`, () => { this.all = true; this.show(this.state); }, { "data-key": "more" }) : null,
      folded);
  }

  told(one) {
    const what = one.remedy ? `${one.message}; ${one.remedy}` : one.message;
    return element("li", { "data-severity": one.severity },
      element("span", { class: "severity" }, one.severity), " ", what, " ",
      one.place ? button(one.place, () => copied(one.place), { class: "place", title: "put the place on the clipboard", "data-key": one.place + one.message }) : null,
      one.thing && this.state.things[one.thing] ? button("show", () => this.choose(one.thing), { class: "place", "aria-label": `show ${this.state.things[one.thing].name}` }) : null,
      manualLink(this.asked, one.manual, "more", `more about “${one.message}”`),
      one.source ? element("code", {}, one.source) : null);
  }
}

function outcomeOf(state) {
  if (state.broken) return "The file is broken for the moment.";
  if (!state.complete) return "The books are being drawn …";
  const counts = ORDER.map((severity) => [state.problems.filter((one) => one.severity === severity).length, severity]);
  const found = counts.filter(([count]) => count).map(([count, severity]) => `${count} ${severity}${count > 1 ? "s" : ""}`);
  const sound = !state.problems.some((one) => one.severity === "error");
  if (!sound) return `The shelf has problems: ${found.join(", ")}.`;
  return found.length ? `The shelf is sound (${found.join(", ")}).` : "The shelf is sound.";
}

/** Put a text on the clipboard, and say so. */
export async function copied(text) {
  try {
    await navigator.clipboard.writeText(text);
    say(`${text} is on the clipboard.`);
  } catch {
    say(`The clipboard cannot be reached; the place is ${text}.`);
  }
}
