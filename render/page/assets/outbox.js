// The outbox holds each tap until the server has taken it. It survives a reload,
// keeps the order, and stops at the first tap that is refused.

import { randomId } from "./entry.js";

const memory = []; // where the browser has no store: it lasts as long as the page
let store = null;

function request(asked) {
  return new Promise((resolve, reject) => {
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error);
  });
}

async function open() {
  if (!("indexedDB" in window)) return null;
  const asked = indexedDB.open("drawdown", 1);
  asked.onupgradeneeded = () => asked.result.createObjectStore("taps", { keyPath: "order", autoIncrement: true });
  return request(asked).catch(() => null);
}

const taps = (mode) => store.transaction("taps", mode, { durability: "strict" }).objectStore("taps");

export class Outbox {
  constructor(run, { changed, taken, refused }) {
    Object.assign(this, { run, changed, taken, refused });
    this.held = [];
    this.sending = false;
    this.online = true;
    this.fault = ""; // what the server says where it cannot record
    this.ended = false; // the session of this device
    this.pause = 1000; // ms until the next try
    this.timer = 0;
  }

  async start() {
    store = await open();
    await this.read();
    window.addEventListener("online", () => this.send());
    document.addEventListener("visibilitychange", () => { if (document.visibilityState === "visible") this.send(); });
    if (!this.stopped) this.send();
  }

  // stopped says that a tap was refused and a person has to look.
  get stopped() { return this.held.some((tap) => tap.refused); }

  async read() {
    const all = store ? await request(taps("readonly").getAll()) : memory;
    this.held = all.filter((tap) => tap.run === this.run);
    this.changed();
  }

  async add(entry, name) {
    const tap = { run: this.run, entry, name };
    if (store) await request(taps("readwrite").add(tap));
    else memory.push({ ...tap, order: memory.length ? memory.at(-1).order + 1 : 1 });
    await this.read();
    this.send();
  }

  async drop(order) {
    if (store) await request(taps("readwrite").delete(order));
    else memory.splice(0, memory.length, ...memory.filter((tap) => tap.order !== order));
    await this.read();
  }

  async mark(tap) {
    if (store) await request(taps("readwrite").put(tap));
    await this.read();
  }

  // again sends what is held once more, after a person has looked. What was refused
  // gets another id: under the old one the answer stays the same.
  async again(wrench = "") {
    for (const tap of this.held.filter((one) => one.refused)) {
      delete tap.refused;
      if (wrench) tap.entry.wrench = wrench;
      tap.entry.entry = randomId();
      await this.mark(tap);
    }
    this.send();
  }

  async send() {
    if (this.sending || this.stopped || this.held.length === 0) return;
    this.sending = true;
    clearTimeout(this.timer);
    try {
      while (this.held.length > 0 && await this.sendFirst());
    } finally {
      this.sending = false;
    }
    if (this.held.length > 0 && !this.stopped) {
      this.timer = setTimeout(() => this.send(), this.pause);
      this.pause = Math.min(this.pause * 2, 15000);
    }
  }

  // sendFirst sends the tap that waits longest; true where the next may follow.
  async sendFirst() {
    const tap = this.held[0];
    let answer, said;
    try {
      answer = await fetch(`/api/runs/${this.run}/entries`, {
        method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(tap.entry), signal: AbortSignal.timeout(10000),
      });
      said = await answer.json().catch(() => ({}));
    } catch {
      this.reached(false);
      return false;
    }
    this.ended = answer.status === 401 || answer.status === 403;
    const failed = answer.status >= 500 || answer.status === 429;
    this.reached(!failed, failed ? said.reason : "");
    if (this.ended) this.changed();
    if (answer.ok) {
      this.taken(tap, said.version, said.says);
      await this.drop(tap.order);
      return true;
    }
    if ([400, 404, 409, 413, 422].includes(answer.status)) {
      tap.refused = said.reason ? said : { reason: String(answer.status) };
      await this.mark(tap);
      this.refused(tap);
    }
    return false;
  }

  // heard notes what the server says of itself without a tap. One that takes no tap is
  // not there, whatever else it answers; nor is one that says that it cannot record.
  heard(yes, status, fault = "") {
    this.ended = status === 401 || status === 403;
    if (!yes || this.held.length === 0) this.reached(yes && !fault, fault);
    else this.send();
    if (this.ended) this.changed();
  }

  // reached notes whether the server answers, and what it says where it cannot
  // record.
  reached(yes, fault = "") {
    if (yes) this.pause = 1000;
    if (this.online !== yes || this.fault !== fault) {
      this.online = yes;
      this.fault = fault;
      this.changed();
    }
  }
}
