import { html } from 'lit-html';
import { sinceLast } from '../ui/help.js';
import { t, text, verbatim } from '../words/catalogue.js';

/** @import { Plan } from '../core/core.d.ts' */

/** What oil, plug and filter said, as it was written down in the job. */
export function found({ state, ...job }) {
  const { oils = [], notes = [], readings = [], looks = [], problems = [] } = state;
  const leak = readings.find(({ what, stands }) => stands && what === 'leak');
  const lines = [
    ...oils.filter(({ caught }) => caught).map(({ role, caught }) => `${t(role)}: ${t(caught)}`),
    ...oils.filter(({ since }) => since).map(({ since }) => sinceLast(since)),
    ...looks.map(
      ({ step, told = [], verdict }) =>
        `${name(job, step)}. ${[...told, verdict].map((word) => t(word)).join(', ')}`,
    ),
    ...problems.map(({ what, outcome }) => `${t(`fault.${what}`)}: ${t(`outcome.${outcome}`)}`),
    leak && `${t('ask.leak')} ${text(leak.texts[0])}`,
    ...notes.map((n) => (n.step ? `${name(job, n.step)}. ${verbatim(n.text)}` : verbatim(n.text))),
  ].filter(Boolean);
  return lines.length
    ? html`<ul class="lines">
        ${lines.map((line) => html`<li>${line}</li>`)}
      </ul>`
    : html`<p>${t('paper.found.none')}</p>`;
}

/** @param {{ plan?: Plan }} job */
function name({ plan }, id) {
  const step = plan?.steps?.find((s) => s.id === id);
  return step ? t(step.word, step.values) : '';
}
