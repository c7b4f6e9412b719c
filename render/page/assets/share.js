// Asks for a code, and ends the session of a device.
import { at } from "./live.js";

async function ask(method, path) {
  const problem = at("problem");
  problem.textContent = "";
  try {
    const answer = await fetch(path, { method, signal: AbortSignal.timeout(20000) });
    if (answer.ok) return location.assign("/share");
    problem.textContent = (await answer.json()).reason;
  } catch {
    problem.textContent = problem.dataset.unsent;
  }
}

at("new-code")?.addEventListener("click", () => ask("POST", "/api/share/codes"));
for (const button of document.querySelectorAll("[data-end]")) {
  button.addEventListener("click", () => ask("DELETE", "/api/share/sessions/" + encodeURIComponent(button.dataset.end)));
}
