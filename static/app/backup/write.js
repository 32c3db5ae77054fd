import * as whole from '../store/whole.js';
import { toBase64 } from './base64.js';
import { Pieces, seal } from './seal.js';

// A backup is JSON Lines, gzipped where the browser can, with a seal; specs/backup.md
// says what stands in it.

/** What a backup of this app says of itself. */
export const format = 'tidysump-backup';
export const version = 1;

/** Settings that are about this phone's own backups. */
export const ofThisPhone = ['backup', 'backupLater'];

const together = 50; // jobs read at once
const block = 64_000; // letters handed on at once

/** All lines of a backup. */
async function* lines(made, withPhotos, progress) {
  const counts = { settings: 0, cards: 0, jobs: 0, events: 0, photos: 0 };
  const line = (kind, value) => {
    counts[`${kind}s`]++;
    return `{"${kind}":${JSON.stringify(value)}}\n`;
  };
  yield `${JSON.stringify({ format, version, made })}\n`;
  for (const [key, value] of await whole.allSettings())
    if (!ofThisPhone.includes(key)) yield line('setting', { key, value });
  for await (const chunk of whole.chunks('cards', 500))
    for (const { key, card, changed, pinned } of chunk)
      yield line('card', { key, card, changed, pinned });
  for await (const chunk of whole.chunks('jobs', together)) {
    const events = await whole.eventsOf(chunk.map(({ id }) => id));
    for (const [n, { summary: _, ...job }] of chunk.entries()) {
      yield line('job', job);
      for (const event of events[n]) yield line('event', event);
    }
    progress(counts);
  }
  for await (const chunk of withPhotos ? whole.chunks('photos', together) : [])
    for (const { job, id, what, blob } of chunk) {
      yield line('photo', { job, id, what, data: await toBase64(blob) });
      progress(counts);
    }
  yield `${JSON.stringify({ end: counts })}\n`;
}

/** Texts put together to blocks worth handing on. */
async function* blocks(texts) {
  const encoder = new TextEncoder();
  let open = [];
  let letters = 0;
  for await (const text of texts) {
    open.push(text);
    letters += text.length;
    if (letters < block) continue;
    yield encoder.encode(open.join(''));
    [open, letters] = [[], 0];
  }
  yield encoder.encode(open.join(''));
}

function streamOf(chunks) {
  return new ReadableStream({
    async pull(out) {
      const { value, done } = await chunks.next();
      if (done) out.close();
      else out.enqueue(value);
    },
    cancel: () => chunks.return(),
  });
}

/**
 * Makes a backup of the whole store: a Blob. It is gzipped unless `plain`, and
 * where the browser can't; `progress` is called with what is in it so far.
 */
export async function makeBackup({ made, photos, plain = false, progress = () => {} }) {
  const zipped = !plain && Boolean(globalThis.CompressionStream);
  const text = streamOf(blocks(lines(made, photos, progress)));
  const stream = zipped ? text.pipeThrough(new CompressionStream('gzip')) : text;
  const pieces = new Pieces();
  const reader = stream.getReader();
  for (;;) {
    const { value, done } = await reader.read();
    if (done) break;
    await pieces.add(value);
  }
  const digest = await pieces.end();
  const type = zipped ? 'application/gzip' : 'text/plain';
  return new Blob([...pieces.parts, seal(digest, zipped)], { type });
}
