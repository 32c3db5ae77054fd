import { html, nothing } from 'lit-html';
import { line } from '../plain/entries.js';
import { t } from '../words/catalogue.js';

/** @import { Dispute, Variant } from '../core/core.d.ts' */
/** @import { WorkedOut } from '../plain/open.js' */

/**
 * The entries of which a file brought another content: all of them beside each other,
 * until the person says which counts.
 *
 * @param {WorkedOut} job
 * @param {any} app
 */
export const disputed = (job, app) =>
  html`<p>${t('dispute.how')}</p>
    ${job.state.disputed?.map((dispute) => one(dispute, job, app))}`;

/**
 * @param {Dispute} dispute
 * @param {WorkedOut} job
 * @param {any} app
 */
function one({ id, variants }, job, app) {
  const chosen = choiceOf(id, job);
  const after = async (/** @type {Promise<any>} */ change) => {
    const found = await app.attempt(() => change, 'job.not-saved');
    app.say(found && !found.length ? t('dispute.said') : '');
  };
  return html`<article class="dispute">
    <div class="variants">
      ${variants?.map((variant) => html`<div>${content(variant, job, () => after(job.choose(id, variant.digest)))}</div>`)}
    </div>
    ${
      chosen
        ? html`<button
            type="button"
            class="quiet"
            @click=${() => after(job.add({ kind: 'undo', of: chosen.id }))}
          >
            ${t('dispute.back')}
          </button>`
        : nothing
    }
  </article>`;
}

/**
 * @param {Variant} variant
 * @param {WorkedOut} job
 * @param {() => void} choose
 */
const content = ({ event, here, counts }, job, choose) =>
  html`<h3>${t(here ? 'dispute.here' : 'dispute.other')}</h3>
    ${line(event, job)}
    ${
      counts
        ? html`<p class="counts">✓ ${t('dispute.counts')}</p>`
        : html`<button type="button" class="quiet" @click=${choose}>${t('dispute.choose')}</button>`
    }`;

/**
 * The choice that was made last about an entry, unless it was taken back.
 *
 * @param {string} id
 * @param {WorkedOut} job
 */
function choiceOf(id, { events }) {
  const back = new Set(events.filter(({ kind }) => kind === 'undo').map(({ of }) => of));
  return events.findLast((e) => e.kind === 'choose' && e.of === id && !back.has(e.id));
}
