// A snip that dries: its clock goes by the server's time, and rings while the page is
// open. Whoever goes on to the check has heard it.

import { keepAwake } from "./awake.js";
import { Bell } from "./bell.js";
import { Clocks, clockText } from "./clocks.js";

const part = document.querySelector("[data-snip]");
if (part) begin();

function begin() {
  const bell = new Bell();
  const clock = { bath: "", key: "snip", words: "The snip", at: Number(part.dataset.until) };
  const clocks = new Clocks(Number(part.dataset.now), [clock]);
  const find = (name) => part.querySelector(`[data-${name}]`);
  const sound = find("sound");
  sound.addEventListener("click", () => bell.allow());
  document.addEventListener("pointerdown", () => bell.allow());

  function tick() {
    const left = clocks.left(clock);
    find("left").textContent = clockText(Math.max(0, left));
    find("wait").hidden = left <= 0;
    find("dry").hidden = left > 0;
    sound.hidden = bell.mayRing;
    bell.ring(left <= 0);
    const spoken = clocks.toSay();
    if (spoken) find("spoken").textContent = spoken;
  }

  keepAwake(() => {});
  setInterval(tick, 500);
  tick();
}
