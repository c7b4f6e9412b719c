// Dialogs open from whatever names them, and close by their buttons.
import { who } from "./device.js";
import { at, fillCopy } from "./live.js";

export function openDialog(id) {
  const dialog = at(id);
  for (const other of document.querySelectorAll("dialog[open]")) other.close();
  for (const copy of dialog.querySelectorAll("[data-copy]")) fillCopy(copy);
  dialog.showModal();
  return dialog;
}

// showSaid shows what the server says of an entry that it took.
export function showSaid(lines) {
  at("said-lines").replaceChildren(...lines.map((line) => Object.assign(document.createElement("p"), { className: "large", textContent: line })));
  openDialog("said");
}

export function listenForClose() {
  document.addEventListener("click", (e) => e.target.closest("[data-close]")?.closest("dialog").close());
}

// askWho opens the dialog for initials, and gives true once they are set.
export function askWho(set) {
  const dialog = openDialog("who");
  const form = dialog.querySelector("form");
  if (who()) { // known: it is the tools that are asked for, or another person
    form.elements.who.value = who();
    form.elements.wrench?.focus();
  }
  return new Promise((resolve) => {
    form.onsubmit = () => {
      set(form.elements.who.value, { wrench: form.elements.wrench?.value, gauge: form.elements.gauge?.value });
      resolve(true);
    };
    dialog.onclose = () => resolve(false);
  });
}
