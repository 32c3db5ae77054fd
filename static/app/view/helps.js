import { html, nothing } from 'lit-html';
import { address } from '../router.js';
import { t } from '../words.js';

/** The calculations that answer what a step raises, with what the card knows. */
export const helps = ({ helps: list }) =>
  list
    ? html`<nav class="helps" aria-label=${t('job.helps')}>
        <h2>${t('job.helps')}</h2>
        <ul>
          ${list.map(
            ({ op, given = {} }) =>
              html`<li>
                <a href=${address('bench', op, JSON.stringify(given))}>${t(`calc.${op}`)}</a>
              </li>`,
          )}
        </ul>
      </nav>`
    : nothing;
