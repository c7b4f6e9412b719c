// Starts a run, with a job where the machine or the order is named; of a whole machine
// the job alone.
import { who } from "./device.js";
import { at } from "./live.js";

async function post(path, body) {
  const answer = await fetch(path, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body), signal: AbortSignal.timeout(20000) });
  const said = await answer.json().catch(() => ({}));
  if (!answer.ok) throw new Error(said.reason || "");
  return said;
}

at("start-form")?.addEventListener("submit", async (e) => {
  e.preventDefault();
  const form = e.target;
  const problem = at("problem");
  problem.textContent = "";
  const of = form.dataset.of;
  const fields = Object.fromEntries([...new FormData(form)].filter(([name, value]) => value !== "" && name !== "work"));
  try {
    const work = e.submitter.value;
    const job = work === "" || Object.keys(fields).length > 0 ? (await post("/api/jobs", { of, ...fields, who: who() || undefined })).job : undefined;
    if (work === "") return location.assign("/jobs/" + job);
    const { run } = await post("/api/runs", { of, work, job, who: who() || undefined });
    location.assign("/runs/" + run);
  } catch (error) {
    problem.textContent = error.message && error.name === "Error" ? error.message : problem.dataset.unsent;
  }
});
