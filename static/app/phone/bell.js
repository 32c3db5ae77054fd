// The bell: a tone and a shake. Browsers keep a tone silent that no tap has
// allowed, and a shake as well.

const volume = 0.4;
const pitch = 880; // Hz
const beeps = [0, 0.35, 0.7]; // s
const rounds = [0, 8, 16, 24]; // s: a mechanic may be under the bike (common practice, no source)

/** @type {AudioContext | undefined} */
let audio;
/** @type {GainNode | undefined} */
let ringing;

/** Whether this browser has tones at all. */
export const hasTones = () => 'AudioContext' in globalThis;

/** Whether a tap has allowed the tone. */
export const armed = () => audio !== undefined;

/** Allows the tone; to be called within a tap. */
export function arm() {
  if (!hasTones()) return;
  audio ??= new AudioContext();
  // A phone call or a locked screen stops it.
  if (audio.state !== 'running') audio.resume().catch(() => {});
}

/** Whether a tap has allowed the shake, or no browser says so. */
const mayShake = () => navigator.userActivation?.hasBeenActive !== false;

/** @type {Map<string, () => void>} what was rung here, each with what lets others ring for it */
const rung = new Map();

/**
 * Rings for a thing, unless another window of the app does; a window that no tap has
 * allowed to leaves it to one that was tapped.
 *
 * @param {string} id
 */
export function ringFor(id) {
  if (!armed() && !mayShake()) return;
  if (!navigator.locks) return void ring(); // a page that came over plain HTTP has none
  const held = new Promise((letGo) => rung.set(id, () => letGo(undefined)));
  navigator.locks
    .request(`bell ${id}`, { ifAvailable: true }, (lock) => {
      if (!lock || !rung.has(id)) return undefined; // it rings elsewhere, or was answered meanwhile
      ring();
      return held;
    })
    .catch(() => {}); // the page is going
}

/**
 * That thing rings no more.
 *
 * @param {string} id
 */
export function answered(id) {
  rung.get(id)?.();
  rung.delete(id);
  hush();
}

function ring() {
  hush();
  if (mayShake()) navigator.vibrate?.([400, 200, 400]);
  if (!audio) return;
  if (audio.state !== 'running') audio.resume().catch(() => {});
  const now = audio.currentTime;
  const bell = new GainNode(audio, { gain: volume });
  bell.connect(audio.destination);
  for (const start of rounds.flatMap((round) => beeps.map((beep) => now + round + beep))) {
    const tone = new OscillatorNode(audio, { frequency: pitch });
    tone.connect(bell);
    tone.start(start);
    tone.stop(start + 0.2);
  }
  ringing = bell;
}

/** Stops ringing. */
export function hush() {
  if (!ringing) return;
  ringing.disconnect();
  ringing = undefined;
}
