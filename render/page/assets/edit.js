// Edits a pattern: sends operations to the server, and shows what it answers. The
// text, the picture and the forms come from there.

const at = (id) => document.getElementById(id);
const name = document.body.dataset.name;
let base = document.body.dataset.base;
let text = null; // the file, with its line breaks
let saved = null;
const done = [];
const undone = [];
let mode = "choose";
let chosen = [];
let tapped = [];
let queue = Promise.resolve();

const problem = (says) => { at("problem").textContent = says; };

async function send(path, method, body) {
  let answer;
  try {
    answer = await fetch(path, { method, headers: { "Content-Type": "application/json" }, body: JSON.stringify(body), signal: AbortSignal.timeout(20000) });
  } catch {
    throw new Error(at("kept").dataset.unsent);
  }
  const said = await answer.json().catch(() => ({}));
  if (!answer.ok && answer.status !== 409) throw new Error(said.reason || at("kept").dataset.unsent);
  return said;
}

// ask sends edits one after the other: each is made on the text that the last gave.
function ask(body, after) {
  queue = queue.then(async () => {
    try {
      const said = await send("/api/patterns/" + encodeURIComponent(name) + "/edit", "POST", { text, ...body });
      if (said.reason) throw new Error(said.reason);
      problem("");
      text = said.text;
      after?.(said);
      show(said);
    } catch (error) {
      problem(error.message);
      shown();
    }
  });
  return queue;
}

function note(said) {
  if (!said.back?.length) return;
  done.push(said.back);
  undone.length = 0;
}

const edit = (operations) => ask({ operations }, note);

function step(from, to) {
  const change = from.pop();
  if (change) ask({ change }, (said) => to.push(said.back));
}

// show puts an answer into the page, and keeps what is open and chosen.
function show(said) {
  const focus = place(document.activeElement);
  const open = new Map([...document.querySelectorAll("details.part-of")].map((one) => [one.id, one.open]));
  if (said.picture) at("picture").innerHTML = said.picture;
  at("draft").innerHTML = said.draft;
  for (const one of document.querySelectorAll("details.part-of")) if (open.has(one.id)) one.open = open.get(one.id);
  if (document.activeElement !== at("text") || said.operated) at("text").value = text;
  shown();
  if (focus) [...document.querySelectorAll("[data-op], .mark")].find((one) => place(one) === focus)?.focus({ preventScroll: true });
}

const place = (one) => one?.dataset?.op ? one.dataset.op + (one.dataset.key ?? "") + Boolean(one.closest("#chosen")) : one?.closest?.(".mark")?.dataset.id;

function marks() { return [...document.querySelectorAll("#drawn .mark")]; }

// shown brings the page in line with what is chosen and saved.
function shown() {
  const ids = marks().map((one) => one.dataset.id);
  if (ids.length) chosen = chosen.filter((id) => ids.includes(id));
  const seen = mode === "order" ? tapped : chosen;
  for (const mark of marks()) {
    mark.tabIndex = 0;
    mark.classList.toggle("picked", seen.includes(mark.dataset.id));
    mark.setAttribute("aria-pressed", seen.includes(mark.dataset.id));
  }
  at("with-chosen").hidden = chosen.length === 0;
  const row = chosen.length === 1 && document.querySelector(`#of-fasteners .row[data-id="${CSS.escape(chosen[0])}"]`);
  at("chosen").replaceChildren(...(row ? [row.cloneNode(true)] : []));
  for (const one of at("chosen").querySelectorAll("select")) one.value = row.querySelector("select").value;
  at("says").textContent = says();
  at("undo").disabled = done.length === 0;
  at("redo").disabled = undone.length === 0;
  at("kept").textContent = text === saved ? at("kept").dataset.saved : at("kept").dataset.open;
  document.body.dataset.ready = "yes";
  document.body.dataset.edits = Number(document.body.dataset.edits ?? 0) + 1;
}

