import { html, nothing } from 'lit-html';
import { bikeName } from '../store/bike-name.js';
import { address } from '../ui/address.js';
import { changesTable } from '../ui/changes-table.js';
import { findings } from '../ui/findings.js';
import { section } from '../ui/section.js';
import { t, text, verbatim } from '../words/catalogue.js';

// What a plan says of the machine that it is for, and of its twins.

/**
 * What is told of the bike, above its plan.
 *
 * @param {any} machine
 * @param {unknown[]} [more] what its card says in a word
 */
export function told({ row, pending, findings: odd, others }, more = []) {
  if (pending) return html`<p class="must" role="status">${t('bike.late')}</p>`;
  const { called, plate, words, owner, aside, figures } = row ?? {};
  const lines = [
    ...more,
    words && (called || plate || others.length) ? verbatim(words) : '',
    owner ? `${t('bike.owner')}: ${verbatim(owner)}` : '',
    figures?.length ? t('bike.own-figures', { count: figures.length }) : '',
  ].filter(Boolean);
  return html`${lines.length ? html`<p class="line">${lines.join(' · ')}</p>` : nothing}
  ${aside ? html`<p class="must">${t('bike.aside')}</p>` : nothing} ${findings(odd)}`;
}

/** Offers the card as it was corrected, with what differs from the one used last. */
export const corrected = ({ changes }, { correct }) =>
  changes.length
    ? html`<section class="corrected">
        <h2>${t('bike.corrected')}</h2>
        <p>${t('bike.corrected.how')}</p>
        <details>
          <summary>${t('bike.corrected.changes', { count: changes.length })}</summary>
          ${changesTable(changes)}
        </details>
        <button type="button" @click=${correct}>${t('bike.corrected.take')}</button>
      </section>`
    : nothing;

/** What a bike is called in a list of twins: by its model alone it can't be told from them. */
const among = ({ row, jobs }, model) =>
  html`<span>${text(bikeName(row, model))}</span>
    <small>${jobs ? t('bike.jobs', { count: jobs }) : t('bike.no-jobs')}</small>`;

/** The other bikes that follow the card, and one more of them. */
export const twins = ({ others, model, pending }, { another }) =>
  pending
    ? nothing
    : html`<section class="twins">
        ${others.length ? html`<h2>${t('bike.others')}</h2>` : nothing}
        ${
          others.length
            ? html`<ul class="choices">
                ${others.map(
                  (other) =>
                    html`<li>
                      <a class="button quiet" href=${address('bike', other.id)}
                        >${among(other, model)}</a
                      >
                    </li>`,
                )}
              </ul>`
            : nothing
        }
        <p><button type="button" class="quiet" @click=${another}>+ ${t('bike.another')}</button></p>
      </section>`;

/** Asks on which of the bikes of a card a job begins. */
export const asks = (machine, { on, own, onAnother }) =>
  section(
    'bike.which',
    html`<ul class="choices">
      ${
        machine.id
          ? html`<li>
              <button type="button" class="quiet" id="which" @click=${own}>
                ${among(machine, machine.model)}
              </button>
            </li>`
          : nothing
      }
      ${machine.others.map(
        (other, n) =>
          html`<li>
            <button
              type="button"
              class="quiet"
              id=${machine.id || n ? nothing : 'which'}
              @click=${() => on(other)}
            >
              ${among(other, machine.model)}
            </button>
          </li>`,
      )}
      <li>
        <button
          type="button"
          class="quiet"
          id=${machine.id || machine.others.length ? nothing : 'which'}
          @click=${onAnother}
        >
          + ${t('bike.another')}
        </button>
      </li>
    </ul>`,
  );
