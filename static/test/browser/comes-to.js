// What is read of the page or its store comes when it comes: it is read again until it is
// as it should be, or nobody would wait any longer.
import assert from 'node:assert/strict';
import { setTimeout as pause } from 'node:timers/promises';
import { isDeepStrictEqual } from 'node:util';
import { polling } from './page.js';
import { patience } from './patience.js';

/** Reads until it holds; resolves to what was read last. */
export async function comes(read, holds) {
  for (const end = performance.now() + patience(); ; await pause(polling)) {
    const now = await read();
    if (holds(now) || performance.now() > end) return now;
  }
}

/** Reads until it is what it should be, and holds what was read last against that. */
export async function comesTo(read, wanted, message) {
  const now = await comes(read, (one) => isDeepStrictEqual(one, wanted));
  assert.deepEqual(now, wanted, message);
}
