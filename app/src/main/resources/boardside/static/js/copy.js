// A button with data-copy puts the text of the field it names on the clipboard, also where the address is not HTTPS or the
// browser lets no page write there by itself.

const said = document.getElementById("copied");

async function copy(field) {
  try {
    await navigator.clipboard.writeText(field.value);
    return true;
  } catch {
    // Not there, or not allowed: the old way.
  }
  field.focus();
  field.select();
  return document.execCommand("copy");
}

for (const button of document.querySelectorAll("[data-copy]")) {
  button.addEventListener("click", async () => {
    const field = document.getElementById(button.dataset.copy);
    const done = await copy(field).catch(() => false);
    if (!done) field.select();
    said.textContent = done ? button.dataset.done : "";
  });
}
