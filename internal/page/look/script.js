// Scripts only make the pages quicker; every form works without them.
"use strict";

// The large buttons of a tally count on the spot instead of asking the server.
document.addEventListener("click", (event) => {
  const button = event.target.closest("form[data-tally] button[name=tap]");
  if (!button) return;
  const [, name, by] = /^(.*)([+-]\d+)$/.exec(button.value) || [];
  const input = name && button.form.elements.namedItem(name);
  if (!input || !/^\d*$/.test(input.value)) return;
  event.preventDefault();
  input.value = Math.max(0, Number(input.value) + Number(by));
});

// A form sent twice by an impatient thumb goes once.
document.addEventListener("submit", (event) => {
  if (event.target.method !== "post" || event.defaultPrevented) return;
  if (event.target.dataset.sent) event.preventDefault();
  event.target.dataset.sent = "yes";
});
window.addEventListener("pageshow", () => {
  for (const form of document.forms) delete form.dataset.sent;
});

// A sheet is keyed in by the keyboard alone: Enter sends nothing, but goes on to the next
// box, and to the button after the last; when it is let go, so as not to press that too.
const isKeyed = (event) => event.key === "Enter" && event.target.matches("form[data-keyed] td input");
for (const kind of ["keydown", "keypress"]) {
  document.addEventListener(kind, (event) => { if (isKeyed(event)) event.preventDefault(); });
}
document.addEventListener("keyup", (event) => {
  if (!isKeyed(event)) return;
  const form = event.target.form;
  const boxes = [...form.querySelectorAll("td input:not([type=hidden])"), form.querySelector("button.write")];
  const next = boxes[boxes.indexOf(event.target) + 1];
  next.focus();
  if (next.select) next.select();
});

// A figure's grounds open beneath it, and fold up again, instead of at the page's foot.
const toldOf = new Map();
document.addEventListener("click", (event) => {
  const link = event.target.closest("a.why");
  const grounds = link && document.getElementById(link.hash.slice(1));
  if (!grounds) return;
  event.preventDefault();
  if (toldOf.has(link)) {
    toldOf.get(link).remove();
    toldOf.delete(link);
    link.removeAttribute("aria-expanded");
    return;
  }
  const told = document.createElement("div");
  told.className = "told";
  told.setAttribute("role", "status");
  const beneath = link.closest("tr") || link.closest("li, p, h3, figure");
  toldOf.set(link, lay(told, beneath));
  told.append(...grounds.cloneNode(true).childNodes);
  link.setAttribute("aria-expanded", "true");
});

// lay puts what is told beneath a row, in a row of its own, or beneath a line.
function lay(told, beneath) {
  if (beneath.tagName !== "TR") {
    if (beneath.tagName === "LI") beneath.append(told);
    else beneath.after(told);
    return told;
  }
  const row = document.createElement("tr");
  row.className = "telling";
  const cell = row.insertCell();
  cell.colSpan = [...beneath.cells].reduce((wide, one) => wide + one.colSpan, 0);
  cell.append(told);
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

// While something is looked for, how far it is is told in place; then the page is shown anew.
const looking = document.querySelector("[data-again]");
if (looking) {
  const again = async () => {
    const answer = await fetch(location.href).catch(() => null);
    if (answer?.ok) {
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      const now = page.querySelector("[data-again]");
      if (!now) return location.reload();
      looking.textContent = now.textContent;
    }
    setTimeout(again, 1000);
  };
  setTimeout(again, 1000);
}
