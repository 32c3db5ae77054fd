import { html } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import { limits } from '../core/limits.js';
import { t, verbatim } from '../words/catalogue.js';
import { draftMark } from '../ui/draft-mark.js';
import { said, tied } from '../ui/said.js';
import { fitted, roomFor } from '../ui/letters.js';

/** What the card says of this moment of the job, before the act. */
export const notesOnCard = ({ notes = [] }) =>
  notes.map(
    (written) =>
      html`<p class="on-card"><strong>${t('job.on-card')}</strong> ${verbatim(written)}</p>`,
  );

/** Notes on a step: those kept, and room for one more. */
export function note(job, step, control) {
  const own = (job.state.notes ?? []).filter((n) => n.step === step.id);
  const written = (field) => ({ kind: 'note', step: step.id, text: field.value });
  const input = ({ target }) => control.type(target, () => written(target), fitted(target));
  const submit = (e) => {
    e.preventDefault();
    const field = e.target.elements.text;
    return control.saveTyped(field, written(field), t('job.note.kept'));
  };
  const id = `note-${step.id}`;
  const found = control.findingsAbout((e) => e.kind === 'note');
  const restore = (field) => field && control.restore(field, () => written(field));
  return html`
    ${own.map((n) => html`<p class="kept">✎ ${verbatim(n.text)}</p>`)}
    <details class="note">
      <summary>${t('job.note')}</summary>
      <form @submit=${submit}>
        <label class="hidden" for=${id}>${t('job.note')}</label>
        <textarea
          id=${id}
          name="text"
          rows="3"
          ${tied(id, found)}
          @input=${input}
          ${ref(restore)}
        ></textarea>
        ${roomFor(id, limits.note)} ${draftMark(control.standing(id))} ${said(id, found)}
        <button type="submit">${t('job.note.save')}</button>
      </form>
    </details>
  `;
}
