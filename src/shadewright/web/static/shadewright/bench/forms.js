// What a form of the bench says, as a tap.

import { amountText, numberIn } from "./pads.js";

const MOST = 1e5; // the pad of signs takes five before the point

// A form becomes a tap of a bath, or a sentence where a typed number is missing.
// `seen` holds the bottles that were confirmed, by step.
export function tapOf(form, button, bath, seen) {
  const said = Object.fromEntries(new FormData(form, button));
  const isTyped = form.hasAttribute("data-typed");
  const unit = button?.dataset.unit ?? said.unit ?? "";
  const isDose = said.act === "dosed" || said.act === "added";
  const value = numberIn(said.value ?? "");
  if ((isTyped || form.hasAttribute("data-wrong")) && !(value > 0)) return "Type the number first.";
  if (isTyped && value >= MOST) return "No pot holds so much. Type the number again.";
  if (form.hasAttribute("data-wrong") && !said.bottle) return "Type the signs on the bottle first.";
  const words = button?.dataset.said ?? said.said;
  const step = button?.dataset.step ?? said.step;
  const code = isDose ? (said.bottle ?? "").toUpperCase() : "";
  return {
    bath, act: said.act, step, value, unit, bottle: code,
    note: [said.note, said.act === "dosed" && seen.get(step) === code && code ? "bottle confirmed" : ""].filter(Boolean).join("; "),
    said: isTyped ? `${words} ${amountText(value, unit)}` : words,
    ...(said.emptied ? { emptied: true } : {}),
  };
}
