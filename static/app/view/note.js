import { html } from 'lit-html';
import { t } from '../words.js';

/** Notes on a step: those kept, and room for one more. */
export function note(work, step, control) {
  const own = (work.state.notes ?? []).filter((n) => n.step === step.id);
  const submit = async (event) => {
    event.preventDefault();
    const field = event.target.elements.text;
    if (await control.add({ kind: 'note', step: step.id, text: field.value }, t('job.note.kept')))
      field.value = '';
    else field.focus();
  };
  return html`
    ${own.map((n) => html`<p class="kept">✎ ${n.text}</p>`)}
    <details class="note">
      <summary>${t('job.note')}</summary>
      <form @submit=${submit}>
        <label class="hidden" for="note-text">${t('job.note')}</label>
        <textarea id="note-text" name="text" rows="3" maxlength="4000"></textarea>
        <button type="submit">${t('job.note.save')}</button>
      </form>
    </details>
  `;
}
