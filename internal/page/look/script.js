// Scripts only make the pages quicker. Every form works without them.
"use strict";

// The large buttons of a tally count in the page, without a request to the server.
document.addEventListener("click", (event) => {
  const button = event.target.closest("form[data-tally] button[name=tap]");
  if (!button) return;
  const [, name, by] = /^(.*)([+-]\d+)$/.exec(button.value) || [];
  const input = name && button.form.elements.namedItem(name);
  if (!input || !/^\d*$/.test(input.value)) return;
  event.preventDefault();
  input.value = Math.max(0, Number(input.value) + Number(by));
});

// A form that is sent twice by a double tap is sent once.
document.addEventListener("submit", (event) => {
  if (event.target.method !== "post" || event.defaultPrevented) return;
  if (event.target.dataset.sent) event.preventDefault();
  event.target.dataset.sent = "yes";
});
window.addEventListener("pageshow", () => {
  for (const form of document.forms) delete form.dataset.sent;
});

// A round sheet is typed in with the keyboard alone. Enter does not send the form. It moves
// to the next box, and from the last box to the button. It moves when the key is released,
// so that the same press does not also press the button.
const isEnterInSheet = (event) => event.key === "Enter" && event.target.matches("form[data-sheet] td input");
for (const kind of ["keydown", "keypress"]) {
  document.addEventListener(kind, (event) => { if (isEnterInSheet(event)) event.preventDefault(); });
}
document.addEventListener("keyup", (event) => {
  if (!isEnterInSheet(event)) return;
  const form = event.target.form;
  const boxes = [...form.querySelectorAll("td input:not([type=hidden])"), form.querySelector("button.write")];
  const next = boxes[boxes.indexOf(event.target) + 1];
  next.focus();
  if (next.select) next.select();
});

// With scripts, the sources of a figure open beneath it and close again. Without scripts,
// the link leads to the foot of the page.
const openedBy = new Map();
document.addEventListener("click", (event) => {
  const link = event.target.closest("a.why");
  const sources = link && document.getElementById(link.hash.slice(1));
  if (!sources) return;
  event.preventDefault();
  if (openedBy.has(link)) {
    openedBy.get(link).remove();
    openedBy.delete(link);
    link.removeAttribute("aria-expanded");
    return;
  }
  const opened = document.createElement("div");
  opened.className = "opened";
  opened.setAttribute("role", "status");
  const beneath = link.closest("tr") || link.closest("li, p, h3, figure");
  openedBy.set(link, place(opened, beneath));
  opened.append(...sources.cloneNode(true).childNodes);
  link.setAttribute("aria-expanded", "true");
});

// place puts opened sources beneath a line, or beneath a table row in a row of their own.
// It returns the element to remove when they close.
function place(opened, beneath) {
  if (beneath.tagName !== "TR") {
    if (beneath.tagName === "LI") beneath.append(opened);
    else beneath.after(opened);
    return opened;
  }
  const row = document.createElement("tr");
  row.className = "opened-row";
  const cell = row.insertCell();
  cell.colSpan = [...beneath.cells].reduce((wide, one) => wide + one.colSpan, 0);
  cell.append(opened);
  beneath.after(row);
  return row;
}

// Search as you type.
for (const form of document.querySelectorAll("form[data-live]")) {
  let wait;
  let asked = 0;
  form.addEventListener("input", () => {
    clearTimeout(wait);
    wait = setTimeout(async () => {
      const mine = ++asked;
      const query = new URLSearchParams(new FormData(form));
      const answer = await fetch(form.action + "?" + query);
      if (!answer.ok || mine !== asked) return;
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      document.getElementById("found").replaceWith(page.getElementById("found"));
      history.replaceState(null, "", "?" + query);
    }, 150);
  });
}

// While a search runs, its progress is updated in place. When it ends, the page reloads.
const searching = document.querySelector("[data-again]");
if (searching) {
  const again = async () => {
    const answer = await fetch(location.href).catch(() => null);
    if (answer?.ok) {
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      const now = page.querySelector("[data-again]");
      if (!now) return location.reload();
      searching.textContent = now.textContent;
    }
    setTimeout(again, 1000);
  };
  setTimeout(again, 1000);
}
