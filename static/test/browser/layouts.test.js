// Every way of keeping the oil, in the page: the plans of all sample bikes, and
// the choice of what is cleaned at some changes only.
import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { test } from 'node:test';
import { goTo } from './job-page.js';
import { openSite } from './open-site.js';
import { untilState } from './page.js';
import { choose, seen, untilSeen } from './person.js';
import { openAll } from './screens/on-screen.js';
import { sampleCard, words } from './words.js';

const cards = readdirSync(new URL('../../../specs/cards', import.meta.url)).map((file) =>
  sampleCard(file.replace('.json', '')),
);

test('the plan of every sample bike opens, with all of its notes', async (t) => {
  const { page, complaints } = await openSite(t);
  await untilState(page, 'ready');
  for (const card of cards) {
    await goTo(page, `#/bike/${card.id}`);
    await untilSeen(page, words('plan.start'));
    await openAll(page);
    const text = await seen(page);
    const said = [...(card.notes ?? []), ...(card.notesAt ?? []).map((note) => note.text)];
    for (const note of said) assert.ok(text.includes(note), `${card.id}: ${note}`);
    assert.ok(!/\{\w+\}/.test(text), `${card.id} leaves a placeholder: ${text}`);
  }
  assert.deepEqual(complaints, []);
});

test('a centrifugal filter is cleaned when it is chosen, and no longer when not', async (t) => {
  const { page } = await openSite(t);
  await untilState(page, 'ready');
  const card = sampleCard('marrowick-tamber-95');
  const [{ place }] = card.filters;
  const scraper = words('tool.scraper');
  await goTo(page, `#/bike/${card.id}`);
  await untilSeen(page, words('plan.start'));
  await openAll(page);
  assert.ok(!(await seen(page)).includes(scraper));
  await choose(page, words('also.centrifugal', { place }));
  await untilSeen(page, scraper);
  await choose(page, words('also.centrifugal', { place }));
  await page.waitForFunction((part) => !document.body.innerText.includes(part), {}, scraper);
});
