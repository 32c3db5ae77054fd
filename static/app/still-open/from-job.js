import { nothing } from 'lit-html';
import { Job } from '../store/job.js';
import { stillOpen } from './strip.js';

/** What is open in the job that one comes from to another screen, for that screen to draw. */
export class FromJob {
  #app;
  #id = '';
  /** @type {Job | undefined} */
  #job;

  #opened;

  /**
   * @param {{ redraw(): void }} app
   * @param {() => void} [opened] told when it is open
   */
  constructor(app, opened = () => {}) {
    this.#app = app;
    this.#opened = opened;
  }

  /**
   * Turns to a job, by its id; undefined for none.
   *
   * @param {string} [id]
   */
  async turn(id = '') {
    if (id === this.#id) return;
    this.#id = id;
    this.#job = undefined;
    const job = id ? await Job.open(id).catch(() => undefined) : undefined; // it is a help
    if (id !== this.#id) return;
    this.#job = job;
    if (job) this.#opened();
    this.#app.redraw();
  }

  /** The job that one comes from, once it is open. */
  get job() {
    return this.#job;
  }

  /** @param {string} [step] the one that one comes from */
  draw = (step) => (this.#job ? stillOpen(this.#job, step) : nothing);
}
