// What stays on this device: who taps, sound, brightness; and that the screen
// stays awake.

const kept = (name) => { try { return localStorage.getItem(name) || ""; } catch { return ""; } };
const keep = (name, value) => { try { localStorage.setItem(name, value); } catch { /* it then lasts as long as the page */ } };

let name = kept("drawdown-who");

export const who = () => name;
export function setWho(value) {
  const before = name;
  name = value.trim().toUpperCase();
  if (name !== before) for (const tool of ["wrench", "gauge"]) keep("drawdown-" + tool, ""); // another person may have others
  keep("drawdown-who", name);
}

// The wrench in use goes with each torque, the angle gauge with each angle. Each person
// is asked for them once in each run, and may give none.
export const wrench = () => kept("drawdown-wrench");
export const gauge = () => kept("drawdown-gauge");
export const toolsAsked = (run) => kept("drawdown-wrench-asked") === name + " " + run;
export function setWrench(number, run) {
  keep("drawdown-wrench", number.trim());
  keep("drawdown-wrench-asked", name + " " + run);
}
export const setGauge = (number) => keep("drawdown-gauge", number.trim());

// A sheet that is printed is noted with the initials.
document.addEventListener("click", (e) => {
  const sheet = e.target.closest?.('a[href$=".pdf"]');
  if (sheet && name) sheet.search = "?who=" + encodeURIComponent(name);
});

export const soundOn = () => kept("drawdown-sound") === "on";
export const setSound = (on) => keep("drawdown-sound", on ? "on" : "");

export function setScheme(value) {
  document.cookie = `drawdown-scheme=${value}; Path=/; Max-Age=31536000; SameSite=Strict`;
  if (value) document.documentElement.dataset.scheme = value;
  else delete document.documentElement.dataset.scheme;
}

// tone tells that a tap is saved, where sound is switched on.
export function tone() {
  if (!soundOn() || !window.AudioContext) return;
  const context = new AudioContext();
  const source = context.createOscillator();
  source.frequency.value = 880;
  source.connect(context.destination);
  source.start();
  source.stop(context.currentTime + 0.08);
  source.onended = () => context.close();
}

// stayAwake keeps the screen lit while the page is seen, where the browser can.
export function stayAwake() {
  if (!navigator.wakeLock) return;
  const ask = () => {
    if (document.visibilityState === "visible") navigator.wakeLock.request("screen").catch(() => {});
  };
  document.addEventListener("visibilitychange", ask);
  ask();
}
