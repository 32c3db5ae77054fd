import { html, nothing } from 'lit-html';
import { digits, left } from '../others/countdown.js';
import { own } from '../site/own.js';
import { address } from '../ui/address.js';
import { short } from '../ui/lists.js';
import { hasWord, t } from '../words/catalogue.js';
import { when } from '../words/dates.js';

/** @import { LogLine } from '../store/records.d.ts' */

const most = 3; // that stand before the bikes

// What is to be done about a job, by how far it has come. A bike that is not to be
// ridden is not looked at after a ride.
const words = { open: 'bikes.resume', waiting: 'bikes.look-again' };

/** @param {LogLine['summary']} summary */
const nextOf = ({ phase, stop }) =>
  stop && phase === 'waiting' ? 'bikes.stopped' : (own(words, phase) ?? '');

/**
 * The jobs that are not over, on the first screen.
 *
 * @param {LogLine[]} open the one begun last comes first
 */
export function openJobs(open) {
  if (!open.length) return nothing;
  const names = open.map(({ name }) => name);
  return html`<section class="open-jobs" aria-label=${t('bikes.open-jobs')}>
    ${open.slice(0, most).map(
      (job) =>
        html`<a class="resume" href=${address('job', job.id)}
          ><span
            ><strong>${t(nextOf(job.summary))}: ${short(job.name)}</strong>
            <span
              >${about(job, names.filter((name) => name === job.name).length > 1).join(' · ')}</span
            ></span
          >
          ${time(job)}</a
        >`,
    )}
    ${
      open.length > most
        ? html`<p>
            <a class="button quiet" href=${address('record')}
              >${t('bikes.more-jobs', { count: open.length - most })}</a
            >
          </p>`
        : nothing
    }
  </section>`;
}

/**
 * When it was begun, where another bears its name or no more is known; its stage; how far it is.
 *
 * @param {LogLine} job
 * @param {boolean} alike
 */
function about({ started, summary: { stage, steps, done = 0 } }, alike) {
  const at = `stage.${stage}`;
  return [
    (alike || !steps) && t('bikes.begun', { date: when(started) }),
    hasWord(at) && t(at),
    steps && t('bikes.progress', { done, count: steps }),
  ].filter(Boolean);
}

/**
 * The time that is left of its timers.
 *
 * @param {LogLine} job
 */
function time({ summary: { timers } }) {
  if (!Array.isArray(timers) || !timers.length) return nothing; // a file may say anything
  const ms = Math.min(...timers.map((timer) => left(timer)));
  if (ms > 0) return html`<span class="value" role="timer">${digits(ms)}</span>`;
  return hasWord('timer.over') ? html`<strong>${t('timer.over')}</strong>` : nothing;
}
