import { html } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import { t } from '../words.js';
import { findings } from './figure.js';

/** Notes on a step: those kept, and room for one more. */
export function note(work, step, control) {
  const own = (work.state.notes ?? []).filter((n) => n.step === step.id);
  const written = (field) => ({ kind: 'note', step: step.id, text: field.value });
  const input = ({ target }) => control.type(target, () => written(target), target.value);
  const submit = (e) => {
    e.preventDefault();
    const field = e.target.elements.text;
    return control.keepTyped(field, written(field), t('job.note.kept'));
  };
  const id = `note-${step.id}`;
  const restore = (field) => field && control.restore(field, () => written(field));
  return html`
    ${own.map((n) => html`<p class="kept">✎ ${n.text}</p>`)}
    <details class="note">
      <summary>${t('job.note')}</summary>
      <form @submit=${submit}>
        <label class="hidden" for=${id}>${t('job.note')}</label>
        <textarea
          id=${id}
          name="text"
          rows="3"
          maxlength="4000"
          @input=${input}
          ${ref(restore)}
        ></textarea>
        ${findings(control.toldAbout((e) => e.kind === 'note'))}
        <button type="submit">${t('job.note.save')}</button>
      </form>
    </details>
  `;
}
