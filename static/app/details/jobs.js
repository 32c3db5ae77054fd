import { html, nothing } from 'lit-html';
import { said } from '../ui/said.js';
import { chooser } from './chooser.js';
import { address } from '../ui/address.js';
import { t, text } from '../words/catalogue.js';
import { day } from '../words/dates.js';

const page = 25; // jobs drawn at once

/** The jobs of the bike, each of which may belong to another. */
export function jobsOf(telling) {
  const { lines, chosen, found } = telling;
  const { shown = page } = chosen;
  return html`<ul class="jobs">
      ${lines.slice(0, shown).map((line) => job(line, telling))}
    </ul>
    ${
      lines.length > shown
        ? html`<button
            type="button"
            class="quiet"
            @click=${() => telling.choose({ shown: shown + page })}
          >
            ${t('bikes.more', { count: lines.length - shown })}
          </button>`
        : nothing
    }
    ${said('', found.get('job'))}`;
}

function job({ id, started, summary }, telling) {
  const { moving } = telling.chosen;
  return html`<li>
    <a href=${address('record', id)}>
      <strong>${day(started)}</strong>
      <span
        >${[summary.odometer && text(summary.odometer), t(`record.${summary.phase}`)].filter(Boolean).join(' · ')}</span
      >
    </a>
    ${moving === id ? move(id, telling) : offer(id, started, telling)}
  </li>`;
}

const offer = (id, started, telling) =>
  html`<button
    type="button"
    class="quiet"
    aria-label=${t('details.job.move.of', { date: day(started) })}
    @click=${() => telling.choose({ moving: id, to: '' })}
  >
    ${t('details.job.move')}
  </button>`;

/** Asks to which bike the job goes. */
function move(id, telling) {
  const { to = '' } = telling.chosen;
  const go = async () => {
    const of = to === 'new' ? await telling.begin() : to;
    if (!of || !(await telling.tell('job', { kind: 'job', what: id }, { of }))) return;
    telling.choose({ moving: '', to: '' });
    telling.say(t('details.job.moved'));
  };
  return html`${chooser(telling, 'to', 'details.job.to', [['new', 'bike.another']])}
    <p class="entry">
      <button type="button" ?disabled=${!to} @click=${go}>${t('details.job.go')}</button>
      <button type="button" class="quiet" @click=${() => telling.choose({ moving: '' })}>
        ${t('details.job.stay')}
      </button>
    </p>`;
}
