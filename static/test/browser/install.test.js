import assert from 'node:assert/strict';
import { test } from 'node:test';
import { openBrowser, startServer } from './launch.js';
import { askCore, untilState } from './page.js';

// Browsers that can't share say so of the policy that allows sharing.
const known = "Error with Permissions-Policy header: Unrecognized feature: 'web-share'.";

test('the browser finds nothing wrong with manifest, policy or service worker', async (t) => {
  const server = await startServer(t);
  const page = await (await openBrowser(t)).newPage();
  const complaints = [];
  page.on('console', (message) => {
    const serious = ['error', 'warn'].includes(message.type()) && message.text() !== known;
    if (serious) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('requestfailed', (request) => complaints.push(request.url()));
  await page.goto(server.url);
  await untilState(page, 'ready');
  assert.equal(await askCore(page), 'unknown-op');
  const devtools = await page.createCDPSession();
  const { errors } = await devtools.send('Page.getAppManifest');
  const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors');
  assert.deepEqual(errors, []);
  assert.deepEqual(installabilityErrors, []);
  assert.deepEqual(complaints, []);
});
