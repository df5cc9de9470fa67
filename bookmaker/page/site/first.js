// A first shelf by form: a name, spaces, papers, titles, a mood.

import { button, element, refill } from "./elements.js";

const MOODS = ["a study", "by the sea", "a kitchen garden", "an attic", "a nursery"];
const PAPERS = [["copier paper, 80 g/m²", "20 sheets = 2 mm"], ["thin paper, 60 g/m²", "20 sheets = 1.5 mm"], ["I have measured a pile", ""]];
const COVERS = [["heavy paper, 160 g/m²", "190 um"], ["photo paper, 200 g/m²", "220 um"], ["copier paper, 80 g/m²", "100 um"], ["I have measured it", ""]];

/** The form, put into an element. */
export function firstShelf(place, asked) {
  let count = 0;
  const spaces = element("div", { class: "asked" });
  const field = (label, id, attributes) => {
    const input = element("input", { type: "text", id, autocomplete: "off", ...attributes });
    return { input, row: element("div", { class: "field" }, element("label", { for: id }, label), input) };
  };
  const rows = [];
  const another = () => {
    count += 1;
    const number = count;
    const name = field("called", `space-${number}-name`, { value: number === 1 ? "upper shelf" : number === 2 ? "lower shelf" : `shelf ${number}`, required: true });
    const sides = ["width", "height", "depth"].map((side) => field(side, `space-${number}-${side}`, { inputmode: "decimal", required: true, placeholder: { width: "120", height: "28", depth: "24" }[side] }));
    const box = element("fieldset", { class: "first-space" }, element("legend", {}, `space ${number}, the clear room inside`), name.row, sides.map((side) => side.row));
    const row = { name: name.input, sides: sides.map((side) => side.input), box };
    if (number > 1) box.append(button("leave this space out", () => { rows.splice(rows.indexOf(row), 1); box.remove(); }));
    rows.push(row);
    spaces.append(box);
  };
  another();
  const name = field("name of the shelf", "first-name", { required: true, value: "My First Shelf" });
  const unit = element("select", { id: "first-unit" }, element("option", { value: "mm" }, "mm"), element("option", { value: "in" }, "inches"));
  const scale = field("scale", "first-scale", { value: "1:12", required: true });
  const sheet = element("select", { id: "first-sheet" }, ["A4", "letter", "A3", "legal"].map((one) => element("option", {}, one)));
  const pages = paper("paper of the pages", "first-pages", PAPERS, "20 sheets = 2 mm");
  const covers = paper("paper of the covers", "first-covers", COVERS, "10 sheets = 2 mm");
  const mood = element("select", { id: "first-mood" }, MOODS.map((one) => element("option", {}, one)));
  const titles = element("textarea", { id: "first-titles", rows: 10, placeholder: "Tide Tables; A. Fell\nSalt and Rope\nThe Lamp Room; O. Quay", "aria-describedby": "first-titles-about" });
  const file = element("input", { type: "file", id: "first-file", accept: ".csv,.tsv,.txt,.xlsx,.ods", onchange: () => read(file.files[0]) });
  const wrong = element("div", { class: "refused", role: "alert" });
  async function read(chosen) {
    if (!chosen) return;
    try {
      const { titles: found } = await asked.post("titles", await chosen.arrayBuffer());
      titles.value = found.map(([title, author]) => (author ? `${title}; ${author}` : title)).join("\n");
      refill(wrong);
    } catch (refused) {
      refill(wrong, element("p", {}, refused.message));
    }
  }
  titles.addEventListener("dragover", (event) => event.preventDefault());
  titles.addEventListener("drop", (event) => {
    if (!event.dataTransfer.files.length) return;
    event.preventDefault();
    read(event.dataTransfer.files[0]);
  });
  const measure = (text) => (/^[\d.,]+$/.test(text.trim()) || /^[\d\s/.-]+$/.test(text.trim()) ? `${text.trim()} ${unit.value}` : text.trim());
  async function send(event) {
    event.preventDefault();
    const wanted = {
      name: name.input.value, scale: scale.input.value, sheet: sheet.value, page_paper: pages.value(), cover_paper: covers.value(), mood: mood.value,
      spaces: rows.map((row) => ({ name: row.name.value, width: measure(row.sides[0].value), height: measure(row.sides[1].value), depth: measure(row.sides[2].value) })),
      titles: titles.value,
    };
    submit.disabled = true;
    refill(wrong, element("p", { class: "soft" }, "The books are being fitted …"));
    try {
      await asked.post("first", wanted);
      refill(wrong);
    } catch (refused) {
      refill(wrong, element("ul", {}, refused.problems.map((one) => element("li", {}, one.remedy ? `${one.message}; ${one.remedy}` : one.message))));
    }
    submit.disabled = false;
  }
  const submit = element("button", { type: "submit", class: "main" }, "begin the shelf");
  const pick = (label, input) => element("div", { class: "field" }, element("label", { for: input.id }, label), input);
  refill(place, element("form", { class: "first", onsubmit: send },
    element("h2", {}, "A first shelf"),
    element("p", {}, "Say where your books will stand and what paper you have, and paste their titles. What comes out is a file that you own, with notes in it; all of it can be changed afterwards, here or in an editor."),
    element("div", { class: "fields" }, name.row, pick("lengths in", unit), scale.row),
    spaces, element("div", { class: "row" }, button("another space", another)),
    element("div", { class: "fields" }, pick("sheet of your printer", sheet), pages.element, covers.element, pick("mood", mood)),
    element("div", { class: "field" }, element("label", { for: "first-titles" }, "titles, one on each line"), titles,
      element("p", { class: "soft", id: "first-titles-about" }, "An author may stand after a semicolon. Or drop a CSV file or a spreadsheet here."),
      element("label", { for: "first-file" }, "or choose a file"), file),
    wrong, element("div", { class: "row" }, submit)));
}

function paper(label, id, choices, example) {
  const own = element("input", { type: "text", id: `${id}-own`, placeholder: example, "aria-label": `${label}: a pile, such as ${example}`, hidden: true });
  const select = element("select", { id, onchange: () => { own.hidden = select.value !== ""; } }, choices.map(([words, value]) => element("option", { value }, words)));
  return { value: () => select.value || own.value.trim() || choices[0][1], element: element("div", { class: "field" }, element("label", { for: id }, label), select, own) };
}
