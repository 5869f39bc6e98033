// What rings, in words, with a key that says it was heard and the way to its pot.

// `wayTo` gives the address of a bath, none for the one that is open.
export function showRinging(place, ringing, heard, wayTo) {
  const wanted = ringing.map((clock) => `${clock.bath} ${clock.key}`).join("|");
  if (!place || place.dataset.shown === wanted) return;
  place.dataset.shown = wanted;
  place.replaceChildren(...ringing.map((clock) => alarm(clock, heard, wayTo(clock.bath))));
}

function alarm(clock, heard, address) {
  const row = document.createElement("div");
  row.className = "alarm";
  const words = document.createElement(address ? "a" : "strong");
  if (address) words.href = `${address}/`;
  words.textContent = clock.words;
  const key = document.createElement("button");
  key.type = "button";
  key.className = "button";
  key.textContent = clock.every ? "I looked" : "Heard";
  key.addEventListener("click", () => heard(clock));
  row.append(words, key);
  return row;
}

export function heardTap(clock) {
  return { bath: clock.bath, act: "note", step: `${clock.key}/heard`, said: "Alarm heard" };
}

// Clocks as they are once the taps that wait on this phone count too: an alarm that was
// heard, and one that any tap puts off.
export function withHeard(clocks, waiting) {
  const heard = new Set(waiting.map((tap) => `${tap.bath} ${tap.step}`));
  const newest = Math.max(0, ...waiting.map((tap) => tap.tapped)) + clocks.offset;
  return clocks.clocks.map((clock) => {
    if (clock.every) return { ...clock, at: Math.max(clock.at, newest + clock.every) };
    return heard.has(`${clock.bath} ${clock.key}/heard`) ? { ...clock, heard: true } : clock;
  });
}
