import { saveSetting, setting } from './store.js';

/** What a person chose once for all jobs; gauge is {edge, ratio}, as the operation takes them. */
export const settings = {
  system: 'metric',
  theme: 'auto',
  language: undefined, // that of the phone
  seenChange: undefined,
  doneBy: '',
  gauge: undefined,
  bills: false,
};

/** Reads the settings; without a store they keep their first values. */
export async function loadSettings() {
  for (const key of Object.keys(settings)) {
    const kept = await setting(key);
    if (kept !== undefined) settings[key] = kept;
  }
  showTheme();
}

/** Changes a setting and keeps it. */
export async function set(key, value) {
  settings[key] = value;
  if (key === 'theme') showTheme();
  await saveSetting(key, value);
}

function showTheme() {
  document.documentElement.dataset.theme = settings.theme;
}
