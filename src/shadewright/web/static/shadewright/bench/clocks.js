// Clocks run from absolute times of the server; between two answers this device's
// own clock carries them on, through sleep and reload. Nothing is counted down.

const SPOKEN_S = [300, 60, 0];

export class Clocks {
  constructor(now, clocks) {
    this.spoken = new Map();
    this.hear(now, clocks);
  }

  // `at` is when, by this device, the server's clock showed `now`.
  hear(now, clocks, at = Date.now()) {
    this.offset = now - at;
    this.clocks = clocks;
  }

  now() {
    return Date.now() + this.offset;
  }

  left(clock) {
    return (clock.at - this.now()) / 1000;
  }

  // An alarm was heard here: it is silent before the server knows, one that comes
  // again and again until its next time.
  silence({ bath, key }) {
    for (const clock of this.clocks) {
      if (clock.bath !== bath || clock.key !== key) continue;
      if (clock.every) clock.at = this.now() + clock.every;
      else clock.heard = true;
    }
  }

  // What is said aloud: at five minutes, at one minute and at nought, each once.
  toSay() {
    const said = [];
    for (const clock of this.clocks) {
      const name = `${clock.bath} ${clock.key} ${clock.at}`;
      const left = this.left(clock);
      if (clock.every && left > 0) continue;
      const due = SPOKEN_S.filter((mark) => left <= mark && left > mark - 30).at(-1);
      if (due === undefined || this.spoken.get(name) === due) continue;
      this.spoken.set(name, due);
      said.push(due ? `${clock.words}: ${due / 60} min` : `${clock.words}: now`);
    }
    return said.join(". ");
  }
}

export function clockText(seconds) {
  const whole = Math.round(Math.abs(seconds));
  const sign = Math.round(seconds) < 0 ? "+" : "";
  return `${sign}${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}

// The time of day of a tap, as this device shows it.
export function timeOf(tap) {
  return new Date(tap.tapped).toTimeString().slice(0, 5);
}

export async function ask(address) {
  const sent = Date.now();
  const answer = await fetch(address, { signal: AbortSignal.timeout(8000), credentials: "same-origin" });
  if (!answer.ok || answer.redirected) throw new Error(`answer ${answer.status}`);
  const said = await answer.json();
  return { ...said, at: (sent + Date.now()) / 2 };
}
