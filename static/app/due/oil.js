import { html, nothing } from 'lit-html';
import { dayText } from '../words/dates.js';
import { dueMarks, whenDue, windowOf } from './sentences.js';
import { plot } from './plot.js';
import { t, text } from '../words/catalogue.js';
import { figureRow } from '../ui/figure.js';
import { helpLink } from '../ui/help.js';
import { own } from '../site/own.js';

const shapes = ['○', '◔', '◑', '●', '▲', '▲', '▲']; // by how urgent it is

/** How urgent an oil is, with its shape. */
export const verdictOf = ({ grade = 0, verdict, values }) =>
  html`<span aria-hidden="true">${own(shapes, grade)}</span> ${t(verdict, values)}`;

/** How urgent an oil is and when it is due, in one line; of one that is not due yet the day says both. */
export function dueLine(oil) {
  const { grade = 0, at, hours, day } = oil;
  const when = at || hours || day ? t('due.line', { when: whenDue(oil) }) : '';
  if (grade || !when) return html`${verdictOf(oil)} ${when}`;
  return html`<span aria-hidden="true">${own(shapes, 0)}</span> ${when}`;
}

/** When an oil is due again. */
export function dueOil(oil, alone, last) {
  const { role, changed, changedAt, left, intervals = [] } = oil;
  const known = oil.at || oil.hours || oil.day;
  const window = windowOf(oil);
  return html`<article class="sheet due-oil" data-grade=${oil.grade ?? 0}>
    ${alone ? nothing : html`<h3>${t(role)}</h3>`} ${known ? large(oil) : nothing}
    <p><strong>${verdictOf(oil)}</strong></p>
    ${plot(oil, last)} ${window ? html`<p>${window}</p>` : nothing}
    ${left ? html`<p>${t('due.left', { left: left[0] })}</p>` : nothing}
    ${
      changed
        ? html`<p>
            ${t(changedAt ? 'due.changed-at' : 'due.changed', { day: dayText(changed), at: changedAt?.[0] })}
          </p>`
        : nothing
    }
    ${
      intervals.length
        ? html`<details>
            <summary>${t('due.intervals')}</summary>
            <dl>${intervals.map(figureRow)}</dl>
          </details>`
        : nothing
    }
  </article>`;
}

/** Where it is due, the first mark large. */
function large({ at, hours, day }) {
  const [first, ...others] = dueMarks({ at, hours, day });
  return html`<p class="big"><span class="value">${first}</span></p>
    ${others.length ? html`<p>${t('due.or-first', { other: others.join(', ') })}</p>` : nothing}`;
}

/** What is ridden in a month, and where that comes from. */
export const pace = ({ pace: figure, readings, since }) =>
  figure
    ? html`<p>${t('due.pace', { pace: figure.texts[0] })}</p>
        <details>
          <summary>${t('due.pace.why')}</summary>
          <p>${t('due.pace.from', { count: readings, day: dayText(since) })}</p>
        </details>`
    : nothing;

/** The oil used between changes, the newest first. */
export const uses = (list = []) =>
  list.length
    ? html`<h3>${t('due.uses')}</h3>
        <ul>
          ${[...list].reverse().map(use)}
        </ul>`
    : nothing;

function use({ from, to, lost, distance, came, rate, per, use: word, trend, method, help }) {
  const line = { from: dayText(from), to: dayText(to), lost: lost?.[0], distance: distance?.[0] };
  return html`<li>
    <strong
      >${rate ? t('due.use.rate', { rate, per }) : t('due.use.rose', { came: came[0] })}</strong
    >: ${t(word)}${trend ? `, ${t(trend)}` : nothing}<br />
    <small>${t(lost ? 'due.use.line' : 'due.use.span', line)}; ${text(method)}</small>
    ${help ? html`<p>${helpLink(help)}</p>` : nothing}
  </li>`;
}
