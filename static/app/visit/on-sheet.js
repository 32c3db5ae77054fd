import { html, nothing } from 'lit-html';
import { section } from '../ui/section.js';
import { t, text, verbatim } from '../words/catalogue.js';
import { when } from '../words/dates.js';
import { amount } from './amount.js';
import { seenLine } from './look-round.js';
import { drawn } from './pad.js';
import { signedLine } from './signing.js';
import { answerLine, priceLine } from './troubles.js';

/** @import { VisitAnswer } from '../core/core.d.ts' */

/**
 * What the owner's sheet says of the visit: how the bike came, what was agreed, what was
 * found later and what the customer said of it, and who signed for it.
 *
 * @param {VisitAnswer | undefined} state
 */
export function visitOnSheet(state) {
  if (!state) return nothing;
  const { found = [], troubles = [], signatures = [] } = state;
  return html`<div class="visit-sheet">
    ${section('visit.paper.arrival', atArrival(state))}
    ${section('visit.paper.found', lines(found.map(seenLine)), found.length)}
    ${section('visit.paper.agreed', agreed(state))}
    ${section('visit.paper.troubles', lines(troubles.map(troubleLine)), troubles.length)}
    ${section('visit.paper.signed', signed(signatures))}
  </div>`;
}

const lines = (list) =>
  html`<ul class="lines">
    ${list.map((line) => html`<li>${line}</li>`)}
  </ul>`;

const troubleLine = (one) =>
  [verbatim(one.text ?? ''), priceLine(one), answerLine(one)].join(' · ');

/** @typedef {Partial<VisitAnswer>} Told */

const front = new Set(['agreed', 'most', 'promised']); // they stand with what was agreed

/** @param {Told} state */
function atArrival({ said = [], arrived, handed }) {
  const told = said.filter(({ name, texts }) => !front.has(name) && texts);
  const [long, short] = [true, false].map((is) =>
    told.filter(({ name }) => (name === 'wish') === is),
  );
  return html`<p>
      ${arrived ? t('visit.paper.came', { when: when(arrived) }) : nothing}
      ${handed ? t('visit.handed', { when: when(handed) }) : nothing}
    </p>
    ${long.map(({ name, texts = [''] }) => html`<p>${label(name)} <span class="as-told">${verbatim(texts[0])}</span></p>`)}
    ${short.length ? html`<p>${short.map(({ name, texts = [''] }) => html`${label(name)} ${text(texts[0])} `)}</p>` : nothing}`;
}

const label = (name) => html`<strong>${t(`visit.ask.${name}`)}:</strong>`;

/** @param {Told} state */
function agreed({ said = [], most, limit, over, promised }) {
  const work = said.find(({ name }) => name === 'agreed');
  const more = most && limit && limit.minor !== most.minor;
  return html`
    ${work ? html`<p class="as-told">${verbatim(work.value ?? '')}</p>` : nothing}
    <p>
      ${most ? t('visit.most', { amount: amount(most) }) : t('visit.most.none')}
      ${more ? t('visit.limit', { amount: amount(limit) }) : nothing}
      ${most && !limit ? t('visit.limit.unknown') : nothing}
      ${over && limit ? t('visit.over', { more: amount(over), limit: amount(limit) }) : nothing}
      ${promised ? t('visit.paper.promised', { when: when(promised) }) : nothing}
    </p>
  `;
}

function signed(list) {
  if (!list.length) return html`<p>${t('visit.paper.not-signed')}</p>`;
  return html`<div class="signatures">${list.map(signature)}</div>`;
}

/** A signature, with what it was given for where that is other now. */
function signature(one) {
  const { moment, path, changed = [], agreement: then } = one;
  return html`<figure class="signed">
    ${drawn(path, t(`visit.signed.${moment}`))}
    <figcaption>
      ${t(`visit.signed.${moment}`)}: ${signedLine(one)}
      ${
        changed.length
          ? html`<small class="as-told"
              >${t('visit.paper.then', { what: [then.agreed ? verbatim(then.agreed) : '', then.most ? amount(then.most) : ''].filter(Boolean).join(' · ') })}</small
            >`
          : nothing
      }
    </figcaption>
  </figure>`;
}
