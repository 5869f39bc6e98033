// What a dose gives, and where its rest comes from, when nobody answers.

import { amountText } from "./pads.js";

// The depth that an amount gives beside the depth planned, in words.
export function givesWords(about, amount) {
  if (!about.dye_g || !about.amount || amount === null || !(amount > 0)) return "";
  const before = about.dye_g - about.rest_g;
  const grams = before + (about.rest_g * amount) / about.amount;
  const over = grams - about.dye_g;
  const share = over / about.whole_g; // of all of this dye, from however many bottles
  const [given, planned] = [about.whole_g + over, about.whole_g].map((g) => amountText((100 * g) / about.fibre_g, "%"));
  if (Math.abs(share) <= 0.02) return `Gives ${given}, as planned.`;
  const how = share > 0 ? "deeper" : "lighter";
  return `Gives ${given} instead of ${planned}, ${Number((100 * Math.abs(share)).toPrecision(2))}\u00a0% ${how}.`;
}

// What is still to come after a part of a dose came from one bottle.
export function afterPart(about, code, amount, dyes) {
  const strength = strengthOf(about, code);
  const isSame = code === about.code || (dyes[code] ?? [""])[0] === about.dye;
  if (!isSame || strength === null || amount === null) return about;
  const rest = about.rest_g - dyeIn(about, amount, strength);
  if (rest <= 0.01 * about.dye_g) return { ...about, rest_g: 0 };
  const others = about.others.filter(([other]) => other !== code);
  const [next, percent] = others[0] ?? ["", null];
  return { ...about, rest_g: rest, code: next, strength: percent, amount: percent && rest / dyeIn(about, 1, percent), others: others.slice(1) };
}

// Why a bottle is not the one for this dose; nothing if it is.
export function whyNot(about, code, bottles) {
  const known = bottles[code];
  if (!known) return `There is no bottle “${code}” on the shelf. Read the code on its label again.`;
  if (code !== about.code) return `The bottle for this dose must be ${about.code}, as on the card; got ${code} (${known[0]}).`;
  return known[1];
}

// The dye in so much of a stock: ml, or g where it goes on the scale.
function dyeIn(about, amount, strength) {
  const ml = about.water_g ? amount / (about.water_g + strength / 100) : amount;
  return (ml * strength) / 100;
}

function strengthOf(about, code) {
  if (code === about.code) return about.strength;
  const other = about.others.find(([one]) => one === code);
  return other ? other[1] : null;
}
