// The page as the server sent it, with the taps that it does not know of yet laid
// over: steps ticked, the step at hand, the last line, the rest of a dose.

import { afterPart } from "./doses.js";
import { amountText } from "./pads.js";

const TICKS = ["started", "dosed", "missed", "added", "heat on", "at top", "checked", "heat off", "finished"];

export class Overlay {
  constructor(live) {
    this.live = live;
    this.rows = [...live.querySelectorAll("[data-row]")].map((row) => ({
      row,
      key: row.dataset.row,
      isDone: row.className === "done",
      mark: row.querySelector(".mark").innerHTML,
      words: row.querySelector("a").textContent,
    }));
    this.panels = new Map([...live.querySelectorAll(".panel")].map((panel) => [panel.dataset.step, panel]));
    this.abouts = new Map([...this.panels].map(([key, panel]) => [key, JSON.parse(panel.dataset.about)]));
    this.first = new Map([...this.panels].map(([key, panel]) => [key, panel.innerHTML]));
    this.lasts = [...live.querySelectorAll("[data-written] [data-deed]")].map((line) => ({
      deed: line.dataset.deed,
      words: line.dataset.words,
      step: line.dataset.of,
      line,
    }));
    this.dyes = JSON.parse(live.dataset.bottles);
    this.parted = "";
  }

  // Lay the taps over; `taps` are those of this bath, oldest first.
  lay(taps, timeOf) {
    this.undone = new Set(taps.map((tap) => tap.undoes).filter(Boolean));
    this.own = taps.filter((tap) => !tap.undoes && !this.undone.has(tap.key));
    this.timeOf = timeOf;
    this.layParts();
    for (const each of this.rows) this.layRow(each);
    this.layLast();
    this.layWritten();
  }

  ticksOf(key) {
    return this.own.filter((tap) => tap.step === key && TICKS.includes(tap.act));
  }

  isDone(key) {
    const each = this.rows.find((row) => row.key === key);
    if (!each) return false; // A clock of the room is no step.
    const mine = this.lasts.filter((line) => line.step === key);
    const stands = each.isDone && (!mine.length || mine.some((line) => !this.undone.has(line.deed)));
    return stands || this.ticksOf(key).length > 0 || this.about(key).rest_g === 0;
  }

  about(key) {
    return this.now?.get(key) ?? this.abouts.get(key);
  }

  stepAtHand() {
    return (this.rows.find((each) => !this.isDone(each.key)) ?? this.rows.at(-1)).key;
  }

  // The newest line that stands: one of this phone's own, or one of the server's.
  lastStanding() {
    const own = this.own.at(-1);
    if (own) return own.key;
    const known = new Set(this.live.dataset.standing.split(" "));
    return this.lasts.find((line) => known.has(line.deed) && !this.undone.has(line.deed))?.deed ?? "";
  }

  layRow({ row, key, mark, words }) {
    const ticks = this.ticksOf(key);
    const isDone = this.isDone(key);
    row.classList.toggle("done", isDone);
    row.querySelector(".mark").innerHTML = ticks.length ? "✓" : mark;
    row.querySelector("a").textContent = ticks.length ? this.said(ticks.at(-1)) : words;
  }

  layLast() {
    const own = this.own.filter((tap) => !tap.step.endsWith("/heard")).at(-1);
    const line = this.lasts.find((one) => !this.undone.has(one.deed));
    const words = own ? this.said(own) : line ? line.words : "";
    for (const place of this.live.querySelectorAll("[data-last]")) {
      place.hidden = !words;
      place.querySelector("span").textContent = `Last: ${words}`;
    }
  }

  layWritten() {
    const list = this.live.querySelector("[data-written]");
    for (const line of list.querySelectorAll("[data-own]")) line.remove();
    for (const { deed, line } of this.lasts) line.hidden = this.undone.has(deed);
    for (const tap of this.own) {
      const line = document.createElement("li");
      line.dataset.own = tap.key;
      line.textContent = `${this.said(tap)} (on this phone)`;
      list.prepend(line);
    }
  }

  said(tap) {
    return `${tap.said}, ${this.timeOf(tap)}`;
  }

  // After a part of a dose, the panel asks for the rest from the next bottle.
  layParts() {
    this.now = new Map();
    const parts = this.own.filter((tap) => tap.act === "dosed" && tap.step.endsWith("/part"));
    for (const tap of parts) {
      const key = tap.step.slice(0, -"/part".length);
      const about = this.about(key);
      if (about) this.now.set(key, afterPart(about, tap.bottle, tap.value, this.dyes));
    }
    const parted = parts.map((tap) => tap.key).join();
    if (parted === this.parted) return;
    this.parted = parted;
    for (const [key, panel] of this.panels) {
      if (this.abouts.get(key).kind !== "dose") continue;
      panel.innerHTML = this.first.get(key);
      const about = this.now.get(key);
      if (about?.rest_g) this.askRest(panel, about);
    }
  }

  askRest(panel, about) {
    const main = panel.querySelector("[data-view=main]");
    const form = main.querySelector("form[data-tap]");
    const known = about.amount > 0;
    const number = known ? amountText(about.amount, "") : "0";
    main.querySelector("[data-code]").textContent = about.code || "?";
    main.querySelector("[data-name]").textContent = known
      ? `${about.dye} ${amountText(about.strength, "%")}, the rest`
      : `${about.dye}: no other good bottle. Make a stock, or leave the rest out.`;
    main.querySelector("[data-number]").textContent = number;
    main.querySelector("[data-scale]")?.remove();
    if (about.water_g) main.querySelector("[data-told]")?.remove();
    main.querySelector("[data-trouble]")?.remove();
    main.querySelector("[data-open=bottle]").lastChild.textContent = `Check bottle ${about.code}`;
    const words = amountText(about.amount ?? 0, about.unit);
    const values = { step: about.part, value: String(about.amount ?? ""), bottle: about.code, said: `${about.dye} ${words}` };
    for (const [name, value] of Object.entries(values)) form.querySelector(`[name=${name}]`).value = value;
    form.querySelector("button span").textContent = `Done, ${words}`;
    form.querySelector("button").disabled = !known;
  }
}

// The clocks of every pot, with those that taps on this phone have begun or ended.
export function clocksNow(heard, overlay, number, toServer) {
  const done = (key) => overlay.isDone(key);
  const others = heard.filter((clock) => clock.bath !== number);
  const mine = heard.filter((clock) => clock.bath === number);
  const begun = overlay.own.flatMap((tap) =>
    tap.act === "missed" ? [] : begunBy(overlay, tap, number, toServer(tap)),
  );
  const known = new Set(mine.map((clock) => clock.key));
  const all = [...mine, ...begun.filter((clock) => !known.has(clock.key))];
  const stays = all.filter((clock) => !done(clock.key) && !done("off"));
  return [...others, ...stays.map((clock) => later(overlay, clock))];
}

function begunBy(overlay, tap, number, at) {
  const about = overlay.abouts.get(tap.step);
  if (!about || !TICKS.includes(tap.act)) return [];
  return about.begins.map(({ key, words, minutes }) => ({
    bath: number, key, words, at: at + minutes * 60000, heard: false,
  }));
}

function later(overlay, clock) {
  const more = overlay.own.filter((tap) => tap.step === `${clock.key}/more`);
  const minutes = more.reduce((sum, tap) => sum + (tap.value ?? 0), 0);
  return { ...clock, at: clock.at + minutes * 60000 };
}
