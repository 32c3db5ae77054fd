import { ofJob, use, write } from './database.js';
import { keeping } from './drafts.js';
import { announceFacts } from './windows.js';
import { newId } from '../site/new-id.js';
import { today } from '../words/dates.js';

/** @import { Answer, Book, Finding } from '../core/core.d.ts' */
/** @import { Beside, BikeRow, Fact, Picture } from './records.d.ts' */

// What was told of bikes, visits and the workshop's own books: facts, which are written once
// and never changed. What is true of a subject the core makes of all of them.

/** @type {(a: Fact, b: Fact) => number} */
const order = (a, b) =>
  a.seq - b.seq || (a.time < b.time ? -1 : a.time > b.time ? 1 : a.id < b.id ? -1 : 1);

/**
 * The facts of a book, or of one subject in it, in their order.
 *
 * @param {Book} book
 * @param {string} [of]
 * @returns {Promise<Fact[]>}
 */
export const factsOf = async (book, of) =>
  (await use((db) => db.getAll('facts', of === undefined ? ofJob(book) : ofJob(book, of)))).sort(
    order,
  );

const mostSeq = 1_000_000_000; // a higher one says nothing, as the core has it (ledger.MostSeq)

/** @type {(seq: unknown) => boolean} a file may say anything */
const places = (seq) => typeof seq === 'number' && seq > 0 && seq < mostSeq;

/** What is told of a subject goes one after the other: @type {Map<string, Promise<unknown>>} */
const turns = new Map();

/**
 * Runs an act when those on the same subject before it are done.
 *
 * @template T
 * @param {string} subject
 * @param {() => Promise<T>} act
 * @returns {Promise<T>}
 */
function inTurn(subject, act) {
  const done = (turns.get(subject) ?? Promise.resolve()).then(act);
  const turn = done
    .catch(() => {})
    .then(() => {
      if (turns.get(subject) === turn) turns.delete(subject);
    });
  turns.set(subject, turn);
  return done;
}

/**
 * Tells something of a subject: {kind, what, value, text, job, signs}. Resolves to the
 * findings about it; it is kept when none of them refuses.
 *
 * @param {Book} book
 * @param {string} of the subject
 * @param {Pick<Fact, 'kind'> & Partial<Fact>} told
 * @param {object} [how]
 * @param {(facts: Fact[]) => Promise<Answer<{ findings?: Finding[] }> | Finding[]>} [how.check]
 *   what the core says of all facts of the subject, of which the last is about to be kept
 * @param {Pick<Picture, 'what' | 'blob' | 'bytes'>} [how.photo] its picture
 * @param {string[]} [how.drafts] keys of the drafts that it holds
 * @returns {Promise<Finding[]>}
 */
export const tell = (book, of, told, { check, photo, drafts = [] } = {}) =>
  inTurn(`${book} ${of}`, async () => {
    const here = await factsOf(book, of);
    const now = new Date();
    /** @type {Fact} */
    const fact = {
      ...told,
      book,
      of,
      id: told.id ?? newId(),
      time: now.toISOString(),
      day: today(now),
      seq: 1 + here.reduce((most, { seq }) => (places(seq) ? Math.max(most, seq) : most), 0),
    };
    const findings = check ? aboutLast(await check([...here, fact]), here.length) : [];
    if (findings.some(({ grade }) => grade === 'refuse')) return findings;
    await keeping(drafts, () => keep(fact, photo, drafts));
    announceFacts(book, of);
    return findings;
  });

/**
 * What the core says of the fact at that place of those that it was asked about.
 *
 * @param {Answer<{ findings?: Finding[] }> | Finding[]} answer
 * @param {number} place
 */
export function aboutLast(answer, place) {
  if (Array.isArray(answer)) return answer;
  if (!answer.ok) return answer.findings;
  const of = /^\/facts\/(\d+)/;
  return (answer.ok.findings ?? []).filter(
    ({ where }) => Number(of.exec(where)?.[1] ?? place) === place,
  );
}

/**
 * @param {Fact} fact
 * @param {Pick<Picture, 'what' | 'blob' | 'bytes'> | undefined} photo
 * @param {string[]} drafts
 */
const keep = (fact, photo, drafts) =>
  write(['facts', 'bikes', 'photos', 'drafts'], (tx) => {
    tx.objectStore('facts').add(fact);
    if (photo) tx.objectStore('photos').add({ ...photo, job: fact.of, id: fact.id });
    for (const key of drafts) tx.objectStore('drafts').delete(key);
    outdated(tx, [fact]);
  });

/**
 * Marks what lists show of the bikes of these facts as of before: it is made anew when the
 * core can say it.
 *
 * @param {IDBTransaction} tx
 * @param {Pick<Fact, 'book' | 'of'>[]} facts
 */
export function outdated(tx, facts) {
  const bikes = new Set(facts.flatMap(({ book, of }) => (book === 'bike' ? [of] : [])));
  const stale = newId();
  for (const id of bikes) {
    const rows = tx.objectStore('bikes');
    const asked = rows.get(id);
    asked.onsuccess = () => {
      /** @type {BikeRow} */
      const row = { ...asked.result, id, stale };
      rows.put(row);
    };
  }
}

/**
 * Takes facts away for good, with their pictures and what else stood under their ids.
 *
 * @param {Pick<Fact, 'book' | 'of' | 'id'>[]} facts
 */
export async function forget(facts) {
  await write(['facts', 'bikes', 'photos', 'beside'], (tx) => {
    for (const { book, of, id } of facts) {
      tx.objectStore('facts').delete([book, of, id]);
      tx.objectStore('photos').delete([of, id]);
      tx.objectStore('beside').delete(ofJob(besideOf(book, of), 'fact', id));
    }
    outdated(tx, facts);
  });
  for (const { book, of } of facts) announceFacts(book, of);
}

/**
 * What stands in the place of a job for other contents of a subject's facts.
 *
 * @param {string} book
 * @param {string} of
 */
export const besideOf = (book, of) => JSON.stringify([book, of]);

/**
 * The fact that another content of one is; none where the row is of a job.
 *
 * @param {Beside} row
 * @returns {Fact[]}
 */
export function factsIn({ kind, text }) {
  try {
    return kind === 'fact' ? [JSON.parse(text)] : [];
  } catch {
    return []; // nothing of ours
  }
}
