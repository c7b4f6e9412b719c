// Forms for what is found at a place, and for values that are read.

// follow shows the fields that a chosen value needs, and no others.
function follow(form) {
  const chosen = form.elements.seen?.selectedOptions[0];
  const own = Boolean(chosen?.value);
  for (const part of form.querySelectorAll("[data-free]")) {
    part.hidden = own;
    for (const field of part.querySelectorAll("input, select")) field.disabled = own;
  }
  for (const part of form.querySelectorAll("[data-shims]:not(option)")) {
    part.hidden = chosen?.dataset.shims === undefined;
    part.querySelector("input").disabled = part.hidden;
    part.querySelector("[data-shim-unit]").textContent = chosen?.dataset.unit ?? "";
  }
}

for (const form of document.querySelectorAll('form[data-act="measure"]')) {
  form.addEventListener("change", () => follow(form));
  form.addEventListener("reset", () => setTimeout(() => follow(form)));
  follow(form);
}

// copyOf is the picture of the part with nothing in it to choose by key.
function copyOf(part) {
  const copy = part.cloneNode(true);
  for (const one of [copy, ...copy.querySelectorAll("*")]) for (const name of ["id", "role", "tabindex", "aria-label"]) one.removeAttribute(name);
  for (const mark of copy.querySelectorAll(".mark")) mark.dataset.state = "todo";
  return copy;
}

// place makes a picture of a part take a tap: on a mark it means that fastener, else the
// point.
function place(picture, part) {
  const copy = copyOf(part);
  const spot = document.createElementNS(copy.namespaceURI, "circle");
  const [x0, y0, size] = picture.dataset.scale.split(" ").map(Number);
  const form = picture.closest("form");
  const { point, seen } = form.elements;
  spot.setAttribute("class", "spot");
  spot.setAttribute("r", "3");
  picture.replaceChildren(copy);
  const marked = seen.querySelector("[data-marked]");
  const forget = () => {
    spot.remove();
    point.value = "";
  };
  picture.addEventListener("click", (e) => {
    const at = new DOMPoint(e.clientX, e.clientY).matrixTransform(copy.getScreenCTM().inverse());
    const mark = e.target.closest(".mark");
    spot.setAttribute("cx", at.x);
    spot.setAttribute("cy", at.y);
    copy.append(spot);
    const option = mark && [...seen.options].find((one) => one.dataset.id === mark.dataset.id);
    (option ?? marked).selected = true;
    const mm = (v) => Number((v / size).toFixed(1));
    point.value = option ? "" : JSON.stringify({ place: { at: [mm(at.x - x0), mm(y0 - at.y)] } });
  });
  seen.addEventListener("change", forget);
  form.addEventListener("reset", forget);
}

const onPage = document.getElementById("part");
for (const picture of document.querySelectorAll(".picture")) if (onPage) place(picture, onPage);

// bring shows the picture and the places of the joint that was chosen.
async function bring(choice) {
  const places = choice.form.querySelector(".places");
  places.replaceChildren();
  const asked = choice.value;
  if (asked === "") return;
  const answer = await fetch(choice.dataset.places + encodeURIComponent(asked)).catch(() => null);
  if (!answer?.ok || choice.value !== asked) return;
  places.innerHTML = await answer.text();
  const picture = places.querySelector(".picture");
  if (picture) place(picture, picture.querySelector("svg"));
}

for (const choice of document.querySelectorAll("[data-places]")) {
  choice.addEventListener("change", () => bring(choice));
  if (choice.value !== "") bring(choice);
}
