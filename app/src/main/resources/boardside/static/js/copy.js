// A button with data-copy puts the text of the field it names on the clipboard, also where the address is not HTTPS.

const said = document.getElementById("copied");

async function copy(field) {
  if (navigator.clipboard) {
    await navigator.clipboard.writeText(field.value);
    return true;
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
