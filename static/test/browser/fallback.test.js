// Browsers that lack what the page is made of.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { openBrowser, startServer } from './launch.js';
import { seen, untilSeen } from './person.js';
import { words } from './words.js';

const without = {
  'knows no WebAssembly': () => delete globalThis.WebAssembly,
  "doesn't know by which word the policy lets programs run": () => {
    globalThis.WebAssembly.Module = function () {
      throw new EvalError('blocked by the policy');
    };
  },
};

for (const [what, before] of Object.entries(without))
  test(`where a browser ${what}, the server computes`, async (t) => {
    const server = await startServer(t);
    const page = await (await openBrowser(t)).newPage();
    await page.evaluateOnNewDocument(before);
    const asked = [];
    page.on('request', (request) => asked.push(`${request.method()} ${request.url()}`));
    await page.goto(server.url);
    const call = () => page.evaluate(() => globalThis.tidysump.core.call('no-such-op'));
    assert.equal((await call()).findings[0].code, 'unknown-op');
    assert.ok(asked.includes(`POST ${server.url}api/no-such-op`), asked.join('\n'));
    await server.stop();
    assert.equal((await call()).findings[0].code, 'server-unreachable');
  });

test('a browser that is too old is told what it takes, in place of a page that fails', async (t) => {
  const server = await startServer(t);
  const page = await (await openBrowser(t)).newPage();
  await page.evaluateOnNewDocument(() => delete Object.hasOwn);
  await page.goto(server.url);
  await untilSeen(page, words('page.older'));
  assert.ok((await seen(page)).startsWith(words('page.older')), await seen(page));
});
