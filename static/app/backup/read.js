import { bounds, Fault, tooDeep } from './bounds.js';
import { linesOf } from './lines.js';
import { Pace } from './pace.js';
import { digestOf, seal, sealSize } from './seal.js';
import { misshapen, refused } from './shapes.js';
import { format, version } from './write.js';
import { own } from '../site/own.js';

export { Fault } from './bounds.js';

/**
 * A record as it stands in a file; where `why` says so, the page can't work with it.
 *
 * @typedef {object} Incoming
 * @property {string} kind
 * @property {any} value
 * @property {string} text its line
 * @property {import('../core/core.d.ts').Finding} [why]
 * @property {boolean} [again] it was kept aside, and is tried again
 * @property {boolean} [here] it lies aside here
 */

// What is counted at the end of a file. A file of version 1 has none of the last three, one of
// version 2 none of the last.
const counted = ['setting', 'card', 'job', 'event', 'photo', 'beside', 'aside', 'fact'];
const often = 200_000; // letters of a line that may be written five times as long

const isObject = (value) => value !== null && typeof value === 'object' && !Array.isArray(value);

/** A backup that was read and found whole. */
export class Backup {
  made = '';
  /** how many bytes it has */
  size;
  /** It was written by a page that could no longer seal it: nobody knows whether it is whole. */
  rescued = false;
  #file;
  #zipped = false;

  constructor(file) {
    this.#file = file;
    this.size = file.size;
  }

  /**
   * Reads the beginning of a file and checks its seal. Rejects with a Fault, whose message
   * is a word id.
   *
   * @param {Blob} file
   * @param {AbortSignal} [signal]
   */
  static async open(file, signal) {
    // Over plain HTTP a browser makes no digests: neither seals nor keys of contents.
    if (!globalThis.crypto?.subtle) throw new Fault('restore.insecure');
    const backup = new Backup(file);
    return damagedUnless(async () => {
      await backup.#readHead();
      if (!backup.rescued) await backup.#checkSeal(signal);
      return backup;
    });
  }

