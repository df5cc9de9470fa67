// What is done with the whole shelf: another book, the sheets, and, folded away, all that is done now and then.

import { choice, labelled, leaving, opened } from "./dialogs.js";
import { button, element } from "./elements.js";
import { remember, units } from "./lengths.js";
import { maker } from "./make.js";
import { manualLink } from "./linked.js";
import { proposals } from "./proposals.js";

export function tools(asked, changes, shelf, zoom, again) {
  const unit = button(unitWords(), () => {
    units.inches = !units.inches;
    remember("units", units.inches ? "inches" : "mm");
    unit.textContent = unitWords();
    again();
  }, { id: "units" });
  const rare = [
    ...(asked.live ? proposals(asked, changes, shelf).map(([words, open]) => button(words, open, { "aria-haspopup": "dialog" })) : []),
    button("true size", () => zoom.to(1), { class: "when-narrow" }),
    unit,
    button("how large is this screen …", () => zoom.ask(), { "aria-haspopup": "dialog" }),
    manualLink(asked, "contents", "the manual", "the manual"),
  ];
  const add = button(["add ", element("span", { class: "when-wide" }, "a book "), "…"], () => askForBook(changes, shelf.state), { "aria-haspopup": "dialog", "aria-label": "add a book …" });
  return element("div", { class: "row", role: "group", "aria-label": "Shelf" }, asked.live ? [add, maker(asked)] : [], menu("more", rare));
}

export function unitWords() {
  return units.inches ? "lengths in mm" : "lengths in inches";
}

/** Buttons that fold out under a word. */
function menu(words, buttons) {
  const folded = element("details", { class: "menu" }, element("summary", {}, words), element("div", { class: "folded-out" }, buttons));
  const fold = () => { folded.open = false; };
  folded.addEventListener("click", (event) => { if (event.target.closest(".folded-out")) fold(); });
  folded.addEventListener("keydown", (event) => {
    if (event.key !== "Escape" || !folded.open) return;
    fold();
    folded.querySelector("summary").focus();
  });
  folded.addEventListener("focusout", (event) => { if (event.relatedTarget && !folded.contains(event.relatedTarget)) fold(); });
  document.addEventListener("pointerdown", (event) => { if (!folded.contains(event.target)) fold(); });
  return folded;
}

/** A new book: its title, and where it stands; the rest is changed afterwards. */
function askForBook(changes, state) {
  const text = (label, key, example, required) => {
    const input = element("input", { type: "text", id: `new-${key}`, placeholder: example, required, autocomplete: "off" });
    return { key, input, row: labelled(label, input) };
  };
  const rows = [text("title", "title", "", true), text("author", "author", "", false), text("height of the page", "size.height", units.inches ? "13/16 in" : "21 mm", true), text("width of the page", "size.width", units.inches ? "9/16 in" : "15 mm", true), text("pages", "block.pages", "32", false)];
  const space = choice("new-space", state.spaces.filter((one) => one.name).map((one) => one.name));
  const wrong = element("p", { class: "refused", role: "alert" });
  const form = element("form", { class: "asked", onsubmit: async (event) => {
    event.preventDefault();
    const set = Object.fromEntries(rows.map(({ key, input }) => [key, input.value.trim() || null]));
    const refused = await changes.make({ add: true, set, space: space.value || null }, `${set.title} is added.`, true);
    if (refused) wrong.textContent = refused.message;
    else dialog.close();
  } }, rows.map(({ row }) => row), labelled("stands on", space), wrong,
  element("div", { class: "row" }, element("button", { type: "submit", class: "main" }, "add"), leaving()));
  const dialog = opened("Another book", {}, form);
}
