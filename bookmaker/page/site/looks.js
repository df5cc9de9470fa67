// Several looks of one book side by side, each drawn as it would come out; a press takes one.

import { button, element, refill } from "./elements.js";

/** Looks of a book: what is offered is what the form of its design may hold. */
export function looksOf(asked, changes) {
  let chosen = "style";
  return (told) => {
    const fields = told.form.find((group) => group.key === "design").fields;
    const kinds = ["style", "palette", "ornament", "face", "wear", "spine_title"].map((key) => fields.find((one) => one.key === `design.${key}`)).filter((one) => one?.choices);
    if (!kinds.some((one) => one.key === `design.${chosen}`)) chosen = "style";
    const rack = element("div", { class: "looks" });
    let showing = 0;
    const show = async (key) => {
      chosen = key;
      const mine = (showing += 1);
      const one = kinds.find((other) => other.key === `design.${key}`);
      refill(rack);
      for (const value of one.choices) {
        if (mine !== showing) return;
        if (!rack.isConnected && rack.children.length) return;
        const set = { [one.key]: value };
        const now = value === (one.written ?? one.default);
        try {
          const seen = await asked.post("looks", { thing: told.id, set });
          if (mine !== showing) return;
          const images = ["spine", "front"].filter((role) => seen[role]).map((role) => element("img", { src: asked.picture(seen[role].picture), alt: "", width: Math.round(seen[role].size[0] * 7), height: Math.round(seen[role].size[1] * 7) }));
          rack.append(button([element("span", { class: "pair" }, images), element("span", {}, now ? `${value} (now)` : value)].map((child) => child), () => changes.make({ thing: told.id, set }, `${told.name} is now ${value}.`), { class: "look", "aria-label": now ? `${value}, as it is now` : value, "aria-pressed": String(now) }));
        } catch (refused) {
          rack.append(element("p", { class: "soft" }, `${value}: ${refused.message}`));
        }
      }
    };
    const choose = element("select", { "aria-label": "what differs", "data-key": "looks-of", onchange: (event) => show(event.target.value) },
      kinds.map((one) => { const key = one.key.replace("design.", ""); return element("option", { value: key, selected: key === chosen }, key.replace(/_/g, " ")); }));
    show(chosen);
    return [element("div", { class: "row" }, "Looks that differ in", choose), rack];
  };
}
