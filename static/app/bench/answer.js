import { html, nothing } from 'lit-html';
import { t, text } from '../words/catalogue.js';
import { figureRow } from '../ui/figure.js';
import { finding } from '../ui/findings.js';
import { pictures } from './pictures.js';
import { wrenches } from './wrenches.js';
import { rings } from './rings.js';
import { pours } from './pours.js';
import { own } from '../site/own.js';

/**
 * What a calculation came to; `poured` is told the shelf that stays when what it says to
 * pour was poured.
 *
 * @param {string} op
 * @param {any} answer
 * @param {(shelf: any) => void} [poured]
 */
export function drawAnswer(op, answer, poured) {
  const { verdict, warmth, texts, notes = [] } = answer;
  const loud = notes.filter((n) => n.grade === 'doubt');
  const quiet = notes.filter((n) => n.grade !== 'doubt');
  return html`
    <h2>${t('bench.worked')}</h2>
    ${verdict ? html`<p class="verdict">${t(verdict)}</p>` : nothing}
    ${warmth ? html`<p class="verdict">${t(warmth)}</p>` : nothing} ${loud.map(finding)}
    ${
      answer.actions
        ? html`<h3>${t('look.next')}</h3>
            <ul>
              ${answer.actions.map((action) => html`<li>${t(action)}</li>`)}
            </ul>`
        : nothing
    }
    ${own(pictures, op)?.(answer) ?? nothing} ${answer.wrenches ? wrenches(answer) : nothing}
    ${answer.rings ? rings(answer.rings) : nothing}
    ${answer.pours ? pours(answer, poured) : nothing}
    ${
      texts
        ? html`<ul class="values">
            ${texts.map((value) => html`<li class="value">${text(value)}</li>`)}
          </ul>`
        : nothing
    }
    ${Object.entries(lists).map(([name, title]) => list(title, own(answer, name)))}
    ${answer.grades ? html`<p>${t('bench.grades', { grades: answer.grades.join(', ') })}</p>` : nothing}
    ${quiet.map(finding)}
  `;
}

/** The lists of figures that an answer may have, in the order of reading, with their titles. */
export const lists = {
  before: 'bench.before',
  after: 'bench.after',
  figures: '',
  touch: 'bench.touch',
  assumed: 'bench.assumed',
};

function list(title, figures) {
  if (!figures) return nothing;
  return html`
    ${title ? html`<h3>${t(title)}</h3>` : nothing}
    <dl>${figures.map(figureRow)}</dl>
  `;
}
