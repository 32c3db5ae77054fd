import { html } from 'lit-html';
import { t } from '../words/catalogue.js';

/** Where the job stands, as seven notches; the notch of the stage shown is named. */
export function stick(job, stage) {
  const { stages } = job.state;
  const at = stages.findIndex((s) => s.stage === stage);
  return html`<div class="stick">
    <ol aria-hidden="true">
      ${stages.map(
        (s, i) => html`<li data-full=${(s.done ?? 0) === (s.steps ?? 0)} data-at=${i === at}></li>`,
      )}
    </ol>
    <p><strong>${t(`stage.${stage}`)}</strong> ${t('stage.of', { number: at + 1 })}</p>
  </div>`;
}
