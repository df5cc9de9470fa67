// Ways into the manual, which the same server has; the page that is one file has none.

import { element } from "./elements.js";

/** A link to a part of the manual, in a tab of its own; null where there is no manual. */
export function manualLink(asked, anchor, words, about) {
  if (!asked.live || !anchor) return null;
  return element("a", { class: "manual", href: `manual#${encodeURIComponent(anchor)}`, target: "bookmaker-manual", "aria-label": `${about}, in the manual` }, words);
}
