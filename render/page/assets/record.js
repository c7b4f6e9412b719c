// Adds a correction to a record.
import { setWho, who } from "./device.js";
import { askWho, listenForClose } from "./dialogs.js";
import { entry, formFields } from "./entry.js";
import { at } from "./live.js";

listenForClose();
at("correct-form").addEventListener("submit", async (e) => {
  e.preventDefault();
  const problem = at("problem");
  problem.textContent = "";
  if (!who() && !await askWho(setWho)) return;
  try {
    const answer = await fetch(`/api/runs/${document.body.dataset.run}/entries`, {
      method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(entry("correct", formFields(e.target))), signal: AbortSignal.timeout(20000),
    });
    if (answer.ok) location.reload();
    else problem.textContent = (await answer.json()).reason;
  } catch {
    problem.textContent = problem.dataset.unsent;
  }
});
