import { bounds, tooDeep } from './bounds.js';
import { canonical } from './merge.js';
import { misshapen, refused } from './shapes.js';

/** @import { Finding } from '../core/core.d.ts' */
/** @import { Group } from './groups.js' */
/** @import { Coming } from './merge.js' */
/** @import { Incoming } from './read.js' */

/** What came in of a job, as contents: each with the line that it came from. */
export class Contents {
  /** @type {{ kind: 'job' | 'event', value: any, incoming: Incoming }[]} */
  #list = [];
  /** @type {{ incoming: Incoming, why: Finding }[]} what can't be read */
  unread = [];

  /** @param {Group} group */
  constructor({ id, records, events, later }) {
    for (const incoming of records) this.#add('job', incoming, incoming.value);
    for (const incoming of events) this.#add('event', incoming, eventOf(incoming.value));
    for (const incoming of later)
      if (incoming.kind === 'beside') this.#addOther(id, incoming);
      else if (incoming.kind === 'job') this.#add('job', incoming, incoming.value);
      else this.#add('event', incoming, eventOf(incoming.value));
  }

  #add(kind, incoming, value) {
    this.#list.push({ kind, value, incoming });
  }

  /** What is beside a record of the job, or one of its events. */
  #addOther(job, incoming) {
    const { kind, id, text } = incoming.value;
    const value = tooDeep(text) ? undefined : parsed(text);
    const line = kind === 'event' ? { ...value, job } : value;
    const own = kind === 'event' ? value?.id === id : kind === 'job' && value?.id === job;
    const why = own && misshapen(kind, line);
    if (!own || why || canonical(value).length > bounds.line)
      this.unread.push({ incoming, why: why || refused('record-form', { member: 'text' }) });
    else this.#add(kind, incoming, kind === 'event' ? eventOf(line) : value);
  }

  /**
   * What can be read, as far as it is known.
   *
   * @returns {Coming}
   */
  get coming() {
    const of = (kind) =>
      this.#list.filter((entry) => entry.kind === kind).map(({ value }) => value);
    return { records: of('job'), events: of('event') };
  }

  /**
   * Takes out what can't be read.
   *
   * @param {Map<any, Finding>} found why, by what it is about
   */
  leaveOut(found) {
    for (const { value, incoming } of this.#list) {
      const why = found.get(value);
      if (why) this.unread.push({ incoming, why });
    }
    this.#list = this.#list.filter(({ value }) => !found.has(value));
  }
}

const eventOf = ({ job: _, ...event }) => event;

/** @param {string} text */
function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
