import assert from 'node:assert/strict';
import { test } from 'node:test';
import { openBrowser, startServer } from './launch.js';
import { askCore, untilState } from './page.js';
import { installErrors, watch } from './watch.js';

test('the browser finds nothing wrong with manifest, policy or service worker', async (t) => {
  const server = await startServer(t);
  const page = await (await openBrowser(t)).newPage();
  const complaints = await watch(page);
  await page.goto(server.url);
  await untilState(page, 'ready');
  assert.equal(await askCore(page), 'unknown-op');
  assert.deepEqual(await installErrors(page), []);
  assert.deepEqual(complaints, []);
});
