import { limits, loadLimits } from '../core/limits.js';
import { ifSoon } from './database.js';
import { saveSetting, setting } from './store.js';

/** @import { GaugeInput, System } from '../core/core.d.ts' */

/**
 * What a person chose once for all jobs.
 *
 * @typedef {object} Settings
 * @property {System} system
 * @property {'auto' | 'light' | 'dark'} theme
 * @property {string} [language] its tag; that of the phone where there is none
 * @property {string} [seenChange] version of the newest change that was shown
 * @property {string} doneBy
 * @property {GaugeInput} [gauge] what was matched: edge and ratio
 * @property {boolean} bills this person writes estimates and bills
 * @property {boolean} forOthers this person works on bikes of other people: owners and visits
 * @property {boolean} books this person keeps books on old oil, a shelf and torque wrenches
 */

/** @type {Settings} */
export const settings = {
  system: 'metric',
  theme: 'auto',
  language: undefined,
  seenChange: undefined,
  doneBy: '',
  gauge: undefined,
  bills: false,
  forOthers: false,
  books: false,
};

/** @type {Promise<void> | undefined} */
let reading;

/** Reads the settings; without a store they keep their first values. */
export function loadSettings() {
  reading = read();
  reading.catch(() => {}); // also while nobody waits for it
  return reading;
}

/** Resolves once they are read, however long that takes; rejects where they can't be. */
export const wereRead = () => Promise.resolve(reading);

/** Resolves once they are read, or the store takes long to say them. */
export const settled = () => ifSoon(wereRead()).catch(() => {});

async function read() {
  const first = settings.system;
  for (const key of Object.keys(settings)) {
    const kept = await setting(key);
    if (kept !== undefined) Object.assign(settings, { [key]: kept });
  }
  showTheme();
  if (settings.system !== first) checkSystem(first);
}

/**
 * Which systems there are, the core knows.
 *
 * @param {System} first
 */
async function checkSystem(first) {
  await loadLimits();
  if (limits.systems?.includes(settings.system) === false) settings.system = first;
}

/**
 * Changes a setting and keeps it.
 *
 * @template {keyof Settings} Key
 * @param {Key} key
 * @param {Settings[Key]} value
 */
export async function set(key, value) {
  Object.assign(settings, { [key]: value });
  if (key === 'theme') showTheme();
  await saveSetting(key, value);
}

function showTheme() {
  document.documentElement.dataset.theme = settings.theme;
}
