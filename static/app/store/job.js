import { call } from '../core/client.js';
import { lastOf } from './last-job.js';
import * as store from './store.js';
import { announce } from './windows.js';
import { loadWordsOf } from '../words/catalogue.js';

/** @import { Answer, Bench, Card, Event, Finding, Past, Plan, State } from '../core/core.d.ts' */
/** @import { JobRecord, Picture } from './records.d.ts' */

/**
 * Starts a job: card and bench are kept with it, so that a later card changes nothing.
 *
 * @param {Card} card
 * @param {Bench} bench
 */
export async function startJob(card, bench) {
  const record = {
    id: crypto.randomUUID(),
    name: `${card.make} ${card.model}`,
    started: new Date().toISOString(),
    card,
    bench,
    summary: {},
  };
  await store.putJob(record);
  return record.id;
}

/** A job that is open on the screen: its record, plan, events and state. */
export class Job {
  /** @type {JobRecord} */
  record;
  /** @type {Plan | undefined} nothing where the core refused it: see findings */
  plan;
  /** @type {State | undefined} nothing where the core refused it: see findings */
  state;
  /** @type {Event[]} */
  events = [];

  /** @param {JobRecord} record */
  constructor(record) {
    this.record = record;
  }

  /**
   * Opens a job; resolves to undefined when there is none of that id.
   *
   * @param {string} id
   */
  static async open(id) {
    const record = await store.job(id);
    if (!record) return undefined;
    const job = new Job(record);
    job.events = await store.events(id);
    job.#last = await lastOf(record);
    const { card, bench } = record;
    const [plan] = await Promise.all([call('plan', { card, bench }), job.#replay(job.events)]);
    job.plan = plan.ok;
    if (job.state?.problems) await loadWordsOf('faults');
    job.findings = plan.findings ?? job.findings;
    return job;
  }

  /**
   * The findings that kept plan or state from being made; empty when all is well.
   *
   * @type {Finding[]}
   */
  findings = [];

  /** @type {Past | undefined} the last job on the same bike */
  #last;

  /**
   * Replays the events; the job goes on without its last one, should that be too large.
   *
   * @param {Event[]} events
   * @returns {Promise<Answer<State>>}
   */
  async #ask(events) {
    const { card, bench } = this.record;
    const answer = await call('replay', { card, bench, events, last: this.#last });
    if (answer.ok || !this.#last) return answer;
    this.#last = undefined;
    return this.#ask(events);
  }

  /**
   * What the state would be with one more event; nothing is kept.
   *
   * @param {Event} event
   */
  async try(event) {
    return (await this.#ask([...this.events, this.#full(event)])).ok;
  }

  /**
   * @param {Event} event
   * @returns {Event & { id: string }}
   */
  #full(event) {
    return { id: crypto.randomUUID(), time: this.#now(), ...event };
  }

  /** @param {Event[]} events */
  async #replay(events) {
    const answer = await this.#ask(events);
    if (answer.ok) this.state = answer.ok;
    else this.findings = answer.findings;
    return answer;
  }

  // Events are added, and those of other windows read, one at a time.
  /** @type {Promise<unknown>} */
  #turn = Promise.resolve();

  /**
   * @template T
   * @param {() => Promise<T>} action
   * @returns {Promise<T>}
   */
  #inTurn(action) {
    const done = this.#turn.then(action);
    this.#turn = done.catch(() => {});
    return done;
  }

  /** Reads what other windows added to this job; resolves to whether there was anything. */
  refresh() {
    return this.#inTurn(async () => {
      const events = await store.events(this.record.id);
      if (events.length === this.events.length) return false; // events are never changed
      this.events = events;
      await this.#replay(events);
      return true;
    });
  }

  /**
   * Adds an event, unless the core refuses it, with its picture {what, blob, bytes}
   * if it has one. Resolves to the findings about it; it is kept when none of them
   * refuses.
   *
   * @param {Event} event
   * @param {Pick<Picture, 'what' | 'blob' | 'bytes'>} [photo]
   * @returns {Promise<Finding[]>}
   */
  add(event, photo) {
    return this.#inTurn(() => this.#add(event, photo));
  }

  /**
   * @param {Event} event
   * @param {Pick<Picture, 'what' | 'blob' | 'bytes'>} [photo]
   */
  async #add(event, photo) {
    // Another tab may have added to the same job.
    this.events = await store.events(this.record.id);
    const full = this.#full(event);
    const events = [...this.events, full];
    const before = this.state;
    const answer = await this.#replay(events);
    const list = answer.ok ? (answer.ok.findings ?? []) : answer.findings;
    const own = answer.ok
      ? list.filter((f) => f.where.startsWith(`/events/${events.length - 1}`))
      : list;
    if (own.some((f) => f.grade === 'refuse')) {
      this.state = before;
      return own;
    }
    try {
      await store.addEvent({ ...this.record, summary: this.state?.summary }, full, photo);
    } catch (error) {
      this.state = before;
      throw error;
    }
    this.events = events;
    announce(this.record.id);
    return own;
  }

  /** The time now, or just after the latest event: a phone's clock can be set back. */
  #now() {
    const times = this.events.map(({ time = '' }) => Date.parse(time) || 0);
    return new Date(Math.max(Date.now(), ...times.map((time) => time + 1))).toISOString();
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
