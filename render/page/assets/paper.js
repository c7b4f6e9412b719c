// Work that was ticked on paper and is entered afterwards. A tick includes what comes
// before it, as the work has one order.
import { formFields } from "./entry.js";

export function tickInOrder(list) {
  list.addEventListener("change", (e) => {
    const boxes = [...list.querySelectorAll("input")];
    const at = boxes.indexOf(e.target);
    boxes.forEach((box, i) => { if (e.target.checked ? i < at : i > at) box.checked = e.target.checked; });
  });
}

// ticked gives the steps that were ticked, each with what the paper says of all.
export function ticked(form) {
  const { day, wrench, note } = formFields(form);
  const steps = [...form.querySelectorAll(".onpaper input:checked")].map((box) => ({ step: Number(box.value), source: "paper", day, wrench: "sets" in box.dataset && wrench || "" }));
  return { steps, note };
}
