import { call, core } from '../core/client.js';
import { lost } from './database.js';
import { keeping } from './drafts.js';
import { historyOf } from './history.js';
import { openJob, putBack, putSteps } from './kept-job.js';
import { lastOf } from './last-job.js';
import { lineWithBike } from './of-bike.js';
import { addEvent, addEvents, putJob } from './write-job.js';
import * as store from './store.js';
import { announce } from './windows.js';
import { loadWordsOf } from '../words/catalogue.js';
import { today } from '../words/dates.js';
import { inTurn } from '../site/in-turn.js';
import { newId } from '../site/new-id.js';

/** @import { Answer, Bench, Card, Event, Finding, Past, Plan, Stage, State, Told } from '../core/core.d.ts' */
/** @import { Beside, BikeRow, JobRecord, Picture } from './records.d.ts' */

/**
 * Starts a job: card, bench and steps are kept with it, so that neither a later card
 * nor a later version of the app changes anything.
 *
 * @param {Card} card
 * @param {Bench} bench
 * @param {string} [bike] id of its bike, unless it is that which the card implies
 * @param {Card} [raw] the card without the figures of the bike's own that lie over it
 */
export async function startJob(card, bench, bike = card.id, raw) {
  const steps = await stepsOf({ card, bench });
  const record = {
    id: newId(),
    name: `${card.make} ${card.model}`,
    started: new Date().toISOString(),
    card,
    bench,
    ...(bike !== card.id && { bike }),
    ...(raw && { raw }),
    ...(steps && { steps }),
    summary: {},
  };
  await putJob(record);
  announce(record.id);
  return record.id;
}

/**
 * The steps of the plan that a job would have today; undefined where there is none.
 *
 * @param {{ card: Card, bench: Bench }} job
 */
async function stepsOf({ card, bench }) {
  const { ok } = await call('plan', { card, bench });
  return ok?.steps?.map(({ id }) => id);
}

const mostKept = 200; // at a start: each is planned once in its life

/**
 * Notes the steps of the jobs under way that an earlier version began, while the plan
 * is still the one that it made: once with each version of the app.
 *
 * @param {string} version
 */
export async function keepSteps(version) {
  if ((await store.setting('planned')) === version) return;
  const lines = (await store.log()).filter(
    ({ planned, summary }) => !planned && summary.phase !== 'closed',
  );
  for (const { id } of lines.slice(0, mostKept)) {
    const record = await store.job(id);
    const steps = record && (record.steps ?? (await stepsOf(record)));
    if (steps) await putSteps(id, steps);
  }
  if (lines.length <= mostKept && core.state !== 'failed')
    await store.saveSetting('planned', version);
}

/** Called when the browser had taken away what a job on the screen still holds, and it was put back. */
export const writtenBack = { see: () => {} };

/** @type {Set<WeakRef<Job>>} the jobs that this page holds */
const held = new Set();
lost.add(() => {
  for (const ref of held) {
    const job = ref.deref();
    if (!job) held.delete(ref);
    else job.refresh().catch(() => {}); // the next entry tries again
  }
});

/** A job that is open on the screen: its record, plan, events and state. */
export class Job {
  /** @type {JobRecord} */
  record;
  /** @type {Plan | undefined} nothing where the core refused it: see findings */
  plan;
  /** @type {State | undefined} nothing where the core refused it: see findings */
  state;
  /** @type {(Event & { id: string })[]} */
  events = [];
  /** @type {Beside[]} other contents that came from elsewhere */
  beside = [];

  /** @type {unknown} names the last erasing of everything, when the job was opened */
  #erasure;

  /** @param {JobRecord} record */
  constructor(record) {
    this.record = record;
    this.name = record.name;
    held.add(new WeakRef(this));
  }

  /**
   * Opens a job; resolves to undefined when there is none of that id. One that the
   * core can't work out opens too: see `plain`.
   *
   * @param {string} id
   */
  static async open(id) {
    const { record, events, beside, erasure } = await openJob(id);
    if (!record) return undefined;
    const job = new Job(record);
    Object.assign(job, { events, beside });
    job.#erasure = erasure;
    await job.#keepSteps();
    await job.#named().catch(() => {}); // it has the name of its model then
    job.#last = await lastOf(record).catch(() => undefined); // it is a help
    const { card, bench, steps } = job.record;
    const [plan] = await Promise.all([
      call('plan', { card, bench, ...(steps && { steps }) }),
      job.#replay(job.events),
    ]);
    job.plan = plan.ok;
    if (job.state?.problems) await loadWordsOf('faults');
    job.findings = plan.findings ?? job.findings;
    return job;
  }

