// The form of a book: the usual keys, what its pages show, and all others folded away; each checked as the file is.

import { besides } from "./besides.js";
import { button, element } from "./elements.js";
import { called, field } from "./field.js";
import { insideOf } from "./inside.js";

const FIRST = ["title", "author", "space", "stack", "size.height", "size.width", "life_size.height", "life_size.width", "block.kind", "block.pages", "block.thickness", "block.stock", "cover.kind", "design.style", "design.palette", "design.colour", "design.second_colour", "design.ink", "design.ornament", "design.face"];

let unfolded = false;

/** All groups of keys of a book, the usual ones first. */
export function form(told, asked, changes) {
  if (told.fixed) return element("p", {}, `It cannot be changed here: ${told.fixed}.`);
  const shown = (one) => field(one, asked, (value) => changes.make({ thing: told.id, set: { [one.key]: value }, was: { [one.key]: one.written } }, "", true), `field-${one.key}`, called(one.key), besides(one, told, asked, changes));
  const usual = [];
  const others = [];
  for (const group of told.form) {
    if (group.fixed) {
      usual.push(element("p", { class: "soft" }, `${group.key} cannot be changed here: ${group.fixed}.`));
      continue;
    }
    const fields = group.fields.filter((one) => one.written !== null || !one.key.match(/^(size|life_size)\./));
    usual.push(...fields.filter((one) => FIRST.includes(one.key)).map(shown));
    const rest = fields.filter((one) => !FIRST.includes(one.key));
    if (rest.length) others.push(element("fieldset", {}, element("legend", {}, group.key || "the book"), rest.map(shown)));
  }
  const more = element("details", { ontoggle: (event) => { unfolded = event.target.open; } }, element("summary", { "data-key": "others" }, "all other keys"), others);
  more.open = unfolded;
  return [element("div", { class: "fields" }, usual), insideOf(told, asked, changes), more, element("div", { class: "row" }, acts(told, changes))];
}

function acts(told, changes) {
  return [
    told.copied ? element("span", { class: "soft" }, `cannot be copied: ${told.copied}`) : button("copy the book", () => changes.make({ thing: told.id, copy_it: true }, `${told.name} is copied.`)),
    told.removed ? element("span", { class: "soft" }, `cannot be removed: ${told.removed}`) : button("remove the book", () => changes.make({ thing: told.id, remove: true }, `${told.name} is removed; undo brings it back.`), { class: "careful" }),
  ];
}
