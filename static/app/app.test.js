// What the person must know stays told until it is over, and no longer.
import assert from 'node:assert/strict';
import { beforeEach, test } from 'node:test';
import { App } from './app.js';
import { standing } from './store/database.js';

let app;
beforeEach(() => {
  app = new App(() => {});
  Object.assign(standing, { word: '', writes: 0 });
});

const failing = (name) => async () => {
  throw name === 'TypeError' ? new TypeError('planted') : new DOMException('planted', name);
};

test('what failed is told by its own word, by that of a full phone, or by what it was', async () => {
  for (const [name, word, told] of [
    ['AbortError', 'job.not-saved', 'job.not-saved'],
    ['QuotaExceededError', 'job.not-saved', 'store.full'],
    ['QuotaExceededError', undefined, 'store.full'],
    ['UnknownError', undefined, 'store.error'],
    ['TypeError', undefined, 'page.failed'],
    ['TypeError', 'csv.failed', 'csv.failed'],
  ]) {
    app = new App(() => {});
    assert.equal(await app.attempt(failing(name), word), undefined);
    assert.equal(app.trouble, told, `${name}, ${word}`);
  }
});

test('what knows by itself why it failed is told so', async () => {
  const refuse = () => Promise.reject(Object.assign(new Error('planted'), { word: 'its.own' }));
  await app.attempt(refuse, 'csv.failed');
  assert.equal(app.trouble, 'its.own');
});

test('an attempt that goes well takes back its own trouble, and no other’s', async () => {
  let works = false;
  const save = () => app.attempt(async () => (works ? 'saved' : failing('AbortError')()), 'a.word');
  await save();
  await app.attempt(async () => 'words are loaded', 'a.word');
  await app.attempt(async () => 'words are loaded');
  assert.equal(app.trouble, 'a.word');
  works = true;
  assert.equal(await save(), 'saved');
  assert.equal(app.trouble, '');
});

test('of two troubles the later is told first, and the other when that is over', async () => {
  let works = false;
  const read = () => app.attempt(() => (works ? 1 : failing('UnknownError')()));
  const save = () => app.attempt(() => (works ? 2 : failing('AbortError')()), 'job.not-saved');
  await read();
  await save();
  assert.equal(app.trouble, 'job.not-saved');
  works = true;
  await save();
  assert.equal(app.trouble, 'store.error');
  await read();
  assert.equal(app.trouble, '');
});

test('a phone is no longer full once anything could be written, and not when something was read', async () => {
  await app.attempt(failing('QuotaExceededError'));
  await app.attempt(async () => 'read');
  assert.equal(app.trouble, 'store.full');
  await app.attempt(async () => standing.writes++);
  assert.equal(app.trouble, '');
});

test('how the store is comes first, then what failed, then what stays until the page loads again', async () => {
  let works = false;
  const save = () => app.attempt(() => works || failing('AbortError')(), 'job.not-saved');
  await save();
  app.fail('job.written-back');
  standing.word = 'store.slow';
  assert.equal(app.trouble, 'store.slow');
  standing.word = '';
  assert.equal(app.trouble, 'job.not-saved');
  works = true;
  await save();
  assert.equal(app.trouble, 'job.written-back');
});
