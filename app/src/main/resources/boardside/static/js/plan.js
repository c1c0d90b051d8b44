// The plan: a form sent without the network would lose the page to the browser's own fault.

const said = document.getElementById("offline");

for (const form of document.querySelectorAll("main form")) {
  form.addEventListener("submit", (event) => {
    said.hidden = navigator.onLine;
    if (navigator.onLine) return;
    event.preventDefault();
    said.scrollIntoView({ block: "center" });
  });
}
