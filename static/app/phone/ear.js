// Listening for a few words or for one line, only where the phone itself can: no sound may leave
// it. `processLocally` says so to the browser, which refuses to start otherwise.

// Web Speech API, https://webaudio.github.io/web-speech-api/
const recognition = () => {
  const { SpeechRecognition, webkitSpeechRecognition } = /** @type {any} */ (globalThis);
  return SpeechRecognition ?? webkitSpeechRecognition;
};

/** The person's kinds of the page's language: what a phone knows is "en-GB" or "en-US". */
function languages() {
  const { lang } = document.documentElement;
  const [own] = lang.split('-');
  return [...navigator.languages.filter((l) => l.split('-')[0] === own), lang];
}

/** Resolves to the language in which this phone recognises speech by itself, or undefined. */
export async function canListen() {
  for (const lang of languages()) {
    const options = { langs: [lang], processLocally: true };
    const answer = await Promise.resolve(recognition()?.available?.(options)).catch(() => {});
    if (answer === 'available') return lang;
  }
  return undefined;
}

/**
 * The last of the words that was said, or undefined.
 *
 * @param {string} said
 * @param {string[]} words
 */
export function wordIn(said, words) {
  const parts = said.toLowerCase().match(/[\p{L}\p{N}']+/gu) ?? [];
  return parts.findLast((word) => words.includes(word));
}

// What ends the listening for good; a pause or a noise does not.
const final = ['not-allowed', 'service-not-allowed', 'language-not-supported', 'audio-capture'];

const pause = 300; // ms before it starts again: one that ends at once must not spin

/**
 * Listens in a language for words until it is stopped; `heard` is called with each,
 * `lost` an end that was not asked for.
 */
export class Listener {
  /** @type {any} a SpeechRecognition, while it listens */
  #ear;

  /**
   * @param {string} lang
   * @param {string[]} words
   * @param {(word: string) => void} heard
   * @param {() => void} lost
   */
  constructor(lang, words, heard, lost) {
    const ear = new (recognition())();
    Object.assign(ear, { lang, continuous: true, processLocally: true });
    ear.onresult = (/** @type {any} */ { results, resultIndex }) => {
      const word = wordIn([...results].at(resultIndex)[0].transcript, words);
      if (word && this.#ear) heard(word);
    };
    ear.onerror = (/** @type {any} */ { error }) => final.includes(error) && this.#lose(lost);
    // A browser stops by itself after a silence.
    ear.onend = () => setTimeout(() => this.#begin(lost), pause);
    this.#ear = ear;
    this.#begin(lost);
  }

  /** @param {() => void} lost */
  #begin(lost) {
    try {
      this.#ear?.start();
    } catch {
      this.#lose(lost);
    }
  }

  /** @param {() => void} lost */
  #lose(lost) {
    if (!this.#ear) return;
    this.#ear = undefined;
    lost();
  }

  /** Stops listening. */
  stop() {
    const ear = this.#ear;
    this.#ear = undefined;
    ear?.abort();
  }
}

/**
 * Listens in a language for one line: `heard` is called with it, or with nothing after a
 * silence; `lost` where the phone does not let it.
 *
 * @param {string} lang
 * @param {(said: string) => void} heard
 * @param {() => void} lost
 */
export function hear(lang, heard, lost) {
  let over = false;
  /** @param {() => void} then */
  const end = (then) => {
    if (!over) then();
    over = true;
  };
  const ear = new (recognition())();
  Object.assign(ear, { lang, processLocally: true });
  ear.onresult = (/** @type {any} */ { results }) => end(() => heard(results[0][0].transcript));
  ear.onerror = (/** @type {any} */ { error }) => final.includes(error) && end(lost);
  ear.onend = () => end(() => heard(''));
  try {
    ear.start();
  } catch {
    end(lost);
  }
  return {
    stop() {
      over = true;
      ear.abort();
    },
  };
}
