// A wait is counted down by the server's clock.
import { at } from "./live.js";

export function countDown(live) {
  let over = 0; // the end for which the server was asked again
  const tick = () => {
    const ends = Number(document.querySelector(".ask[data-ends]")?.dataset.ends || 0);
    if (!ends) return;
    const left = Math.max(0, Math.ceil((ends - live.now()) / 1000));
    const pad = (n) => String(n).padStart(2, "0");
    const hours = Math.floor(left / 3600);
    const words = (hours ? hours + ":" : "") + pad(Math.floor(left / 60) % 60) + ":" + pad(left % 60);
    if (at("left").textContent !== words) at("left").textContent = words;
    if (left === 0 && over !== ends) {
      over = ends;
      live.refresh();
    }
  };
  setInterval(tick, 250);
  tick();
}