  /** @type {BikeRow | undefined} what is told of its bike */
  bike;
  /** id of its bike */
  bikeId = '';
  /** what its bike is called */
  name = '';

  async #named() {
    const [line, bike] = await lineWithBike(this.record);
    Object.assign(this, { bike, bikeId: line.bike, name: line.name });
  }

  /** A job under way that an earlier version began keeps the steps of today from now on. */
  async #keepSteps() {
    const { record } = this;
    if (record.steps || record.summary?.phase === 'closed') return;
    const steps = await stepsOf(record);
    if (!steps) return;
    await putSteps(record.id, steps);
    this.record = { ...record, steps };
  }

  /**
   * The findings that kept plan or state from being made; empty when all is well.
   *
   * @type {Finding[]}
   */
  findings = [];

  /** Whether the core can't work it out: then it is read as it stands, and takes notes and photos. */
  get plain() {
    return !this.plan || !this.state;
  }

  /** @type {Past | undefined} the last job on the same bike */
  #last;

  /**
   * Replays the events; the job goes on without its last one, should that be too large.
   *
   * @param {Event[]} events
   * @param {boolean} [adding] the last of them is about to be kept
   * @returns {Promise<Answer<State>>}
   */
  async #ask(events, adding = false) {
    const history = historyOf(this.record, events, this.beside);
    const answer = await call('replay', { ...history, adding, last: this.#last });
    if (answer.ok || !this.#last) return answer;
    this.#last = undefined;
    return this.#ask(events, adding);
  }

  /** What the core is told of it, by every operation that takes a job. */
  history() {
    return historyOf(this.record, this.events, this.beside);
  }

  /**
   * What the state would be with one more event; nothing is kept.
   *
   * @param {Event} event
   */
  async try(event) {
    return (await this.#ask([...this.events, this.#full(event)], true)).ok;
  }

  /**
   * An event as it is kept. Its place counts the events before it, whatever the
   * phone's clock says.
   *
   * @param {Event} event
   * @param {number} [nth] of those that are written in one go, from 1
   * @param {Date} [now]
   * @returns {Event & { id: string }}
   */
  #full(event, nth = 1, now = new Date()) {
    return {
      id: newId(),
      time: now.toISOString(),
      seq: this.events.length + nth,
      day: today(now),
      ...event,
    };
  }

  /** @param {Event[]} events */
  async #replay(events) {
    const answer = await this.#ask(events);
    if (answer.ok) this.state = answer.ok;
    else this.findings = answer.findings;
  }

  // Events are added, and those of other windows read, one at a time.
  #inTurn = inTurn();

  /** Reads what other windows added to this job; resolves to whether there was anything. */
  refresh() {
    return this.#inTurn(() => this.#reread());
  }

  /**
   * Takes in what is in the store and not here. What is here and no longer in the store
   * was taken away by the browser, and is put back; but not what was erased on purpose.
   */
  async #reread() {
    const kept = await openJob(this.record.id);
    if (kept.erasure !== this.#erasure) {
      globalThis.location?.reload(); // what this page remembers must not come back
      throw new Error('everything was erased');
    }
    const here = new Set(kept.events.map(({ id }) => id));
    const gone = this.events.filter(({ id }) => !here.has(id));
    if (!kept.record || gone.length) {
      const summary = this.state?.summary ?? this.record.summary;
      await putBack({ ...this.record, summary }, gone, this.beside);
      writtenBack.see();
    }
    const [events, beside] = [[...kept.events, ...gone], union(kept.beside, this.beside)];
    if (events.length === this.events.length && beside.length === this.beside.length) return false;
    Object.assign(this, { events, beside });
    await this.#replay(events);
    return true;
  }

  /**
   * Adds an event, unless the core refuses it, with its picture {what, blob, bytes}
   * if it has one; the drafts of these keys are what it holds. Resolves to the findings
   * about it; it is kept when none of them refuses. What is done already is not done
   * again, and what is being added already, by a second tap, is added once.
   *
   * @param {Event} event
   * @param {Pick<Picture, 'what' | 'blob' | 'bytes'>} [photo]
   * @param {string[]} [drafts]
   * @returns {Promise<Finding[]>}
   */
  add(event, photo, drafts = []) {
    const content = JSON.stringify(event);
    const adding = this.#adding.get(content);
    if (adding && !photo) return adding;
    const added = this.#inTurn(async () => {
      await this.#reread(); // another window may have added to the same job
      if (event.kind === 'done' && this.isDone(event.step ?? '')) return [];
      return this.plain ? this.#addPlain(event, photo, drafts) : this.#add(event, photo, drafts);
    }).finally(() => this.#adding.delete(content));
    this.#adding.set(content, added);
    return added;
  }

  /** @type {Map<string, Promise<Finding[]>>} what is being added, by its content */
  #adding = new Map();

  /**
   * @param {Event} event
   * @param {Pick<Picture, 'what' | 'blob' | 'bytes'> | undefined} photo
   * @param {string[]} drafts
   */
  async #add(event, photo, drafts) {
    const full = this.#full(event);
    const events = [...this.events, full];
    const answer = await this.#ask(events, true);
    const list = answer.ok ? (answer.ok.findings ?? []) : answer.findings;
    const own = answer.ok
      ? list.filter((f) => f.where.startsWith(`/events/${events.length - 1}`))
      : list;
    if (own.some((f) => f.grade === 'refuse')) return own;
    const state = answer.ok ?? this.state;
    await this.#keep({ ...this.record, summary: state?.summary }, full, photo, drafts);
    this.state = state; // only now: what the screen shows is kept
    return own;
  }

  /** @param {Stage | ''} stage */
  #asPage(stage) {
    return { ...this.history(), last: this.#last, stage: stage || null };
  }

  /**
   * The page of the job, or of a stage of it.
   *
   * @param {Stage | ''} stage '' for that of the whole job
   */
  async page(stage) {
    return (await call('job-page', this.#asPage(stage))).ok;
  }

  /**
   * Keeps what was filled in on a page, all of it or, where something is refused, nothing;
   * resolves to what was found about it.
   *
   * @param {Stage | ''} stage
   * @param {Told[]} told
   * @param {string[]} drafts
   * @returns {Promise<Finding[]>}
   */
  tell(stage, told, drafts) {
    return this.#inTurn(async () => {
      await this.#reread();
      const now = new Date();
      const { ok, findings = [] } = await call('tell-page', {
        ...this.#asPage(stage),
        told,
        now: now.toISOString(),
      });
      if (!ok) return findings;
      const { events = [], findings: found = [] } = ok;
      if (!events.length) return found;
      const full = events.map((event, n) => this.#full(event, n + 1, now));
      const { ok: state } = await this.#ask([...this.events, ...full]);
      const record = { ...this.record, summary: state?.summary ?? this.record.summary };
      await keeping(drafts, () => addEvents(record, full, drafts));
      this.record = record;
      this.events = [...this.events, ...full];
      if (state) this.state = state;
      announce(record.id);
      return found;
    });
  }

  /**
   * Adds to a job that the core can't work out: nothing can be said about it then.
   *
   * @param {Event} event
   * @param {Pick<Picture, 'what' | 'blob' | 'bytes'> | undefined} photo
   * @param {string[]} drafts
   * @returns {Promise<Finding[]>}
   */
  async #addPlain(event, photo, drafts) {
    if (!plain.has(event.kind ?? '')) return this.findings;
    await this.#keep(this.record, this.#full(event), photo, drafts);
    return [];
  }

  /**
   * @param {JobRecord} record
   * @param {Event & { id: string }} event
   * @param {Pick<Picture, 'what' | 'blob' | 'bytes'> | undefined} photo
   * @param {string[]} drafts
   */
  async #keep(record, event, photo, drafts) {
    await keeping(drafts, () => addEvent(record, event, photo, drafts));
    this.record = record;
    this.events = [...this.events, event];
    announce(record.id);
  }

  /** Takes the last undo back. */
  redo() {
    return this.add({ kind: 'undo', of: this.state?.redo });
  }

  /**
   * Decides which content of a disputed event counts.
   *
   * @param {string} id of the event
   * @param {string} digest of the content
   */
  choose(id, digest) {
    return this.add({ kind: 'choose', of: id, value: digest });
  }

  /**
   * The step of that id.
   *
   * @param {string} id
   */
  step(id) {
    return this.plan?.steps?.find((step) => step.id === id);
  }

  /**
   * Reports whether a step was done.
   *
   * @param {string} id
   */
  isDone(id) {
    return (this.state?.done ?? []).includes(id);
  }
}

/** What can be kept of a job that can't be worked out. */
const plain = new Set(['note', 'photo']);

/** @type {(a: Beside[], b: Beside[]) => Beside[]} */
const union = (a, b) => [...new Map([...a, ...b].map((o) => [o.kind + o.id + o.text, o])).values()];
