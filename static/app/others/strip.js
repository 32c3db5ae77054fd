import { html, nothing, render } from 'lit-html';
import { hush } from '../phone/bell.js';
import { address } from '../ui/address.js';
import { icon } from '../ui/icon.js';
import { short } from '../ui/lists.js';
import { hasWord, t } from '../words/catalogue.js';
import { day, when } from '../words/dates.js';
import { digits, left } from './countdown.js';

/** @import { JobTimer } from '../core/core.d.ts' */
/** @import { LogLine } from '../store/records.d.ts' */

/**
 * What is on a screen of a job: the job, the way to what is shown of it, and the step, if it
 * is one.
 *
 * @typedef {{ job: string, way: string[], step?: string }} Shown
 */

/**
 * A line of the strip.
 *
 * @typedef {object} Line
 * @property {string} href
 * @property {string} name
 * @property {string} about
 * @property {JobTimer} [timer] the one that ends first, or has ended
 */

/** When its timer ends, for sorting: what has none comes last. */
const ends = (/** @type {Line} */ { timer }) => (timer ? left(timer) : Infinity);

const firstOf = (/** @type {JobTimer[]} */ timers) =>
  timers.length ? timers.reduce((a, b) => (left(b) < left(a) ? b : a)) : undefined;

/**
 * The strip above every screen: of the timers of the other steps and of the other open jobs
 * the most urgent, and how many more there are. More would take too much of the screen that
 * one works at.
 */
export class Strip {
  /** @type {Map<string, string[]>} job -> the way to what was shown of it last */
  #ways = new Map();
  #job = ''; // shown last
  #left;

  /** @param {(ways: { [job: string]: string[] }) => void} left hears the ways, once a job was left for another */
  constructor(left) {
    this.#left = left;
  }

  /**
   * Takes the ways that an earlier page knew.
   *
   * @param {{ [job: string]: string[] }} ways
   */
  remember(ways) {
    for (const [job, way] of Object.entries(ways))
      if (!this.#ways.has(job)) this.#ways.set(job, way);
  }

  /**
   * Draws it. On the first screen the open jobs stand by themselves: there it says only
   * what has ended. On one that others take a picture of (`pictured`) it says nothing: a
   * name may hold a plate.
   *
   * @param {LogLine[]} jobs those that are not over
   * @param {any} screen that is shown
   */
  draw(jobs, screen) {
    const root = document.getElementById('others');
    if (!root || !hasWord('timer.over')) return;
    /** @type {Shown | undefined} */
    const shown = screen?.shows?.();
    if (shown) this.#show(shown, jobs);
    const all = this.#lines(jobs, shown);
    const few = screen?.name === 'bikes' ? all.filter((line) => ends(line) <= 0) : all;
    const lines = screen?.pictured ? [] : few;
    render(lines.length ? strip(lines) : nothing, root);
  }

  /**
   * Notes what is shown of a job. Where another was left for it, of all that are open it is
   * told, so that the phone may die meanwhile.
   *
   * @param {Shown} shown
   * @param {LogLine[]} jobs
   */
  #show({ job, way }, jobs) {
    this.#ways.set(job, way);
    if (job === this.#job) return;
    this.#job = job;
    const open = [...this.#ways].filter(([id]) => jobs.some((one) => one.id === id));
    if (open.length > 1) this.#left(Object.fromEntries(open));
  }

  /**
   * @param {LogLine[]} jobs
   * @param {Shown | undefined} shown
   * @returns {Line[]} what has ended first, then by what is left, then the job begun last
   */
  #lines(jobs, shown) {
    const alike = (/** @type {LogLine} */ { id, name }) =>
      jobs.filter((job) => job.id !== id && job.name === name);
    const own = jobs.filter(({ id }) => id === shown?.job).flatMap((job) => this.#own(job, shown));
    const others = jobs
      .filter(({ id }) => id !== shown?.job)
      .sort((a, b) => (a.started < b.started ? 1 : -1))
      .map((job) => this.#other(job, alike(job)));
    return [...own, ...others].sort((a, b) => ends(a) - ends(b) || 0); // none less none is no number
  }

  /**
   * Another job: the way leads to what was shown of it last, else to the step whose timer runs.
   *
   * @param {LogLine} job
   * @param {LogLine[]} alike others that bear its name: it is told from them by when it was begun
   * @returns {Line}
   */
  #other({ id, name, started, summary: { stage, timers = [] } }, alike) {
    const timer = firstOf(timers);
    const way = this.#ways.get(id) ?? (timer?.step ? ['step', timer.step] : []);
    const begun = alike.some((job) => day(job.started) === day(started))
      ? when(started)
      : day(started);
    const at = hasWord(`stage.${stage}`) ? t(`stage.${stage}`) : '';
    return { href: address('job', id, ...way), name, about: alike.length ? begun : at, timer };
  }

  /**
   * The timers of the steps that are not shown.
   *
   * @param {LogLine} job
   * @param {Shown | undefined} shown
   * @returns {Line[]}
   */
  #own({ id, summary: { timers = [] } }, shown) {
    return timers
      .filter(({ step }) => step !== shown?.step)
      .map((timer) => ({
        href: address('job', id, 'step', timer.step ?? ''),
        name: t(`timer.${timer.what}`),
        about: '',
        timer,
      }));
  }
}

const strip = (/** @type {Line[]} */ lines) =>
  html`<nav class="others" aria-label=${t('bikes.open-jobs')}>
    ${line(lines[0])}
    ${
      lines.length > 1
        ? html`<a class="more" href=${address('bikes')}
            >${t('others.more', { count: lines.length - 1 })}</a
          >`
        : nothing
    }
  </nav>`;

/** One tap leads there, and the bell is still: it was heard. What has ended is told until it is answered. */
function line(/** @type {Line} */ { href, name, about, timer }) {
  const ms = timer ? left(timer) : 0;
  const over = Boolean(timer) && ms <= 0;
  return html`<a href=${href} data-over=${over} @click=${() => over && hush()}>
    <span class="name">
      <strong>${short(name)}</strong>
      ${about ? html`<small>${about}</small>` : nothing}
    </span>
    ${timer && !over ? html`<span class="told digits">${digits(ms)}</span>` : nothing}
    ${over ? html`<span class="told">${icon('bell')} ${t('timer.over')}</span>` : nothing}
  </a>`;
}
