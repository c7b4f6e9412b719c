// An entry as the record takes it, with an id of its own: sent twice, it counts once.
import { who } from "./device.js";

export function randomId() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (b) => b.toString(16).padStart(2, "0")).join("");
}

export function entry(act, fields = {}) {
  const made = { entry: randomId(), act, who: who(), device_time: new Date().toISOString() };
  for (const [name, value] of Object.entries(fields)) {
    if (value !== "" && value !== undefined && value !== null) made[name] = value;
  }
  return made;
}

// formFields gives the fields of a form as those of an entry. A place or a value that
// was chosen has its fields in it. What was chosen of answers begins the note.
export function formFields(form) {
  const fields = {};
  const said = [];
  for (const [name, value] of new FormData(form)) {
    if (value === "" || value instanceof File || name.startsWith("note-") || name === "new-at") continue;
    if (name === "seen" || name === "point") Object.assign(fields, JSON.parse(value));
    else if (name === "fastener") fields.place = { fastener: value };
    else if (name.startsWith("say-")) said.push(value);
    else fields[name] = value;
  }
  if (said.length > 0) fields.note = [said.join("; "), fields.note].filter(Boolean).join(". ");
  return fields;
}

// sendPhoto gives a photo to the server, and gives the name by which an entry holds it.
export async function sendPhoto(file) {
  const answer = await fetch("/api/photos", { method: "POST", headers: { "Content-Type": file.type }, body: file, signal: AbortSignal.timeout(60000) });
  if (!answer.ok) throw new Error((await answer.json()).reason);
  return (await answer.json()).photo;
}
