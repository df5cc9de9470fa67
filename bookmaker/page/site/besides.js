// What must be said together: a kind of cover or block with the keys that it cannot be without, asked for in one step.

import { button, element } from "./elements.js";
import { field } from "./field.js";

let open = null; // what is asked for just now: it stays while the page is drawn anew

/** For a key of a book, what is asked for below it when a value is refused because of other keys. */
export function besides(one, told, asked, changes) {
  const book = { one, told, asked, changes };
  return {
    ask(refused, value) {
      open = refused ? { id: told.id, key: one.key, was: one.written, value, given: new Map(), message: "" } : null;
      return open ? asking(refused, book) : [];
    },
    again() {
      const same = open && open.id === told.id && open.key === one.key && open.was === one.written;
      return same ? { value: open.value, fields: asking({ problems: [], message: open.message }, book) } : null;
    },
  };
}

/** The fields of the keys that are named in a refusal, with what was given for them before. */
function asking(refused, book) {
  const { one, told, asked, changes } = book;
  const { given, value } = open;
  const known = new Map([...told.form.flatMap((group) => group.fields), ...(one.kinds?.[value] ?? [])].map((each) => [each.key, each]));
  for (const problem of refused.problems) {
    const key = problem.field.slice(2).join(".");
    if (key !== one.key && known.has(key) && !given.has(key)) given.set(key, known.get(key).written);
  }
  if (!given.size) return [];
  const fields = [...given].map(([key, text]) => field({ ...known.get(key), written: text }, asked, async (typed) => void given.set(key, typed), `beside-${key}`));
  const why = element("p", { class: "refused", role: "status" }, open.message);
  const words = `write ${one.key.split(".").at(-1)}: ${value} with ${given.size > 1 ? "these" : "this"}`;
  const further = element("div", {}, element("div", { class: "fields beside" }, fields), button(words, write, { "data-key": "beside" }), why);
  async function write() {
    const set = { [one.key]: value, ...Object.fromEntries(given) };
    const still = await changes.make({ thing: told.id, set, was: { [one.key]: one.written } }, "", true);
    if (!open) return;
    if (!still) {
      open = null;
      return;
    }
    open.message = still.message;
    further.replaceWith(...asking(still, book));
  }
  return [further];
}
