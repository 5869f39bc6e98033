// Photos are kept on this phone, each under its own key, until the server has them.
// They are sent in the order they were taken; sent twice, they are written once.

import { newKey } from "./taps.js";

const RETRY_MS = 3000;
const PATIENCE_MS = 60000;
const STORE = "photos";
const PAIR_ANEW = 403;
const NOT_NOW = [PAIR_ANEW, 408, 429]; // the photo is good, the moment is not
const NO_ROOM = "This phone could not keep the photo. Free some of its space, or let the browser keep data, and try again.";

export class Photos {
  // `changed` is called whenever what waits here has changed; `refused` with a photo
  // that cannot be written, why, and whether it was refused at the first try.
  constructor({ kind, token, changed, refused }) {
    this.name = `shadewright.${kind}`;
    this.token = token;
    this.changed = changed;
    this.refused = refused;
    this.kept = [];
    this.sending = null;
    this.tried = new Set();
    addEventListener("online", () => this.send());
    setInterval(() => this.send(), RETRY_MS);
    this.load().then(() => this.send(), () => {});
  }

  // What waits, oldest first, as a tap is told of.
  waiting() {
    return this.kept.map(({ bytes, ...told }) => told);
  }

  has(key) {
    return this.kept.some((one) => one.key === key);
  }

  // Keep the photo of a form; return why it cannot be kept, nothing if it is.
  async put(form, bath) {
    const said = new FormData(form);
    const file = said.get("photo");
    if (!file?.size) return "Take a photo first, or choose one.";
    const note = said.get("note") ?? "";
    const order = Math.max(Date.now(), (this.kept.at(-1)?.order ?? 0) + 1);
    const words = said.get("cups") ? "Photo of the two cups" : ["Photo", note].filter(Boolean).join(": ");
    try {
      const bytes = await file.arrayBuffer();
      await this.change((store) => store.put({
        key: newKey(), act: "photo", bath, step: said.get("step"), note, cups: said.get("cups") ?? "",
        said: words, address: form.action, type: file.type, bytes, order, tapped: Date.now(),
      }));
    } catch {
      return NO_ROOM;
    }
    this.send();
    return "";
  }

  // Forget a photo that waits; say whether it did. One that is on its way is waited for.
  async drop(key) {
    await this.sending;
    await this.load();
    if (!this.has(key)) return false;
    await this.change((store) => store.delete(key));
    return true;
  }

  async send() {
    if (this.sending || !this.kept.length) return;
    this.sending = this.sendAll().catch(() => {}); // No answer: they wait for the next try.
    await this.sending;
    this.sending = null;
  }

  async sendAll() {
    await this.load();
    while (this.kept.length && (await this.sendFirst(this.kept[0])));
  }

  async sendFirst(photo) {
    const isFirstTry = !this.tried.has(photo.key);
    this.tried.add(photo.key);
    const answer = await this.posted(photo);
    if (answer.status >= 500 || NOT_NOW.includes(answer.status)) return false;
    const { why } = answer.ok ? { why: "" } : await answer.json().catch(() => ({ why: "The computer does not take this photo: it may be too large." }));
    if (why && photo.cups && !isFirstTry) {
      await this.change((store) => store.put({ ...photo, cups: "", note: `Two cups that could not be read: ${why}`.slice(0, 250) }));
      return true; // The picture is kept, if not the figure.
    }
    await this.change((store) => store.delete(photo.key));
    if (why) this.refused(photo, why, isFirstTry);
    return true;
  }

  posted(photo) {
    const body = new FormData();
    for (const name of ["key", "step", "note", "cups"]) body.append(name, photo[name]);
    body.append("age_ms", Math.max(0, Date.now() - photo.tapped));
    body.append("photo", new Blob([photo.bytes], { type: photo.type }), "photo");
    return fetch(photo.address, {
      method: "POST",
      credentials: "same-origin",
      headers: { Accept: "application/json", "X-CSRFToken": this.token },
      body,
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
  }

  words() {
    const count = this.kept.length;
    if (!count) return "";
    return count === 1 ? "1 photo waits on this phone. It is safe." : `${count} photos wait on this phone. They are safe.`;
  }

  async load() {
    const store = (await this.opened()).transaction(STORE).objectStore(STORE);
    this.kept = (await answerOf(store.getAll())).sort((a, b) => a.order - b.order);
    this.changed();
  }

  async change(act) {
    const writing = (await this.opened()).transaction(STORE, "readwrite");
    act(writing.objectStore(STORE));
    await new Promise((done, failed) => {
      writing.oncomplete = done;
      writing.onabort = () => failed(writing.error);
    });
    await this.load();
  }

  opened() {
    this.opening ??= (() => {
      const asked = indexedDB.open(this.name, 1);
      asked.onupgradeneeded = () => asked.result.createObjectStore(STORE, { keyPath: "key" });
      return answerOf(asked);
    })();
    return this.opening;
  }
}

function answerOf(request) {
  return new Promise((done, failed) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error);
  });
}
