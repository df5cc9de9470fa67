// A book in the hand: a box with its faces, turned by pointer, by keys, or by naming a side.

import { button, element } from "./elements.js";

const SIDES = [["front", 20, -12], ["spine", 90, -8], ["back", 200, -12], ["fore-edge", -70, -8], ["head", 20, -75], ["tail", 20, 75]];

/** The book, with buttons for its sides. */
export function inTheHand(told, asked, desk) {
  const [deep, high, thick] = told.size;
  const unit = Math.min(300 / Math.max(deep, high), 16);
  const wide = { front: deep, back: deep, spine: thick, left: thick, right: thick, top: deep, bottom: deep };
  const box = element("div", { class: "box" });
  const face = (name, w, h, turn, picture) => {
    const one = picture ? element("img", { src: asked.picture(picture.picture), alt: "", draggable: "false" }) : element("div", { class: `edges ${name}` });
    one.style.width = `${w * unit}px`;
    one.style.height = `${h * unit}px`;
    one.style.marginLeft = `${(-w * unit) / 2}px`;
    one.style.marginTop = `${(-h * unit) / 2}px`;
    one.style.transform = turn;
    box.append(one);
  };
  const half = (mm) => (mm * unit) / 2;
  const faces = told.faces;
  const spine = told.right_to_left ? 90 : -90;
  face("front", wide.front, high, `translateZ(${half(thick)}px)`, faces.front);
  face("back", wide.back, high, `rotateY(180deg) translateZ(${half(thick)}px)`, faces.back);
  face("spine", thick, high, `rotateY(${spine}deg) translateZ(${half(deep)}px)`, faces.spine ?? faces.left);
  face("fore", thick, high, `rotateY(${-spine}deg) translateZ(${half(deep)}px)`, faces.right);
  face("head", deep, thick, `rotateX(90deg) translateZ(${half(high)}px)`, faces.top);
  face("tail", deep, thick, `rotateX(-90deg) translateZ(${half(high)}px)`, faces.bottom);
  let across = 24;
  let up = -12;
  const turned = () => { box.style.transform = `rotateX(${up}deg) rotateY(${across}deg)`; };
  turned();
  const stage = element("div", { class: "stage", tabindex: 0, role: "img", "aria-label": `${told.name} in the hand; arrow keys turn it` }, box);
  stage.style.height = `${Math.hypot(high, thick) * unit + 40}px`;
  let held = null;
  stage.addEventListener("pointerdown", (event) => { held = { x: event.clientX, y: event.clientY }; stage.setPointerCapture(event.pointerId); });
  stage.addEventListener("pointermove", (event) => {
    if (!held) return;
    across += (event.clientX - held.x) / 2;
    up = Math.min(Math.max(up - (event.clientY - held.y) / 2, -90), 90);
    held = { x: event.clientX, y: event.clientY };
    turned();
  });
  stage.addEventListener("pointerup", () => { held = null; });
  stage.addEventListener("keydown", (event) => {
    const step = { ArrowLeft: [-15, 0], ArrowRight: [15, 0], ArrowUp: [0, -15], ArrowDown: [0, 15] }[event.key];
    if (!step) return;
    event.preventDefault();
    across += step[0];
    up = Math.min(Math.max(up + step[1], -90), 90);
    turned();
  });
  const mirrored = told.right_to_left ? -1 : 1;
  const sides = SIDES.map(([name, y, x]) => button(name, () => { across = y * mirrored; up = x; turned(); }, { "data-key": `side-${name}` }));
  if (told.openings) sides.push(button("opened", () => desk.turn("pages"), { "data-key": "side-opened" }));
  return [stage, element("div", { class: "row" }, sides)];
}
