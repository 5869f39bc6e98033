// The screen stays on while a page of the bench is open, where the browser lets a page
// ask for it: at the computer itself, or over https. Where it does not, it is said.

const KEPT = "The screen stays on while this page is open.";
const PLAIN = "On plain http no page may keep the screen on: set this phone’s own screen time to long.";
const REFUSED = "This browser does not keep the screen on: set its own screen time to long.";

export function keepAwake(say) {
  let lock = null;
  async function ask() {
    if (document.hidden || (lock && !lock.released)) return;
    if (!navigator.wakeLock) return say(isSecureContext ? REFUSED : PLAIN);
    try {
      lock = await navigator.wakeLock.request("screen");
      say(KEPT);
    } catch {
      say(REFUSED);
    }
  }
  document.addEventListener("visibilitychange", ask);
  document.addEventListener("click", ask);
  ask();
}
