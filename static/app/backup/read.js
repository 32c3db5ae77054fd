import { digestOf, seal, sealSize } from './seal.js';
import { format, version } from './write.js';
import { own } from '../site/own.js';

const longestLine = 64_000_000; // letters; a picture has about a million

const isText = (value) => typeof value === 'string';
const isBase64 = (text) => text.length % 4 === 0 && /^[A-Za-z0-9+/]*={0,2}$/.test(text);
const isObject = (value) => value !== null && typeof value === 'object' && !Array.isArray(value);

// What each kind of line must have, for the page to work with it.
const shapes = {
  setting: ({ key, value }) => isText(key) && value !== undefined,
  card: ({ key, card, changed }) => [key, changed].every(isText) && isObject(card),
  job: (job) =>
    [job.id, job.name, job.started].every(isText) && [job.card, job.bench].every(isObject),
  event: ({ job, id }) => [job, id].every(isText),
  photo: ({ job, id, what, data }) => [job, id, what, data].every(isText) && isBase64(data),
};

/** Why a file can't be restored: a word id. */
export class Fault extends Error {}

/** A backup that was read and found whole: what it holds, and its records. */
export class Backup {
  made;
  counts;
  #file;
  #zipped;

  /**
   * Reads and checks all of a file; `see(kind, record)` is shown every record on
   * the way. Rejects with a Fault, whose message is a word id.
   *
   * @param {Blob} file
   * @param {(kind: string, record: any) => void} see
   */
  static async open(file, see = () => {}) {
    const backup = new Backup();
    try {
      backup.#file = file;
      await backup.#readHead();
      await backup.#checkSeal();
      await backup.#readAll(see);
    } catch (error) {
      throw error instanceof Fault ? error : new Fault('restore.damaged');
    }
    return backup;
  }

  async #readHead() {
    const [first, second] = new Uint8Array(await this.#file.slice(0, 2).arrayBuffer());
    this.#zipped = first === 0x1f && second === 0x8b;
    if (!this.#zipped && first !== 0x7b) throw new Fault('restore.not-one');
    if (this.#zipped && !globalThis.DecompressionStream) throw new Fault('restore.cannot-unzip');
    // A newer version may end otherwise: its first line is looked for in all of the file.
    for await (const [line] of this.#lines(this.#zipped ? this.#end : this.#file.size)) {
      const head = JSON.parse(line);
      if (head.format !== format) throw new Fault('restore.not-one');
      if (head.version > version) throw new Fault('restore.newer');
      if (head.version !== version || !isText(head.made)) throw new Fault('restore.damaged');
      this.made = head.made;
      return;
    }
    throw new Fault('restore.damaged');
  }

  get #end() {
    return Math.max(0, this.#file.size - sealSize(this.#zipped));
  }

  async #checkSeal() {
    const end = this.#end;
    const want = seal(await digestOf(this.#file, end), this.#zipped);
    const got = new Uint8Array(await this.#file.slice(end).arrayBuffer());
    if (got.length !== want.length || got.some((byte, n) => byte !== want[n]))
      throw new Fault('restore.damaged');
  }

  async #readAll(see) {
    const counts = { settings: 0, cards: 0, jobs: 0, events: 0, photos: 0 };
    let job;
    let end;
    for await (const [kind, value] of this.records()) {
      if (kind === 'end') {
        end = value;
        continue;
      }
      if (kind === 'job') job = value.id;
      const homeless = kind === 'event' && value.job !== job;
      if (end || homeless || !isObject(value) || !own(shapes, kind)?.(value))
        throw new Fault('restore.damaged');
      counts[`${kind}s`]++;
      see(kind, value);
    }
    if (!end || Object.keys(counts).some((name) => own(counts, name) !== own(end, name)))
      throw new Fault('restore.damaged');
    this.counts = counts;
  }

  /** Its records, [kind, record], the events of a job right after it; at last ['end', counts]. */
  async *records() {
    let head = true;
    for await (const lines of this.#lines(this.#end))
      for (const line of lines) {
        if (!head) yield Object.entries(JSON.parse(line))[0];
        head = false;
      }
  }

  /** The lines of the file, some at a time. */
  async *#lines(end) {
    const bytes = this.#file.slice(0, end).stream();
    const unzipped = this.#zipped ? bytes.pipeThrough(new DecompressionStream('gzip')) : bytes;
    let open = []; // the parts of the line under way: joined once, however long it is
    let letters = 0;
    for await (const text of read(
      unzipped.pipeThrough(new TextDecoderStream('utf-8', { fatal: true })),
    )) {
      const [rest, ...others] = text.split('\n');
      open.push(rest);
      letters += rest.length;
      if (letters > longestLine) throw new Fault('restore.damaged');
      if (!others.length) continue;
      const last = others.pop();
      yield [open.join(''), ...others];
      [open, letters] = [[last], last.length];
    }
    if (letters) throw new Fault('restore.damaged');
  }
}

/** What a stream gives; not every browser's stream can be walked through by itself. */
async function* read(stream) {
  const reader = stream.getReader();
  try {
    for (;;) {
      const { value, done } = await reader.read();
      if (done) return;
      yield value;
    }
  } finally {
    reader.cancel().catch(() => {});
  }
}
