// The sheets made: how far it is, what came out, which sheets changed, and each to look at.

import { button, element, refill } from "./elements.js";
import { on } from "./source.js";

const LEAFLETS = { "guide.pdf": "guide.pdf, how all of it is made", "cutting-list.pdf": "cutting-list.pdf, what is cut by hand" };

/** The button that makes the sheets, and what it shows. */
export function maker(asked) {
  let dialog = null;
  let bar = null;
  on("progress", ({ doing, done, of }) => {
    if (!bar) return;
    bar.progress.value = done;
    bar.progress.max = of;
    bar.words.textContent = `${doing}: ${done} of ${of}`;
  });

  async function make() {
    bar = { progress: element("progress", { "aria-label": "how far it is" }), words: element("p", { role: "status" }, "The sheets are being made …") };
    dialog = element("dialog", { class: "made", "aria-labelledby": "made-title" });
    dialog.addEventListener("close", () => { dialog.remove(); bar = null; });
    refill(dialog, element("h2", { id: "made-title" }, "Sheets to print"), bar.words, bar.progress, close());
    document.body.append(dialog);
    dialog.showModal();
    const here = dialog;
    try {
      const made = await asked.post("make", {});
      bar = null;
      refill(here, ...shown(made), close());
      here.scrollTop = 0;
    } catch (refused) {
      bar = null;
      refill(here, element("h2", { id: "made-title" }, "Nothing was made"), element("ul", {}, refused.problems.map((one) => element("li", { class: "refused" }, `${one.place ? `${one.place}: ` : ""}${one.message}; ${one.remedy}`))), close());
    }
  }

  const close = () => element("div", { class: "row" }, button("close", () => dialog.close(), { "data-key": "close" }));
  return button("make the sheets", make, { class: "main", "aria-haspopup": "dialog" });
}

function shown(made) {
  const sheets = made.files.filter((file) => file.pages.length);
  const others = made.files.filter((file) => !file.pages.length);
  const changed = sheets.reduce((sum, file) => sum + file.changed.length, 0);
  const told = made.first ? "" : changed ? ` ${changed === 1 ? "One sheet differs" : `${changed} sheets differ`} from the last time.` : " No sheet differs from the last time.";
  return [
    element("h2", { id: "made-title" }, "Sheets to print"),
    element("p", {}, `They are in ${made.folder}.${told} Print them at 100 %, with “fit to page” off.`),
    made.why.length ? element("ul", {}, made.why.map((line) => element("li", {}, line))) : null,
    made.sound ? null : element("p", { class: "refused" }, "The shelf has errors: look at them before you print."),
    element("p", { class: "row" }, others.filter((file) => file.name.endsWith(".pdf")).map((file) => link(LEAFLETS[file.name] ?? file.name, file.name))),
    sheets.map((file) => element("section", {},
      element("h3", {}, link(`${file.name}, ${file.pages.length} ${file.pages.length === 1 ? "sheet" : "sheets"}`, file.name), " ", element("a", { href: address(file.name), download: file.name }, "download")),
      element("div", { class: "rack" }, file.pages.map((page) => {
        const differs = !made.first && file.changed.includes(page);
        return element("figure", {},
          element("a", { href: `${address(file.name)}#page=${page}`, target: "_blank", rel: "noopener" }, element("img", { class: "thumb", loading: "lazy", alt: `${file.name}, page ${page}${differs ? ", changed" : ""}`, src: `sheet?file=${encodeURIComponent(file.name)}&page=${page - 1}&of=${Date.now()}` })),
          element("figcaption", {}, `page ${page}${differs ? " · changed" : ""}`));
      })))),
  ];
}

function address(name) {
  return `made/${name.split("/").map(encodeURIComponent).join("/")}`;
}

function link(words, name) {
  return element("a", { href: address(name), target: "_blank", rel: "noopener" }, words);
}
