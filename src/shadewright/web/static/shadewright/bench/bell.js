// The bell: two soft strokes, made here, allowed by browsers only after a first tap.

const STROKE_MS = 2000;

export class Bell {
  constructor() {
    this.context = null;
    this.timer = null;
    this.title = document.title;
  }

  allow() {
    if (!this.context && "AudioContext" in window) this.context = new AudioContext();
    this.context?.resume();
  }

  get mayRing() {
    return this.context?.state === "running";
  }

  ring(isRinging) {
    document.documentElement.classList.toggle("rings", isRinging);
    document.title = isRinging ? `Now: ${this.title}` : this.title;
    if (isRinging && this.timer === null) {
      this.stroke();
      this.timer = setInterval(() => this.stroke(), STROKE_MS);
    } else if (!isRinging && this.timer !== null) {
      clearInterval(this.timer);
      this.timer = null;
    }
  }

  stroke() {
    if (!this.mayRing) return;
    [880, 660].forEach((pitch, place) => this.tone(pitch, place * 0.35));
  }

  tone(pitch, after) {
    const start = this.context.currentTime + after;
    const voice = this.context.createOscillator();
    const loudness = this.context.createGain();
    voice.frequency.value = pitch;
    loudness.gain.setValueAtTime(0.0001, start);
    loudness.gain.exponentialRampToValueAtTime(0.5, start + 0.02);
    loudness.gain.exponentialRampToValueAtTime(0.0001, start + 0.3);
    voice.connect(loudness).connect(this.context.destination);
    voice.start(start);
    voice.stop(start + 0.32);
  }
}
