import { Drafts } from '../drafts.js';
import { address, go } from '../router.js';
import { t } from '../words.js';
import { nextAfter } from './moves.js';
import { watchTimers } from './timers.js';

/** What a person can do to a job that is on the screen, one thing at a time. */
export class Control {
  awake = ''; // what keeps the screen on
  hands; // reads aloud and listens
  told = null; // {event, findings}: what was just entered, and what was found about it
  typed = new Map(); // what stands in fields and is not kept yet: field -> event
  forms = null; // the fields of a look
  look = null; // the one on the screen
  view; // undefined for one step, or 'steps'
  stepId; // of the step shown; undefined for the next one
  #before = Promise.resolve(); // what is being kept: one thing after the other

  constructor(work, app) {
    this.work = work;
    this.app = app;
    this.drafts = new Drafts(work.record.id);
  }

  /** Reports whether an address is one of this job. */
  holds([id]) {
    return id === this.work.record.id;
  }

  /** Turns to the part of the job that an address names; false if it is there already. */
  move([, view, stepId]) {
    if (this.view === view && this.stepId === stepId) return false;
    this.hands?.turn();
    this.told = null;
    this.typed.clear();
    this.look = null;
    this.view = view;
    this.stepId = stepId;
    return true;
  }

  /** Keeps an event once those before it are; one that `needless` says is no longer called for is not. */
  #keep(event, needless = () => false, photo = undefined) {
    const kept = this.#before.then(() => needless() || this.#put(event, photo));
    this.#before = kept;
    return kept;
  }

  async #put(event, photo) {
    const found = await this.app.keep(() => this.work.add(event, photo), 'job.not-saved');
    this.told = found ? { event, findings: found } : null;
    watchTimers(this.work, this.app);
    return Boolean(found) && !found.some((f) => f.grade === 'refuse');
  }

  /** Adds an event and says so; resolves to whether it was kept. */
  async add(event, said, photo) {
    const kept = await this.#keep(event, undefined, photo);
    this.app.say(kept ? said : '');
    return kept;
  }

  /** Notes what stands in a field, so that it is kept with the step at the latest. */
  type(field, event, content) {
    if (content.trim()) {
      this.typed.set(field, event);
      this.drafts.put(field.id, content);
    } else this.#forget(field);
  }

  /** Puts back what stood in a field when its screen was left. */
  restore(field, event) {
    const content = this.drafts.get(field.id);
    if (!content || this.typed.has(field)) return;
    field.value = content;
    this.typed.set(field, event);
  }

  #forget(field) {
    this.typed.delete(field);
    this.drafts.drop(field.id);
  }

  /** Keeps what a field holds, and empties it; else leaves it as it is. */
  async keepTyped(field, event, said) {
    if (!(await this.add(event, said))) {
      field.focus();
      (field.form ?? field).scrollIntoView({ block: 'center' });
      return;
    }
    this.#forget(field);
    field.value = '';
  }

  /** Keeps what was typed, marks the step as done and goes on. */
  async done(step) {
    for (const [field, event] of [...this.typed]) {
      await this.keepTyped(field, event(), '');
      if (this.typed.has(field)) return;
    }
    const already = () => this.work.isDone(step.id);
    if (await this.#keep({ kind: 'done', step: step.id }, already)) this.forward(step);
    else this.app.redraw();
  }

  /** What was found about the last event, if that is what `holds` says. */
  toldAbout(holds) {
    return this.told && holds(this.told.event) ? this.told.findings : [];
  }

  /** Takes the last event back and shows its step. */
  async undo() {
    const { lastID } = this.work.state;
    const step = this.work.events.find((e) => e.id === lastID)?.step;
    const undone = await this.#keep({ kind: 'undo', of: lastID });
    if (undone && step) this.show(step);
    this.app.say(undone ? t('job.undone') : '');
  }

  /** Takes one event back, whatever came after it. */
  async takeBack(id) {
    const undone = await this.#keep({ kind: 'undo', of: id });
    this.app.say(undone ? t('job.undone') : '');
  }

  /** On to the step behind this one that is not done, or to the next open one. */
  forward(step) {
    this.show(nextAfter(this.work, step));
  }

  /** Shows a step, at once: a second tap must not meet the one before. */
  show(stepId) {
    const { id } = this.work.record;
    const parts = stepId ? ['job', id, 'step', stepId] : ['job', id];
    this.move(parts.slice(1));
    this.app.arrive();
    if (location.hash !== address(...parts)) go(...parts);
  }

  /** Closes the job. */
  async finish() {
    if (await this.#keep({ kind: 'finish' })) go('record', this.work.record.id);
    else this.app.redraw();
  }
}
