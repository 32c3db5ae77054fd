import { lineOfJob } from '../store/of-bike.js';
import { log, saveSetting, setting } from '../store/store.js';
import { watchJobs } from '../store/windows.js';
import { hasWord, loadWordsOf, t } from '../words/catalogue.js';
import { alarm } from './alarm.js';
import { Strip } from './strip.js';

/** @import { JobTimer, State } from '../core/core.d.ts' */
/** @import { JobRecord, LogLine } from '../store/records.d.ts' */

/** The timers of a line. A file may say anything. */
const timersOf = (/** @type {LogLine} */ { summary }) =>
  Array.isArray(summary.timers) ? summary.timers : [];

/**
 * The jobs of this phone that are not over: their timers are watched and rung, and a strip
 * tells of them, whichever screen is shown and whichever window they were changed in.
 */
class OpenJobs {
  /** @type {Map<string, LogLine>} */
  #lines = new Map();
  // A way that can't be kept leads to where the job stands.
  #strip = new Strip((ways) => void saveSetting('ways', ways).catch(() => {}));
  /** @type {any} */
  #app;
  #before = Promise.resolve(); // reads come one after the other: the last counts

  /** Begins to watch. */
  begin(app) {
    this.#app = app;
    app.beside = () => this.#draw();
    watchJobs((id) => this.#read(id));
    this.#before = setting('ways').then(
      (ways) => this.#strip.remember(ways ?? {}),
      () => {},
    );
    return this.#read();
  }

  /**
   * Hears what a job on the screen has come to: sooner than the store says it.
   *
   * @param {{ record: JobRecord, name: string, state?: State }} job
   */
  hear({ record, name, state }) {
    const { id, card, bike = card.id, started } = record;
    if (state) this.#take({ id, bike, name, started, summary: state.summary ?? {} });
    this.#draw();
  }

  /** Reads the line of a job anew; without an id, all. What can't be read now stays as it was. */
  #read(/** @type {string} */ id = '') {
    this.#before = this.#before.then(() => this.#reread(id)).catch(() => {});
    return this.#before;
  }

  async #reread(/** @type {string} */ id) {
    const lines = id ? [await lineOfJob(id)] : await log();
    const here = new Set(lines.map((line) => line?.id));
    for (const known of id ? [id] : [...this.#lines.keys()])
      if (!here.has(known)) this.#drop(known);
    for (const line of lines) if (line) this.#take(line);
    // What they are called, and what timers say, comes with the screens of a job.
    if (this.#lines.size && !hasWord('timer.over')) await loadWordsOf('hands');
    this.#draw();
  }

  #take(/** @type {LogLine} */ line) {
    const timers = timersOf(line);
    if (line.summary.phase !== 'open' && !timers.length) return this.#drop(line.id);
    this.#lines.set(line.id, line);
    alarm.follow(line.id, timers, {
      tick: () => this.#tick(line.id),
      soon: (timer) => this.#say('timer.minute', line, timer),
      over: (timer) => this.#say('timer.over.named', line, timer),
    });
  }

  #drop(/** @type {string} */ id) {
    this.#lines.delete(id);
    alarm.follow(id, [], undefined);
  }

  /** A second has passed: the strip alone is drawn, so that no form changes under somebody's fingers. */
  #tick(/** @type {string} */ id) {
    if (this.#app?.screen?.shows?.().job === id) this.#app.redraw();
    else this.#draw();
  }

  #say(/** @type {string} */ word, /** @type {LogLine} */ line, /** @type {JobTimer} */ timer) {
    const name = `@timer.${timer.what}`;
    const here = this.#app?.screen?.shows?.().job === line.id;
    this.#app?.say(t(word, { name: here ? name : t('timer.of-bike', { name, bike: line.name }) }));
  }

  #draw() {
    this.#strip.draw([...this.#lines.values()], this.#app?.screen);
  }
}

export const openJobs = new OpenJobs();
