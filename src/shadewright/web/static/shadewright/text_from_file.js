// A file's text is put into the field above it, as if it had been pasted.
"use strict";

const MOST_SIGNS = 20000;

for (const each of document.querySelectorAll("[data-text-from]")) each.hidden = false;

document.addEventListener("change", async (event) => {
  const file = event.target.closest("[data-text-into]");
  const field = file && document.getElementById(file.dataset.textInto);
  if (!field || !file.files[0]) return;
  const says = file.closest("[data-text-from]").querySelector("[role=status]");
  const text = await file.files[0].text();
  const fits = text.length <= MOST_SIGNS;
  if (fits) field.value = text;
  says.textContent = fits
    ? `${file.files[0].name} stands in the field.`
    : "The file is too long for one colour. Many samples go in under Swatches, From a file.";
  file.value = "";
});
