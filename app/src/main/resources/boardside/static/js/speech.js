// The running total, spoken by the device itself.

/** Whether this device has a voice. */
export function speechReady() {
  return "speechSynthesis" in window;
}

/** Says a text, in place of what is still being said. */
export function say(text) {
  if (!speechReady() || text === "") return;
  speechSynthesis.cancel();
  const words = new SpeechSynthesisUtterance(text);
  words.lang = document.documentElement.lang;
  speechSynthesis.speak(words);
}
