// Own cards: taken in from a file, found, given away, deleted.
import assert from 'node:assert/strict';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { test } from 'node:test';
import { keep, openFile, openReady, ownCard, packOf, paste, save, tick } from './cards-page.js';
import { goTo, stored } from './job-page.js';
import { temporaryFolder } from './launch.js';
import { polling } from './page.js';
import { heading, seen, tap, tapText, type, untilSeen } from './person.js';
import { sampleCard, words } from './words.js';

const heron = ownCard('heron', 'Heron 500');
const otter = ownCard('otter', 'Otter 250');
const thicker = ownCard('heron', 'Heron 500', (card) => {
  card.circuits[0].withFilter.value = 3.9;
});

test('cards go out in a file and come back the same to the byte', async (t) => {
  const { page, complaints } = await openReady(t);
  const folder = await temporaryFolder(t);
  const given = join(folder, 'given.json');
  await writeFile(given, packOf(heron, { ...otter, layout: 'hovercraft' }, otter));
  await openFile(page, given);
  await untilSeen(page, words('pack.nothing-yet'));
  assert.deepEqual(await stored(page, 'cards'), [], 'nothing is kept before it is said');
  await untilSeen(page, words('finding.unknown-word', { text: 'hovercraft' }));
  await keep(page, 2);
  await tap(page, words('cards.tick-own', { count: 2 }));
  const first = await save(page, folder);
  const texts = (await stored(page, 'cards')).map(({ text }) => text);
  const ids = JSON.parse(first.text).cards.map(({ id }) => id);
  assert.deepEqual(ids.sort(), ['heron', 'otter']);
  for (const text of texts) assert.ok(first.text.includes(text), text);

  for (const _ of texts) {
    await tapText(page, words('cards.delete'));
    await untilSeen(page, words('cards.keep'));
    await tap(page, words('cards.delete'));
    await untilSeen(page, words('cards.undo'));
    await goTo(page, '#/cards');
  }
  assert.deepEqual(await stored(page, 'cards'), []);
  await openFile(page, first.path);
  await keep(page, 2);
  await tap(page, words('cards.tick-own', { count: 2 }));
  assert.equal((await save(page, folder)).text, first.text);
  assert.deepEqual(complaints, []);
});

test('a changed card stays beside the old one until one is deleted', async (t) => {
  const { page } = await openReady(t);
  await paste(page, JSON.stringify(heron));
  await keep(page, 1);
  await paste(page, packOf(heron, thicker));
  await untilSeen(page, words('pack.same.why'));
  await tick(page, 'Heron');
  await keep(page, 1);
  await untilSeen(page, words('cards.versions'));
  await tapText(page, words('differs.what', { count: 1 }));
  await untilSeen(page, '3.9 US qt');
  await goTo(page, '#/bikes');
  await untilSeen(page, 'Heron 500');
  const versions = (await seen(page)).split('Heron 500').length - 1;
  assert.equal(versions, 2);

  await goTo(page, '#/cards');
  await tapText(page, words('cards.delete'));
  await tap(page, words('cards.keep'));
  assert.equal((await stored(page, 'cards')).length, 2, 'asked first');
  await tapText(page, words('cards.delete'));
  await tap(page, words('cards.delete'));
  await untilSeen(page, words('cards.gone', { name: 'Plainford Heron 500' }));
  assert.equal((await stored(page, 'cards')).length, 1);
  await tap(page, words('cards.undo'));
  await page.waitForFunction(
    (undo) => !document.body.innerText.includes(undo),
    { polling },
    words('cards.undo'),
  );
  assert.equal((await stored(page, 'cards')).length, 2, 'brought back');
});

test('an own card is found by what is typed, pinned, and planned', async (t) => {
  const { page } = await openReady(t);
  const herd = Array.from({ length: 60 }, (_, n) => ownCard(`herd-${n}`, `Herd ${n}`));
  await paste(page, packOf(...herd, heron));
  await keep(page, 61);
  await goTo(page, '#/bikes');
  const drawn = 25;
  const left = 61 + (await sampleCount(page)) - drawn;
  await untilSeen(page, words('bikes.more', { count: left }));
  await type(page, words('bikes.search'), 'HERÓN 2005');
  await untilSeen(page, words('bikes.fitting', { count: 1 }));
  const pin = words('bikes.pin', { name: 'Plainford Heron 500' });
  await tap(page, pin);
  await untilSeen(page, words('bikes.pinned'));
  await goTo(page, '#/bikes');
  const firstRow = await page.evaluate(() => document.querySelector('.bikes li').innerText);
  assert.match(firstRow, /Heron 500/);
  await tapText(page, 'Heron 500');
  await untilSeen(page, words('plan.start'));
  assert.equal(await heading(page), 'Plainford Heron 500');
});

const sampleCount = (page) =>
  page.evaluate(async () => {
    const opened = performance.getEntriesByType('resource').map(({ name }) => name);
    const response = await fetch(opened.find((name) => name.includes('/data/bikes.')));
    return (await response.json()).bikes.length;
  });

test('a sample goes out as it is', async (t) => {
  const { page } = await openReady(t);
  const { make, model, id } = sampleCard('tessaly-corda-570');
  await goTo(page, '#/cards');
  await tick(page, `${make} ${model}`);
  const { text } = await save(page, await temporaryFolder(t));
  const [card] = JSON.parse(text).cards;
  assert.equal(card.id, id);
  assert.deepEqual(card.circuits[0].oil, sampleCard(id).circuits[0].oil);
});

test('the share sheet gets the file in the form that the phone shares', async (t) => {
  const { page } = await openReady(t, (fresh) => fresh.evaluateOnNewDocument(shareTextOnly));
  const { make, model } = sampleCard('tessaly-corda-570');
  await goTo(page, '#/cards');
  await tick(page, `${make} ${model}`);
  await tap(page, words('cards.share'));
  await untilSeen(page, words('cards.shared'));
  const [name, text] = await page.evaluate(() => globalThis.given);
  assert.match(name, /^tessaly-corda-570-[\d-]+\.txt$/);
  assert.equal(JSON.parse(text).cards[0].model, model);
});

/** Runs in the page before anything else: a phone that shares plain text files. */
function shareTextOnly() {
  navigator.canShare = ({ files }) => files.every(({ type }) => type === 'text/plain');
  navigator.share = async ({ files: [file] }) => {
    globalThis.given = [file.name, await file.text()];
  };
}

test('the schema is where its name says', async (t) => {
  const { page, url } = await openReady(t);
  await goTo(page, '#/cards');
  const name = words('cards.schema');
  const href = await page.$eval(`::-p-aria([name="${name}"][role="link"])`, (a) => a.href);
  assert.equal(href, `${url}card.schema.json`);
  const schema = await page.evaluate(async (at) => (await fetch(at)).json(), href);
  assert.equal(new URL(schema.$id).pathname, '/card.schema.json');
});
