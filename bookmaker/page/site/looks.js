// Several looks of one book side by side, each drawn as it would come out; a press takes one.

import { button, element, refill } from "./elements.js";

const AT_A_TIME = 12; // so many looks by number are shown beside one another

/** Looks of a book: what is offered is what the form of its design may hold, and numbers for what is left to chance. */
export function looksOf(asked, changes) {
  let chosen = "style";
  let first = 1;
  return (told) => {
    const fields = told.form.find((group) => group.key === "design").fields;
    const kinds = ["style", "palette", "ornament", "face", "wear", "spine_title"].map((key) => fields.find((one) => one.key === `design.${key}`)).filter((one) => one?.choices);
    const numbered = told.form[0].fields.find((one) => one.key === "look");
    if (numbered) kinds.push(numbered);
    if (!kinds.some((one) => named(one) === chosen)) chosen = "style";
    const rack = element("div", { class: "looks" });
    let showing = 0;
    const show = async (key) => {
      chosen = key;
      const mine = (showing += 1);
      const one = kinds.find((other) => named(other) === key);
      more.hidden = one !== numbered;
      refill(rack);
      for (const value of one === numbered ? numbers(first) : one.choices) {
        if (mine !== showing) return;
        if (!rack.isConnected && rack.children.length) return;
        const set = { [one.key]: value };
        const now = value === (one.written ?? one.default);
        try {
          const seen = await asked.post("looks", { thing: told.id, set });
          if (mine !== showing) return;
          const images = ["spine", "front"].filter((role) => seen[role]).map((role) => element("img", { src: asked.picture(seen[role].picture), alt: "", width: Math.round(seen[role].size[0] * 7), height: Math.round(seen[role].size[1] * 7) }));
          const words = one === numbered ? `look ${value}` : value;
          rack.append(button([element("span", { class: "pair" }, images), element("span", {}, now ? `${words} (now)` : words)], () => changes.make({ thing: told.id, set }, `${told.name} is now ${words}.`), { class: "look", "aria-label": now ? `${words}, as it is now` : words, "aria-pressed": String(now) }));
        } catch (refused) {
          rack.append(element("p", { class: "soft" }, `${value}: ${refused.message}`));
        }
      }
    };
    const choose = element("select", { "aria-label": "what differs", "data-key": "looks-of", onchange: (event) => show(event.target.value) },
      kinds.map((one) => element("option", { value: named(one), selected: named(one) === chosen }, one === numbered ? "what is left to chance" : named(one).replace(/_/g, " "))));
    const more = button("others", () => { first += AT_A_TIME; show(chosen); }, { "data-key": "looks-more" });
    show(chosen);
    return [element("div", { class: "row" }, "Looks that differ in", choose, more), rack];
  };
}

function named(one) {
  return one.key.replace("design.", "");
}

function numbers(from) {
  return Array.from({ length: AT_A_TIME }, (_, at) => String(from + at));
}
