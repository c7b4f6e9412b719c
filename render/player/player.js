"use strict";
(function () {
  const data = JSON.parse(document.getElementById("data").textContent);
  const steps = data.steps, words = data.words;
  const speeds = [0.25, 0.5, 0.75, 1, 1.5, 2, 4]; // steps per second
  const at = (id) => document.getElementById(id);
  const body = document.body;
  let here = -1; // the step shown: -1 before the first, steps.length after the last
  let timer = 0;

  // The marks and numbers of each fastener.
  const elements = new Map();
  for (const e of document.querySelectorAll('figure [data-role="mark"], figure [data-role="number"]')) {
    if (!elements.has(e.dataset.id)) elements.set(e.dataset.id, []);
    elements.get(e.dataset.id).push(e);
  }

  // fill puts figures into a sentence: %[1]d and %[2]d.
  function fill(sentence, first, second) {
    return sentence.replace("%[1]d", first).replace("%[2]d", second);
  }

  // state says how a fastener is shown at the present step.
  function state(id) {
    const step = steps[here];
    if (here >= steps.length) return "tight";
    if (!step) return "open";
    if (step.id === id) return "now";
    const stage = step.stage || 0;
    if (step.id && !data.members[stage].includes(id)) return "out";
    for (let k = here - 1; k >= 0 && (steps[k].stage || 0) === stage; k--) {
      if (steps[k].id === id) return "tight";
    }
    return "open";
  }

  function text(id, words) { at(id).textContent = words || ""; }

  function show() {
    const step = steps[here];
    for (const [id, list] of elements) {
      const now = state(id);
      for (const e of list) e.dataset.state = now;
    }
    const last = data.members.length - 1;
    text("stage", step && step.stage ? fill(words.stage, step.stage, last) : "");
    text("number", step ? (step.number ? String(step.number) : "–") : here < 0 ? words.start : words.done);
    at("number").classList.toggle("words", !step);
    text("bolt", step ? [step.id, step.kind].filter(Boolean).join(" · ") : "");
    text("figure", step && step.figure);
    text("note", step && step.note);
    text("step", step ? fill(words.step, here + 1, steps.length) : "");
    at("progress").value = Math.min(Math.max(here + 1, 0), steps.length) / Math.max(1, steps.length);
    at("back").disabled = at("first").disabled = here < 0;
    at("forward").disabled = at("last").disabled = here >= steps.length;
    body.dataset.at = here;
  }

  function go(to) {
    here = Math.min(Math.max(to, -1), steps.length);
    if (here >= steps.length) stop();
    show();
  }

  function tick() {
    timer = 0;
    go(here + 1);
    if (body.dataset.playing === "yes") wait();
  }

  function wait() {
    clearTimeout(timer);
    timer = setTimeout(tick, 1000 / speeds[at("speed").value]);
  }

  function playing(yes) {
    body.dataset.playing = yes ? "yes" : "no";
    at("play-word").textContent = yes ? words.pause : words.play;
    // A screen reader tells each step that is asked for, not each that plays.
    at("now").setAttribute("aria-live", yes ? "off" : "polite");
  }

  function stop() {
    clearTimeout(timer);
    timer = 0;
    playing(false);
  }

  function play() {
    if (here >= steps.length) go(-1);
    playing(true);
    tick();
  }

  function toggle() { body.dataset.playing === "yes" ? stop() : play(); }
  function step(by) { stop(); go(here + by); }
  function speed(to) {
    at("speed").value = to;
    at("speed-word").textContent = speeds[at("speed").value] + "×";
    if (body.dataset.playing === "yes") wait();
  }

  at("play").addEventListener("click", toggle);
  at("back").addEventListener("click", () => step(-1));
  at("forward").addEventListener("click", () => step(1));
  at("first").addEventListener("click", () => { stop(); go(-1); });
  at("last").addEventListener("click", () => { stop(); go(steps.length); });
  at("speed").addEventListener("input", () => speed(at("speed").value));

  // A button pressed by mouse gives the focus back, so that the space bar plays.
  for (const button of document.querySelectorAll("button")) {
    button.addEventListener("click", (event) => { if (event.detail > 0) button.blur(); });
  }

  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    const onButton = event.target instanceof HTMLButtonElement && (event.key === " " || event.key === "Enter");
    const onSpeed = event.target === at("speed") && event.key.startsWith("Arrow");
    if (onButton || onSpeed) return;
    const now = Number(at("speed").value);
    const does = {
      " ": toggle,
      ArrowRight: () => step(1), ArrowLeft: () => step(-1),
      Home: () => { stop(); go(-1); }, End: () => { stop(); go(steps.length); },
      "+": () => speed(now + 1), "-": () => speed(now - 1),
    }[event.key];
    if (!does) return;
    event.preventDefault();
    does();
  });

  playing(false);
  speed(3);
  show();
})();
