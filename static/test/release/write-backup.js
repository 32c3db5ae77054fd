// Writes testdata/backups/VERSION.jsonl.gz, as this version of the program keeps and saves
// what is in it: node static/test/release/write-backup.js, after a build. It is a test for
// the sake of what the tests' pages need; `make released-backup` runs it.
import assert from 'node:assert/strict';
import { copyFile, readFile } from 'node:fs/promises';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { backUp } from '../browser/backup-page.js';
import { keep, openReady, packOf, paste } from '../browser/cards-page.js';
import { plant, plantIn, planOf } from '../browser/job-page.js';
import { sampleCard } from '../browser/words.js';
import { tellAll } from './told.js';

const root = new URL('../../../', import.meta.url);
const read = async (path) => JSON.parse(await readFile(new URL(path, root), 'utf8'));

const finished = ['tessaly-corda-570', 'ondrake-rovanto-360', 'hallowmoor-drover-1360'];
const halfDone = ['ondrake-quarto-830', 'quillane-vastro-1010'];

/** Runs in the page: what is sure on a page of a manual, as a card of its own. */
const cardFrom = async (text) => {
  const { core } = globalThis.tidysump;
  const card = {
    ...{ format: 'tidysump-card', version: 1, id: 'from-a-page', make: '', model: '' },
    ...{ layout: 'wet-sump', sources: [{ id: 'manual', title: '' }], bolts: [] },
    circuits: [{ id: 'engine', role: 'engine' }],
  };
  const { ok: page } = await core.call('read-page', { text });
  const readings = page.readings.filter(({ sure }) => sure === 'yes');
  const title = 'Manual (invented)';
  return core.call('take-readings', { card, text, readings, title, page: '4-7', system: 'metric' });
};

/** Runs in the page: keeps what stands for pictures. */
const keepPictures = (list) =>
  new Promise((resolve, reject) => {
    const opening = indexedDB.open('tidysump');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const tx = opening.result.transaction('photos', 'readwrite');
      const bytes = Uint8Array.of(0xff, 0xd8, 0x11, 0x00);
      const blob = new Blob([bytes], { type: 'image/jpeg' });
      for (const photo of list)
        tx.objectStore('photos').put({ ...photo, blob, bytes: bytes.length });
      tx.oncomplete = () => (opening.result.close(), resolve());
      tx.onabort = () => reject(tx.error);
    };
  });

test('the backup of this version', async (t) => {
  const [{ version }] = await read('static/changelog.json');
  const { page } = await openReady(t);
  const { text } = await read('testdata/pages/en/11-service-information.json');
  const taken = await page.evaluate(cardFrom, text);
  assert.ok(taken.ok, JSON.stringify(taken));
  const { card: own } = taken.ok;
  await paste(page, packOf(own));
  await keep(page, 1);

  const tell = tellAll(version);
  for (const card of [...finished.map(sampleCard), own, ...halfDone.map(sampleCard)]) {
    const { steps } = await planOf(page, card);
    const part = halfDone.includes(card.id) ? 0.6 : 1;
    const { job, events, photos } = tell.job(card, steps, part);
    const { id, name, ...input } = job;
    const asked = { ...input, events };
    const replayed = await page.evaluate(
      (all) => globalThis.tidysump.core.call('replay', all),
      asked,
    );
    assert.ok(replayed.ok, `${name}, ${id}: ${JSON.stringify(replayed)}`);
    assert.equal(replayed.ok.done.length, new Set(events.filter(isDone).map(stepOf)).size, name);
    await plant(page, job, events);
    await page.evaluate(keepPictures, photos);
  }
  await plantIn(page, 'facts', ...tell.facts('green', finished[0]));
  await page.reload();
  const { path } = await backUp(t, page);
  await copyFile(path, fileURLToPath(new URL(`testdata/backups/${version}.jsonl.gz`, root)));
});

const isDone = ({ kind }) => kind === 'done';
const stepOf = ({ step }) => step;
