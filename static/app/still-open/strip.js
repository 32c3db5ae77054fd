import { html, nothing } from 'lit-html';
import { address } from '../ui/address.js';
import { t } from '../words/catalogue.js';
import { warning } from '../ui/findings.js';

/** @import { OpenPlace } from '../core/core.d.ts' */
/** @import { Job } from '../store/job.js' */

/**
 * What is open in a job, on any screen of it until it is closed: a line that opens, and
 * a caution with all of it at a step that is in danger by it.
 *
 * @param {Job} job
 * @param {string} [step] the one that is shown
 */
export function stillOpen(job, step = '') {
  const { open = [], openAt = [] } = job.state ?? {};
  const [first] = open;
  if (!first) return nothing;
  const list = html`<details class="still-open">
    <summary>${t('open.line', { count: open.length, first: piece(first) })}</summary>
    <ul>
      ${open.map((place) => html`<li>${line(job, place)}</li>`)}
    </ul>
  </details>`;
  const warn = openAt.find((at) => at.step === step);
  if (!warn) return list;
  return html`<section class="still-open" aria-label=${t('open.title')}>
    ${warning(warn)} ${open.length > 1 ? list : line(job, first)}
  </section>`;
}

/** @param {OpenPlace} open */
export const piece = ({ purpose, place, count }) =>
  t(place ? 'open.at' : 'open.piece', { count, purpose: `@${purpose}`, place });

/**
 * @param {Job} job
 * @param {OpenPlace} place
 */
function line(job, place) {
  const step = job.step(place.step ?? '');
  return step
    ? html`<a class="closes" href=${address('job', job.record.id, 'step', step.id)}
        ><span>${piece(place)}</span> <strong>${t(step.word, step.values)}</strong></a
      >`
    : html`<p>${piece(place)} <small>${t('open.no-step')}</small></p>`;
}
