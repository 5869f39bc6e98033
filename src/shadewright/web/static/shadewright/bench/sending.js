// What the server must answer at once: a photo of a label, a rest rescaled.

const PATIENCE_MS = 20000;

// Send a form; return why it was not written, nothing if it was.
export async function sent(form) {
  try {
    const answer = await posted(form);
    if (answer.ok) return "";
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    return page.querySelector("[data-fault]")?.textContent || "This could not be written. Load the page anew and try again.";
  } catch {
    return "Nobody answers just now, so this is not written. Try again once the connection is back.";
  }
}

// The code that the server sees on a photo of a label, or why it sees none.
export async function seenOn(form) {
  try {
    return await (await posted(form, { Accept: "application/json" })).json();
  } catch {
    return { code: "", why: "The photo cannot be read just now: nobody answers. Type the three signs instead." };
  }
}

function posted(form, headers = {}) {
  return fetch(form.action, { method: "POST", body: new FormData(form), headers, signal: AbortSignal.timeout(PATIENCE_MS) });
}
