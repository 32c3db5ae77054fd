import { html, nothing } from 'lit-html';
import { helpLink } from '../ui/help.js';
import { t } from '../words/catalogue.js';

/** The calculations that answer what a step raises, with what the card knows, or the job by now. */
export function helps({ id, helps: list }, { helps: known = [] }) {
  const givenOf = ({ op, given = {} }) =>
    known.find((h) => h.step === id && h.op === op)?.given ?? given;
  return list
    ? html`<nav class="helps" aria-label=${t('job.helps')}>
        <h2>${t('job.helps')}</h2>
        <ul>
          ${list.map((help) => html`<li>${helpLink({ op: help.op, given: givenOf(help) })}</li>`)}
        </ul>
      </nav>`
    : nothing;
}
