// What the server knows of the run: read from the page, and read again after each
// entry.

const parts = ["panel", "stages", "aside", "ahead", "settle-list", "lines", "readiness-list", "handed-lines"];

export const at = (id) => document.getElementById(id);

export class Live {
  constructor(run, changed) {
    Object.assign(this, { run, changed });
    this.read(document);
  }

  read(page) {
    this.known = JSON.parse(page.getElementById("known").textContent);
    this.offset = this.known.now - Date.now();
    this.panel = page.getElementById("panel").cloneNode(true);
    this.bar = page.getElementById("bar").cloneNode(true);
  }

  // now is the server's time.
  now() { return Date.now() + this.offset; }

  // follow reads the run again at every entry, whoever made it. A browser gives up
  // where the server answers that the record cannot be reached.
  follow() {
    const events = new EventSource(`/api/runs/${this.run}/events?after=${this.known.version}`);
    events.addEventListener("entry", (event) => { if (Number(event.lastEventId) > this.known.version) this.refresh(); });
    events.addEventListener("open", () => this.refresh());
    events.addEventListener("error", () => { if (events.readyState === EventSource.CLOSED) setTimeout(() => this.follow(), 5000); });
  }

  // refresh reads once more; asked for while it reads, it reads again after that.
  async refresh() {
    if (this.reading) {
      this.more = true;
      return;
    }
    this.reading = true;
    try {
      const answer = await fetch(`/runs/${this.run}/live`, { headers: { Accept: "text/html" }, signal: AbortSignal.timeout(10000) });
      if (answer.ok) this.take(new DOMParser().parseFromString(await answer.text(), "text/html"));
    } catch { /* the outbox says that the server cannot be reached */ } finally {
      this.reading = false;
    }
    if (this.more) {
      this.more = false;
      this.refresh();
    }
  }

  take(page) {
    if (JSON.parse(page.getElementById("known").textContent).version < this.known.version) return;
    this.read(page);
    for (const id of parts.slice(1)) at(id).replaceWith(document.importNode(page.getElementById(id), true));
    for (const copy of document.querySelectorAll("[data-copy]")) fillCopy(copy);
    this.changed();
  }
}

// fillCopy puts what the server said into a dialog, unless somebody writes in it.
export function fillCopy(copy) {
  if (copy.contains(document.activeElement)) return;
  copy.replaceChildren(...[...at(copy.dataset.copy).cloneNode(true).childNodes]);
}
