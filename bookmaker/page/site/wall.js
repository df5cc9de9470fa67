// What hangs on a wall or lies on a desk, dragged to another place there, where it lines up with what is near.

const ALIGNS = 1.5; // mm within which edges and middles line up

/** Where something would be on a surface, in mm from its lower left corner: within it, in line with the others. */
export function placeOn({ home, others, size, wide, corner }) {
  const mm = home.width / wide;
  const high = home.height / mm;
  const left = (corner.x - home.left) / mm;
  const low = (home.bottom - corner.y) / mm - size[1];
  const across = lined(left, size[0], others.map(([x, , w]) => [x, w]));
  const up = lined(low, size[1], others.map(([, y, , h]) => [y, h]));
  return { left: clamped(across, wide - size[0]), low: clamped(up, high - size[1]), mm };
}

/** The nearest begin at which an edge or the middle is in line with an edge or the middle of another. */
function lined(begin, side, others) {
  let best = begin;
  let nearest = ALIGNS;
  for (const [start, length] of others) {
    for (const line of [start, start + length / 2, start + length]) {
      for (const part of [0, side / 2, side]) {
        const away = Math.abs(line - part - begin);
        if (away < nearest) [nearest, best] = [away, line - part];
      }
    }
  }
  return best;
}

function clamped(value, most) {
  return Math.max(0, Math.min(Math.round(value * 10) / 10, most));
}
