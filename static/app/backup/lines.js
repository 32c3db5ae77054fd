import { bounds, checkLength, Fault } from './bounds.js';

// Bytes go to the browser's unzipper in small pieces: it unpacks what it is given in
// one go, up to a thousandfold.
const piece = 16_384;

/** A file's bytes, handed out in small pieces until they are no longer wanted. */
class Pieces {
  stream;
  #wanted = true;

  /**
   * @param {Blob} file
   * @param {(bytes: number) => void} see is told how many were read so far
   */
  constructor(file, see) {
    let at = 0;
    const pull = async (out) => {
      if (!this.#wanted || at >= file.size) return out.close();
      const end = Math.min(at + 16 * piece, file.size);
      const bytes = new Uint8Array(await file.slice(at, end).arrayBuffer());
      for (let from = 0; from < bytes.length; from += piece)
        out.enqueue(bytes.subarray(from, from + piece));
      at = end;
      see(at);
      return undefined;
    };
    this.stream = new ReadableStream({ pull }, { highWaterMark: 1 });
  }

  end() {
    this.#wanted = false;
  }
}

/**
 * What a stream gives; not every browser's stream can be walked through by itself. What
 * is still under way when nobody wants more runs out unseen: an unzipper that is cancelled
 * while it works fails in some programs where nobody can catch it.
 *
 * @param {ReadableStream<Uint8Array>} stream
 * @param {Pieces} source
 */
async function* read(stream, source) {
  const reader = stream.getReader();
  try {
    for (;;) {
      const { value, done } = await reader.read();
      if (done) return;
      yield value;
    }
  } finally {
    source.end();
    runOut(reader).catch(() => {});
  }
}

/** @param {ReadableStreamDefaultReader} reader */
async function runOut(reader) {
  for (let done = false; !done;) ({ done } = await reader.read());
}

/**
 * The lines of a text in bytes, some at a time; the last may be without an end, where
 * `cut` says so. Rejects with a Fault where the bounds are passed.
 *
 * @param {Blob} file
 * @param {{ zipped: boolean, cut?: boolean, see?: (bytes: number) => void }} how
 * @returns {AsyncGenerator<string[]>}
 */
export async function* linesOf(file, { zipped, cut = false, see = () => {} }) {
  const source = new Pieces(file, see);
  const unzipped = zipped
    ? source.stream.pipeThrough(new DecompressionStream('gzip'))
    : source.stream;
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let unpacked = 0;
  let open = []; // the parts of the line under way: joined once, however long it is
  let letters = 0;
  for await (const chunk of read(unzipped, source)) {
    unpacked += chunk.length;
    if (unpacked > bounds.bytes) throw new Fault('restore.too-large');
    const [rest = '', ...others] = decoder.decode(chunk, { stream: true }).split('\n');
    open.push(rest);
    letters += rest.length;
    const begun = open.length > 1 ? open.slice(0, 2).join('') : rest;
    checkLength(begun, letters);
    if (!others.length) continue;
    const lines = [open.join(''), ...others];
    const last = lines.pop() ?? '';
    for (const line of lines) checkLength(line, line.length);
    yield lines;
    [open, letters] = [[last], last.length];
  }
  decoder.decode(); // what breaks off within a letter is damaged
  if (!letters) return;
  if (!cut) throw new Fault('restore.damaged');
  yield [open.join('')];
}
