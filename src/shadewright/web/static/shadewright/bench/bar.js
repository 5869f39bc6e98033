// Below a step: its bath's own next clock, and the way to what is next at any other.

import { clockText } from "./clocks.js";

const FIRST = ["rings", "hands"];

export function showTimer(live, clocks, own) {
  const soonest = own.filter((clock) => !clock.every).sort((a, b) => a.at - b.at)[0];
  for (const place of live.querySelectorAll("[data-timer]")) {
    const isTheNumber = place.closest(".panel").querySelector(`[data-clock="${soonest?.key}"]`);
    place.hidden = !soonest || Boolean(isTheNumber);
    if (place.hidden) continue;
    const isNow = clocks.left(soonest) <= 0;
    place.classList.toggle("asks", isNow);
    place.querySelector(".named").textContent = `${isNow ? "Now" : "Then"} ${soonest.words}`;
    place.querySelector("strong").textContent = clockText(clocks.left(soonest));
  }
  for (const place of live.querySelectorAll("[data-clock]")) {
    const its = own.find((clock) => clock.key === place.dataset.clock);
    if (its) place.querySelector("[data-number]").textContent = clockText(clocks.left(its));
  }
}

export function showNext(live, clocks, things) {
  const next = nextElsewhere(things, live.dataset.number, clocks.now());
  for (const bar of live.querySelectorAll("[data-next]")) {
    bar.hidden = !next;
    if (!next) continue;
    bar.classList.toggle("asks", next.kind === "rings");
    bar.setAttribute("href", `${live.dataset.bench}${next.bath}/`);
    const left = next.kind === "rings" || next.kind === "runs" ? clockText(clocks.left(next)) : "";
    for (const [name, words] of [["lead", next.lead], ["words", next.words], ["left", left]]) {
      const place = bar.querySelector(`[data-${name}]`);
      if (place.textContent !== words) place.textContent = words;
    }
  }
}

// They come in order; a clock that has run out meanwhile goes before all others.
export function nextElsewhere(things, number, now) {
  const others = things.filter((thing) => thing.bath !== number).map((thing) => asOf(thing, now));
  const rank = (thing) => (FIRST.includes(thing.kind) ? FIRST.indexOf(thing.kind) : FIRST.length);
  return others.sort((a, b) => rank(a) - rank(b))[0];
}

function asOf(thing, now) {
  return thing.kind === "runs" && thing.at <= now ? { ...thing, kind: "rings", lead: "Now" } : thing;
}
