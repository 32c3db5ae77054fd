import assert from 'node:assert/strict';
import { test } from 'node:test';
import { openBrowser, startServer } from './launch.js';

test('in a browser without WebAssembly the server computes', async (t) => {
  const server = await startServer(t);
  const page = await (await openBrowser(t)).newPage();
  await page.evaluateOnNewDocument(() => delete globalThis.WebAssembly);
  const asked = [];
  page.on('request', (request) => asked.push(`${request.method()} ${request.url()}`));
  await page.goto(server.url);
  const answer = await page.evaluate(() => globalThis.tidysump.core.call('no-such-op'));
  assert.equal(answer.findings[0].code, 'unknown-op');
  assert.ok(asked.includes(`POST ${server.url}api/no-such-op`), asked.join('\n'));
});
