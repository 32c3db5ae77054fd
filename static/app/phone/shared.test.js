import assert from 'node:assert/strict';
import { test } from 'node:test';
import { isShared } from './offline-rules.js';
import { keepShared, takeShared } from './shared.js';

/** The caches of a phone, as far as these ask of them. */
function phone() {
  const all = new Map();
  return {
    has: async (name) => all.has(name),
    delete: async (name) => all.delete(name),
    open: async (name) => {
      if (!all.has(name)) all.set(name, new Map());
      const entries = all.get(name);
      return {
        put: async (path, response) => entries.set(path, response),
        match: async (path) => entries.get(path)?.clone(),
        keys: async () => [...entries.keys()],
        delete: async (path) => entries.delete(path),
      };
    },
  };
}

const shares = (text, ...files) => {
  const body = new FormData();
  if (text) body.set('text', text);
  files.forEach((file, n) => body.append('pages', new File([file], `${n}.txt`)));
  return new Request('https://tidysump.example/share', { method: 'POST', body });
};

/** What the page takes out. */
async function taken(caches) {
  let texts = [];
  await takeShared(caches, async (pages) => {
    texts = await Promise.all(pages.map((page) => page.text()));
  });
  return texts;
}

test('what a page that ended did not keep is there for the next one', async () => {
  const caches = phone();
  await keepShared(shares('one'), caches);
  const ends = async () => {
    await keepShared(shares('two'), caches); // comes meanwhile
    throw new Error('planted');
  };
  await assert.rejects(takeShared(caches, ends), /planted/);
  assert.deepEqual(await taken(caches), ['one', 'two']);
  assert.deepEqual(await taken(caches), []);
});

test('what is shared is taken once, text and files, in the order in which it came', async () => {
  const caches = phone();
  await keepShared(shares('one', 'two'), caches);
  await keepShared(shares('', 'three'), caches);
  assert.deepEqual(await taken(caches), ['one', 'two', 'three']);
  assert.deepEqual(await taken(caches), []);
  assert.deepEqual(await taken(undefined), [], 'a browser without caches');
});

test('only what comes by the way of the manifest is shared', () => {
  const origin = 'https://tidysump.example';
  for (const [method, url, want] of [
    ['POST', `${origin}/share`, true],
    ['GET', `${origin}/share`, false],
    ['POST', `${origin}/api/plan`, false],
    ['POST', 'https://elsewhere.example/share', false],
  ])
    assert.equal(isShared({ method, url }, origin), want, `${method} ${url}`);
});
