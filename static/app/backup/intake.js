import { asideOf } from './aside.js';
import { bounds, Fault } from './bounds.js';
import { CardsIn } from './cards-in.js';
import { FactsIn } from './facts-in.js';
import { Groups } from './groups.js';
import { JobsIn } from './jobs-in.js';
import { named } from './named.js';
import { Pace } from './pace.js';
import { PhotosIn } from './photos-in.js';
import { tried } from './read.js';
import { Tally } from './tally.js';
import { saveSetting } from '../store/store.js';
import { ofThisPhone } from '../store/settings-shapes.js';
import * as whole from '../store/whole.js';

/** @import { Aside } from '../store/records.d.ts' */
/** @import { Finding } from '../core/core.d.ts' */
/** @import { Group } from './groups.js' */
/** @import { Taken } from './jobs-in.js' */
/** @import { Incoming } from './read.js' */

// What is taken in together: so much that the core and the store are worth asking, and so
// little that nobody has to wait for it.
const together = { letters: 600_000, records: 100 };
// Kinds of which each record is taken in by itself: the others are of a job.
const alone = new Set(['setting', 'card', 'photo', 'fact']);
const atOnce = 2; // batches of jobs under way: one is read while the other is worked out

/**
 * Takes in what a file holds, a kind after the other, beside what is here: nothing that is
 * here is replaced or removed. Without `keep` nothing is written, and all of it is told in
 * the same way.
 */
export class Intake {
  tally = new Tally();
  #keep;
  #made;
  #jobs;
  #groups;
  #pace;
  /** @type {CardsIn | undefined} */
  #cards;
  #photos = new PhotosIn();
  #facts = new FactsIn();
  /** @type {Set<string>} */
  #settings = new Set();
  /** @type {Set<string>} settings in the file */
  #set = new Set();
  /** @type {Map<string, Aside>} what lies aside here */
  #aside = new Map();
  /** @type {Set<string>} keys of what lay aside and can't be read now either */
  #still = new Set();
  /** @type {Set<string>} keys of what can't be read in the file */
  #told = new Set();
  #letters = 0; // of what lies aside here, in all
  /** @type {{ kind: string, list: any[], letters: number }} what is gathered until there is enough of it */
  #batch = { kind: '', list: [], letters: 0 };
  /** @type {Set<Promise<void>>} */
  #underWay = new Set();

  /**
   * @param {object} how
   * @param {string} how.made when the file was made
   * @param {boolean} how.keep whether to write anything
   * @param {AbortSignal} [how.signal]
   * @param {JobsIn['known']} [how.known] what the core said of the jobs before
   * @param {Set<string>} [how.scattered] ids of the jobs whose lines don't stand together
   */
  constructor({ made, keep, signal, known, scattered = new Set() }) {
    this.#made = made;
    this.#keep = keep;
    this.#jobs = new JobsIn(known);
    this.#groups = new Groups(scattered);
    this.#pace = new Pace(signal);
  }

  /** What the core said of the jobs. */
  get known() {
    return this.#jobs.known;
  }

  /** The jobs whose lines didn't stand together. */
  get scattered() {
    return this.#groups.scattered;
  }

  /** Looks at what is here; what lies aside is tried again. */
  async open() {
    await this.#jobs.open();
    this.#settings = await whole.keysOf('settings');
    for (const row of await whole.aside()) {
      this.#aside.set(row.key, row);
      this.#letters += row.text.length;
      await this.add([{ ...tried(row), here: true }]);
    }
  }

  /**
   * Takes records in.
   *
   * @param {Incoming[]} list
   */
  async add(list) {
    for (const incoming of list) {
      const { kind, why } = incoming;
      if (why) await this.#put('aside', { incoming, why }, incoming.text.length);
      else if (alone.has(kind)) await this.#put(kind, incoming, incoming.text.length);
      else await this.#putGroup(this.#groups.add(incoming));
    }
    await this.#pace.breathe();
  }

  /** Takes in what is left. */
  async end() {
    await this.#putGroup(this.#groups.close());
    for (const group of this.#groups.rest()) await this.#putGroup(group);
    await this.#flush();
    await this.#settled();
    if (this.#keep) await this.#dropAside();
  }

  /** Waits for what is under way, which is whole then. */
  async stop() {
    await Promise.allSettled(this.#underWay);
  }

  /** @param {Group | undefined} group */
  async #putGroup(group) {
    if (group) await this.#put('job', group, group.letters);
  }

  async #put(kind, record, letters) {
    const batch = this.#batch;
    const full = batch.letters >= together.letters || batch.list.length >= together.records;
    if (kind !== batch.kind || full) await this.#flush();
    this.#batch.kind = kind;
    this.#batch.list.push(record);
    this.#batch.letters += letters;
  }

  async #flush() {
    const { kind, list } = this.#batch;
    this.#batch = { kind: '', list: [], letters: 0 };
    if (!list.length) return;
    if (kind !== 'job') await this.#settled();
    const work = this.#take(kind, list);
    this.#underWay.add(work);
    work.then(
      () => this.#underWay.delete(work),
      () => {}, // whoever waits for it hears of it
    );
    if (kind !== 'job') await work;
    else while (this.#underWay.size >= atOnce) await Promise.race(this.#underWay);
  }

  async #settled() {
    await Promise.all(this.#underWay);
  }

  /** @returns {Promise<void>} */
  #take(kind, list) {
    if (kind === 'job') return this.#takeJobs(list);
    if (kind === 'card') return this.#takeCards(list);
    if (kind === 'photo') return this.#takePhotos(list);
    if (kind === 'fact') return this.#takeFacts(list);
    if (kind === 'setting') return this.#takeSettings(list);
    return this.#takeUnread(list);
  }

