import { limits, loadLimits } from '../core/limits.js';
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
};

/** Reads the settings; without a store they keep their first values. */
export async function loadSettings() {
  const { system } = settings;
  for (const key of Object.keys(settings)) {
    const kept = await setting(key);
    if (kept !== undefined) Object.assign(settings, { [key]: kept });
  }
  showTheme();
  if (settings.system === system) return;
  await loadLimits();
  if (limits.systems?.includes(settings.system) === false) settings.system = system;
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
