// What the server knows of the run: read from the page, and read again after each
// entry.

const parts = ["panel", "stages", "aside", "ahead", "settle-list", "lines", "readiness-list", "handed-lines", "seal-lines"];

export const at = (id) => document.getElementById(id);

const grace = 2000; // ms in which a connection that is lost may come back by itself
const pulse = 5000; // ms between two looks whether the server is there
const longest = 8000; // ms until the next try

export class Live {
  // changed is called when the server knows more, reached when it answers or does
  // not, with the status of the answer.
  constructor(run, changed, reached) {
    Object.assign(this, { run, changed, reached });
    this.pause = 1000; // ms until it is read once more
    this.read(document);
  }

  read(page) {
    this.known = JSON.parse(page.getElementById("known").textContent);
    this.offset = this.known.now - Date.now();
    this.panel = page.getElementById("panel").cloneNode(true);
    this.bar = page.getElementById("bar").cloneNode(true);
  }

  // settling is the list of what is still to do at a trouble, as the server knows it.
  settling(of) { return at("settle-list").querySelector(`[data-of="${CSS.escape(of)}"] [data-left]`); }

  // now is the server's time.
  now() { return Date.now() + this.offset; }

  // follow reads the run again at every entry, whoever made it.
  follow() {
    const events = new EventSource(`/api/runs/${this.run}/events?after=${this.known.version}`);
    events.addEventListener("entry", (event) => { if (Number(event.lastEventId) > this.known.version) this.refresh(); });
    events.addEventListener("open", () => {
      this.heard(true);
      this.refresh();
    });
    events.addEventListener("error", () => {
      this.heard(false);
      if (events.readyState === EventSource.CLOSED) setTimeout(() => this.follow(), pulse); // the browser has given up
    });
  }

  // watch looks whether the server is there: of a network that is gone a browser may
  // say nothing for minutes.
  watch() {
    setInterval(async () => {
      if (document.visibilityState !== "visible") return;
      const answer = await fetch("/api/time", { cache: "no-store", signal: AbortSignal.timeout(pulse - 1000) }).catch(() => null);
      const said = answer?.status >= 500 ? await answer.json().catch(() => ({})) : {};
      this.heard(answer !== null, answer?.status, said.reason);
    }, pulse);
  }

  heard(yes, status = 200, fault = "") {
    if (yes) {
      clearTimeout(this.losing);
      this.losing = 0;
      this.reached(true, status, fault);
    } else if (!this.losing) {
      this.losing = setTimeout(() => this.reached(false, 0), grace);
    }
  }

  // refresh reads once more; asked for while it reads, it reads again after that.
  async refresh() {
    if (this.reading) {
      this.more = true;
      return;
    }
    this.reading = true;
    clearTimeout(this.again);
    const read = await this.fetch().catch(() => false);
    this.reading = false;
    if (!read) {
      this.again = setTimeout(() => this.refresh(), this.pause);
      this.pause = Math.min(this.pause * 2, longest);
    } else {
      this.pause = 1000;
      if (this.more) this.refresh();
    }
    this.more = false;
  }

  // fetch gives true where nothing more is to be tried.
  async fetch() {
    const answer = await fetch(`/runs/${this.run}/live`, { headers: { Accept: "text/html" }, signal: AbortSignal.timeout(10000) });
    if (answer.ok) this.take(new DOMParser().parseFromString(await answer.text(), "text/html"));
    return answer.status < 500;
  }

  take(page) {
    if (JSON.parse(page.getElementById("known").textContent).version < this.known.version) return;
    this.read(page);
    for (const id of parts.slice(1)) {
      const fresh = page.getElementById(id); // what stays the same stays there: a finger may be on it
      if (at(id).outerHTML !== fresh.outerHTML) at(id).replaceWith(document.importNode(fresh, true));
    }
    for (const copy of document.querySelectorAll("[data-copy]")) fillCopy(copy);
    this.changed();
  }
}

// fillCopy puts what the server said into a dialog, unless somebody writes in it.
export function fillCopy(copy) {
  if (copy.contains(document.activeElement)) return;
  copy.replaceChildren(...[...at(copy.dataset.copy).cloneNode(true).childNodes]);
}
