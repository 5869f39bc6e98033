// On a card that is typed back, Enter goes to the next line; after the last, to the key.
"use strict";

document.addEventListener("keydown", (event) => {
  const here = event.target;
  const card = here.closest("[data-card]");
  if (event.key !== "Enter" || !card || here.tagName !== "INPUT") return;
  event.preventDefault();
  const lines = [...card.querySelectorAll("[data-line]")];
  const after = lines[lines.indexOf(here.closest("[data-line]")) + 1];
  const isInLine = here.closest("[data-line]") !== null;
  const next = isInLine && after
    ? after.querySelector("input:not([type=checkbox])")
    : card.querySelector(isInLine ? "[name=notes]" : "[name=go][value=write]");
  next?.focus();
  if (next?.select) next.select();
});
