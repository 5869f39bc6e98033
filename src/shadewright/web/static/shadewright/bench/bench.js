// One bath at the pot. Every tap shows at once and is kept here until the server
// has it; what the other phone did comes in within seconds.

import { keepAwake } from "./awake.js";
import { showNext, showTimer } from "./bar.js";
import { Bell } from "./bell.js";
import { ask, Clocks, timeOf } from "./clocks.js";
import { givesWords, whyNot } from "./doses.js";
import { tapOf } from "./forms.js";
import { clocksNow, Overlay } from "./overlay.js";
import { numberIn, press, showSigns } from "./pads.js";
import { heardTap, showRinging, withHeard } from "./ringing.js";
import { seenOn, sent } from "./sending.js";
import { Waiting } from "./waiting.js";

const POLL_MS = 3000;
const INTERRUPTED_MS = 120000;
const QUIET_VIEWS = ["main", "ask"];

let live = document.getElementById("live");
const number = live.dataset.number;
const bell = new Bell();
const clocks = new Clocks(Number(live.dataset.now), JSON.parse(live.dataset.clocks));
const local = new Map(); // taps that the page as it was sent does not know of
const seen = new Map(); // step -> code of the bottle that was confirmed
const at = { view: "main", chosen: "", round: false, last: Date.now(), hidden: 0 };
let overlay = new Overlay(live);
const waiting = new Waiting({ part: live, changed: () => render(), fault });
const { taps, photos } = waiting;
let things = JSON.parse(live.dataset.things);
let waited = 0;

function render() {
  const all = waiting.all();
  for (const tap of all) if (tap.bath === number) local.set(tap.key, tap);
  for (const tap of taps.setAside()) local.delete(tap.key);
  if (all.length < waited) setTimeout(poll, 0);
  waited = all.length;
  overlay.lay([...local.values()].sort((a, b) => a.order - b.order), timeOf);
  show();
  tick();
}

// Which panel and which of its views fill the screen.
function show() {
  const step = stepAtHand();
  for (const [key, panel] of overlay.panels) {
    panel.hidden = key !== step;
    for (const view of panel.querySelectorAll("[data-view]")) view.hidden = view.dataset.view !== at.view;
  }
  const panel = overlay.panels.get(step);
  if (!panel.querySelector(`[data-view=${at.view}]`)) return open("main");
  for (const place of live.querySelectorAll("[data-place]")) place.hidden = place.dataset.place !== step;
  for (const row of live.querySelectorAll("[data-row]")) row.toggleAttribute("aria-current", row.dataset.row === step);
  live.querySelector(`[data-row="${step}"]`).setAttribute("aria-current", "step");
  live.classList.toggle("shows-round", at.round);
  const isSeen = seen.has(step) && seen.get(step) === overlay.about(step).code;
  for (const place of panel.querySelectorAll("[data-seen]")) place.hidden = !isSeen;
  for (const key of panel.querySelectorAll(".check")) key.hidden = isSeen;
  for (const key of live.querySelectorAll("[data-undo=last] button")) key.disabled = !overlay.lastStanding();
  for (const place of live.querySelectorAll("[data-rings]")) place.hidden = local.size > 0;
}

function stepAtHand() {
  return at.chosen || overlay.stepAtHand();
}

function open(view) {
  at.view = view;
  at.round = false;
  show();
}

function tick() {
  const heard = withHeard(clocks, waiting.all());
  const all = clocksNow(heard, overlay, number, (tap) => tap.tapped + clocks.offset);
  const ringing = all.filter((clock) => !clock.heard && clocks.left(clock) <= 0);
  showRinging(live.querySelector("[data-ringing]"), ringing, hear, (bath) => (bath === number ? "" : live.dataset.bench + bath));
  bell.ring(ringing.length > 0);
  showTimer(live, clocks, all.filter((clock) => clock.bath === number));
  showNext(live, clocks, things);
  waiting.show(live);
  const now = new Clocks(clocks.now(), all);
  now.spoken = clocks.spoken;
  const spoken = now.toSay();
  if (spoken) say("[data-spoken]", spoken);
}

function hear(clock) {
  clocks.silence(clock);
  put(heardTap(clock));
}

function put(tap) {
  at.last = Date.now();
  const kept = taps.put(tap);
  if (kept.bath === number) local.set(kept.key, kept);
  render();
}

function tapped(form, button) {
  const tap = tapOf(form, button, number, seen);
  if (typeof tap === "string") return fault(tap);
  const step = stepAtHand();
  const gives = tap.act === "dosed" && tap.step === step ? givesWords(overlay.about(step), tap.value) : "";
  at.chosen = "";
  at.view = "main";
  fault("");
  form.reset();
  put(tap);
  const differs = gives.includes("instead of");
  say("[data-local]", differs ? `${tap.said}. ${gives} ${live.dataset[gives.includes("deeper") ? "over" : "under"]}` : "");
}

async function undo(form) {
  const which = form.dataset.undo;
  const undoes = which === "last" ? overlay.lastStanding() : which;
  if (!undoes) return;
  if (photos.has(undoes) && (await photos.drop(undoes))) {
    local.delete(undoes);
    return render();
  }
  at.chosen = "";
  at.view = "main";
  say("[data-local]", "");
  put({ bath: number, undoes, said: "Undo" });
}

async function sendNow(form) {
  const why = await sent(form);
  fault(why);
  if (why) return;
  form.reset();
  at.last = Date.now();
  at.view = "main";
  at.chosen = "";
  await refresh().catch(() => {});
}

async function keepPhoto(form) {
  const why = await photos.put(form, number);
  fault(why);
  if (why) return;
  form.reset();
  at.last = Date.now();
  at.chosen = "";
  open("main");
}

