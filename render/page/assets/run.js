// The page of a run: a tap becomes an entry, and an entry changes what is shown.
import { gauge, setGauge, setWho, setWrench, stayAwake, tone, toolsAsked, who, wrench } from "./device.js";
import { askWho, listenForClose, openDialog, showSaid } from "./dialogs.js";
import { entry, formFields, sendPhoto } from "./entry.js";
import { at, Live } from "./live.js";
import { Outbox } from "./outbox.js";
import { ticked, tickInOrder } from "./paper.js";
import { heldWords, Shown } from "./shown.js";
import { countDown } from "./wait.js";
import { Zoom } from "./zoom.js";

const guard = 700; // ms in which the bar takes no second tap
const run = document.body.dataset.run;
const live = new Live(run, () => drawAll(), (yes, status, fault) => outbox.heard(yes, status, fault));
const outbox = new Outbox(run, { changed: () => shown.draw(), taken, refused });
const shown = new Shown(live, outbox);
const part = at("part");
const zoom = part && new Zoom(part);
let rested = 0; // when the bar takes the next tap
let chosen = null; // the mark that a dialog is about

function taken(tap, version, says) {
  tone();
  if (tap.entry.act === "hand over") { // the next tap is somebody else's
    setWhoShown("");
    at("who").querySelector("input").value = tap.entry.to || "";
  }
  if (says) showSaid(says);
  shown.sent.push({ step: tap.entry.act === "done" ? tap.entry.step : 0, version, id: tap.entry.entry, name: tap.name });
  live.refresh();
}

// record makes an entry and holds it until the server has taken it; its id where it
// does, else false. Offline only the next step is recorded: the server judges all else.
async function record(act, fields) {
  if (showRefused()) return false;
  const plainStep = act === "done" && Number(fields.step) === shown.next() && !fields.note;
  if (!outbox.online && !plainStep) {
    shown.drawStatus();
    return false;
  }
  const arrives = !who();
  const asks = fields.source !== "paper" && asksTools(act, fields.step);
  if ((arrives || asks) && !await askWho(setWhoShown)) return false;
  if (arrives && ["done", "begin"].includes(act) && showHanded()) return false; // read first, then tap again
  const made = entry(act, { ...fields, wrench: fields.wrench ?? (act === "done" ? toolOf(fields.step) : "") });
  await outbox.add(made, live.known.steps[made.step]?.name || live.known.marks.find((m) => m.id === made.place?.fastener)?.name || "");
  return made.entry;
}

// showRefused shows again why a tap was rejected, where one waits for an answer: until
// then no other is recorded.
function showRefused() {
  const tap = outbox.held.find((one) => one.refused);
  if (tap) refused(tap);
  return Boolean(tap);
}

// arrive asks who works here, and shows them what was handed over.
function arrive() {
  if (!who()) askWho(setWhoShown).then((signed) => signed && showHanded());
}

// showHanded shows what was handed over to whoever goes on; false where nothing was.
function showHanded() {
  if (!at("handed-lines")?.children.length) return false;
  openDialog("handed");
  return true;
}

// is says whether a step sets a torque ("sets") or turns by an angle ("angle").
function is(what, step) {
  return Boolean(live.known.steps[step]?.[what] || live.known.marks.some((mark) => mark.step === step && mark[what]));
}

// toolOf is the number of what a step is done with.
function toolOf(step) {
  if (is("sets", step)) return wrench();
  return toolField("gauge") && is("angle", step) ? gauge() : "";
}

// asksTools says whether a person is asked what they work with, once in each run: as
// the work begins, and at the first torque at the latest.
function asksTools(act, step) {
  if (!toolField("wrench") || toolsAsked(run)) return false;
  return act === "accept" || act === "done" && is("sets", step);
}

const toolField = (name) => at("who").querySelector(`[name=${name}]`);

function setWhoShown(value, tools = {}) {
  setWho(value);
  if (tools.wrench !== undefined) setWrench(tools.wrench, run);
  if (tools.gauge !== undefined) setGauge(tools.gauge);
  showWho();
}

function drawAll() {
  shown.draw();
  showWho();
}

