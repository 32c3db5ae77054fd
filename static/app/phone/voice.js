// Reading aloud, where the phone has a voice of its own.

const language = () => document.documentElement.lang;

/** A voice of the phone for the page's language; a voice of the network stays out. */
function voice() {
  const fit = speechSynthesis
    .getVoices()
    .filter((v) => v.lang.replace('_', '-').split('-')[0] === language().split('-')[0]);
  return fit.find((v) => v.localService);
}

/** Whether anything can be read aloud. Some phones name their voices only when asked to speak. */
export const canSpeak = () =>
  'speechSynthesis' in globalThis &&
  (speechSynthesis.getVoices().length === 0 || voice() !== undefined);

// What is being read, so that an end that comes late ends nothing else.
/** @type {{ done: () => void, parts: SpeechSynthesisUtterance[] } | undefined} */
let reading;

/**
 * Reads sentences one after the other; `done` is called when the last is over.
 *
 * @param {string[]} sentences
 * @param {() => void} [done]
 */
export function speak(sentences, done = () => {}) {
  hush();
  /** @type {NonNullable<typeof reading>} */
  const own = { done, parts: [] };
  reading = own;
  const over = () => {
    if (reading !== own) return;
    reading = undefined;
    done();
  };
  // One by one: a browser may cut a long text short.
  sentences.forEach((sentence, i) => {
    const utterance = new SpeechSynthesisUtterance(sentence);
    utterance.lang = language();
    utterance.voice = voice() ?? null;
    utterance.onerror = over;
    if (i === sentences.length - 1) utterance.onend = over;
    own.parts.push(utterance); // one that is let go of may never report its end
    speechSynthesis.speak(utterance);
  });
}

/** Whether something is being read. */
export const speaking = () => reading !== undefined;

/** Stops reading. */
export function hush() {
  if (!reading) return;
  const { done } = reading;
  reading = undefined;
  speechSynthesis.cancel();
  done();
}
