// Elements of the page, made in one call each.

/** An element with attributes, handlers under "on…", and children: elements or texts. */
export function element(name, attributes = {}, ...children) {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (key.startsWith("on")) made.addEventListener(key.slice(2), value);
    else if (value === true) made.setAttribute(key, "");
    else if (value !== false && value !== null && value !== undefined) made.setAttribute(key, value);
  }
  made.append(...children.flat(Infinity).filter((child) => child !== null && child !== undefined));
  return made;
}

/** The element with an id. */
export function byId(id) {
  return document.getElementById(id);
}

/** Say something to whoever listens, and show it for a while. */
export function say(text) {
  const said = byId("said");
  said.textContent = text;
  said.classList.add("shown");
  clearTimeout(say.timer);
  say.timer = setTimeout(() => said.classList.remove("shown"), 6000);
}

/** A button with words on it. */
export function button(words, press, attributes = {}) {
  return element("button", { type: "button", onclick: press, ...attributes }, words);
}

/** Put other children into an element; what holds the focus under a key keeps it. */
export function refill(parent, ...children) {
  const focused = parent.contains(document.activeElement) ? document.activeElement.dataset.key : undefined;
  parent.replaceChildren(...children.flat(Infinity).filter((child) => child !== null && child !== undefined));
  if (focused) parent.querySelector(`[data-key="${CSS.escape(focused)}"]`)?.focus();
}
