import { batches } from '../../core/batches.js';
import { isUnanswered } from '../../core/answer.js';
import { call } from '../../core/client.js';
import { loadLimits } from '../../core/limits.js';

/** @import { CardsAnswer } from '../../core/core.d.ts' */

/**
 * Has the core look at each card's text. Resolves to an entry for each: {text, bike,
 * findings} with the canonical text and the line for the list of bikes, or
 * {findings} when the card is refused. `progress` is called with how many are done.
 * Rejects with the `word` of why when nothing computes.
 *
 * @param {string[]} texts
 * @param {(done: number) => void} progress
 */
export async function checkTexts(texts, progress = () => {}) {
  await loadLimits();
  const entries = [];
  for (const batch of batches(texts)) {
    entries.push(...(await ask(batch)));
    progress(entries.length);
  }
  return entries;
}

/** What is said where nothing computes, by what it is that doesn't. */
const words = new Map([
  ['core-unavailable', 'cards.failed'],
  ['server-unreachable', 'finding.server-unreachable'],
]);

/**
 * A batch of which one card can't even be read is asked about in halves.
 *
 * @param {string[]} batch
 * @returns {Promise<any[]>}
 */
async function ask(batch) {
  const answer = await call('cards', `{"canonical":true,"cards":[${batch.join(',')}]}`);
  if (answer.ok) return sorted(batch, answer.ok);
  if (isUnanswered(answer)) {
    const [{ code }] = answer.findings;
    throw Object.assign(new Error(code), { word: words.get(code) });
  }
  if (batch.length === 1) return [{ findings: answer.findings }];
  const half = batch.length >> 1;
  return [...(await ask(batch.slice(0, half))), ...(await ask(batch.slice(half)))];
}

/**
 * @param {string[]} batch
 * @param {CardsAnswer} answer
 */
function sorted(batch, { bikes = [], findings = [] }) {
  /** @type {any[]} */
  const entries = batch.map(() => ({ findings: [] }));
  for (const { text, place = 0, ...bike } of bikes)
    Object.assign(entries.at(place), { text, bike });
  for (const finding of findings)
    entries[Number(finding.where.split('/')[2])]?.findings.push(finding);
  return entries;
}

/**
 * Says of each entry how it stands to the cards that are here already, [{id,
 * text}], and to those before it: its `status` becomes new, changed (same id,
 * other content), same or refused.
 */
export function compare(entries, here) {
  const byID = new Map();
  const note = (id, text) => byID.set(id, (byID.get(id) ?? new Set()).add(text));
  for (const { id, text } of here) note(id, text);
  for (const entry of entries) {
    entry.status = standing(entry, byID);
    if (entry.text) note(entry.bike.id, entry.text);
  }
  return entries;
}

function standing({ text, bike }, byID) {
  if (!text) return 'refused';
  const texts = byID.get(bike.id);
  if (!texts) return 'new';
  return texts.has(text) ? 'same' : 'changed';
}
