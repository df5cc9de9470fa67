// Lengths as they are told: in millimetres or in inches, as the reader likes; and what the reader likes is remembered.

const MM_PER_INCH = 25.4;
const REFERENCE_PIXELS_PER_MM = 96 / MM_PER_INCH; // CSS Values and Units, Level 4: an inch has 96 pixels

/** What was chosen once, by its name. */
export function remembered(name) {
  const found = document.cookie.split("; ").find((one) => one.startsWith(`bookmaker-${name}=`));
  return found?.split("=")[1];
}

/** Remember a choice for a year, whatever port the page has next time. */
export function remember(name, value) {
  document.cookie = `bookmaker-${name}=${value}; max-age=31536000; path=/; samesite=strict`;
}

export const units = { inches: remembered("units") === "inches" };

/** Tell lengths as the shelf file does, unless the reader chose otherwise. */
export function preferUnits(inches) {
  if (remembered("units") === undefined) units.inches = Boolean(inches);
}

/** Pixels of the page to a millimetre of the screen, and how many times true size the shelf is seen. */
export const screen = { pixelsPerMm: Number(remembered("screen")) || REFERENCE_PIXELS_PER_MM, times: 1 };

/** A length in mm in words, to a tenth of a millimetre; in inches as a fraction where it is sixteenths, else in thousandths. */
export function length(mm, digits = 1) {
  if (mm === null || mm === undefined) return "";
  return units.inches ? `${inInches(mm / MM_PER_INCH)} in` : `${mm.toFixed(digits)} mm`;
}

function inInches(inches) {
  const sixteenths = Math.round(Math.abs(inches) * 16);
  const decimals = inches.toFixed(3);
  const exact = sixteenths / 16;
  if (!sixteenths || (Math.abs(Math.abs(inches) - exact) >= 0.0004 && Math.abs(decimals) !== exact)) return String(Number(decimals));
  const whole = Math.floor(exact);
  let [over, under] = [sixteenths % 16, 16];
  while (over && over % 2 === 0) [over, under] = [over / 2, under / 2];
  return (inches < 0 ? "-" : "") + [whole || "", over ? `${over}/${under}` : ""].filter(Boolean).join(" ");
}
