// What is asked, and shown, before the page: one at a time, closed by Escape, by its button, or by being done.

import { button, element } from "./elements.js";

let count = 0;

/** A dialog with a heading, opened; it goes once it is closed. */
export function opened(title, attributes, ...children) {
  count += 1;
  const head = `dialog-${count}`;
  const dialog = element("dialog", { "aria-labelledby": head, ...attributes }, element("h2", { id: head }, title), children);
  dialog.addEventListener("close", () => dialog.remove());
  document.body.append(dialog);
  dialog.showModal();
  return dialog;
}

/** A field with its label, and words about it. */
export function labelled(label, input, about) {
  const told = about ? element("p", { class: "soft", id: `${input.id}-about` }, about) : null;
  if (told) input.setAttribute("aria-describedby", told.id);
  return element("div", { class: "field" }, element("label", { for: input.id }, label), input, told);
}

/** A choice among texts, or pairs of a value and the words for it. */
export function choice(id, options) {
  return element("select", { id }, options.map((one) => (Array.isArray(one) ? element("option", { value: one[0] }, one[1]) : element("option", {}, one))));
}

/** What ends a dialog with nothing done. */
export function leaving(words = "leave it") {
  return button(words, (event) => event.target.closest("dialog").close());
}
