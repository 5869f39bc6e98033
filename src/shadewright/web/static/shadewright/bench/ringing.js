// What rings, in words, with a key that says it was heard.

export function showRinging(place, ringing, heard) {
  const wanted = ringing.map((clock) => `${clock.bath} ${clock.key}`).join("|");
  if (!place || place.dataset.shown === wanted) return;
  place.dataset.shown = wanted;
  place.replaceChildren(...ringing.map((clock) => alarm(clock, heard)));
}

function alarm(clock, heard) {
  const row = document.createElement("div");
  row.className = "alarm";
  const words = document.createElement("strong");
  words.textContent = clock.words;
  const key = document.createElement("button");
  key.type = "button";
  key.className = "button";
  key.textContent = "Heard";
  key.addEventListener("click", () => heard(clock));
  row.append(words, key);
  return row;
}

export function heardTap(clock) {
  return { bath: clock.bath, act: "note", step: `${clock.key}/heard`, said: "Alarm heard" };
}

// Clocks as they are once the taps that wait on this phone count too.
export function withHeard(clocks, waiting) {
  const heard = new Set(waiting.map((tap) => `${tap.bath} ${tap.step}`));
  return clocks.map((clock) =>
    heard.has(`${clock.bath} ${clock.key}/heard`) ? { ...clock, heard: true } : clock,
  );
}
