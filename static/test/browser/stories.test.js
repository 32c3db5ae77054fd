// The page of stories: pictures of a state in every look, and the state itself.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { test } from 'node:test';
import { appearances, sizes } from '../stories/appearances.js';
import { startStoriesHost } from '../stories/host.js';
import { makeStories } from '../stories/make.js';
import { openBrowser, startServer, temporaryFolder } from './launch.js';
import { patience } from './patience.js';
import { untilSeen } from './person.js';
import { words } from './words.js';

// One that is tapped to and typed, one with a picture in the store, one without a store.
const wanted = ['step with a reading refused', 'record, a photo enlarged', 'bikes without a store'];

/** The width of a PNG (ISO/IEC 15948, 11.2.2). */
const widthOf = async (path) => (await readFile(path)).readUInt32BE(16);

test('stories: pictures in every look, live in the same state, listed in the gallery', async (t) => {
  const folder = await temporaryFolder(t);
  const site = await startServer(t);
  const host = await startStoriesHost(site.url, folder);
  t.after(host.stop);
  const browser = await openBrowser(t);
  const failed = (name, error) => assert.fail(`${name}: ${error.message}`);
  const stories = await makeStories((n) => wanted.includes(n), browser, host.url, folder, failed);

  await t.test('each has its screen, its heading and its pictures', async () => {
    assert.deepEqual(stories.map(({ name }) => name).sort(), [...wanted].sort());
    for (const { id, name, heading, pictures } of stories) {
      assert.ok(heading, name);
      for (const look of Object.keys(appearances))
        for (const [size, { width }] of Object.entries(sizes)) {
          const first = `${look}-${size}.png`;
          for (const file of [first, pictures[first]])
            assert.equal(await widthOf(join(folder, id, file)), width, `${name}, ${file}`);
        }
    }
    assert.deepEqual(stories.map(({ screen }) => screen).sort(), ['bikes', 'job', 'record']);
  });

  await t.test('opened live, each comes to the same', () => {
    for (const { name, live, shown, came } of stories)
      assert.ok(live, `${name}: ${shown}\n${came}`);
  });

  const page = await browser.newPage();

  await t.test('live in the dark and with text of 200 %', async () => {
    const open = async (look) => {
      await page.goto(`${host.url}stories/open.html?story=step-with-a-reading-refused${look}`);
      await page.waitForSelector('html[data-story=here]', { timeout: patience() });
      await untilSeen(page, words('finding.not-a-number', { text: 'four' }));
      return page.evaluate(() => {
        const root = document.documentElement;
        return { size: parseFloat(getComputedStyle(root).fontSize), theme: root.dataset.theme };
      });
    };
    const { size, theme } = await open('');
    assert.equal(theme, 'light');
    assert.deepEqual(await open('&theme=dark&text=2'), { size: 2 * size, theme: 'dark' });
  });

  await t.test('the gallery lists them, by screen too', async () => {
    const listed = () => page.$$eval('h2', (all) => all.map((h2) => h2.textContent));
    await page.goto(`${host.url}stories/gallery.html`);
    await untilSeen(page, wanted[0]);
    assert.deepEqual((await listed()).sort(), [...wanted].sort());
    await page.select('[name=screen]', 'record');
    assert.deepEqual(await listed(), ['record, a photo enlarged']);
  });

  await t.test('nothing of it is in the site itself', async () => {
    assert.equal((await fetch(`${site.url}stories/gallery.html`)).status, 404);
  });
});
