import { draftsWritten } from '../store/drafts.js';
import { address, go } from '../ui/address.js';
import { t } from '../words/catalogue.js';
import { nextAfter } from './moves.js';
import { openJobs } from '../others/open-jobs.js';
import { tallyField } from './tally.js';
import { unentered } from './unentered.js';

/** @import { Form } from '../core/core.d.ts' */

const meant = 400; // ms that something is on the screen before a finger that comes down on it means it

/** What a person can do to a job that is on the screen, one thing at a time. */
export class Control {
  awake = ''; // what keeps the screen on
  hands; // reads aloud and listens
  // What was just entered, and what was found about it.
  /** @type {{ event: any, findings: any[] } | null} */
  latest = null;
  typed = new Map(); // what stands in fields and is not kept yet: field -> event
  /** @type {Form | undefined} the fields of a look */
  forms;
  look = null; // the one on the screen
  visit; // of the customer, beside the job
  page = null; // the page of the job that is on the screen
  view; // undefined for one step, 'steps', 'page', or 'stage' with the stage as its id
  stepId; // of the step shown; undefined for the next one
  brake = false; // whether it is asked if somebody meant to go on without looking
  ready = false; // what is on the screen has stood there for long enough to be meant
  /** @type {boolean | undefined} whether it was so when the finger came down */
  down;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #settling;
  #braked = new Set(); // steps at which it was asked
  /** @type {Promise<unknown>} what is being saved: one thing after the other */
  #before = Promise.resolve();

  /**
   * @param {any} job
   * @param {any} app
   * @param {import('../store/drafts.js').Drafts} drafts
   */
  constructor(job, app, drafts) {
    this.job = job;
    this.app = app;
    this.drafts = drafts;
    this.#settle();
  }

  /** What the window is called: the step, or the view of the job, and the bike. */
  get title() {
    const { job, view, stepId } = this;
    return [this.#viewed(view, stepId), job.name].filter(Boolean).join(' · ');
  }

  #viewed(view, stepId) {
    if (view === 'steps') return t('job.all-steps');
    if (view === 'page') return t('page.title');
    if (view === 'stage') return t(`stage.${stepId}`);
    const step = this.job.step(stepId ?? this.job.state.next);
    return step ? t(step.word, step.values) : '';
  }

  /** What is on the screen, for what stands beside it: the job, the way to what is shown, and the step. */
  shows() {
    const { job, view, stepId } = this;
    const step = view === undefined || view === 'step' ? (stepId ?? job.state.next) : undefined;
    return { job: job.record.id, way: [view, stepId].filter(Boolean), step };
  }

  /** Reports whether an address is one of this job. */
  holds([id]) {
    return id === this.job.record.id;
  }

  /**
   * Turns to the view of the job that an address names; false if it is there already.
   *
   * @param {string[]} parts
   */
  move([, view, stepId]) {
    if (this.view === view && this.stepId === stepId) return false;
    this.hands?.turn();
    this.latest = null;
    this.typed.clear();
    this.look = null;
    this.page = null;
    this.view = view;
    this.stepId = stepId;
    this.brake = false;
    this.#settle();
    document.title = `${this.title} · ${t('app.name')}`;
    return true;
  }

