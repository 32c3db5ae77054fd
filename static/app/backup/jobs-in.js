import { survey } from '../store/survey.js';
import * as whole from '../store/whole.js';
import { Contents } from './contents.js';
import { roomFor, tooMany, unreadOf } from './judge.js';
import { merged } from './merge.js';
import { refused } from './shapes.js';

/** @import { Finding, Summary } from '../core/core.d.ts' */
/** @import { JobRecord } from '../store/records.d.ts' */
/** @import { Group } from './groups.js' */
/** @import { Incoming } from './read.js' */
/** @import { Held } from './merge.js' */

/**
 * What comes of a job: what is new, what is told of it, and what goes aside.
 *
 * @typedef {object} Taken
 * @property {string} id
 * @property {JobRecord} [record] the job as it then is; nothing where none can be read
 * @property {Held} here
 * @property {ReturnType<typeof merged>} fresh
 * @property {{ jobs: number, events: number }} held how many contents came in
 * @property {{ incoming: Incoming, why: Finding }[]} unread
 * @property {Partial<Summary>} [summary] nothing where it stays as it is
 */

const looked = 300_000; // letters of a job from which on its bytes are counted

/** Jobs that come in beside those that are here. */
export class JobsIn {
  /** @type {Map<string, { mark: string, summary: Partial<Summary> }>} what the core said of each, should it stay as it is */
  known;
  /** @type {Set<string>} */
  #here = new Set();

  /** @param {JobsIn['known']} [known] what the core said before */
  constructor(known = new Map()) {
    this.known = known;
  }

  /** Looks at what is here. */
  async open() {
    this.#here = await whole.jobsHere();
  }

  /**
   * @param {Group[]} groups each of another job
   * @returns {Promise<Taken[]>}
   */
  async take(groups) {
    const here = await this.#held(groups.map(({ id }) => id));
    const sorted = groups.map((group, n) => new JobIn(group, here.at(n) ?? nothing()));
    const asked = sorted.filter((job) => job.changes && !this.#remembers(job));
    const clear = asked.filter((job) => !job.delicate);
    const answers = new Map(
      (await survey(clear.map((job) => job.case))).map((a, n) => [clear[n], a]),
    );
    for (const job of asked) {
      const summary = answers.get(job)?.summary;
      if (summary && !summary.unread) this.#remember(job, summary);
      else await job.settle();
    }
    return sorted.map((job) => job.taken);
  }

  /** @returns {Promise<Held[]>} */
  async #held(ids) {
    const list = ids.filter((id) => this.#here.has(id));
    if (!list.length) return [];
    const [records, events, beside] = await Promise.all([
      whole.recordsOf('jobs', list),
      whole.eventsOf(list),
      whole.besideOf(list),
    ]);
    return ids.map((id) => {
      const at = list.indexOf(id);
      if (at < 0) return nothing();
      const own = (events[at] ?? []).map(({ job: _, ...event }) => event);
      return { record: records[at], events: own, beside: beside[at] ?? [] };
    });
  }

  #remembers(job) {
    const known = this.known.get(job.taken.id);
    if (!known || known.mark !== job.mark) return false;
    job.taken.summary = known.summary;
    return true;
  }

  #remember(job, summary) {
    job.taken.summary = summary;
    this.known.set(job.taken.id, { mark: job.mark, summary });
  }
}

/** @returns {Held} */
const nothing = () => ({ events: [], beside: [] });

/** A job that comes in, with what is here of it. */
class JobIn {
  /** @type {Taken} */
  taken;
  #contents;
  #letters;

  /**
   * @param {Group} group
   * @param {Held} here
   */
  constructor(group, here) {
    this.#contents = new Contents(group);
    this.#letters = group.letters;
    const all = merged(group.id, nothing(), this.#contents.coming);
    const others = all.beside.filter(({ kind }) => kind === 'event').length;
    this.taken = {
      id: group.id,
      here,
      fresh: all,
      held: { jobs: Number(Boolean(all.record)), events: all.events.length + others },
      unread: this.#contents.unread,
    };
    const isNew = !here.record && !here.events.length && !here.beside.length;
    this.#merge(isNew ? all : undefined);
  }

  /** @param {ReturnType<typeof merged>} [fresh] */
  #merge(fresh) {
    const { id, here } = this.taken;
    this.taken.fresh = fresh ?? merged(id, here, this.#contents.coming);
    const { record } = this.taken.fresh;
    this.taken.record = here.record ? { ...here.record, ...record } : record;
  }

  /** Whether anything is new. */
  get changes() {
    return this.taken.fresh.from.length > 0;
  }

  /** Whether it takes more than a look at the whole to know that all of it can be read. */
  get delicate() {
    const { record, fresh } = this.taken;
    return (
      !record || fresh.beside.length > 0 || (this.#letters > looked && tooMany(this.case.events))
    );
  }

  /** The job as it would be. */
  get case() {
    const { here, fresh, record } = this.taken;
    return {
      record: /** @type {JobRecord} */ (record),
      events: [...here.events, ...fresh.events],
      beside: [...here.beside, ...fresh.beside],
    };
  }

  /** Tells a job as it was here from one to which something came. */
  get mark() {
    const { here, fresh } = this.taken;
    const lists = [here.events, here.beside, fresh.events, fresh.beside];
    return [Boolean(here.record), ...lists.map(({ length }) => length)].join();
  }

  /** Reads every record by itself, and leaves out what can't be read. */
  async settle() {
    const good = new Set();
    while (await this.#leaveOutUnread(good));
    if (!this.taken.record)
      return this.#leaveOut(this.#contents.coming.events, refused('event-without-job'));
    const [{ summary }] = await survey([this.case]);
    if (summary && !tooMany(this.case.events)) this.taken.summary = summary;
    else await this.#makeRoom();
  }

  /**
   * Leaves out what can't be read, which makes room for what says the same otherwise.
   *
   * @param {Set<any>} good what is known to be read
   */
  async #leaveOutUnread(good) {
    const { records } = this.#contents.coming;
    const fresh = this.taken.fresh.from.filter((value) => !good.has(value));
    const jobs = fresh.filter((value) => records.includes(value));
    const events = fresh.filter((value) => !records.includes(value));
    const found = new Map();
    const note = (value, why) => (why ? found.set(value, why) : good.add(value));
    const answers = await survey(jobs.map((record) => ({ record, events: [], beside: [] })));
    for (const [n, { summary, findings = [] }] of answers.entries())
      note(
        jobs[n],
        summary ? undefined : (findings[0] ?? refused('record-form', { member: 'card' })),
      );
    for (const [n, why] of (await unreadOf(events)).entries()) note(events[n], why);
    this.#contents.leaveOut(found);
    this.#merge();
    return found.size > 0;
  }

  /** Leaves out what is more than a job may have; what is here stays, however much it is. */
  async #makeRoom() {
    const { here, fresh } = this.taken;
    const { records } = this.#contents.coming;
    const counting = new Set([...records, ...fresh.events]);
    this.#leaveOut(
      fresh.from.filter((value) => !counting.has(value)),
      refused('record-overfull'),
    );
    const [alone] = await survey([{ ...this.case, events: here.events }]);
    const { events } = this.taken.fresh;
    const many = alone?.summary ? await roomFor(this.case, events.length) : events.length;
    this.#leaveOut(events.slice(many), refused('record-overfull'));
    const [{ summary }] = await survey([this.case]);
    this.taken.summary = summary ?? here.record?.summary ?? {};
  }

  #leaveOut(values, why) {
    this.#contents.leaveOut(new Map(values.map((value) => [value, why])));
    this.#merge();
  }
}
