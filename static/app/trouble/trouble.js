import { html } from 'lit-html';
import { aidLinks } from '../aid/links.js';
import { call } from '../core/client.js';
import { file } from '../site/data.js';
import { Drafts, draftsWritten, jobScope, watchDrafts } from '../store/drafts.js';
import { Job } from '../store/job.js';
import { loadWordsOf, t } from '../words/catalogue.js';
import { answer } from './answer.js';
import { Beside } from './beside.js';
import { readState, troubleAt } from './address.js';
import { TroubleList } from './list.js';
import { FromJob } from '../still-open/from-job.js';
import { own } from '../site/own.js';

/** @import { Answer, Event, FaultAnswer } from '../core/core.d.ts' */

/**
 * Something is wrong: "#/trouble" has the doors, "#/trouble?door=DOOR" what is behind one,
 * "#/trouble/ID" says what to do about a problem. What was answered, what is at hand and
 * the job and step that one comes from go with it (address.js).
 */
export async function trouble(parts, app) {
  const [table] = await Promise.all([file('faults.json'), loadWordsOf('faults')]);
  const problem = new Trouble(table, app);
  await problem.move(parts);
  const screen = { name: 'trouble', tab: 'bikes', title: t('trouble.title') };
  screen.holds = () => true;
  screen.move = (to) => problem.move(to);
  screen.draw = () => problem.draw();
  screen.close = watchDrafts(() => app.redraw());
  return screen;
}

/** What of an address makes another list of it. @type {('door' | 'bike' | 'job' | 'step')[]} */
const where = ['door', 'bike', 'job', 'step'];

/** A problem on the screen, or the list of them. */
export class Trouble {
  fault; // undefined for the list
  /** @type {import('./address.js').TroubleState} */
  state = {};
  /** @type {Answer<FaultAnswer> | null} */
  verdict = null;
  kept = false; // whether it was kept in the job as it stands
  #ticket = 0;
  /** @type {Drafts | undefined} those of the job one comes from */
  #drafts;
  #answered = false; // here, and not just by the address
  #open;

  constructor(table, app) {
    this.table = table;
    this.app = app;
    this.beside = new Beside(table, app);
    this.#open = new FromJob(app, () => this.#besideBike());
    this.list = new TroubleList(
      table,
      {
        problem: (id) => troubleAt(id, { ...this.#from(), door: this.#door }),
        door: (door) => troubleAt('', { ...this.#from(), door }),
      },
      app,
    );
  }

  /** Turns to an address; true when another problem, door, or the list, is shown. */
  move(parts) {
    const [first = '', second = ''] = parts;
    const id = /^[?{]/.test(first) ? '' : first;
    const before = this.state;
    this.state = readState(id ? second : first);
    const turned = where.some((name) => own(before, name) !== own(this.state, name));
    const other = this.id !== id || (!id && turned);
    if (other) this.#answered = false;
    if (other) this.list.typed = '';
    this.id = id;
    this.fault = this.table.faults.find((f) => f.id === id);
    this.kept = false;
    this.#recall();
    this.#open.turn(this.state.job);
    if (other) this.verdict = null;
    if (other) this.beside.leave();
    if (this.fault) this.#judge();
    this.#besideBike();
    return other;
  }

  /** Asks what one needs beside the bike, once it is known which it is. */
  #besideBike() {
    const { fault, state } = this;
    if (fault || this.#door) this.beside.turn({ fault, state, job: this.#open.job });
  }

  /** The field of this problem in the drafts of the job one comes from. */
  get #field() {
    return `problem-${this.id}`;
  }

  /** Takes up what was answered here before, in the job that one comes from, and not kept. */
  async #recall() {
    const { job, answers, hand, step, door } = this.state;
    const id = this.id;
    if (!job || !this.fault) return;
    this.#drafts = await Drafts.open(jobScope(job));
    if (id !== this.id) return;
    const before = Object(this.#drafts.get(this.#field));
    if (!answers && !hand && (before.answers || before.hand))
      location.replace(
        troubleAt(id, {
          ...{ job, door },
          step: step ?? before.step,
          answers: before.answers,
          hand: before.hand,
        }),
      );
    else if (this.#answered) this.#drafts.put(this.#field, { answers, hand, step });
    this.app.redraw();
  }

  /** Whether what was answered is written down, and not kept in the job. */
  get standing() {
    if (this.kept || this.#drafts?.get(this.#field) === undefined) return '';
    return draftsWritten() ? 'written' : 'pending';
  }

  async #judge() {
    const ticket = ++this.#ticket;
    const { answers, hand } = this.state;
    const table = { ...this.table, faults: [this.fault] };
    const verdict = await call('fault', { table, id: this.id, answers, hand });
    if (ticket !== this.#ticket) return;
    this.verdict = verdict;
    this.app.redraw();
  }

  #from() {
    const { job, step, bike } = this.state;
    return { job, step, bike };
  }

  /** The door behind which one looks, if there is such a one. */
  get #door() {
    return this.list.has(this.state.door) ? this.state.door : undefined;
  }

  /** The step that one comes from, as the list asks for it. */
  get #at() {
    const { job, step } = this.state;
    const at = job && step ? this.#open.job?.step(step) : undefined;
    if (!at?.word) return undefined;
    return { word: at.word.replace('step.', ''), title: t(at.word, at.values) };
  }

  /** Answers a question: Back takes a first answer away, and not each change of mind. */
  answer(question, value) {
    const { answers = {} } = this.state;
    this.#turn(
      { ...this.state, answers: { ...answers, [question]: value } },
      own(answers, question),
    );
  }

  /** Says what is at hand. */
  have(thing, on) {
    const { hand = [] } = this.state;
    const others = hand.filter((h) => h !== thing);
    this.#turn({ ...this.state, hand: on ? [...others, thing] : others }, true);
  }

  #turn(state, inPlace) {
    this.#answered = true;
    const to = troubleAt(this.id, state);
    if (inPlace) location.replace(to);
    else location.hash = to;
  }

  /** Adds what follows to the job one comes from. */
  async addToJob() {
    const { job: id, step, answers = {}, hand = [] } = this.state;
    const { outcome } = this.verdict?.ok ?? {};
    const signs = hand.length ? { ...answers, hand: hand.join(' ') } : answers;
    /** @type {Event} */
    const event = { kind: 'problem', step, what: this.id, value: outcome, signs };
    const found = await this.app.attempt(
      async () => /** @type {Job} */ (await Job.open(id ?? '')).add(event, undefined, this.#keys()),
      'job.not-saved',
    );
    this.kept = Boolean(found) && !found?.some((f) => f.grade === 'refuse');
    if (this.kept) this.#drafts?.drop(this.#field);
    this.app.say(this.kept ? t('trouble.kept') : '');
  }

  #keys = () => (this.#drafts ? [this.#drafts.key(this.#field)] : []);

  draw() {
    const open = this.#open.draw(this.state.step);
    if (this.fault) return html`${open}${answer(this)}`;
    const door = this.#door;
    if (door)
      return html`${open}
        <header class="bar">
          <a class="all" href=${troubleAt('', this.#from())}>${t('trouble.doors')}</a>
        </header>
        <h1 tabindex="-1">${t(`fault-door.${door}`)}</h1>
        ${this.beside.levels(true)} ${this.list.draw({ door })}`;
    return html`${open}
      <h1 tabindex="-1">${t('trouble.title')}</h1>
      <p>${t(this.id ? 'trouble.unknown' : 'trouble.intro')}</p>
      ${this.list.draw({ at: this.#at })} ${aidLinks(this.#from())}`;
  }
}
