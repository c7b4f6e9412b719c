// What is shown: what the server knows, and on top of it the taps that it has not
// taken yet. Nothing is shown as saved that is not.
import { at } from "./live.js";

const armedFor = 10000; // ms in which the second tap comes

export class Shown {
  constructor(live, outbox) {
    Object.assign(this, { live, outbox });
    this.sent = []; // taken by the server, not yet in what is known: {step, version, id}
    this.marks = new Map();
    for (const mark of document.querySelectorAll(".mark[data-id]")) this.marks.set(mark.dataset.id, mark);
    this.says = at("says").dataset;
    this.armed = 0; // the step whose mark was tapped once, where it takes two taps
  }

  // arm has the bar ask for a second tap, for as long as a person needs for it.
  arm(step) {
    clearTimeout(this.disarming);
    if (step) this.disarming = setTimeout(() => this.arm(0), armedFor);
    if (this.armed === step) return;
    this.armed = step;
    this.draw();
  }

  // label is that of the bar for a step.
  label(step, words) {
    return step && this.armed === step ? this.says.again.replace("%s", this.live.known.steps[step].name) : words;
  }

  // next is the step that a tap is for; 0 for none.
  next() {
    const { known } = this.live;
    const tapped = new Set([...this.outbox.held.filter((tap) => tap.entry.act === "done").map((tap) => tap.entry.step), ...this.sent.map((one) => one.step)]);
    return [known.next, ...known.ahead].find((step) => step && !tapped.has(step)) || 0;
  }

  // ahead says that the taps have run ahead of what the server knows.
  ahead() { return this.next() !== this.live.known.next; }

  draw() {
    const { known } = this.live;
    this.sent = this.sent.filter((one) => one.version > known.version);
    this.drawMarks(known);
    this.drawPanel();
    this.drawStages();
    this.drawStatus();
    const undo = at("undo");
    undo.dataset.of = known.undo;
    undo.disabled = !this.undoable();
    const of = this.outbox.held.at(-1)?.name || this.sent.at(-1)?.name || known.undo_of;
    if (undo.querySelector(".of").textContent !== of) undo.querySelector(".of").textContent = of;
    document.body.dataset.version = known.version;
    document.body.dataset.held = this.outbox.held.length;
  }

  undoable() { return this.outbox.held.length > 0 || this.sent.length > 0 || this.live.known.undo !== ""; }

  drawMarks(known) {
    for (const one of known.marks) this.drawMark(one.id, one.state, one.word, one.label, one.at);
    const ids = (step) => known.steps[step]?.ids || [];
    for (const one of this.sent) for (const id of ids(one.step)) this.drawMark(id, "done", "");
    for (const tap of this.outbox.held) {
      for (const id of ids(tap.entry.step)) this.drawMark(id, "held", this.says.held);
    }
    const next = this.next();
    if (this.ahead()) for (const id of ids(next)) this.drawMark(id, "next", "");
    for (const [id, mark] of this.marks) if (mark.hasAttribute("role")) mark.setAttribute("tabindex", ids(next).includes(id) ? "0" : "-1");
    this.drawBeside(known.steps[next]);
  }

  // drawBeside sets the figure of the next step beside its mark, where there is room.
  drawBeside(step) {
    const beside = at("beside");
    const room = this.marks.get(step?.ids[0])?.dataset;
    if (!beside) return;
    beside.textContent = room?.x && this.marks.get(step.ids[0]).dataset.state === "next" ? step.short : "";
    if (room?.x) {
      beside.setAttribute("x", room.x);
      beside.setAttribute("y", room.y);
    }
    const about = beside.getBBox(); // so that the part does not show between the figures
    const box = beside.textContent ? { x: about.x - 1, y: about.y, width: about.width + 2, height: about.height } : { width: 0, height: 0 };
    for (const [name, value] of Object.entries(box)) at("beside-ground").setAttribute(name, value);
  }

  // drawStages has the stage that is worked on in sight, where not all find room.
  drawStages() {
    const stages = at("stages");
    const now = stages.querySelector(".now");
    if (now) stages.scrollLeft = now.offsetLeft - stages.offsetLeft - (stages.clientWidth - now.offsetWidth) / 2;
  }

  drawMark(id, state, word, label, place) {
    const mark = this.marks.get(id);
    if (!mark) return;
    if (state === "held") mark.dataset.held = "";
    else {
      delete mark.dataset.held;
      mark.dataset.state = state;
    }
    const said = mark.querySelector(".word");
    said.textContent = word;
    if (place) {
      said.setAttribute("x", place[0]);
      said.setAttribute("y", place[1]);
    }
    if (label && mark.hasAttribute("role")) mark.setAttribute("aria-label", label);
  }

  // drawPanel shows the panel of the next step: the server's own, or one that the
  // page knows ahead.
  drawPanel() {
    const next = this.next();
    const bar = at("bar");
    if (bar.tagName !== this.live.bar.tagName) { // a link to the record, once the run is over
      swap(at("panel"), this.live.panel);
      bar.replaceWith(this.live.bar.cloneNode(true));
      return;
    }
    if (bar.tagName === "A") return;
    if (!this.ahead()) {
      const left = this.live.panel.querySelector("#left");
      if (left && at("left")) left.textContent = at("left").textContent; // it is counted down here
      swap(at("panel"), this.live.panel);
      for (const name of ["act", "step", "open", "later"]) bar.dataset[name] = this.live.bar.dataset[name];
      set(bar, this.label(next, this.live.bar.textContent), this.live.bar.disabled);
      return;
    }
    const known = at("ahead").querySelector(`template[data-step="${next}"]`);
    if (!known) {
      set(bar, this.says.saving, true);
      return;
    }
    if (at("panel").querySelector(".ask").dataset.step !== String(next)) at("panel").replaceChildren(known.content.cloneNode(true));
    Object.assign(bar.dataset, { act: "done", step: next, open: "", later: "" });
    set(bar, this.label(next, known.dataset.bar), false);
  }

  drawStatus() {
    const { held, online, ended } = this.outbox;
    const status = at("status");
    if (held.length === 0 && online && !ended) {
      if (status.childNodes.length > 0) status.replaceChildren();
      return;
    }
    const count = held.length > 0 ? heldWords(held.length) : "";
    const why = held.find((tap) => tap.refused)?.refused.reason;
    const said = [count, why, online ? "" : this.outbox.fault || this.says.offline, ended ? this.says.ended : ""].filter(Boolean).join(" · ");
    if (status.textContent === said) return;
    const button = document.createElement("button");
    button.type = "button";
    button.dataset.open = "held";
    button.textContent = said;
    status.replaceChildren(button);
  }
}

export function heldWords(n) {
  const { single, more } = at("held-title").dataset;
  return (n === 1 ? single : more).replace("%d", n);
}

// swap puts other content into a place, where it differs: a screen reader speaks
// what changes.
function swap(place, other) {
  if (place.innerHTML !== other.innerHTML) place.replaceChildren(...[...other.cloneNode(true).childNodes]);
}

function set(button, words, disabled) {
  if (button.textContent !== words) button.textContent = words;
  button.disabled = disabled;
}
