// What is done with the whole shelf: units, another book, the sheets.

import { button, element } from "./elements.js";
import { maker } from "./make.js";
import { remember, units } from "./lengths.js";

export function tools(asked, changes, state, again) {
  const told = () => (units.inches ? "inches" : "mm");
  const unit = button(told(), () => {
    units.inches = !units.inches;
    remember("units", told());
    unit.textContent = told();
    again();
  }, { id: "units", "aria-label": "lengths in mm or inches" });
  const add = asked.live ? button("add a book …", () => askForBook(changes, state()), { "aria-haspopup": "dialog" }) : null;
  return element("div", { class: "row", role: "group", "aria-label": "Shelf" }, [add, unit, asked.live ? maker(asked) : null].filter(Boolean));
}

/** A new book: its title, and where it stands; the rest is changed afterwards. */
function askForBook(changes, state) {
  const text = (label, key, example, required) => {
    const input = element("input", { type: "text", id: `new-${key}`, placeholder: example, required, autocomplete: "off" });
    return { key, input, row: element("div", { class: "field" }, element("label", { for: `new-${key}` }, label), input) };
  };
  const rows = [text("title", "title", "", true), text("author", "author", "", false), text("height of the page", "size.height", "21 mm", true), text("width of the page", "size.width", "15 mm", true), text("pages", "block.pages", "32", false)];
  const space = element("select", { id: "new-space" }, state.spaces.filter((one) => one.name).map((one) => element("option", {}, one.name)));
  const wrong = element("p", { class: "refused", role: "alert" });
  const dialog = element("dialog", { "aria-labelledby": "new-title-head" });
  const form = element("form", { method: "dialog", class: "asked", onsubmit: async (event) => {
    event.preventDefault();
    const set = Object.fromEntries(rows.map(({ key, input }) => [key, input.value.trim() || null]));
    const refused = await changes.make({ add: true, set, space: space.value || null }, `${set.title} is added.`);
    if (refused) wrong.textContent = refused;
    else dialog.close();
  } },
  element("h2", { id: "new-title-head" }, "Another book"), rows.map(({ row }) => row),
  element("div", { class: "field" }, element("label", { for: "new-space" }, "stands on"), space), wrong,
  element("div", { class: "row" }, element("button", { type: "submit", class: "main" }, "add"), button("leave it", () => dialog.close())));
  dialog.append(form);
  dialog.addEventListener("close", () => dialog.remove());
  document.body.append(dialog);
  dialog.showModal();
}
