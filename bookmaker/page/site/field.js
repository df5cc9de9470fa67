// One key as a field: what is written, what may be, what it means, and why a value was refused.

import { element } from "./elements.js";
import { manualLink } from "./linked.js";

/** A field of a form; `set` writes another value, null takes it out, and tells why not if it was refused; `beside` is
 *  what is then asked for with the value. */
export function field(one, asked, set, id = `field-${one.key}`, words = called(one.key), beside = null) {
  const wrong = element("p", { class: "refused", id: `${id}-wrong`, role: "status", hidden: true });
  const further = element("div", {});
  const now = one.default && one.written === null ? `; now ${one.default}` : "";
  const about = element("p", { class: "soft", id: `${id}-about` }, `${one.description}${now} `, manualLink(asked, one.manual, "more", `more about ${words}`));
  const take = async (value) => {
    const wanted = value.trim() === "" ? null : value.trim();
    const refused = wanted === one.written ? undefined : await set(wanted);
    wrong.hidden = !refused;
    wrong.textContent = refused?.message ?? "";
    further.replaceChildren(...(beside?.ask(refused, wanted) ?? []));
    further.querySelector("input, select")?.focus();
    input.setAttribute("aria-invalid", String(Boolean(refused)));
  };
  const attributes = { id, "data-key": id, "aria-describedby": `${id}-about ${id}-wrong`, onchange: (event) => take(event.target.value) };
  const known = !one.choices && one.examples.length > 1 ? element("datalist", { id: `${id}-known` }, one.examples.map((text) => element("option", { value: text }))) : null;
  const input = one.choices ? chosen(one, attributes) : element("input", { type: "text", value: one.written ?? "", placeholder: one.examples[0] || one.default, list: known?.id, autocomplete: "off", spellcheck: "false", ...attributes });
  const colour = one.colour ? element("input", { type: "color", value: six(one.written), "aria-label": `${words}, chosen from all colours`, onchange: (event) => take(event.target.value) }) : null;
  const open = beside?.again();
  if (open) {
    input.value = open.value;
    further.replaceChildren(...open.fields);
  }
  return element("div", { class: "field" }, element("label", { for: id }, words), element("div", { class: "row" }, input, known, colour), about, wrong, further);
}

/** What a key is called: its last words, with those before it. */
export function called(key) {
  return key.replace(/_/g, " ").replace(/\./g, ": ");
}

function chosen(one, attributes) {
  const texts = one.written !== null && !one.choices.includes(one.written) ? [one.written, ...one.choices] : one.choices;
  const nothing = element("option", { value: "" }, one.default ? `left out (${one.default})` : "left out");
  const made = element("select", attributes, nothing, texts.map((text) => element("option", { value: text }, text)));
  made.value = one.written ?? "";
  return made;
}

function six(colour) {
  if (!colour) return "#808080";
  return colour.length === 4 ? `#${[...colour.slice(1)].map((digit) => digit + digit).join("")}` : colour;
}
