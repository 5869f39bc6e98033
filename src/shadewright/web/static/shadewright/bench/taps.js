// Taps are kept on this phone, each under its own key, until the server has them.
// They are sent in the order they were made; sent twice, they are written once.
// Plain http is no secure context: no randomUUID, no service worker, no Wake Lock.

const RETRY_MS = 3000;
const PATIENCE_MS = 10000;
const AT_ONCE = 50;

export function newKey() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}

export class Taps {
  // `changed` is called whenever what waits here has changed.
  constructor({ kind, address, token, changed }) {
    this.start = `shadewright.${kind}.tap.`;
    this.aside = `shadewright.${kind}.aside.`;
    this.address = address;
    this.token = token;
    this.changed = changed;
    this.isSending = false;
    this.trouble = "";
    addEventListener("online", () => this.send());
    setInterval(() => this.send(), RETRY_MS);
  }

  stored(start) {
    return Object.keys(localStorage)
      .filter((name) => name.startsWith(start))
      .sort()
      .map((name) => ({ name, ...JSON.parse(localStorage.getItem(name)) }));
  }

  waiting() {
    return this.stored(this.start);
  }

  setAside() {
    return this.stored(this.aside);
  }

  put(tap) {
    const last = this.waiting().at(-1);
    const order = Math.max(Date.now(), (last?.order ?? 0) + 1);
    const kept = { key: newKey(), ...tap, order, tapped: Date.now() };
    const name = this.start + String(order).padStart(16, "0") + kept.key;
    localStorage.setItem(name, JSON.stringify(kept));
    this.changed();
    this.send();
    return kept;
  }

  async send() {
    if (this.isSending || !this.waiting().length) return;
    this.isSending = true;
    try {
      while (this.waiting().length && (await this.sendSome()));
    } catch {
      this.trouble = ""; // No answer: they wait, and the next try comes by itself.
    } finally {
      this.isSending = false;
      this.changed();
    }
  }

  async sendSome() {
    const batch = this.waiting().slice(0, AT_ONCE);
    const taps = batch.map(({ name, order, tapped, ...tap }) => ({
      ...tap,
      age_ms: Math.max(0, Date.now() - tapped),
    }));
    const answer = await fetch(this.address, {
      method: "POST",
      credentials: "same-origin",
      headers: { "Content-Type": "application/json", "X-CSRFToken": this.token },
      body: JSON.stringify({ taps }),
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    if (!answer.ok) {
      this.trouble = answer.status === 403 ? "This phone is not let in now. Pair it again at the desk." : "";
      return false;
    }
    this.trouble = "";
    const { kept, refused } = await answer.json();
    this.settle(batch, new Set(kept), new Map(refused.map((one) => [one.key, one.why])));
    return kept.length + refused.length > 0;
  }

  settle(batch, kept, refused) {
    for (const { name, ...tap } of batch) {
      if (refused.has(tap.key)) this.lay(tap, refused.get(tap.key));
      if (kept.has(tap.key) || refused.has(tap.key)) localStorage.removeItem(name);
    }
    this.changed();
  }

  // What could not be written is said until somebody has read it.
  putAside(tap, why) {
    this.lay(tap, why);
    this.changed();
  }

  lay({ bytes, ...tap }, why) {
    localStorage.setItem(this.aside + tap.key, JSON.stringify({ ...tap, why }));
  }

  forgetAside() {
    for (const { name } of this.setAside()) localStorage.removeItem(name);
    this.changed();
  }

  words() {
    const count = this.waiting().length;
    const wait = count === 1 ? "1 tap waits on this phone. It is safe." : `${count} taps wait on this phone. They are safe.`;
    const aside = this.setAside().map((tap) => `Not written: ${tap.said || tap.act}. ${tap.why}`);
    return [count ? wait : "", count ? this.trouble : "", ...aside].filter(Boolean).join(" ");
  }
}
