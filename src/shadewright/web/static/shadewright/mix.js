// The sliders of a mix: slider and number say the same, and once nobody moves them the
// page speaks, reckons the doses and puts the mix into its address. htmx asks for the
// colour at every move: one wish is under way at a time, and of those that wait the newest.
"use strict";

const form = document.querySelector("[data-mix]");
const told = document.getElementById("told");
const least = Number(form.dataset.least);
const factor = Number(form.dataset.most) / least;
const steps = Number(form.dataset.steps);
const QUIET_MS = 450;
let quiet;

const depthAt = (place) => (
  place <= 0 ? 0 : Number((least * factor ** ((place - 1) / (steps - 1))).toPrecision(3))
);
const placeOf = (depth) => (
  depth < least ? 0
    : Math.min(steps, 1 + Math.round((steps - 1) * Math.log(depth / least) / Math.log(factor)))
);
const partner = (field) => document.getElementById(field.dataset.partner);
const numberIn = (field) => Number(field.value.replace(",", ".").replace("%", "")) || 0;

function say(slider, depth) {
  slider.setAttribute("aria-valuetext", depth ? `${depth} %` : "none");
}

function settle() {
  const now = told.querySelector("[data-said]");
  if (!now) return;
  document.getElementById("mix-said").textContent = now.dataset.said;
  if (now.dataset.own) history.replaceState(null, "", now.dataset.own);
  document.getElementById("measured").dispatchEvent(new Event("settled"));
}

function wait() {
  clearTimeout(quiet);
  quiet = setTimeout(settle, QUIET_MS);
}

for (const slider of form.querySelectorAll("input[type=range]")) {
  slider.hidden = false;
  say(slider, numberIn(partner(slider)));
}

// Before htmx hears of it, so that what it sends is what the slider says.
form.addEventListener("input", (event) => {
  const field = event.target;
  if (field.type === "range") {
    const depth = depthAt(Number(field.value));
    partner(field).value = String(depth);
    say(field, depth);
  } else if (field.dataset.partner) {
    const depth = numberIn(field);
    partner(field).value = String(placeOf(depth));
    say(partner(field), depth);
  }
  wait();
}, { capture: true });

told.addEventListener("htmx:afterSwap", wait);