// showWho shows who works, and with what the next step is done.
function showWho() {
  const button = at("who-button");
  const [wrenches, gauges] = ["wrench", "gauge"].map(toolField);
  const used = gauges && is("angle", live.known.next) ? gauge() : wrenches && wrench();
  button.textContent = [who() || button.dataset.none, used].filter(Boolean).join(" · ");
  if (wrenches) at("seal").querySelector("[name=wrench]").defaultValue = wrench();
  if (at("who").open) return; // somebody is typing
  if (wrenches) wrenches.value = wrench();
  if (gauges) gauges.value = gauge();
}

// listWrenches offers the numbers of the shop's wrenches.
async function listWrenches() {
  const answer = await fetch("/api/wrenches").catch(() => null);
  if (!answer?.ok) return;
  at("wrenches").replaceChildren(...(await answer.json()).map((one) => new Option(one.name, one.number)));
}

// tapBar does what the bar says; a second tap soon after is a slip of the finger.
function tapBar() {
  const { act, step, open } = at("bar").dataset;
  if (at("bar").disabled || performance.now() < rested) return;
  rest();
  shown.arm(0);
  if (showRefused()) return;
  if (open) openDialog(open);
  else if (act) record(act, step > 0 ? { step: Number(step) } : {});
}

function rest() {
  const bar = at("bar");
  rested = performance.now() + guard;
  bar.dataset.resting = "";
  setTimeout(() => delete bar.dataset.resting, guard);
}

async function undo() {
  const last = outbox.held.at(-1);
  if (last && !(outbox.sending && outbox.held.length === 1)) {
    await outbox.drop(last.order);
    return;
  }
  const of = last?.entry.entry || shown.sent.at(-1)?.id || live.known.undo;
  if (!of) return;
  if (of !== live.known.undo || live.known.undo_by === who()) {
    record("undo", { of });
    return;
  }
  at("takeback-title").textContent = live.known.back; // somebody else's
  at("takeback-do").onclick = () => {
    at("takeback").close();
    record("undo", { of });
  };
  openDialog("takeback");
}

// tapMark does the next step where its mark is tapped, and asks at any other. An
// angle takes a second tap: a touch of the drawing by mistake records none.
function tapMark(id) {
  const step = shown.next();
  if (!live.known.steps[step]?.ids.includes(id) || at("bar").dataset.act !== "done") return choose(id);
  if (!live.known.steps[step].angle || shown.armed === step) return tapBar();
  if (performance.now() < rested) return;
  shown.arm(step);
  rest();
}

// choose opens what can be done about a fastener; without one, about the wait that
// is next.
function choose(id) {
  const step = shown.next();
  const wait = live.known.steps[step] && { ...live.known.steps[step], step, said: "" };
  chosen = id ? live.known.marks.find((mark) => mark.id === id) : wait;
  if (!chosen || !live.known.open) return;
  shown.arm(0);
  at("fastener-title").textContent = chosen.name;
  at("fastener-said").textContent = chosen.said;
  at("fastener-does").textContent = chosen.does || "";
  at("fastener-early").textContent = chosen.early || "";
  for (const e of document.querySelectorAll("[data-of-mark]")) e.hidden = e.disabled = !id;
  const anyway = document.querySelector('.outoforder [data-act="done"]');
  anyway.hidden = anyway.disabled = !id || chosen.step === step; // it is left out, or it is its turn
  const says = at("next-said");
  says.textContent = says.dataset.says.replace("%s", live.known.steps[step]?.name || "–");
  says.hidden = at("fastener-does").hidden = chosen.step === step; // nothing is out of order
  document.querySelector(".outoforder").hidden = !chosen.step || chosen.stuck;
  at("fastener-settle").hidden = !chosen.stuck;
  showInterrupted(chosen.angle && !chosen.stuck);
  openDialog("fastener");
}

// showInterrupted offers to note an angle that was interrupted, where it is one.
function showInterrupted(angle) {
  for (const e of document.querySelectorAll(".interrupted")) e.hidden = !angle;
}

