// Settings stay on the device, and count at once.
import { setScheme, setSound, setWho, soundOn, tone, who } from "./device.js";

const form = document.getElementById("settings-form");
form.elements.sound.checked = soundOn();
form.elements.who.value = who();
form.addEventListener("change", (e) => {
  const { name, value, checked } = e.target;
  if (name === "scheme") setScheme(value);
  if (name === "who") setWho(value);
  if (name === "sound") {
    setSound(checked);
    tone();
  }
});
form.addEventListener("submit", (e) => e.preventDefault());