function says() {
  if (mode === "order") return at("says").dataset.order + " " + tapped.join(" ");
  if (chosen.length === 2) {
    const [a, b] = chosen.map(spot);
    const apart = Math.hypot(a[0] - b[0], a[1] - b[1]) / size();
    return at("says").dataset.apart.replace("%s", chosen.join(" – ")).replace("%s", apart.toFixed(2) + " mm");
  }
  return chosen.length ? chosen.join(" ") : at("says").dataset[mode];
}

function spot(id) {
  const hit = marks().find((one) => one.dataset.id === id).querySelector(".hit");
  return [hit.cx.baseVal.value, hit.cy.baseVal.value];
}

const scale = () => at("drawn").dataset.scale.split(" ").map(Number);
const turn = () => at("drawn").dataset.turn.split(" ").map(Number);
const size = () => scale()[2];
const rounded = (v) => Number(v.toFixed(2));
const onPicture = (e) => new DOMPoint(e.clientX, e.clientY).matrixTransform(at("drawn").querySelector("svg").getScreenCTM().inverse());
const way = (dx, dy) => [rounded(dx / size() * turn()[0]), rounded(-dy / size() * turn()[1])];

function move(by) {
  const do_ = at("whole").checked ? "shift" : "nudge";
  edit([{ do: do_, ids: do_ === "shift" ? chosen.slice(0, 1) : chosen, by }]);
}

const nudge = (x, y, step = Number(at("step").value)) => move([x * step * turn()[0], y * step * turn()[1]]);

function pick(id) {
  if (mode === "order") return pickNext(id);
  if (mode === "several") chosen = chosen.includes(id) ? chosen.filter((one) => one !== id) : [...chosen, id];
  else chosen = [id];
  shown();
}

// pickNext gives the maker's order, once all are tapped.
function pickNext(id) {
  tapped = tapped.includes(id) ? tapped.filter((one) => one !== id) : [...tapped, id];
  if (tapped.length === marks().length) {
    edit([{ do: "order", ids: tapped }]);
    setMode("choose");
  } else shown();
}

function setMode(to) {
  mode = to;
  tapped = [];
  if (mode === "choose") chosen = chosen.slice(0, 1);
  for (const one of document.querySelectorAll("[data-mode]")) {
    one.setAttribute("aria-pressed", one.dataset.mode === mode);
    one.classList.toggle("chosen", one.dataset.mode === mode);
  }
  shown();
}

// A mark is dragged, or tapped where it does not move.
let held = null;
at("picture").addEventListener("pointerdown", (e) => {
  const mark = e.target.closest(".mark");
  if (mark && e.isPrimary) held = { id: mark.dataset.id, mark, from: onPicture(e), x: e.clientX, y: e.clientY, moved: false };
});
at("picture").addEventListener("pointermove", (e) => {
  if (!held || mode === "order" || mode === "add") return;
  if (!held.moved && Math.hypot(e.clientX - held.x, e.clientY - held.y) < 6) return;
  held.moved = true;
  at("picture").setPointerCapture?.(e.pointerId);
  const to = onPicture(e);
  for (const mark of marks()) if (mark.dataset.id === held.id || chosen.includes(held.id) && chosen.includes(mark.dataset.id)) mark.setAttribute("transform", `translate(${to.x - held.from.x} ${to.y - held.from.y})`);
});
at("picture").addEventListener("pointerup", (e) => {
  const one = held;
  held = null;
  if (one?.moved) {
    if (!chosen.includes(one.id)) chosen = [one.id];
    const to = onPicture(e);
    move(way(to.x - one.from.x, to.y - one.from.y));
  } else if (one) pick(one.id);
  else if (mode === "add" && at("drawn")) {
    const to = onPicture(e);
    const [x0, y0] = scale();
    edit([{ do: "add", at: way(to.x - x0, to.y - y0), text: document.querySelector("#of-fasteners select")?.value }]);
  }
});
at("picture").addEventListener("pointercancel", () => {
  for (const mark of marks()) mark.removeAttribute("transform");
  held = null;
});