// aboutFields say what a button in a dialog is about.
function aboutFields(button) {
  const { step, of, fastener } = button.dataset;
  if (of) return { of };
  if (fastener) return { place: { fastener } };
  if (Number(step) > 0) return { step: Number(step) };
  if (button.closest("#fastener") && chosen) return chosen.step ? { step: chosen.step } : { place: { fastener: chosen.id } };
  return {};
}

function clicked(e) {
  const button = e.target.closest("button");
  if (!button || button.type === "submit") return;
  const { act, open, zoom: way } = button.dataset;
  if (way) ({ in: () => zoom.by(1.5), out: () => zoom.by(1 / 1.5), whole: () => zoom.reset() })[way]();
  else if (button.id === "bar") tapBar();
  else if (button.id === "undo") undo();
  else if (open) openFrom(button, open);
  else if (act) {
    button.closest("dialog")?.close();
    record(act, aboutFields(button));
  }
}

function openFrom(button, id) {
  if (id !== "held" && showRefused()) return;
  if (id === "who") {
    at("who").querySelector("input").value = who();
    return askWho(setWhoShown);
  }
  if (id === "held") return openHeld();
  if (id === "unsure") return openUnsure(button);
  if (id === "paper") return openPaper();
  if (id === "replace") {
    const mark = button.closest("#more") ? markOfNext() : chosen;
    at("replace-of").textContent = mark.name;
    at("replace").querySelector("form").dataset.fastener = mark.id;
  }
  if (id === "more") {
    showInterrupted(live.known.steps[shown.next()]?.angle);
    const anew = at("more").querySelector("[data-open=replace]");
    if (anew) anew.hidden = !markOfNext();
  }
  if (id === "fastener") return choose(nextFastener());
  const about = button.closest("#fastener") ? chosen?.id : nextFastener();
  if (id === "trouble") showInterrupted(live.known.marks.find((mark) => mark.id === about)?.angle);
  const dialog = openDialog(id);
  for (const kind of dialog.querySelectorAll(".kind[open]")) kind.open = false; // of an earlier trouble
  const which = dialog.querySelector('select[name="fastener"]');
  if (which && about && id === "trouble") which.value = about;
  if (button.dataset.of) dialog.querySelector(`form[data-of="${button.dataset.of}"]`)?.scrollIntoView();
}

// nextFastener is the id of the fastener that comes next, markOfNext its mark.
const nextFastener = () => live.known.steps[shown.next()]?.ids[0];
const markOfNext = () => live.known.marks.find((mark) => mark.id === nextFastener());

// openUnsure asks before an angle is recorded as interrupted: it cannot be undone.
function openUnsure(button) {
  const form = button.closest("#trouble form");
  const mark = form ? live.known.marks.find((one) => one.id === form.elements.fastener.value) : button.closest("#fastener") && chosen;
  const step = mark ? mark.step : shown.next();
  at("unsure-of").textContent = live.known.steps[step]?.name || mark?.name || "";
  at("unsure-do").dataset.step = step;
  openDialog("unsure");
}

// recordReady records each thing that is ready, by its kind and count; of a gasket also
// that none is.
async function recordReady(form) {
  for (const input of form.querySelectorAll("[data-kind]")) {
    const { kind, fastener } = input.dataset;
    if (input.value === "" || Number(input.value) < 1 && input.dataset.none === undefined) continue;
    if (!await record("ready", fastener ? { place: { fastener } } : { kind, value: input.value })) return;
  }
}

// openPaper lists the steps that can be entered from paper.
async function openPaper() {
  const answer = await fetch(`/runs/${run}/paper`).catch(() => null);
  if (!answer?.ok) return;
  at("paper-steps").innerHTML = await answer.text();
  openDialog("paper");
}

// recordPaper records what was ticked on paper, step by step in order.
async function recordPaper(form) {
  const { steps, note } = ticked(form);
  form.closest("dialog").close();
  form.reset();
  for (const step of steps) if (!await record("done", step)) return;
  if (note) await record("note", { note, source: "paper" });
}

