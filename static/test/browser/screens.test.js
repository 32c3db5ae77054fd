// Every screen, for everybody: axe-core finds nothing, and nothing scrolls sideways.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { after, before, test } from 'node:test';
import { stickingOut } from './layout.js';
import { openSampleSite } from './sample-site.js';
import { screens } from './screens.js';

const axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const sizes = [
  { width: 360, height: 740 },
  { width: 1280, height: 900 },
];

let page;
let end;

before(async () => {
  ({ page, end } = await openSampleSite());
  // By way of the debugger: the page's own policy would not let it in.
  await page.evaluate(axe);
});

after(() => end());

for (const [name, open] of Object.entries(screens)) {
  test(`${name}: axe finds nothing, light and dark, on phone and desk`, async () => {
    await page.setViewport(sizes[0]);
    await open(page);
    for (const size of sizes) {
      await page.setViewport(size);
      for (const theme of ['light', 'dark']) {
        await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: theme }]);
        assert.deepEqual(await violations(), [], `${size.width} px, ${theme}`);
      }
    }
  });

  test(`${name}: no sideways scrolling at 320 px, nor at 360 px with text of 200 %`, async () => {
    await page.setViewport({ width: 320, height: 640 });
    await open(page);
    assert.deepEqual(await stickingOut(page), [], '320 px');
    await page.setViewport(sizes[0]);
    await textSize(2);
    try {
      assert.deepEqual(await stickingOut(page), [], 'text of 200 %');
    } finally {
      await textSize(1);
    }
  });
}

async function violations() {
  const { passes, violations: found } = await page.evaluate(
    (values) => globalThis.axe.run(document, { runOnly: { type: 'tag', values } }),
    rules,
  );
  assert.ok(
    passes.some(({ id }) => id === 'color-contrast'),
    'axe looked at the colours',
  );
  return found.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`);
}

/** Makes the text that many times as large as the browser's usual. */
const textSize = (times) =>
  page.evaluate((factor) => {
    const { style } = document.documentElement;
    style.fontSize = '';
    if (factor === 1) return;
    style.fontSize = `${factor * parseFloat(getComputedStyle(document.documentElement).fontSize)}px`;
  }, times);
