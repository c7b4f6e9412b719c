// The page of a job: starts runs, and makes entries of its forms.
import { setWho, who } from "./device.js";
import { askWho, listenForClose } from "./dialogs.js";
import { entry, formFields, sendPhoto } from "./entry.js";
import { at } from "./live.js";
import { ticked, tickInOrder } from "./paper.js";

const job = document.body.dataset.job;

// send posts to the server and shows what it says where it refuses.
async function send(path, body) {
  const problem = at("problem");
  problem.textContent = "";
  let answer, said;
  try {
    answer = await fetch(path, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body), signal: AbortSignal.timeout(20000) });
    said = await answer.json();
  } catch {
    said = { reason: problem.dataset.unsent };
  }
  if (answer?.ok) return said;
  problem.textContent = said.reason;
  problem.scrollIntoView({ block: "nearest" });
  return null;
}

function notSent(why) {
  at("problem").textContent = why.message || at("problem").dataset.unsent;
  at("problem").scrollIntoView({ block: "nearest" });
  return "";
}

// recordPaper records the lines that were ticked on paper, in order.
async function recordPaper(form) {
  const { steps, note } = ticked(form);
  for (const step of steps) if (!await send(`/api/jobs/${job}/entries`, entry("part", step))) return;
  if (note && !await send(`/api/jobs/${job}/entries`, entry("note", { note, source: "paper" }))) return;
  location.reload();
}

for (const list of document.querySelectorAll(".onpaper")) tickInOrder(list);
listenForClose();
document.addEventListener("submit", async (e) => {
  const { act } = { ...e.target.dataset, ...e.submitter?.dataset };
  if (!act) return;
  e.preventDefault();
  if (!who() && !await askWho(setWho)) return;
  if (act === "paper") return recordPaper(e.target);
  const fields = formFields(e.target);
  if (act === "start") {
    const made = await send("/api/runs", { ...fields, job, who: who() });
    return made && location.assign("/runs/" + made.run);
  }
  for (const reason of e.target.querySelectorAll("[data-point]")) {
    if (!await send(`/api/jobs/${job}/entries`, entry("accept", { of: reason.dataset.point, note: reason.value }))) return;
    reason.removeAttribute("data-point"); // it is kept: not sent again
    reason.disabled = true;
  }
  if (fields.step) fields.step = Number(fields.step);
  for (const read of e.target.querySelectorAll("[data-value]")) {
    if (read.value === "") continue;
    if (!await send(`/api/jobs/${job}/entries`, entry("measure", { ...JSON.parse(read.dataset.value), value: read.value }))) return;
    read.value = ""; // it is kept: not sent again with the rest
  }
  const photo = e.target.elements.photo?.files[0];
  if (photo && !(fields.photo = await sendPhoto(photo).catch(notSent))) return;
  if (await send(`/api/jobs/${job}/entries`, entry(act, fields))) location.reload();
});
// The drawing that shows a part is that of the joint which held it.
for (const form of document.querySelectorAll('form[data-act="send out"]')) {
  const { step, joint } = form.elements;
  const follow = () => { joint.value = step.selectedOptions[0].dataset.joint || joint.value; };
  step.addEventListener("change", follow);
  follow();
}
// A long list opens at the next thing to do, unless the page is loaded again after an
// entry.
const next = document.querySelector("[data-next]");
if (next) {
  const show = () => next.scrollIntoView({ block: "center" });
  const [loaded] = performance.getEntriesByType("navigation");
  at("tonext").hidden = false;
  at("tonext").addEventListener("click", (e) => { e.preventDefault(); show(); });
  if (loaded?.type !== "reload" && !location.hash && next.getBoundingClientRect().bottom > innerHeight) show();
}