async function submitted(e) {
  const form = e.target;
  if (form.id === "paper-form") {
    e.preventDefault();
    return recordPaper(form);
  }
  if (form.id === "readiness-form") {
    e.preventDefault();
    form.closest("dialog").close();
    return recordReady(form);
  }
  if (!form.dataset.act) return;
  e.preventDefault();
  const act = e.submitter?.dataset.act || form.dataset.act;
  const { step, fastener } = e.submitter?.dataset ?? {};
  const fields = { ...formFields(form), ...aboutFields(step || fastener ? e.submitter : form) };
  if (form.dataset.ofPanel !== undefined) fields.of = document.querySelector(".ask").dataset.of;
  if (e.submitter?.name === "trouble") Object.assign(fields, troubleFields(form, e.submitter.value));
  const left = leftOut(form, fields, e.submitter);
  const newAt = new FormData(form).getAll("new-at");
  const photo = form.elements.photo?.files[0];
  if (photo) {
    fields.photo = await sendPhoto(photo).catch(() => "");
    form.querySelector(".problem").textContent = fields.photo ? "" : at("says").dataset.photo;
    if (!fields.photo) return;
  }
  form.closest("dialog").close();
  form.reset();
  if (!await record(act, fields)) return;
  for (const step of left) await record("leave out", { step, note: fields.note });
  for (const fastener of newAt) await renew(fastener, fields.note);
}

// renew has a neighbour of a new fastener start again: its steps are open from then
// on, and what becomes of its own neighbours is part of the same answer.
async function renew(fastener, note) {
  const of = await record("replace", { place: { fastener }, note });
  if (of) await record("note", { of, note });
}

// askNewAt asks which of the neighbours start again, where they do.
function askNewAt(form) {
  const which = at("new-at");
  const restart = form.querySelector("[data-restart]").checked;
  which.hidden = which.disabled = !restart;
  const boxes = [...which.querySelectorAll("input")];
  boxes[0].required = restart && !boxes.some((one) => one.checked); // one at least
}

// leftOut gives the steps that nobody has to do, where a fastener is out.
function leftOut(form, fields, button) {
  const after = button?.name === "after" ? button.value : fields.after;
  delete fields.after;
  const now = live.settling(form.dataset.of); // the dialog may be older
  return after === "out" && now ? now.dataset.left.split(" ").filter(Boolean).map(Number) : [];
}

// askDecision asks for what the choice in a form needs: by how many degrees, which
// new fastener, or who decided.
function askDecision(form) {
  const choice = form.elements.decided?.value;
  if (choice) {
    show(form.querySelector(".degrees"), choice === "turn on");
    form.elements.note.required = choice === "other";
    const go = form.querySelector(".go");
    go.dataset.act = choice === "new fastener" ? "replace" : "";
    go.dataset.step = choice === "new fastener" ? form.dataset.at : "";
  }
  if (form.elements.repair) {
    show(form.querySelector(".thread"), form.elements.repair.value === "thread insert");
    form.elements.note.required = form.elements.repair.value === "";
  }
  const person = form.querySelector("[data-person]");
  if (person) show(form.querySelector(".decider"), person.checked);
}

// show shows a label with its field; what is hidden is not sent.
function show(label, yes) {
  label.hidden = !yes;
  label.querySelector("input").disabled = !yes;
}

// troubleFields name the step of the fastener where it has one left.
function troubleFields(form, trouble) {
  const id = form.elements.fastener.value;
  const step = live.known.marks.find((mark) => mark.id === id)?.step;
  return { trouble, note: form.elements["note-" + trouble].value, ...(step ? { step, place: "" } : {}) };
}

