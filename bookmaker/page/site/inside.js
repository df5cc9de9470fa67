// What the pages of a book show, part after part: kinds chosen, keys set, parts added, moved and taken out.

import { button, element } from "./elements.js";
import { field } from "./field.js";

const openParts = new Set();

/** The parts of the inside of a book. */
export function insideOf(told, asked, changes) {
  const inside = told.inside;
  if (!inside) return null;
  const head = element("legend", {}, "what the pages show");
  if (inside.fixed) return element("fieldset", { class: "parts" }, head, element("p", { class: "soft" }, `It cannot be changed here: ${inside.fixed}.`));
  const same = inside.parts.map((_, at) => ({ was: at, set: {} }));
  const write = (parts, words) => changes.make({ thing: told.id, inside: parts, was: { inside: inside.seen } }, words);
  const another = (at, set) => write(same.map((one, number) => (number === at ? { ...one, set } : one)));
  const moved = (at, to) => {
    const parts = same.toSpliced(at, 1);
    return write(parts.toSpliced(to, 0, same[at]), "The parts are in another order.");
  };
  const parts = inside.parts.map((part, at) => partShown(part, at, inside, asked, another, [
    at > 0 ? button("earlier", () => moved(at, at - 1), { "aria-label": `part ${at + 1} earlier` }) : null,
    at < same.length - 1 ? button("later", () => moved(at, at + 1), { "aria-label": `part ${at + 1} later` }) : null,
    same.length > 1 ? button("take out", () => write(same.toSpliced(at, 1), `Part ${at + 1} is taken out; undo brings it back.`), { "aria-label": `take part ${at + 1} out`, class: "careful" }) : null,
  ]));
  const kind = element("select", { "aria-label": "kind of another part", "data-key": "inside-add" }, inside.kinds.map((one) => element("option", {}, one)));
  const add = button("add a part", () => write([...same, { was: null, set: { kind: kind.value } }], `A part is added: ${kind.value}.`), { "data-key": "inside-add-button" });
  return element("fieldset", { class: "parts" }, head, parts, inside.one ? null : element("div", { class: "row" }, add, kind));
}

function partShown(part, at, inside, asked, another, acts) {
  const name = (key) => `inside: part ${at + 1}: ${key}`;
  const kind = element("select", { id: `inside-${at}-kind`, "data-key": `inside-${at}-kind`, "aria-label": name("kind"), onchange: (event) => another(at, { kind: event.target.value }) }, inside.kinds.map((one) => element("option", {}, one)));
  kind.value = part.kind;
  const fields = part.fields.map((one) => {
    const key = one.key.split(".").at(-1);
    return field(one, asked, (value) => another(at, { [key]: value }), `inside-${at}-${key}`, key.replace(/_/g, " "));
  });
  const set = part.fields.filter((one) => one.written !== null).length;
  const more = element("details", { ontoggle: (event) => (event.target.open ? openParts.add(at) : openParts.delete(at)) },
    element("summary", { "aria-label": name("keys"), "data-key": `inside-${at}-keys` }, set ? `keys (${set} set)` : "keys"),
    element("div", { class: "fields" }, fields),
    part.others.length ? element("p", { class: "soft" }, `In the file besides: ${part.others.join(", ")}.`) : null);
  more.open = openParts.has(at);
  return element("div", { class: "part", role: "group", "aria-label": `part ${at + 1}: ${part.kind}` },
    element("div", { class: "row" }, element("span", { class: "number" }, `${at + 1}`), kind, acts), more);
}
