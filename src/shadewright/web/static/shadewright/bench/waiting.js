// What waits on this phone until the server has it: taps and photos, said in words.

import { Photos } from "./photos.js";
import { Taps } from "./taps.js";

export class Waiting {
  // `changed` is called whenever anything here has; `fault` says why a photo that was
  // just taken cannot be written, where a page can ask for it again.
  constructor({ part, changed, fault }) {
    const { kind, taps: address } = part.dataset;
    const token = part.querySelector("[name=csrfmiddlewaretoken]").value;
    this.taps = new Taps({ kind, address, token, changed });
    this.photos = new Photos({
      kind,
      token,
      changed,
      refused: (photo, why, isNew) => (isNew && fault ? fault(why) : this.taps.putAside(photo, why)),
    });
    document.addEventListener("click", (event) => event.target.closest("[data-read]") && this.taps.forgetAside());
  }

  all() {
    return [...this.taps.waiting(), ...this.photos.waiting()];
  }

  // Say it in the page's part, with a key to put away what was read.
  show(part) {
    const place = part.querySelector("[data-unsent]");
    const words = [this.taps.words(), this.photos.words()].filter(Boolean).join(" ");
    if (place.textContent !== words) place.textContent = words;
    part.querySelector("[data-read]").hidden = !this.taps.setAside().length;
  }
}
