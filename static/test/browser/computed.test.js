// The pages that the server computes for a browser in which the app can't run: the way
// to them, and what they are like. What they say is tested beside them (server/pages).
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { test } from 'node:test';
import { exportEdition } from './editions.js';
import { startFolderHost } from './folder-host.js';
import { openBrowser, startServer } from './launch.js';
import { seen, untilSeen } from './person.js';
import { words } from './words.js';

const axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const bike = 'Skarvald Kettra 290';

const follow = async (page, name) => {
  const link = await page.waitForSelector(`::-p-aria([name="${name}"][role="link"])`);
  await Promise.all([page.waitForNavigation(), link.evaluate((a) => a.click())]);
};

/** From the page that can't be shown to the figures of a plan. */
async function toThePlan(page) {
  await follow(page, words('page.plain'));
  await follow(page, bike);
  const plan = await seen(page);
  for (const figure of ['0.69 L', '21.7 N·m', 'SAE 10W-40', words('figure.first-pour')])
    assert.ok(plan.includes(figure), `${figure} in ${plan.slice(0, 900)}`);
}

test('without JavaScript one is led to plans, calculations and problems', async (t) => {
  const server = await startServer(t);
  const page = await (await openBrowser(t)).newPage();
  await page.setJavaScriptEnabled(false);
  await page.goto(server.url);
  await page.waitForSelector('#none', { visible: true });
  assert.ok((await seen(page)).includes(words('page.no-script')));
  await toThePlan(page);
  await page.click('input[name="filter"][value="keep"]');
  await page.click('input[name="system"][value="us"]');
  await Promise.all([page.waitForNavigation(), page.click('button')]);
  assert.match(await seen(page), /0\.7 US qt/);
  await follow(page, words('nav.bench'));
  await follow(page, words('calc.convert'));
  await page.type('#field-text', '١٫٥ L');
  await Promise.all([page.waitForNavigation(), page.click('button')]);
  assert.match(await seen(page), /1\.5 L.*1\.6 US qt/);
  await follow(page, words('trouble.title'));
  await follow(page, words('fault.drop-plug'));
  await follow(page, `☐ ${words('fault-answer.returns.drips')}`);
  assert.ok((await seen(page)).includes(words('outcome.do-not-ride')));
});

test('a browser that is too old is led from the sentence to a plan', async (t) => {
  const server = await startServer(t);
  const page = await (await openBrowser(t)).newPage();
  await page.evaluateOnNewDocument(() => delete Object.hasOwn);
  await page.goto(server.url);
  await untilSeen(page, words('page.plain'));
  assert.equal(await seen(page), `${words('page.older')} ${words('page.plain')}`);
  await toThePlan(page);
});

test('where nothing computes, no such pages are promised', async (t) => {
  const host = await startFolderHost(t, await exportEdition(t));
  const page = await (await openBrowser(t)).newPage();
  await page.evaluateOnNewDocument(() => delete Object.hasOwn);
  const asked = page.waitForResponse((r) => r.url().endsWith('/plain/here'));
  await page.goto(host.url);
  assert.notEqual((await asked).status(), 204);
  await untilSeen(page, words('page.older'));
  assert.equal(await seen(page), words('page.older'));
});

for (const [what, body] of [
  ['can be had', undefined],
  ['is understood', 'class {'],
])
  test(`where no script ${what}, the page is not empty`, async (t) => {
    const server = await startServer(t);
    const page = await (await openBrowser(t)).newPage();
    await page.setRequestInterception(true);
    page.on('request', (request) => {
      if (request.resourceType() !== 'script') return request.continue();
      return body ? request.respond({ contentType: 'text/javascript', body }) : request.abort();
    });
    await page.goto(server.url);
    await page.waitForSelector('#none', { visible: true });
    assert.ok((await seen(page)).startsWith(words('page.no-script')), await seen(page));
    await toThePlan(page);
  });

test('the pages fit a small screen, and axe finds nothing', async (t) => {
  const server = await startServer(t);
  const page = await (await openBrowser(t)).newPage();
  for (const path of [
    '',
    'card',
    'bike/skarvald-kettra-290',
    'bike/hallowmoor-drover-1360?place=roadside',
    'calculations',
    'calculate/bottles?need=2&bottles.0.size=large&bottles.1.size=1+L',
    'calculate/wrench?torque=25+N%C2%B7m&wrenches.0.low=5+N%C2%B7m&wrenches.0.high=50+N%C2%B7m',
    'trouble',
    'trouble/drop-plug?returns=drips',
    'aid/burn',
    'none',
  ])
    for (const width of [320, 360]) {
      await page.setViewport({ width, height: 740 });
      await page.goto(`${server.url}plain/${path}`);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      assert.equal(wide, width, `${path} at ${width} px`);
      if (width === 360) {
        await page.evaluate(axe);
        const { violations } = await page.evaluate(() => globalThis.axe.run(document));
        assert.deepEqual(
          violations.map(({ id, nodes }) => [id, nodes[0].html]),
          [],
          path,
        );
      }
    }
});
