// Pads for gloves: numbers, and the signs of a bottle's label.

// A press on a pad; returns the form whose field changed, or null.
export function press(button) {
  const pad = button.closest("[data-pad], [data-code-pad]");
  const form = pad.closest("form");
  const isCode = pad.hasAttribute("data-code-pad");
  const field = form.querySelector(isCode ? "[name=code], [name=bottle]:not([type=hidden])" : "[name=value]");
  const sign = button.dataset.sign;
  field.value = sign === "back" ? field.value.slice(0, -1) : typed(field, sign, isCode);
  if (isCode) showSigns(pad, field.value.length);
  return form;
}

function typed(field, sign, isCode) {
  const whole = field.value + sign;
  if (isCode) return whole.slice(0, 4);
  return /^\d{0,5}(\.\d{0,3})?$/.test(whole) ? whole : field.value;
}

// A code is letter, digit, letter: the pad shows what can come next.
export function showSigns(pad, count) {
  pad.querySelector("[data-letters]").hidden = count === 1;
  pad.querySelector("[data-digits]").hidden = count !== 1;
}

export function numberIn(text) {
  const plain = String(text).trim().replace(",", ".");
  return plain === "" || Number.isNaN(Number(plain)) ? null : Number(plain);
}

// An amount in as many digits as make sense at a bench, as the server writes it.
export function amountText(value, unit) {
  const digits = unit === "g" ? 4 : 3;
  const whole = Math.abs(value) >= 10 ** digits ? value.toFixed(0) : Number(value.toPrecision(digits)).toString();
  return unit ? `${whole}\u00a0${unit}` : whole;
}