  /** Something new is on the screen: a finger that is on its way meant what stood there before. */
  #settle() {
    this.ready = false;
    clearTimeout(this.#settling);
    this.#settling = setTimeout(() => {
      this.ready = true;
      this.app.redraw();
    }, meant);
  }

  /** Its screen is left. */
  close() {
    clearTimeout(this.#settling);
    this.hands.close();
  }

  /** Whether somebody is about to go on from a gate where nothing was looked at or written. */
  #unlooked(step) {
    return (
      Boolean(this.job.state.gates?.includes(step.id)) &&
      !this.typed.size &&
      !(step.tally && this.ticked(tallyField(step)).length)
    );
  }

  /** Back from the question to what is to be looked at. */
  lookFirst() {
    this.brake = false;
    this.#settle();
    this.app.redraw();
    const asked = document.querySelector('.tally,.look,.asks');
    const first = asked?.querySelector('input,select,textarea');
    first?.scrollIntoView({ block: 'center' });
    /** @type {HTMLElement | null} */ (first)?.focus({ preventScroll: true });
  }

  /**
   * Keeps an event once those before it are; one that `needless` says is no longer called for is not.
   *
   * @returns {Promise<boolean>} whether it was kept, or needless
   */
  #save(event, needless = () => false, photo = undefined, fields = []) {
    const kept = this.#before.then(() => needless() || this.#put(event, photo, fields));
    this.#before = kept;
    return kept;
  }

  async #put(event, photo, fields) {
    const keys = fields.map((field) => this.drafts.key(field));
    const found = await this.app.attempt(() => this.job.add(event, photo, keys), 'job.not-saved');
    this.latest = found ? { event, findings: found } : null;
    openJobs.hear(this.job);
    return Boolean(found) && !found.some((f) => f.grade === 'refuse');
  }

  /**
   * Keeps what was filled in on a page, and what stood in these fields with it; resolves to
   * what was found about it, undefined where the phone could not store it.
   */
  tell(stage, told, fields) {
    const keys = fields.map((field) => this.drafts.key(field));
    const kept = this.#before.then(() =>
      this.app.attempt(() => this.job.tell(stage, told, keys), 'job.not-saved'),
    );
    this.#before = kept.then(() => openJobs.hear(this.job));
    return kept;
  }

  /** Adds an event, which keeps what stood in these fields, and says so; resolves to whether it was kept. */
  async add(event, said, photo, fields = []) {
    const kept = await this.#save(event, undefined, photo, fields);
    this.app.say(kept ? said : '');
    return kept;
  }

  /** Notes what stands in a field: it is written down, and kept with the step at the latest. */
  type(field, event, content) {
    const before = this.standing(field.id);
    if (content.trim()) {
      this.typed.set(field, event);
      this.drafts.put(field.id, content);
    } else this.#forget(field);
    if (before !== this.standing(field.id)) this.app.redraw();
  }

  /** Puts back what stood in a field when its screen was left, or the browser died. */
  restore(field, event) {
    const content = this.drafts.get(field.id);
    if (typeof content !== 'string' || this.typed.has(field)) return;
    field.value = content;
    this.typed.set(field, event);
    const folded = field.closest?.('details');
    if (folded) folded.open = true;
  }

  /**
   * What is said of a field beside it.
   *
   * @param {string} name
   * @returns {import('../ui/draft-mark.js').Standing}
   */
  standing(name) {
    if (this.drafts.get(name) === undefined) return '';
    return draftsWritten() ? 'written' : 'pending';
  }

  /** The steps at which something stands in a field that is not entered: ids. */
  unentered() {
    return unentered(this.drafts.all(), this.job.plan.steps);
  }

  /** Which things are ticked in that field: their numbers, as texts. */
  ticked(name) {
    const list = this.drafts.get(name);
    return Array.isArray(list) ? list : [];
  }

  /** Ticks a thing in that field, or takes the tick away; it is written down, and goes when the step is done. */
  tick(name, id, on) {
    const others = this.ticked(name).filter((other) => other !== id);
    const list = on ? [...others, id] : others;
    if (list.length) this.drafts.put(name, list);
    else this.drafts.drop(name);
    this.app.redraw();
  }

  #forget(field) {
    this.typed.delete(field);
    this.drafts.drop(field.id);
  }

  /** What is just being kept: field -> {value, saved}. */
  #saving = new Map();

  /**
   * Keeps what a field holds, and empties it; else leaves it as it is. What is being kept
   * already is not kept once more, however soon the next tap comes.
   */
  saveTyped(field, event, said) {
    const before = this.#saving.get(field);
    if (before?.value === field.value) return before.saved;
    const saving = { value: field.value, saved: this.#saveTyped(field, event, said) };
    this.#saving.set(field, saving);
    return saving.saved.finally(() => {
      if (this.#saving.get(field) === saving) this.#saving.delete(field);
    });
  }

  async #saveTyped(field, event, said) {
    const kept = field.value;
    if (!(await this.add(event, said, undefined, [field.id]))) {
      field.focus();
      (field.form ?? field).scrollIntoView({ block: 'center' });
      return;
    }
    if (field.value === kept) {
      this.#forget(field);
      field.value = '';
    } else this.drafts.put(field.id, field.value); // it was typed meanwhile
    this.app.redraw();
  }

  /**
   * Keeps what was typed, marks the step as done and goes on; at a gate at which nothing
   * was looked at it asks first, once.
   *
   * @param {any} step
   * @param {boolean} [anyway] the question was answered
   */
  async done(step, anyway = false) {
    const unlooked = this.#unlooked(step);
    if (unlooked && !anyway && !this.#braked.has(step.id)) {
      this.#braked.add(step.id);
      this.brake = true;
      this.#settle();
      this.app.redraw();
      /** @type {HTMLElement | null} */ (document.querySelector('.brake .main'))?.focus();
      return;
    }
    for (const [field, event] of [...this.typed]) {
      await this.saveTyped(field, event(), '');
      if (this.typed.has(field)) return;
    }
    const already = () => this.job.isDone(step.id);
    const fields = step.tally ? [tallyField(step)] : [];
    const event = { kind: 'done', step: step.id, ...(unlooked && { manner: 'unlooked' }) };
    if (await this.#save(event, already, undefined, fields)) this.forward(step);
    else this.app.redraw();
  }

  /** What was found about the last event, if that is what `holds` says. */
  findingsAbout(holds) {
    return this.latest && holds(this.latest.event) ? this.latest.findings : [];
  }

  /** Takes the last event back and shows its step. */
  async undo() {
    const { lastID } = this.job.state;
    const step = this.job.events.find((e) => e.id === lastID)?.step;
    const undone = await this.#save({ kind: 'undo', of: lastID });
    if (undone && this.job.step(step)) this.show(step);
    this.app.say(undone ? t('job.undone') : '');
  }

  /** Takes the last undo back, and shows the step of what counts again. */
  async redo() {
    const undone = this.job.events.find((e) => e.id === this.job.state.redo)?.of;
    const step = this.job.events.find((e) => e.id === undone)?.step;
    const again = await this.#save({ kind: 'undo', of: this.job.state.redo });
    if (again && this.job.step(step)) this.show(step);
    this.app.say(again ? t('job.redone') : '');
  }

  /** Takes one event back, whatever came after it. */
  async takeBack(id) {
    const undone = await this.#save({ kind: 'undo', of: id });
    this.app.say(undone ? t('job.undone') : '');
  }

  /** On to the step after this one that is not done, or to the next open one. */
  forward(step) {
    this.show(nextAfter(this.job, step));
  }

  /** Shows a step, at once: a second tap must not meet the one before. */
  show(stepId) {
    const { id } = this.job.record;
    const parts = stepId ? ['job', id, 'step', stepId] : ['job', id];
    this.move(parts.slice(1));
    this.app.arrive();
    if (location.hash !== address(...parts)) go(...parts);
  }

  /** Closes the job. */
  async finish() {
    if (await this.#save({ kind: 'finish' })) go('record', this.job.record.id);
    else this.app.redraw();
  }
}
