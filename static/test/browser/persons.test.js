// What tells of other people: a backup without it, a bike handed on, and the one act that
// takes it away, as a person does them.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { gunzipSync } from 'node:zlib';
import { backUp, restoreFrom } from './backup-page.js';
import { openReady } from './cards-page.js';
import { comes } from './comes-to.js';
import { downloaded } from './download.js';
import { goTo, plant, plantIn, stored } from './job-page.js';
import { temporaryFolder } from './launch.js';
import { openSite } from './open-site.js';
import { polling } from './page.js';
import { patience } from './patience.js';
import { choose, seen, tap, untilSeen } from './person.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const name = `${card.make} ${card.model}`;
const started = '2026-11-20T09:00:00.000Z';
const fact = (id, seq, kind, more) => ({
  book: 'bike',
  of: 'twin',
  id,
  kind,
  time: `2026-11-20T09:0${seq}:00.000Z`,
  day: '2026-11-20',
  seq,
  ...more,
});

/** A bike of somebody, with one job. */
async function fill(page) {
  await plantIn(
    page,
    'facts',
    fact('f1', 1, 'follows', { value: card.id }),
    fact('f2', 2, 'told', { what: 'called', value: 'The green one' }),
    fact('f3', 3, 'told', { what: 'plate', value: 'KX 12' }),
    fact('f4', 4, 'told', { what: 'owner', value: 'Odile Quarry' }),
  );
  await plantIn(page, 'bikes', { id: 'twin', stale: 'planted' });
  const bench = { system: 'metric', place: 'garage' };
  await plant(page, { id: 'j', name, started, card, bench, bike: 'twin', summary: {} }, [
    { id: 'e1', kind: 'note', text: 'Quiet engine', time: started },
  ]);
  await page.reload();
  const lined = async () => (await stored(page, 'bikes')).some(({ owner }) => owner);
  assert.ok(await comes(lined, Boolean), 'the line of the bike is not made');
}

const textOf = (path) => gunzipSync(readFileSync(path)).toString();

test('a backup without persons, and then none of them on the phone either', async (t) => {
  const { page, complaints } = await openReady(t);
  await fill(page);
  assert.match(textOf((await backUp(t, page)).path), /Odile Quarry.*KX 12|KX 12.*Odile Quarry/s);
  await goTo(page, '#/keep');
  await choose(page, words('keep.with-persons'));
  await untilSeen(page, words('keep.without-persons'));
  await tap(page, words('keep.make'));
  await untilSeen(page, words('keep.save'));
  const arrived = await downloaded(page, await temporaryFolder(t));
  await tap(page, words('keep.save'));
  const text = textOf((await arrived()).path);
  for (const gone of ['Odile Quarry', 'KX 12']) assert.equal(text.includes(gone), false, gone);
  for (const stays of ['The green one', 'Quiet engine']) assert.ok(text.includes(stays), stays);

  await tap(page, words('persons.open'), 'link');
  await untilSeen(page, words('persons.facts', { count: 2 }));
  await untilSeen(page, words('persons.gone'));
  await Promise.all([page.waitForNavigation(), tap(page, words('persons.do'))]);
  await untilSeen(page, words('keep.title'));
  assert.deepEqual((await stored(page, 'facts')).map(({ id }) => id).sort(), ['f1', 'f2']);
  assert.equal((await seen(page)).includes(words('persons.open')), false);
  await goTo(page, '#/record/j');
  for (const text of ['The green one', 'Quiet engine']) await untilSeen(page, text);
  assert.equal((await seen(page)).includes('KX 12'), false);
  assert.deepEqual(complaints, []);
});

test('a bike goes to another phone with its record, and stays what it is called', async (t) => {
  const { page } = await openReady(t);
  await fill(page);
  await goTo(page, '#/details/twin');
  await tap(page, words('give.make'));
  await untilSeen(page, words('give.ready'));
  const arrived = await downloaded(page, await temporaryFolder(t));
  await tap(page, words('keep.save'));
  const { path } = await arrived();
  assert.equal(textOf(path).includes('Odile Quarry'), false, 'persons stay here unless asked for');

  const { page: other, complaints } = await openSite(t);
  await restoreFrom(other, path);
  await goTo(other, '#/record/j');
  await untilSeen(other, 'The green one');
  await goTo(other, '#/bike/twin');
  await other.waitForFunction(
    (text) => document.querySelector('h1')?.textContent.includes(text),
    { polling, timeout: patience() },
    'The green one',
  );
  assert.deepEqual(complaints, []);
});