const arrows = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
at("picture").addEventListener("keydown", (e) => {
  const mark = e.target.closest(".mark");
  if (!mark) return;
  if (e.key === "Enter" || e.key === " ") pick(mark.dataset.id);
  else if (arrows[e.key]) {
    if (!chosen.includes(mark.dataset.id)) chosen = [mark.dataset.id];
    nudge(...arrows[e.key], e.shiftKey ? 0.1 : undefined);
  } else if (e.key === "Delete") edit([{ do: "remove", ids: chosen.includes(mark.dataset.id) ? chosen : [mark.dataset.id] }]);
  else return;
  e.preventDefault();
});

document.addEventListener("click", (e) => {
  const one = e.target.closest("button");
  if (!one) return;
  const data = one.dataset;
  if (data.mode) setMode(data.mode);
  else if (data.by) nudge(...data.by.split(" ").map(Number));
  else if (data.do) edit([{ ...JSON.parse(data.do), ids: chosen }]);
  else if (data.op) edit([JSON.parse(data.op)]);
  else if (data.line !== undefined) goTo(data);
  else if ("close" in data) one.closest("dialog").close();
});

// goTo shows where a problem is: in the text and on the part.
function goTo({ line, column, ids }) {
  if (ids) chosen = ids.split(" ");
  shown();
  const area = at("text");
  const lines = area.value.split("\n");
  const start = lines.slice(0, line - 1).reduce((sum, one) => sum + one.length + 1, 0);
  area.focus();
  area.setSelectionRange(start + Number(column) - 1, start + (lines[line - 1]?.length ?? 0));
  area.scrollTop = Math.max(0, (line - 4) * area.scrollHeight / lines.length);
}

document.addEventListener("change", (e) => {
  const { op, key, drop } = e.target.dataset ?? {};
  if (!op) return;
  const value = e.target.value.trim();
  if (value === "" && drop) edit([JSON.parse(drop)]);
  else if (value === "" && !("empty" in e.target.dataset)) shown();
  else edit([{ ...JSON.parse(op), [key]: value }]);
});

// The text is sent once typing pauses.
let typing;
at("text").addEventListener("input", () => {
  clearTimeout(typing);
  typing = setTimeout(() => ask({ typed: at("text").value }, note), 300);
});

at("undo").addEventListener("click", () => step(done, undone));
at("redo").addEventListener("click", () => step(undone, done));
document.addEventListener("keydown", (e) => {
  if (!(e.ctrlKey || e.metaKey) || e.key.toLowerCase() !== "z" || e.target.matches("input")) return;
  e.preventDefault();
  if (e.shiftKey) step(undone, done);
  else step(done, undone);
});

// save saves under the name in the field: another name makes a copy, which must
// not be there yet.
async function save(over) {
  await queue;
  const to = at("save-as").value.trim() || name;
  try {
    const said = await send("/api/patterns/" + encodeURIComponent(to), "PUT", { text, base: over ?? (to === name ? base : "") });
    if (said.theirs !== undefined) return conflict(said);
    problem("");
    saved = text;
    if (to === name) base = said.base;
    shown();
    if (to !== name) location.assign("/patterns/" + encodeURIComponent(to) + "/edit");
  } catch (error) {
    problem(error.message);
  }
}

// conflict shows both versions, of which neither is lost.
function conflict(said) {
  at("mine").value = text;
  at("theirs").value = said.theirs;
  at("keep-mine").onclick = () => {
    at("conflict").close();
    save(said.base);
  };
  at("take-theirs").onclick = () => {
    if (at("save-as").value.trim() === name) [base, saved] = [said.base, said.theirs];
    at("conflict").close();
    ask({ whole: said.theirs }, note);
  };
  at("conflict").showModal();
}

at("save").addEventListener("click", () => save());
window.addEventListener("beforeunload", (e) => { if (text !== saved) e.preventDefault(); });

ask({ text: undefined }, (said) => { if (saved === null) saved = said.text; });
