import { html, nothing } from 'lit-html';
import { addressWith } from '../ui/address-with.js';
import { t } from '../words/catalogue.js';
import { kinds } from './kinds.js';

/**
 * The cards of first aid, each one tap away.
 *
 * @param {{ job?: string, step?: string }} from where one goes back to
 * @param {string} [shown] the card that is on the screen
 */
export function aidLinks(from, shown) {
  const { job, step } = from;
  return html`<nav class="aid" aria-labelledby="first-aid">
    <h2 id="first-aid"><span aria-hidden="true">✚</span> ${t('aid.title')}</h2>
    ${Object.keys(kinds).map(
      (kind) =>
        html`<a
          class="button quiet"
          href=${addressWith(['aid', kind], { job, step })}
          aria-current=${kind === shown ? 'page' : nothing}
          >${t(`aid.${kind}`)}</a
        >`,
    )}
  </nav>`;
}