  /** @param {Parameters<typeof whole.putAll>[0]} records */
  async #write(records) {
    const some = Object.entries(records).filter(([, list]) => list?.length);
    if (this.#keep && some.length) await whole.putAll(Object.fromEntries(some));
  }

  /** @param {Incoming[]} list */
  async #takeSettings(list) {
    for (const { value } of list) {
      const { key } = value;
      if (ofThisPhone(key) || this.#set.has(key)) continue;
      this.#set.add(key);
      const counts = this.tally.of('settings');
      counts.held++;
      if (this.#settings.has(key)) continue;
      counts.added++;
      if (this.#keep) await saveSetting(key, value.value);
    }
  }

  /** @param {Incoming[]} list */
  async #takeCards(list) {
    this.#cards ??= await CardsIn.open();
    const taken = await this.#cards.take(list.map(({ value }) => value));
    const counts = this.tally.of('cards');
    const cards = [];
    const aside = [];
    for (const [n, { again, why, record, beside }] of taken.entries()) {
      if (again) continue;
      counts.held++;
      if (why) aside.push(...this.#unread({ incoming: list[n], why }));
      if (!record) continue;
      counts[beside ? 'beside' : 'added']++;
      cards.push(record);
    }
    await this.#write({ cards, aside });
  }

  /** @param {Incoming[]} list */
  async #takePhotos(list) {
    const counts = this.tally.of('photos');
    const photos = [];
    for (const { value } of list) {
      const { again, picture, beside } = await this.#photos.take(value);
      await this.#pace.breathe();
      if (again) continue;
      counts.held++;
      if (!picture) continue;
      counts[beside ? 'beside' : 'added']++;
      photos.push(picture);
    }
    await this.#write({ photos });
  }

  /** @param {Incoming[]} list */
  async #takeFacts(list) {
    const taken = await this.#facts.take(list);
    const counts = this.tally.of('facts');
    counts.held += taken.held;
    counts.added += taken.added;
    counts.beside += taken.differing;
    const aside = taken.unread.flatMap((each) => this.#unread(each));
    await this.#write({ facts: taken.facts, beside: taken.beside, aside });
  }

  /** @param {Group[]} groups */
  async #takeJobs(groups) {
    const taken = await this.#jobs.take(groups);
    /** @type {Required<Pick<Parameters<typeof whole.putAll>[0], 'jobs' | 'bundles' | 'events' | 'beside' | 'aside'>>} */
    const puts = { jobs: [], bundles: [], events: [], beside: [], aside: [] };
    for (const job of taken) {
      this.#count(job);
      put(puts, job);
      for (const { incoming, why } of job.unread)
        puts.aside.push(...this.#unread({ incoming, why, of: job.record ?? job.here.record }));
    }
    await this.#write(puts);
  }

  /** @param {Taken} taken */
  #count({ here, record, fresh, held }) {
    const [jobs, events] = [this.tally.of('jobs'), this.tally.of('events')];
    jobs.held += held.jobs;
    events.held += held.events;
    if (!record) return;
    const variants = fresh.beside.filter(({ kind }) => kind === 'job').length;
    if (!here.record) jobs.added++;
    jobs.beside += variants;
    events.added += fresh.events.length;
    events.beside += fresh.beside.length - variants;
    if (here.record && fresh.events.length) this.tally.grown++;
  }

  /** @param {{ incoming: Incoming, why: Finding }[]} list */
  async #takeUnread(list) {
    const aside = [];
    for (const { incoming, why } of list) {
      const rows = this.#unread({ incoming, why });
      if (rows.length) this.tally.of(`${incoming.kind}s`).held++;
      aside.push(...rows);
    }
    await this.#write({ aside });
  }

  /**
   * Tells of a record that can't be read, once; what is to be kept aside of it.
   *
   * @param {{ incoming: Incoming, why: Finding, of?: { name: string } }} record
   */
  #unread({ incoming, why, of }) {
    const { kind, value, text } = incoming;
    const row = asideOf({ kind, text, why, from: this.#made });
    if (this.#aside.has(row.key)) this.#still.add(row.key);
    if (incoming.here || this.#told.has(row.key)) return [];
    this.#told.add(row.key);
    const isNew = !this.#aside.has(row.key);
    this.tally.tell({ kind, ...named(kind, value, of), why }, isNew);
    if (!isNew) return [];
    this.#letters += row.text.length;
    if (this.#letters > bounds.unread || this.#aside.size + this.#told.size > bounds.aside)
      throw new Fault('restore.too-much-unread');
    return [row];
  }

  /** Takes away what lay aside and could be read now. */
  async #dropAside() {
    const gone = [...this.#aside.keys()].filter((key) => !this.#still.has(key));
    if (gone.length) await whole.dropAside(gone);
  }
}

/** What is written of a job. */
function put(puts, { id, here, record, fresh, summary }) {
  if (!record || !fresh.from.length) return;
  puts.jobs.push({ ...record, summary: summary ?? here.record?.summary ?? {} });
  if (here.events.length) for (const event of fresh.events) puts.events.push({ ...event, job: id });
  else if (fresh.events.length) puts.bundles.push({ job: id, events: fresh.events });
  puts.beside.push(...fresh.beside);
}
