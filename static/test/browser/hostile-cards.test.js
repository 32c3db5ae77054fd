// Cards that mean harm: shown as text or refused with a reason, and the page lives on.
import assert from 'node:assert/strict';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { test } from 'node:test';
import { keep, openFile, openReady, ownCard, packOf, paste } from './cards-page.js';
import { goTo, stored } from './job-page.js';
import { figuresTurned, stickingOut } from './layout.js';
import { temporaryFolder } from './launch.js';
import { askCore } from './page.js';
import { patience } from './patience.js';
import { untilSeen } from './person.js';
import { words } from './words.js';

const markup = '<img src="/x" onerror="globalThis.ran = 1"><script>globalThis.ran = 1</script>';
const good = ownCard('good', 'Good 500');
const text = JSON.stringify(good);

// What is opened -> what must stand on the screen.
const refused = {
  'one string of 1 MB': [
    packOf(ownCard('long', 'x'.repeat(1_000_000))),
    words('finding.text-too-long', { most: 20000 }),
  ],
  'a card of more than 250 kB': [
    packOf(ownCard('wide', 'Wide', (c) => (c.notes = Array(100).fill('x'.repeat(15_000))))),
    words('finding.too-large', { most: '250 kB' }),
  ],
  '100,000 cards': [
    `{"format":"tidysump-cards","version":1,"cards":[${'{},'.repeat(99_999)}{}]}`,
    words('pack.too-many', { most: 10000 }),
  ],
  'brackets a million deep': [
    packOf(good).replace('"circuits"', `"notes":${'['.repeat(1e6)}${']'.repeat(1e6)},"circuits"`),
    words('finding.wrong-type', { want: 'string' }),
  ],
  'brackets a thousand deep': [
    text.replace('"layout"', `"layout":${'['.repeat(1000)}${']'.repeat(1000)},"l"`),
    words('finding.wrong-type', { want: 'string' }),
  ],
  'a thousand engines': [
    text.replace('"circuits":[', `"circuits":[${'{"id":"a","role":"engine"},'.repeat(1000)}`),
    words('finding.too-many-parts', { most: 200 }),
  ],
  'brackets that never close': ['{"a":['.repeat(100_000), words('pack.broken')],
  'a name that stands twice': [text.replace('{', '{"id":"other",'), /stands? twice|twice/],
  'numbers beyond all bounds': [
    text.replace('"version":1', '"version":1e999'),
    words('finding.wrong-type', { want: 'whole number' }),
  ],
  'the name of an object’s origin': [
    text.replace('{', '{"__proto__":{"text":"x"},"constructor":1,').replace('"layout"', '"l"'),
    words('pack.refused'),
  ],
};

test('harmful packs are refused with a reason, and the page lives on', async (t) => {
  const { page, complaints } = await openReady(t);
  for (const [name, [pack, reason]] of Object.entries(refused)) {
    await t.test(name, async () => {
      await paste(page, pack);
      await untilSeen(page, reason, patience(60));
      assert.deepEqual(await stored(page, 'cards'), []);
      assert.equal(await askCore(page), 'unknown-op', 'the core answers');
    });
  }
  await paste(page, packOf(good).replace('Good', 'Half \\ud83d'));
  await untilSeen(page, 'Half \ufffd 500');
  await keep(page, 1);
  assert.deepEqual(complaints, []);
});

test('a file of 60 MB is not even read', async (t) => {
  const { page } = await openReady(t);
  const path = join(await temporaryFolder(t), 'large.json');
  await writeFile(path, packOf(good).padEnd(60_000_000));
  await openFile(page, path);
  await untilSeen(page, words('pack.too-large', { most: 50 }));
});

test('one bad card among good ones spoils none of them', async (t) => {
  const { page } = await openReady(t);
  const cards = Array.from({ length: 30 }, (_, n) => JSON.stringify(ownCard(`c-${n}`, `C ${n}`)));
  cards[7] = cards[7].replace('{', '{"id":"twice",');
  cards[19] = '{"format":"tidysump-card"';
  cards[19] += `,"notes":["${'x'.repeat(30_000)}"]}`;
  await paste(page, `{"format":"tidysump-cards","version":1,"cards":[${cards.join(',')}]}`);
  await untilSeen(page, `${words('pack.refused')} (2)`);
  await untilSeen(page, words('pack.card', { number: 8 }));
  await untilSeen(page, words('pack.card', { number: 20 }));
  await keep(page, 28);
});

test('hostile text in a card is only text, from the pack to the plan', async (t) => {
  const { page, complaints } = await openReady(t);
  const long = 'x'.repeat(15_000);
  const bad = ownCard('bad', `\u202eturned 1234 ${long}`, (card) => {
    card.make = markup;
    card.notes = [`${markup} ${long}`];
    card.sources[0].title = `${markup}\u202e`;
    card['"><b onclick=x>'] = 1;
  });
  await paste(page, packOf(bad, { ...bad, notes: [] }));
  await untilSeen(page, markup);
  await looksRight(page, 'pack');
  await page.evaluate(() => {
    for (const box of document.querySelectorAll('.pick input:not(:checked)')) box.click();
  });
  await keep(page, 2);
  const [{ key }] = await stored(page, 'cards');
  for (const address of ['#/cards', '#/bikes', `#/bike/${key}`]) {
    await goTo(page, address);
    await untilSeen(page, markup);
    await looksRight(page, address);
  }
  assert.deepEqual(complaints, []);
});

async function looksRight(page, where) {
  await page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true;
  });
  assert.deepEqual(await stickingOut(page), [], where);
  assert.deepEqual(await figuresTurned(page), [], where);
  assert.equal(await page.evaluate(() => document.images.length), 0, where);
  assert.equal(await page.evaluate(() => globalThis.ran), undefined, where);
}
