// The screen kept on: by a lock, by a film where there is none, or not at all.
import assert from 'node:assert/strict';
import { beforeEach, test } from 'node:test';

let films; // those on the page
let stopped;
let plays; // whether the browser lets a film play

globalThis.document = {
  visibilityState: 'visible',
  addEventListener() {},
  body: { append: (film) => films.push(film) },
  createElement: (name) =>
    name === 'canvas'
      ? {
          getContext: () => ({ fillRect() {} }),
          captureStream: () => ({ getTracks: () => [{ stop: () => stopped++ }] }),
        }
      : {
          play: async () => {
            if (!plays) throw new Error('not allowed');
          },
          remove() {
            films = films.filter((film) => film !== this);
          },
        },
};

let locks; // what the browser says to a wish for a lock
const lock = () => ({ released: false, release: async function () {} });
Object.defineProperty(globalThis, 'navigator', {
  value: {
    get wakeLock() {
      return locks;
    },
  },
});

const { stayAwake } = await import('./lock.js');

beforeEach(async () => {
  [films, stopped, plays, locks] = [[], 0, true, undefined];
  await stayAwake(false);
  stopped = 0;
});

test('where the browser has a lock no film plays', async () => {
  locks = { request: async () => lock() };
  assert.equal(await stayAwake(true), 'lock');
  assert.deepEqual(films, []);
});

test('without a lock, or when it is refused, a silent film plays until the job is left', async () => {
  const refusing = { request: () => Promise.reject(new Error('low battery')) };
  for (locks of [undefined, refusing]) {
    assert.equal(await stayAwake(true), 'film');
    const [film] = films;
    assert.deepEqual([film.muted, film.loop, film.playsInline], [true, true, true]);
    stopped = 0;
    assert.equal(await stayAwake(false), '');
    assert.deepEqual([films, stopped], [[], 1]);
  }
});

test('where no film may play it is said that nothing keeps the screen on', async () => {
  plays = false;
  assert.equal(await stayAwake(true), '');
  assert.deepEqual(films, []);
});

test('let go while the browser still thinks: nothing stays on', async () => {
  let grant;
  let released = 0;
  locks = { request: () => new Promise((resolve) => (grant = resolve)) };
  const kept = stayAwake(true);
  await stayAwake(false);
  grant({ released: false, release: async () => released++ });
  assert.equal(await kept, '');
  assert.deepEqual([released, films], [1, []]);
});
