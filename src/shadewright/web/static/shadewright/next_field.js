// In a long form Enter goes to the next field, not off with half of it; from the last
// field it goes to the key.
"use strict";

document.addEventListener("keydown", (event) => {
  const form = event.target.closest("[data-next-field]");
  if (event.key !== "Enter" || !form || event.target.tagName !== "INPUT") return;
  event.preventDefault();
  const fields = [...form.querySelectorAll("input:not([type=hidden], [type=color], [type=file])")];
  const stops = fields.filter(
    (each) => each.offsetParent !== null && (each.type !== "radio" || each.checked),
  );
  const next = stops[stops.indexOf(event.target) + 1] ?? form.querySelector("button.first");
  next.focus();
  if (next.select) next.select();
});
