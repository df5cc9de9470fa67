// Changes of the whole shelf, seen before they are written: arranged, filled, invented books written out, looks kept.

import { choice, labelled, leaving, opened } from "./dialogs.js";
import { button, element, refill } from "./elements.js";
import { Shelf } from "./shelf.js";

const WEIGHTS = [["colour", "neighbours of like colour"], ["thickness", "neighbours of like thickness"], ["style", "neighbours of one style"], ["rhythm", "stairs and saw-teeth of heights"]];

/** The changes that are offered: words for the menu, and what opens. */
export function proposals(asked, changes, shelf) {
  const open = (one) => () => propose(one, asked, changes, shelf);
  return [
    ["arrange the books …", open(arranging)],
    ["fill the room left …", open(filling)],
    ["write out invented books …", open(writingOut)],
    ["keep the looks …", open(keeping)],
  ];
}

const arranging = {
  title: "Arrange the books",
  about: "Books that a space does not take go where they fit; then each space is put in order. Sets, stacks and books of one entry stay together.",
  fields({ offers }) {
    const order = choice("by", [["", "what pleases: mixed heights, colours apart"], ...offers.rules.map((rule) => [rule, `by ${rule}`])]);
    const weights = WEIGHTS.map(([key, words]) => [key, element("input", { type: "range", id: `weight-${key}`, min: 0, max: Math.max(3, offers.weights[key]), step: "any", value: offers.weights[key] }), words]);
    const counted = element("details", {}, element("summary", {}, "how much each counts against an order"), element("div", { class: "fields" }, weights.map(([, input, words]) => labelled(words, input))));
    order.value = offers.rule;
    counted.hidden = offers.rule !== "";
    order.addEventListener("change", () => { counted.hidden = order.value !== ""; });
    return {
      rows: [labelled("order", order), counted],
      wanted: () => ({ what: "arrange", by: order.value || null, ...Object.fromEntries(weights.map(([key, input]) => [key, Number(input.value)])) }),
    };
  },
};

const filling = {
  title: "Fill the room left",
  about: "Books with solid blocks and invented titles are made as thick as takes what is left on a space. They look like the others, and have no pages.",
  fields({ offers, spaces }) {
    const space = choice("fill-space", spaces.filter((one) => one.name).map((one) => one.name));
    const count = element("input", { type: "number", id: "fill-count", min: 1, max: 300, step: 1, placeholder: "as many as it takes" });
    const subject = choice("fill-subject", [["", "all there are"], ...offers.subjects]);
    const mood = choice("fill-mood", [["", "as the defaults say"], ...offers.moods]);
    const cover = choice("fill-cover", [["", "as the defaults say"], ...offers.stocks]);
    return {
      rows: [element("div", { class: "fields" }, labelled("space", space), labelled("how many", count), labelled("about", subject), labelled("colours and styles", mood), labelled("covers of", cover))],
      wanted: () => ({ what: "fill", space: space.value, count: count.value ? Number(count.value) : null, subjects: subject.value ? [subject.value] : [], mood: mood.value, cover: cover.value }),
    };
  },
};

const writingOut = {
  title: "Write out invented books",
  about: "The file asks for invented books. They are written into it with their titles: you can then change each of them.",
  fields: () => ({ rows: [], wanted: () => ({ what: "freeze" }) }),
};

const keeping = {
  title: "Keep the looks",
  about: "What chance chose for each cover is written down. After that only you change it.",
  fields() {
    const apart = element("input", { type: "checkbox", id: "keep-apart" });
    return { rows: [element("label", { class: "check" }, apart, "first give other looks to books that look too much like their neighbours")], wanted: () => ({ what: "keep", apart: apart.checked }) };
  },
};

function propose(one, asked, changes, shelf) {
  const { rows, wanted } = one.fields(shelf.state);
  const seen = element("div", { class: "seen", "aria-live": "polite" });
  const ask = element("button", { type: "submit", class: "main" }, "show how it would be");
  const form = element("form", { class: "asked", onsubmit: async (event) => {
    event.preventDefault();
    ask.disabled = true;
    refill(seen, element("p", { class: "soft" }, "It is being worked out …"));
    try {
      const found = await asked.post("propose", wanted());
      refill(seen, proposed(found, asked, changes, shelf, dialog));
      bothDrawn(seen, found, asked, shelf);
    } catch (refused) {
      refill(seen, element("p", { class: "refused" }, refused.message));
    }
    ask.disabled = false;
  } }, element("p", {}, one.about), rows, element("div", { class: "row" }, ask, leaving()));
  const dialog = opened(one.title, { class: "made" }, form, seen);
}

function proposed(found, asked, changes, shelf, dialog) {
  const words = element("ul", {}, found.words.map((line) => element("li", {}, line)));
  if (!found.key) return [words];
  const wrong = element("p", { class: "refused", role: "alert" });
  const take = async () => {
    const refused = await changes.post(`accept/${found.key}`, {}, "It is written; undo takes it back.");
    if (refused) wrong.textContent = refused.message;
    else dialog.close();
  };
  return [
    found.words.length ? words : null,
    element("div", { class: "both" }),
    element("details", {}, element("summary", {}, found.lines.length === 1 ? "the line of the file that changes" : `the ${found.lines.length} lines of the file that change`), element("pre", { tabindex: 0 }, found.lines.join("\n"))),
    wrong,
    element("div", { class: "row" }, button("write it into the file", take, { class: "main" }), leaving()),
  ];
}

/** Each space that would be another, as it is and as it would be. */
function bothDrawn(seen, found, asked, shelf) {
  const both = seen.querySelector(".both");
  if (!both) return;
  const before = new Map(shelf.state.spaces.map((space) => [space.name, space]));
  const other = found.shelf.spaces.filter((space) => JSON.stringify(space) !== JSON.stringify(before.get(space.name)));
  if (!other.length) {
    both.append(element("p", { class: "soft" }, "The picture stays as it is."));
    return;
  }
  const widest = Math.max(...other.map((space) => space.width));
  const wide = Math.min(both.clientWidth - 24, 700);
  both.style.setProperty("--mm", `${wide / (widest + 4)}px`);
  for (const space of other) {
    for (const [when, state] of [["as it is", { ...shelf.state, spaces: [before.get(space.name)].filter(Boolean) }], ["as it would be", { ...found.shelf, spaces: [space] }]]) {
      const names = state.spaces.flatMap((one) => one.shown.map((shown) => state.things[shown.thing].name));
      const place = element("div", { inert: true });
      both.append(element("figure", { role: "group", "aria-label": `${space.name}, ${when}: ${[...new Set(names)].join(", ")}` }, element("figcaption", {}, `${space.name || "standing nowhere"}, ${when}`), place));
      new Shelf(place, asked, () => {}).show({ ...state, problems: [] });
    }
  }
}