async function check(form) {
  const step = stepAtHand();
  const photo = form.querySelector("[type=file]");
  const typed = form.querySelector("[name=code]").value.trim().toUpperCase();
  if (!typed && photo.files.length) return checkPhoto(form, step);
  if (!typed) return fault("Type the three signs on its label, or take a photo of it.");
  answer(step, typed, whyNot(overlay.about(step), typed, overlay.dyes));
}

async function checkPhoto(form, step) {
  const said = await seenOn(form);
  answer(step, said.code, said.code ? whyNot(overlay.about(step), said.code, overlay.dyes) : said.why);
  form.reset();
}

function answer(step, code, why) {
  fault(why);
  const pad = overlay.panels.get(step).querySelector("[data-view=bottle] form");
  pad.reset();
  showSigns(pad.querySelector("[data-code-pad]"), 0);
  if (why) return;
  seen.set(step, code);
  open("main");
}

function fault(words) {
  const place = live.querySelector("[data-fault]");
  place.textContent = words;
  place.hidden = !words;
}

function say(selector, words) {
  const place = live.querySelector(selector);
  if (place.textContent !== words) place.textContent = words;
}

// After an interruption: was the dose at hand added already?
function askIfDose() {
  const isBegun = overlay.lasts.length + overlay.own.length > 0;
  if (isBegun && overlay.about(stepAtHand()).kind === "dose" && QUIET_VIEWS.includes(at.view)) open("ask");
}

async function poll() {
  const known = acknowledged();
  try {
    const said = await ask(live.dataset.address);
    clocks.hear(said.now, said.clocks, said.at);
    things = said.things;
    if (Date.now() - at.last > INTERRUPTED_MS && said.elsewhere > at.last + clocks.offset) {
      at.last = Date.now();
      askIfDose();
    }
    if (said.mark === live.dataset.mark) forget(known);
    else if (QUIET_VIEWS.includes(at.view)) await refresh();
  } catch {
    // No answer: the page goes on by itself.
  }
  tick();
}

// Taps that the server had before it was asked: they are in what it answers.
function acknowledged() {
  const unsent = new Set(waiting.all().map((tap) => tap.key));
  return [...local.keys()].filter((key) => !unsent.has(key));
}

function forget(keys) {
  for (const key of keys) local.delete(key);
  if (keys.length) render();
}

async function refresh() {
  const known = acknowledged();
  const answer = await fetch(`${location.pathname}?view=main`, { signal: AbortSignal.timeout(8000), credentials: "same-origin" });
  const fresh = new DOMParser().parseFromString(await answer.text(), "text/html").getElementById("live");
  if (!answer.ok || !fresh || !QUIET_VIEWS.includes(at.view)) return;
  for (const key of known) local.delete(key);
  const focused = document.activeElement?.closest(".first, .tap, .button")?.textContent;
  const why = live.querySelector("[data-fault]").textContent;
  live.replaceWith(fresh);
  live = fresh;
  overlay = new Overlay(live);
  if (why) fault(why); // Nobody has read it yet: the next tap clears it.
  render();
  if (focused) [...live.querySelectorAll(".button")].find((key) => key.textContent === focused && key.offsetParent)?.focus();
}

document.addEventListener("submit", (event) => {
  const form = event.target.closest("[data-tap], [data-undo], [data-check], [data-now], [data-photo]");
  if (!form) return;
  event.preventDefault();
  bell.allow();
  if (form.matches("[data-undo]")) undo(form);
  else if (form.matches("[data-check]")) check(form);
  else if (form.matches("[data-photo]")) keepPhoto(form);
  else if (form.matches("[data-now]")) sendNow(form);
  else tapped(form, event.submitter);
});

document.addEventListener("click", (event) => {
  bell.allow();
  const key = event.target.closest("[data-open], [data-go], [data-round], [data-sign]");
  if (!key) return;
  event.preventDefault();
  fault("");
  if (key.matches("[data-sign]")) return typedSign(key);
  if (key.matches("[data-go]")) at.chosen = key.dataset.go;
  if (key.matches("[data-round]")) at.round = !at.round;
  else at.round = false;
  at.view = key.dataset.open ?? "main";
  show();
});

function typedSign(key) {
  const form = press(key);
  const step = stepAtHand();
  const code = form.querySelector("[name=code]")?.value;
  if (code && code in overlay.dyes) return answer(step, code, whyNot(overlay.about(step), code, overlay.dyes));
  const place = form.querySelector("[data-gives]");
  if (place) place.textContent = givesWords(overlay.about(step), numberIn(form.querySelector("[name=value]").value));
}

document.addEventListener("input", (event) => {
  const place = event.target.closest("form")?.querySelector("[data-gives]");
  if (place) place.textContent = givesWords(overlay.about(stepAtHand()), numberIn(event.target.value));
});

document.addEventListener("change", (event) => {
  if (event.target.matches("[data-check] [type=file]")) event.target.form.requestSubmit();
});

document.addEventListener("visibilitychange", () => {
  if (document.hidden) at.hidden = Date.now();
  else {
    if (Date.now() - at.hidden > INTERRUPTED_MS) askIfDose();
    poll();
  }
});

at.round = live.classList.contains("shows-round");
const first = live.querySelector(".panel:not([hidden])");
if (new URLSearchParams(location.search).has("step")) at.chosen = first.dataset.step;
at.view = first.querySelector("[data-view]:not([hidden])").dataset.view;
render();
if (!new URLSearchParams(location.search).has("view")) askIfDose();
setInterval(tick, 500);
setInterval(poll, POLL_MS);
keepAwake((words) => live.querySelector("[data-awake]") && say("[data-awake]", words));
document.documentElement.dataset.stands = "";
taps.send();
poll();
