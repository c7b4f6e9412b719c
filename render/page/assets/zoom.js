// The part can be made larger: by buttons, keys, two fingers or the wheel, and
// moved by one finger once it is larger.

const most = 8;

export class Zoom {
  constructor(part) {
    this.part = part;
    this.whole = part.getAttribute("viewBox").split(" ").map(Number);
    this.fingers = new Map();
    this.reset();
    part.addEventListener("pointerdown", (e) => this.down(e));
    part.addEventListener("pointermove", (e) => this.move(e));
    for (const name of ["pointerup", "pointercancel", "pointerleave"]) part.addEventListener(name, (e) => this.fingers.delete(e.pointerId));
    part.addEventListener("wheel", (e) => { if (e.ctrlKey) { e.preventDefault(); this.by(e.deltaY < 0 ? 1.15 : 1 / 1.15, this.place(e)); } }, { passive: false });
  }

  reset() {
    this.factor = 1;
    this.middle = [this.whole[0] + this.whole[2] / 2, this.whole[1] + this.whole[3] / 2];
    this.apply();
  }

  // by makes it larger about a place, that of the next fastener where none is given.
  by(factor, about = this.nextMark() || this.middle) {
    const to = Math.min(most, Math.max(1, this.factor * factor));
    const share = this.factor / to;
    this.middle = this.middle.map((m, i) => about[i] + (m - about[i]) * share);
    this.factor = to;
    this.apply();
  }

  nextMark() {
    const hit = this.part.querySelector('.mark[data-state="next"] .hit');
    return hit && [hit.cx.baseVal.value, hit.cy.baseVal.value];
  }

  apply() {
    const [left, top, width, height] = this.whole;
    const [w, h] = [width / this.factor, height / this.factor];
    const within = (v, low, size, all) => Math.min(low + all - size / 2, Math.max(low + size / 2, v));
    this.middle = [within(this.middle[0], left, w, width), within(this.middle[1], top, h, height)];
    this.part.setAttribute("viewBox", [this.middle[0] - w / 2, this.middle[1] - h / 2, w, h].map((v) => v.toFixed(2)).join(" "));
  }

  place(e) {
    const at = new DOMPoint(e.clientX, e.clientY).matrixTransform(this.part.getScreenCTM().inverse());
    return [at.x, at.y];
  }

  down(e) {
    this.fingers.set(e.pointerId, e);
    if (this.fingers.size === 1) this.dragged = 0;
  }

  move(e) {
    const before = this.fingers.get(e.pointerId);
    if (!before) return;
    const others = [...this.fingers.values()].filter((f) => f.pointerId !== e.pointerId);
    this.fingers.set(e.pointerId, e);
    const gap = (f, g) => Math.hypot(f.clientX - g.clientX, f.clientY - g.clientY);
    this.dragged += gap(e, before);
    if (others.length === 1) {
      this.by(gap(e, others[0]) / Math.max(1, gap(before, others[0])), this.place({ clientX: (e.clientX + others[0].clientX) / 2, clientY: (e.clientY + others[0].clientY) / 2 }));
    } else if (others.length === 0 && this.factor > 1) {
      const [from, to] = [this.place(before), this.place(e)];
      this.middle = this.middle.map((m, i) => m + from[i] - to[i]);
      this.apply();
    }
  }

  // wasTap says that the finger did not move the part.
  wasTap() { return this.factor === 1 || this.dragged < 12; }
}
