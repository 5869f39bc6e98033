// Colours out of a photo: tap the yarn of each swatch in turn. The photo never leaves
// the browser. What is under the ring is averaged as light, not as numbers of a file;
// a grey card of 18 % (CIELAB L* 50) makes the light neutral and sets its strength.
"use strict";

const LONGEST_PX = 900;
const RING = 0.022; // of the longer edge
const CARD = 0.184; // what an 18 % card sends back: Y at L* 50

const light = (byte) => {
  const v = byte / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
};
const byteOf = (v) => {
  const kept = Math.min(Math.max(v, 0), 1);
  const code = kept <= 0.0031308 ? 12.92 * kept : 1.055 * kept ** (1 / 2.4) - 0.055;
  return Math.round(code * 255);
};
const hexOf = (rgb) =>
  `#${rgb.map((v) => byteOf(v).toString(16).padStart(2, "0")).join("")}`;

class PhotoColours {
  constructor(part) {
    this.find = (name) => part.querySelector(`[data-photo-${name}]`);
    this.form = part.closest("form");
    this.canvas = this.find("canvas");
    this.pen = this.canvas.getContext("2d", { willReadFrequently: true });
    this.step = 0;
    this.gains = [1, 1, 1];
    part.hidden = false;
    this.find("file").addEventListener("change", (event) => this.open(event.target));
    this.find("card").addEventListener("change", () => this.begin());
    this.find("back").addEventListener("click", () => this.move(-1));
    this.find("skip").addEventListener("click", () => this.move(1));
    this.canvas.addEventListener("click", (event) => this.tapped(event));
    this.canvas.addEventListener("keydown", (event) => this.typed(event));
  }

  get entries() {
    return [...this.form.querySelectorAll("[data-colour-entry]")];
  }

  get hasCard() {
    return this.find("card").checked;
  }

  get radius() {
    return RING * Math.max(this.canvas.width, this.canvas.height);
  }

  async open(input) {
    const file = input.files[0];
    if (!file) return;
    try {
      this.photo = await createImageBitmap(file);
    } catch {
      this.find("work").hidden = false;
      this.say("This file is no photo that can be opened. Take it anew as JPEG.");
      return;
    }
    const { width, height } = this.photo;
    const scale = Math.min(1, LONGEST_PX / Math.max(width, height));
    this.canvas.width = Math.round(width * scale);
    this.canvas.height = Math.round(height * scale);
    this.find("work").hidden = false;
    this.begin();
  }

  begin() {
    this.gains = [1, 1, 1];
    this.step = this.hasCard ? -1 : 0;
    this.mark = [this.canvas.width / 2, this.canvas.height / 2];
    const way = this.hasCard ? "photo with card" : "photo";
    const pick = this.form.querySelector(`[name=way][value="${way}"]`);
    if (pick) pick.checked = true;
    this.draw();
    this.say(this.next());
  }

  draw() {
    if (!this.photo) return;
    this.pen.drawImage(this.photo, 0, 0, this.canvas.width, this.canvas.height);
  }

  ring() {
    for (const [width, colour] of [[5, "#000"], [2, "#fff"]]) {
      this.pen.beginPath();
      this.pen.arc(...this.mark, this.radius, 0, 2 * Math.PI);
      this.pen.lineWidth = width;
      this.pen.strokeStyle = colour;
      this.pen.stroke();
    }
  }

  tapped(event) {
    const box = this.canvas.getBoundingClientRect();
    const scale = this.canvas.width / box.width;
    this.mark = [(event.clientX - box.left) * scale, (event.clientY - box.top) * scale];
    this.take();
  }

  typed(event) {
    const by = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
    if (event.key === "Enter") this.take();
    else if (by[event.key]) {
      const [x, y] = by[event.key].map((each, n) => this.mark[n] + each * this.radius);
      this.mark = [
        Math.min(Math.max(x, 0), this.canvas.width - 1),
        Math.min(Math.max(y, 0), this.canvas.height - 1),
      ];
      this.draw();
      this.ring();
    } else return;
    event.preventDefault();
  }

  take() {
    this.draw();
    const seen = this.mean();
    this.ring();
    if (this.step < 0) {
      this.gains = seen.map((v) => CARD / Math.max(v, 1e-4));
      this.step = 0;
      this.say(`The card is taken. ${this.next()}`);
      return;
    }
    if (this.entries.length === 1) this.step = 0;
    const entry = this.entries[this.step];
    if (!entry) return;
    const rgb = seen.map((v, n) => v * this.gains[n]);
    const typed = entry.querySelector("[data-typed]");
    const hex = hexOf(rgb);
    const isMany = typed.dataset.typed === "lines" && typed.value.trim() !== "";
    typed.value = isMany ? `${typed.value.trimEnd()}\n${hex}` : hex;
    typed.dispatchEvent(new Event("input", { bubbles: true }));
    const bright = Math.max(...rgb) > 1 ? " It is brighter than the card allows: look at the light." : "";
    const taken = `${this.nameOf(this.step)} is ${hex}.${bright}`;
    this.step += 1;
    this.say(`${taken} ${this.next()}`);
  }

  mean() {
    const r = Math.max(2, Math.round(this.radius));
    const [x, y] = this.mark.map((each) => Math.round(each) - r);
    const { data } = this.pen.getImageData(x, y, 2 * r + 1, 2 * r + 1);
    const sum = [0, 0, 0];
    let count = 0;
    for (let at = 0; at < data.length; at += 4) {
      const place = at / 4;
      const [dx, dy] = [(place % (2 * r + 1)) - r, Math.floor(place / (2 * r + 1)) - r];
      if (dx * dx + dy * dy > r * r || data[at + 3] === 0) continue;
      for (const n of [0, 1, 2]) sum[n] += light(data[at + n]);
      count += 1;
    }
    return sum.map((v) => v / Math.max(count, 1));
  }

  move(by) {
    const first = this.hasCard ? -1 : 0;
    this.step = Math.min(Math.max(this.step + by, first), this.entries.length);
    this.say(this.next());
  }

  nameOf(step) {
    const entry = this.entries[step];
    const row = entry.closest("fieldset");
    const dye = row?.querySelector("[name^=dye_]")?.value.trim();
    const legend = row?.querySelector("legend")?.textContent.trim();
    return dye ? `${legend}, ${dye},` : legend ?? "The yarn";
  }

  next() {
    if (this.step < 0) return "Tap the grey card.";
    if (this.step >= this.entries.length) {
      return this.step === 1 ? "Tap elsewhere to take another place." : "That was the last one.";
    }
    return `Now tap: ${this.nameOf(this.step).replace(/,$/, "")}.`;
  }

  say(words) {
    this.find("says").textContent = words;
  }
}

for (const part of document.querySelectorAll("[data-photo-colours]")) new PhotoColours(part);