  async #readHead() {
    const [first, second] = new Uint8Array(await this.#file.slice(0, 2).arrayBuffer());
    this.#zipped = first === 0x1f && second === 0x8b;
    if (!this.#zipped && first !== 0x7b) throw new Fault('restore.not-one');
    if (this.#zipped && !globalThis.DecompressionStream) throw new Fault('restore.cannot-unzip');
    // A newer version may end otherwise: its first line is looked for in all of the file.
    const all = this.#zipped ? this.#file.slice(0, this.#end) : this.#file;
    for await (const [line] of linesOf(all, { zipped: this.#zipped })) {
      const head = tooDeep(line) ? {} : JSON.parse(line);
      if (head.format !== format) throw new Fault('restore.not-one');
      if (head.version > version) throw new Fault('restore.newer');
      if (!(head.version >= 1) || Number.isNaN(Date.parse(head.made)))
        throw new Fault('restore.damaged');
      this.made = head.made;
      this.rescued = head.version > 1 && head.rescue === true;
      return;
    }
    throw new Fault('restore.damaged');
  }

  get #end() {
    return this.rescued ? this.size : Math.max(0, this.size - sealSize(this.#zipped));
  }

  async #checkSeal(signal) {
    const end = this.#end;
    const want = seal(await digestOf(this.#file, end, signal), this.#zipped);
    const got = new Uint8Array(await this.#file.slice(end).arrayBuffer());
    if (got.length !== want.length || got.some((byte, n) => byte !== want[n]))
      throw new Fault('restore.damaged');
  }

  /**
   * Its records in their order, some at a time. Rejects with a Fault where the file ends
   * otherwise than it says, or the bounds are passed.
   *
   * @param {{ signal?: AbortSignal, see?: (bytes: number) => void }} [how] `see` is told how many bytes were read
   * @returns {AsyncGenerator<Incoming[]>}
   */
  async *records({ signal, see } = {}) {
    const pace = new Pace(signal);
    const reading = new Reading(this.rescued);
    const body = this.#file.slice(0, this.#end);
    const lines = linesOf(body, { zipped: this.#zipped, cut: this.rescued, see });
    try {
      for (;;) {
        const { value, done } = await damagedUnless(() => lines.next());
        if (done) break;
        let list = [];
        for (const line of value) {
          reading.add(line, list);
          if (!pace.due) continue;
          if (list.length) yield list;
          list = [];
          await pace.breathe();
        }
        if (list.length) yield list;
      }
      reading.end();
    } finally {
      await lines.return(undefined);
    }
  }
}

/** What goes wrong while a file is read means that it is damaged, unless it is known better. */
async function damagedUnless(action) {
  try {
    return await action();
  } catch (error) {
    const known = error instanceof Fault || /** @type {Error} */ (error).name === 'AbortError';
    throw known ? error : new Fault('restore.damaged');
  }
}

/** A file's lines under way: what they hold, and how many of each kind there were. */
class Reading {
  #lines = 0;
  #unread = 0; // letters
  #aside = 0;
  /** @type {Map<string, number>} */
  #counts = new Map(counted.map((kind) => [kind, 0]));
  /** @type {any} */
  #end;
  #rescued;

  /** @param {boolean} rescued */
  constructor(rescued) {
    this.#rescued = rescued;
  }

  /**
   * Reads a line and adds what it holds to the list.
   *
   * @param {string} line
   * @param {Incoming[]} list
   */
  add(line, list) {
    if (this.#lines++ === 0) return; // the head
    if (this.#lines > bounds.records) throw new Fault('restore.too-many');
    if (this.#end) throw new Fault('restore.damaged');
    const record = recordOf(line);
    const { kind, value } = record;
    if (kind === 'end') {
      this.#end = value;
      return;
    }
    if (this.#counts.has(kind)) this.#counts.set(kind, (this.#counts.get(kind) ?? 0) + 1);
    const before = list.length;
    if (record.why) list.push(record);
    else list.push(...opened(record));
    for (let at = before; at < list.length; at++) this.#weigh(list[at]);
  }

  /** @param {Incoming | undefined} record */
  #weigh(record) {
    if (!record?.why) return;
    this.#unread += record.text.length;
    if (this.#unread > bounds.unread || ++this.#aside > bounds.aside)
      throw new Fault('restore.too-much-unread');
  }

  /** Checks that all of it came. */
  end() {
    if (this.#rescued) return; // whatever of it is there
    if (!this.#end) throw new Fault('restore.damaged');
    for (const [kind, count] of this.#counts)
      if ((own(this.#end, `${kind}s`) ?? 0) !== count) throw new Fault('restore.damaged');
  }
}

/**
 * The record of a line.
 *
 * @param {string} line
 * @returns {Incoming}
 */
function recordOf(line) {
  const kind = /^\{"(\w+)":/.exec(line)?.[1] ?? '';
  const unread = (why) => ({
    kind: counted.includes(kind) ? kind : 'line',
    value: undefined,
    text: line,
    why,
  });
  if (!kind) return unread(refused('record-not-json'));
  if (tooDeep(line)) return unread(refused('record-too-deep'));
  let read;
  try {
    read = JSON.parse(line);
  } catch {
    return unread(refused('record-not-json'));
  }
  if (!isObject(read)) return unread(refused('record-not-json'));
  const [[name, value] = ['line', undefined], ...others] = Object.entries(read);
  if (others.length) return unread(refused('record-not-json'));
  if (name === 'end')
    return isObject(value)
      ? { kind: name, value, text: line }
      : unread(refused('record-form', { member: name }));
  const why = misshapen(name, value) ?? tooLong(name, value, line);
  return { kind: name, value, text: line, why };
}

// A short way of writing a number can have a long one, which this app could not read again.
const tooLong = (kind, value, line) =>
  kind !== 'photo' &&
  kind !== 'aside' &&
  line.length > often &&
  lineOf(kind, value).length > bounds.line
    ? refused('record-too-long')
    : undefined;

/**
 * What lies within a record: the record that was kept aside, the events of a bundle.
 *
 * @param {Incoming} record
 * @returns {Incoming[]}
 */
function opened(record) {
  const { kind, value, text } = record;
  if (kind === 'bundle')
    return value.events.map((event) => {
      const own = { ...event, job: value.job };
      return {
        kind: 'event',
        value: own,
        text: lineOf('event', own),
        why: misshapen('event', own),
      };
    });
  return kind === 'aside' ? [tried(value)] : [{ kind, value, text }];
}

/** @type {(kind: string, value: any) => string} */
const lineOf = (kind, value) => `{${JSON.stringify(kind)}:${JSON.stringify(value)}}`;

/**
 * A record that was kept aside, once more: {kind, text, why}.
 *
 * @param {any} aside
 * @returns {Incoming}
 */
export function tried({ kind, text }) {
  const again = recordOf(text);
  return again.kind === 'aside' || again.kind === 'end' || again.kind === 'bundle'
    ? { kind, value: undefined, text, why: refused('record-form', { member: kind }), again: true }
    : { ...again, again: true };
}
