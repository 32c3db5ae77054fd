import { html, nothing } from 'lit-html';
import { address } from '../ui/address.js';
import { t } from '../words/catalogue.js';

/** The calculations that answer what a step raises, with what the card knows and what is left to pour. */
export function helps({ helps: list, asks = [] }, { oils = [] }) {
  const { poured, left } = oils.find((o) => asks.some(({ of }) => of === o.circuit)) ?? {};
  const known = (op, given) =>
    op === 'bottles' && poured && left ? { ...given, need: left[0] } : given;
  return list
    ? html`<nav class="helps" aria-label=${t('job.helps')}>
        <h2>${t('job.helps')}</h2>
        <ul>
          ${list.map(
            ({ op, given = {} }) =>
              html`<li>
                <a href=${address('bench', op, JSON.stringify(known(op, given)))}
                  >${t(`calc.${op}`)}</a
                >
              </li>`,
          )}
        </ul>
      </nav>`
    : nothing;
}
