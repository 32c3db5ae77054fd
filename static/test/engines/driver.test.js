// The drivers themselves, at a page that does nothing but tell what happens to it.
import assert from 'node:assert/strict';
import { readFile, writeFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { describe, test } from 'node:test';
import { setTimeout as pause } from 'node:timers/promises';
import { temporaryFolder } from '../browser/launch.js';
import { patience } from '../browser/patience.js';
import { NotHere, engineNames, startEngine } from './driver.js';
import { leaveOut } from './left-out.js';

const page = `<!doctype html><title>told</title>
<link rel="icon" href="data:,">
<p id="told">nothing</p>
<button id="first">Tap</button>
<button id="shy">Shy</button>
<a href="#there">Go <b>there</b></a>
<label>A note <input id="note" value="before"></label>
<label for="which">Which</label> <select id="which"><option>one<option>two</select>
<input id="file" type="file">
<a download="saved.txt" href="data:text/plain,saved">Save</a>
<div id="box" style="width: 100px; height: 200px; touch-action: none"></div>
<div style="height: 2000px"></div>
<button>Far below</button>
<script>
  const tell = (text) => (document.querySelector('#told').textContent = text);
  const on = (kind, act) => addEventListener(kind, (event) => act(event.target, event));
  on('click', (thing, { isTrusted, detail }) =>
    thing.tagName === 'BUTTON' && tell([thing.textContent, isTrusted, detail].join(' ')));
  // It is drawn anew once, under the finger.
  on('mousedown', (thing) => {
    if (thing.id === 'shy') thing.replaceWith(Object.assign(thing.cloneNode(true), { id: 'bold' }));
  });
  on('change', async (thing) =>
    tell(thing.files ? thing.files[0].name + ' ' + (await thing.files[0].text()) : thing.value));
  on('pointerdown', (box, { pointerId }) => box.id === 'box' && box.setPointerCapture(pointerId));
  on('pointermove', (box, { buttons, clientY }) =>
    box.id === 'box' && buttons &&
    tell('at ' + Math.round(clientY - box.getBoundingClientRect().top)));
  on('keydown', (_, { key, isTrusted }) => (globalThis.lastKey = key + ' ' + isTrusted));

  /** Writes a value that lasts; gives all that were. */
  globalThis.keep = (value) => new Promise((resolve, reject) => {
    const opening = indexedDB.open('driver', 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore('kept', { autoIncrement: true });
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const change = opening.result.transaction('kept', 'readwrite', { durability: 'strict' });
      if (value) change.objectStore('kept').put(value);
      const all = change.objectStore('kept').getAll();
      change.oncomplete = () => (opening.result.close(), resolve(all.result));
    };
  });
</script>`;

/** Serves the page; resolves to its address. */
async function servePage(t) {
  const server = createServer((request, response) => {
    response.statusCode = request.url === '/' ? 200 : 404;
    response.setHeader('content-type', 'text/html; charset=utf-8');
    response.end(request.url === '/' ? page : '');
  });
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  t.after(() => server.close());
  return `http://localhost:${server.address().port}/`;
}

/** What a person's hands do reaches the page as a person's does. */
async function hands(engine) {
  await engine.tap({ role: 'button', name: 'Tap' });
  await engine.untilSeen('Tap true 1');
  await engine.tap({ role: 'button', name: 'Far below' });
  await engine.untilSeen('Far below true 1');
  await engine.tap('#first');
  await engine.tap('#first');
  await engine.untilSeen('Tap true 1'); // and not 2, which is a double tap
  await engine.tap({ role: 'button', name: 'Shy' });
  await engine.untilSeen('Shy true 1');
  await engine.tap({ name: 'there' });
  await engine.until(() => location.hash === '#there');

  const holds = (text) => document.querySelector('#note').value === text;
  await engine.type('A note', 'zwölf ✓ 12,5');
  await engine.until(holds, 'zwölf ✓ 12,5');
  await engine.type('A note', '');
  await engine.until(holds, '');
  await engine.press('ArrowUp');
  await engine.until(() => globalThis.lastKey === 'ArrowUp true');
  await engine.answer('Which', 'two');
  await engine.untilSeen('two');
}

async function dragged(engine) {
  for (const share of [0.9, 0.1, 1.2]) {
    await engine.drag('#box', { y: 0.5 }, { y: share });
    await engine.untilSeen(`at ${Math.round(share * 200)} `);
  }
}

async function files(t, engine) {
  const path = join(await temporaryFolder(t), 'picture.txt');
  await writeFile(path, 'contents');
  await engine.file('#file', path);
  await engine.untilSeen('picture.txt contents');
  if (!engine.can.has('download')) return;
  const saved = await engine.download(() => engine.tap({ name: 'Save' }));
  assert.equal(saved.name, 'saved.txt');
  assert.equal(await readFile(saved.path, 'utf8'), 'saved');
}

/** A second window has the storage of the first, and each its own page. */
async function windows(engine, url) {
  const size = () => [innerWidth, innerHeight];
  assert.deepEqual(await engine.evaluate(size), [360, 740]);
  await engine.tap({ role: 'button', name: 'Far below' });
  await engine.windows.open(url);
  assert.deepEqual(await engine.evaluate(size), [360, 740]);
  assert.match(await engine.seen(), /^nothing/);
  assert.deepEqual(await engine.evaluate(() => globalThis.keep()), ['kept in the first']);
  await engine.tap('#first');
  await engine.untilSeen('Tap true 1');
  await engine.windows.switch(0);
  assert.match(await engine.seen(), /^Far below true 1/);
  await engine.tap('#first');
  await engine.untilSeen('Tap true 1');
}

/** Each kind of what goes wrong is heard; what goes well is not. */
async function faults(engine, url) {
  assert.deepEqual(await engine.errors(), []);
  await engine.evaluate((missing) => {
    console.error('planted on the console');
    setTimeout(() => {
      throw new Error('planted and thrown');
    });
    return fetch(missing).then(() => undefined);
  }, `${url}missing`);
  for (const part of ['planted on the console', 'planted and thrown'])
    await until(async () => (await engine.errors()).some((error) => error.includes(part)), part);
  await assert.rejects(
    engine.evaluate(() => Promise.reject(new Error('as it says'))),
    /as it says/,
  );
}

async function until(holds, what) {
  const end = performance.now() + patience();
  while (!(await holds())) {
    assert.ok(performance.now() < end, what);
    await pause(50);
  }
}

describe('drivers', { concurrency: 2 }, () => {
  for (const name of engineNames)
    test(`${name}: taps, types, drags, saves, hears, and its profile outlives a kill`, async (t) => {
      const url = await servePage(t);
      const profile = await temporaryFolder(t);
      const start = () => startEngine(name, { profile });
      const engine = await start().catch((error) => {
        if (!(error instanceof NotHere)) throw error;
        leaveOut(t, name, error.message);
      });
      if (!engine) return;
      t.after(() => engine.kill());
      assert.match(engine.version, /^\d+\.\d+/);
      await engine.open(url);
      await hands(engine);
      await dragged(engine);
      await files(t, engine);
      await engine.evaluate(() => globalThis.keep('kept in the first'));
      await windows(engine, url);
      await faults(engine, url);
      await engine.kill();

      const again = await start();
      t.after(() => again.close());
      await again.open(url);
      assert.deepEqual(await again.evaluate(() => globalThis.keep()), ['kept in the first']);
      assert.deepEqual(await again.errors(), []);
    });
});
