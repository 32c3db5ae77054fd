import { html } from 'lit-html';
import { address } from '../ui/address.js';
import { t } from '../words/catalogue.js';

/** An own card can be changed; a sample stays as it is. */
export const toEdit = (key) =>
  html`<p><a class="button quiet" href=${address('edit', key)}>${t('plan.edit')}</a></p>`;

/** The job on paper, before it begins. */
export const toPaper = (key, bench) =>
  html`<p>
    <a class="button quiet" href=${address('bench-sheet', key, JSON.stringify(bench))}
      >${t('plan.paper')}</a
    >
  </p>`;
