import { askToPersist } from '../phone/storage.js';
import { ifSoon } from './database.js';
import { saveSetting, setting } from './store.js';

/**
 * Asks the browser to keep the records, and notes what it said, for the settings to tell:
 * a browser itself doesn't say whether it was ever asked. Resolves to the answer, null
 * where it can't be asked.
 */
export async function askToKeep() {
  const kept = await askToPersist();
  if (kept !== null) {
    const said = { time: new Date().toISOString(), kept };
    await ifSoon(saveSetting('promise', said)).catch(() => {}); // asked again some time
  }
  return kept;
}

/** What the browser said when it was last asked; null if it never was. */
export const lastAnswer = async () => (await setting('promise').catch(() => null))?.kept ?? null;
