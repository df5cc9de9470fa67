// The form of a book: each key with what is written, what may be, and why something cannot be changed.

import { button, element } from "./elements.js";

const FIRST = ["title", "author", "space", "stack", "size.height", "size.width", "life_size.height", "life_size.width", "block.pages", "block.thickness", "design.style", "design.palette", "design.colour", "design.second_colour", "design.ink", "design.ornament", "design.face"];

let unfolded = false;

/** All groups of keys of a book, the usual ones first. */
export function form(told, changes) {
  if (told.fixed) return element("p", {}, `It cannot be changed here: ${told.fixed}.`);
  const usual = [];
  const others = [];
  for (const group of told.form) {
    const fields = group.fields.filter((one) => one.written !== null || !one.key.match(/^(size|life_size)\./));
    const mine = fields.filter((one) => FIRST.includes(one.key));
    const rest = fields.filter((one) => !FIRST.includes(one.key));
    if (group.fixed) {
      usual.push(element("p", { class: "soft" }, `${group.key} cannot be changed here: ${group.fixed}.`));
      continue;
    }
    usual.push(...mine.map((one) => field(told, one, changes)));
    if (rest.length) others.push(element("fieldset", {}, element("legend", {}, group.key || "the book"), rest.map((one) => field(told, one, changes))));
  }
  const more = element("details", { ontoggle: (event) => { unfolded = event.target.open; } }, element("summary", {}, "all other keys"), others);
  more.open = unfolded;
  return [element("div", { class: "fields" }, usual), more, element("div", { class: "row" }, acts(told, changes))];
}

function acts(told, changes) {
  return [
    told.copied ? element("span", { class: "soft" }, `cannot be copied: ${told.copied}`) : button("copy the book", () => changes.make({ thing: told.id, copy_it: true }, `${told.name} is copied.`)),
    told.removed ? element("span", { class: "soft" }, `cannot be removed: ${told.removed}`) : button("remove the book", () => changes.make({ thing: told.id, remove: true }, `${told.name} is removed; undo brings it back.`), { class: "careful" }),
  ];
}

/** What a key is called: its last words, with those before it. */
function called(key) {
  return key.replace(/_/g, " ").replace(/\./g, ": ");
}

function field(told, one, changes) {
  const id = `field-${one.key}`;
  const wrong = element("p", { class: "refused", id: `${id}-wrong`, hidden: true });
  const about = element("p", { class: "soft", id: `${id}-about` }, one.description + (one.default && one.written === null ? `; now ${one.default}` : ""));
  const set = async (value) => {
    const wanted = value.trim() === "" ? null : value.trim();
    if (wanted === one.written) return;
    const refused = await changes.make({ thing: told.id, set: { [one.key]: wanted }, was: { [one.key]: one.written } });
    wrong.hidden = !refused;
    wrong.textContent = refused ?? "";
    input.setAttribute("aria-invalid", String(Boolean(refused)));
  };
  const attributes = { id, "data-key": id, "aria-describedby": `${id}-about ${id}-wrong`, onchange: (event) => set(event.target.value) };
  const input = one.choices ? chosen(one, attributes) : element("input", { type: "text", value: one.written ?? "", placeholder: one.example || one.default, autocomplete: "off", spellcheck: "false", ...attributes });
  const colour = one.colour ? element("input", { type: "color", value: six(one.written), "aria-label": `${called(one.key)}, chosen from all colours`, onchange: (event) => set(event.target.value) }) : null;
  return element("div", { class: "field" }, element("label", { for: id }, called(one.key)), element("div", { class: "row" }, input, colour), about, wrong);
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
