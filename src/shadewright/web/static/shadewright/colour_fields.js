// A colour's picker and the field beside it say the same: whichever is touched leads.
// What is picked was not read by a meter, so then the way chosen is the eye's.
"use strict";

const HEX = /^#?([0-9a-f]{6})$/i;

document.addEventListener("input", (event) => {
  const entry = event.target.closest("[data-colour-entry]");
  if (!entry) return;
  const pick = entry.querySelector("[data-pick]");
  const typed = entry.querySelector("[data-typed]");
  if (event.target === pick) {
    typed.value = pick.value;
    const form = pick.closest("form");
    const eye = form.querySelector('[name="way"][value="eye"]');
    if (eye && form.querySelector('[name="way"][value^="meter"]:checked')) eye.checked = true;
  }
  const read = HEX.exec(typed.value.trim());
  if (event.target === typed && read) pick.value = `#${read[1].toLowerCase()}`;
});
