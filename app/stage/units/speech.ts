/** Speaks a text with the browser's own voice, where it has one; what was being said before is cut off. */
export function sayAloud(text: string): void {
  if (typeof speechSynthesis === 'undefined') return;
  speechSynthesis.cancel();
  const said = new SpeechSynthesisUtterance(text);
  said.lang = 'en-GB';
  speechSynthesis.speak(said);
}

export function silence(): void {
  if (typeof speechSynthesis !== 'undefined') speechSynthesis.cancel();
}
