import { html } from 'lit-html';
import { troubleAt } from '../trouble/address.js';
import { address } from '../ui/address.js';
import { addressWith } from '../ui/address-with.js';
import { t } from '../words/catalogue.js';

/** An own card can be changed; a sample stays as it is. */
export const toEdit = (key) =>
  html`<a class="button quiet" href=${address('edit', key)}>${t('plan.edit')}</a>`;

/** Where somebody goes who finds that something is wrong with this bike. */
export const toTrouble = (bike) =>
  html`<a class="button quiet" href=${troubleAt('', { bike })}>${t('job.trouble')}</a>`;

/** What is told of a bike, and what can be done with its record. */
export const toDetails = (id) =>
  html`<a class="button quiet" href=${address('details', id)}>${t('bike.details')}</a>`;

/** The job on paper, before it begins. */
export const toPaper = (bench, id, ...alone) =>
  html`<a
    class="button quiet"
    href=${addressWith(['bench-sheet', id, ...alone.filter(Boolean)], bench)}
    >${t('plan.paper')}</a
  >`;
