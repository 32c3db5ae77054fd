/**
 * Runs in the page, before it: a phone that reads aloud and recognises speech by
 * itself. `globalThis.phone` knows what it was asked to say and lets one speak.
 */
export function voices() {
  const phone = { said: [], spoken: [], ears: new Set(), shakes: 0, tones: 0 };
  globalThis.phone = phone;
  globalThis.SpeechSynthesisUtterance = class {
    constructor(text) {
      this.text = text;
    }
  };
  const synthesis = {
    getVoices: () => [{ lang: document.documentElement.lang, localService: true }],
    speak: (part) => phone.spoken.push(part) && phone.said.push(part.text),
    cancel: () => (phone.spoken = []),
  };
  Object.defineProperty(globalThis, 'speechSynthesis', { value: synthesis });
  // The voice comes to the end of what it was given.
  phone.finish = () => phone.spoken.splice(0).forEach((part) => part.onend?.());
  globalThis.SpeechRecognition = class {
    static available = async ({ langs: [lang], processLocally }) =>
      processLocally && lang === document.documentElement.lang ? 'available' : 'unavailable';
    start() {
      if (!this.processLocally) throw new Error('the sound would leave the phone');
      phone.ears.add(this);
    }
    abort() {
      phone.ears.delete(this);
      this.onend?.();
    }
  };
  phone.hear = (said) => {
    for (const ear of phone.ears)
      ear.onresult({ resultIndex: 0, results: [[{ transcript: said }]] });
  };
  navigator.vibrate = () => ++phone.shakes;
  const start = OscillatorNode.prototype.start;
  OscillatorNode.prototype.start = function (...when) {
    phone.tones++;
    start.apply(this, when);
  };
}
