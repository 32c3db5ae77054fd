import { html, nothing } from 'lit-html';
import { whenDue } from '../due/sentences.js';
import { copyText, shareText, textShareable } from '../phone/share.js';
import { settings } from '../store/settings.js';
import { address } from '../ui/address.js';
import { t, text } from '../words/catalogue.js';
import { day } from '../words/dates.js';

/** @import { Deed } from '../core/core.d.ts' */

const said = (/** @type {Deed} */ { texts }) => (texts?.length ? texts : ['@face.not-told']);

/** When the oil is due again: by all that is known of the bike, else by this job alone. */
function nextOf(job, due) {
  const { oils = [], first } = due?.outlook ?? {};
  const oil = oils.find(({ circuit }) => circuit === first);
  if (oil) return whenDue(oil);
  const { dueAgain, change } = job.state;
  const next = { at: dueAgain?.texts, hours: undefined, day: change.day };
  return next.at || next.day ? whenDue(next) : '';
}

/**
 * The face of a finished job: what was done in four figures, when the oil is due again, and
 * what can be handed on.
 */
export function face(job, due, app) {
  const { face: deeds = [], finished } = job.state;
  if (!deeds.length) return nothing;
  const { id } = job.record;
  const next = nextOf(job, due);
  return html`<section class="face" aria-label=${t('face.title')}>
    <dl class="deeds">${deeds.map(deed)}</dl>
    ${next ? html`<p>${t('face.next')}: <strong>${next}</strong></p>` : nothing}
    <p class="entry">
      <a class="button" href=${address('sheet', id)}>${t('record.sheet')}</a>
      ${settings.bills ? html`<a class="button quiet" href=${address('bill', id)}>${t('record.bill')}</a>` : nothing}
      <button type="button" class="quiet" @click=${() => hand(job, deeds, finished, next, app)}>
        ${t('face.share')}
      </button>
    </p>
  </section>`;
}

function deed(/** @type {Deed} */ told) {
  const [first, ...others] = said(told);
  const { name = '', of, beside = [] } = told;
  return html`<div>
    <dt>${t(name)} ${of ? html`<small>${text(of)}</small>` : nothing}</dt>
    <dd>
      <strong>${text(first)}</strong>
      ${[...others.map(text), ...beside.map((word) => t(word))].map((part) => html`<small>${part}</small>`)}
    </dd>
  </div>`;
}

/** Hands it on in words. */
async function hand(job, deeds, finished, next, app) {
  const lines = [
    `${job.name}, ${day(finished)}`,
    ...deeds.map((told) => `${t(told.name)}: ${text(said(told)[0])}`),
    ...(next ? [`${t('face.next')}: ${next}`] : []),
  ];
  const plain = lines.join('\n').replace(/[\u2066-\u2069]/g, '');
  if (!textShareable()) app.say(t((await copyText(plain)) ? 'face.copied' : 'face.failed'));
  else if ((await shareText(plain)) === 'failed') app.say(t('face.failed'));
}