// refused shows why a tap was not taken, and who was first.
function refused(tap) {
  const { reason, by, at: when, code } = tap.refused;
  at("refused-reason").textContent = [tap.name, reason].filter(Boolean).join(" – ");
  const clock = when ? new Date(when).toLocaleTimeString(document.documentElement.lang, { hour: "2-digit", minute: "2-digit", hourCycle: "h23" }) : "";
  at("refused-by").textContent = by ? at("refused-by").dataset.says.replace("%[1]s", by).replace("%[2]s", clock) : "";
  at("refused-says").hidden = tap.entry.act === "seal"; // no tap at the part
  at("refused-angle").hidden = code !== "run angle done";
  const asked = at("refused-wrench");
  asked.hidden = !["run seal wrench", "run wrench range"].includes(code);
  asked.querySelector("input").value = "";
  at("turned-twice").onclick = async () => {
    at("refused").close();
    await outbox.drop(tap.order);
    record("trouble", { trouble: "turned twice", step: tap.entry.step });
  };
  at("refused-close").onclick = async () => {
    at("refused").close();
    await outbox.drop(tap.order);
    live.refresh();
    if (outbox.held.length > 0) openHeld();
  };
  at("refused").oncancel = at("refused-close").onclick; // by Escape, or a gesture back
  at("refused-again").onclick = () => {
    const number = asked.querySelector("input").value.trim();
    if (number) setWrench(number, run);
    showWho();
    at("refused").close();
    outbox.again(number);
  };
  openDialog("refused");
}

// openHeld lists every tap that is held.
function openHeld() {
  const list = at("held-list");
  at("held-title").textContent = heldWords(outbox.held.length);
  list.replaceChildren(...outbox.held.map((tap) => {
    const item = document.createElement("li");
    const drop = document.createElement("button");
    drop.type = "button";
    drop.textContent = list.dataset.discard;
    drop.onclick = async () => {
      await outbox.drop(tap.order);
      if (outbox.held.length > 0) openHeld();
      else at("held").close();
    };
    item.append([tap.name || tap.entry.act, tap.refused?.reason].filter(Boolean).join(" – "), drop);
    return item;
  }));
  openDialog("held");
}

function pressed(e) {
  if (e.ctrlKey || e.altKey || e.metaKey || e.repeat || document.querySelector("dialog[open]") || e.target.matches("input, select, textarea")) return;
  const mark = e.target.closest?.(".mark");
  const does = {
    Enter: () => (mark ? tapMark(mark.dataset.id) : tapBar()), " ": () => (mark ? tapMark(mark.dataset.id) : tapBar()),
    u: undo, t: () => openFrom(document.body, "trouble"),
    "+": () => zoom.by(1.5), "-": () => zoom.by(1 / 1.5), 0: () => zoom.reset(),
    ArrowRight: mark && (() => step(mark, 1)), ArrowLeft: mark && (() => step(mark, -1)),
  }[e.key.length === 1 ? e.key.toLowerCase() : e.key];
  if (!does || ((e.key === "Enter" || e.key === " ") && e.target.closest("button, a, summary"))) return;
  e.preventDefault();
  does();
}

// step moves from mark to mark in the order of the work.
function step(mark, by) {
  const all = [...shown.marks.values()];
  all[(all.indexOf(mark) + by + all.length) % all.length].focus();
}

document.addEventListener("click", clicked);
document.addEventListener("submit", submitted);
document.addEventListener("keydown", pressed);
document.addEventListener("change", (e) => e.target.form && askDecision(e.target.form));
part?.addEventListener("click", (e) => {
  const mark = e.target.closest(".mark");
  if (!mark || !zoom.wasTap()) return;
  document.activeElement.blur(); // so that the next key is for the bar
  tapMark(mark.dataset.id);
});
at("trouble").addEventListener("change", (e) => {
  if (e.target.name === "fastener") showInterrupted(live.known.marks.find((mark) => mark.id === e.target.value)?.angle);
});
at("answer").addEventListener("change", (e) => askNewAt(e.target.form));
at("answer").addEventListener("reset", (e) => setTimeout(() => askNewAt(e.target)));
at("seal").addEventListener("focusin", () => { // a number is needed where a torque has none
  const number = at("seal").querySelector("[name=wrench]");
  if (number) number.required = live.known.bare;
});
at("send-again").addEventListener("click", () => {
  at("held").close();
  outbox.again();
});
tickInOrder(at("paper-steps"));
listenForClose();
showWho();
stayAwake();
countDown(live);
await outbox.start();
if (live.known.open) {
  live.follow();
  live.watch();
  listWrenches();
}
if (!showRefused() && live.known.open) {
  if (at("newer")) openDialog("newer").addEventListener("close", arrive, { once: true });
  else arrive();
}
document.body.dataset.ready = "yes";
