// A page that rings for every pot while it is open: Today, and the list of pots.

import { keepAwake } from "./awake.js";
import { Bell } from "./bell.js";
import { ask, clockText, Clocks } from "./clocks.js";
import { heardTap, showRinging, withHeard } from "./ringing.js";
import { Waiting } from "./waiting.js";

const POLL_MS = 5000;
const part = document.querySelector("[data-alarms]");
if (part) begin();

function begin() {
  const bell = new Bell();
  const clocks = new Clocks(Number(part.dataset.now), JSON.parse(part.dataset.clocks));
  const waiting = new Waiting({ part, changed: () => tick() });
  const { taps } = waiting;
  const sound = part.querySelector("[data-sound]");
  sound.addEventListener("click", () => bell.allow());
  document.addEventListener("pointerdown", () => bell.allow());

  const list = () => document.querySelector("[data-list]");

  function tick() {
    const all = withHeard(clocks, waiting.all());
    const ringing = all.filter((clock) => !clock.heard && clocks.left(clock) <= 0);
    showRinging(part.querySelector("[data-ringing]"), ringing, hear, (bath) => part.dataset.bench + bath);
    bell.ring(ringing.length > 0);
    sound.hidden = bell.mayRing;
    waiting.show(part);
    const spoken = clocks.toSay();
    if (spoken) say("[data-spoken]", spoken);
    for (const place of document.querySelectorAll("[data-until]")) {
      place.textContent = clockText((Number(place.dataset.until) - clocks.now()) / 1000);
    }
  }

  function hear(clock) {
    clocks.silence(clock);
    taps.put(heardTap(clock));
  }

  // The list anew, once another pot asks first; a key that has the focus keeps it.
  async function refresh() {
    const answer = await fetch(location.pathname, { signal: AbortSignal.timeout(8000), credentials: "same-origin" });
    const fresh = new DOMParser().parseFromString(await answer.text(), "text/html").querySelector("[data-list]");
    if (!answer.ok || !fresh) return;
    const focused = document.activeElement?.closest("[data-list] a")?.getAttribute("href");
    list().replaceWith(fresh);
    if (focused) fresh.querySelector(`a[href="${focused}"]`)?.focus();
  }

  async function poll() {
    try {
      const said = await ask(part.dataset.address);
      clocks.hear(said.now, said.clocks, said.at);
      if (said.mark !== list().dataset.list) await refresh();
    } catch {
      // No answer: the clocks run on by themselves.
    }
    tick();
  }

  function say(selector, words) {
    const place = part.querySelector(selector);
    if (place.textContent !== words) place.textContent = words;
  }

  keepAwake((words) => say("[data-awake]", words));
  setInterval(tick, 500);
  setInterval(poll, POLL_MS);
  document.addEventListener("visibilitychange", () => document.hidden || poll());
  document.documentElement.dataset.stands = "";
  poll();
}
