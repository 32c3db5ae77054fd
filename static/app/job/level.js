import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { ref } from 'lit-html/directives/ref.js';
import { t, text } from '../words/catalogue.js';
import { draftMark } from '../ui/draft-mark.js';
import { slideStep } from '../ui/field.js';
import { heightAt, levelPicture } from '../ui/picture/level.js';

/** @import { Balance } from '../core/core.d.ts' */

/**
 * This bike's gauge, on which the oil line is dragged to where it stands. A finger is read
 * in the picture: not every browser stands a slider upright. The slider that keys and
 * screen readers move is not seen. A thumb that only scrolls may touch the picture: so the
 * line is kept by a tap of its own, or with the step. `event` makes the event of a share.
 */
export function levelSlider({ gauge: drawn, of }, id, last, control, event) {
  const moved = control.drafts.get(id);
  const { kind, slideLow = 0, slideHigh, slideFrom, ...marks } = drawn;
  const share = Number(moved ?? last ?? slideFrom);
  const line = (share - slideLow) / (slideHigh - slideLow);
  const typed = (field) => event(`${field.value} %`);
  const slid = (field) => {
    control.type(field, () => typed(field), field.value);
    control.app.redraw();
  };
  const drag = ({ currentTarget: gauge, clientY }) => {
    const [svg, field] = ['svg', 'input'].map((name) => gauge.querySelector(name));
    // The field rounds it to a step that it has.
    field.value = slideLow + (slideHigh - slideLow) * heightAt(svg, clientY);
    slid(field);
  };
  const grip = (event) => {
    const { currentTarget: gauge, pointerId } = event;
    event.preventDefault(); // neither marks words nor takes the focus away
    gauge.setPointerCapture(pointerId);
    gauge.querySelector('input').focus({ preventScroll: true });
    drag(event);
  };
  const move = (event) => {
    if (event.currentTarget.hasPointerCapture(event.pointerId)) drag(event);
  };
  const save = async () => {
    const field = document.getElementById(id);
    await control.saveTyped(field, typed(field), t('job.kept', { value: `${share} %` }));
    control.app.redraw();
  };
  return html`<div class="level-gauge" data-of=${of}>
    <p>${t('level.drag')}</p>
    <div class="drag" @pointerdown=${grip} @pointermove=${move}>
      ${levelPicture({ gauge: kind, line, ...marks })}
      <input
        id=${id}
        type="range"
        aria-label=${t('ask.level')}
        aria-valuetext=${t('level.share', { share })}
        min=${slideLow}
        max=${slideHigh}
        step=${slideStep}
        .value=${live(String(share))}
        @input=${({ target }) => slid(target)}
        ${ref((field) => field && control.restore(field, () => typed(field)))}
      />
    </div>
    ${
      moved === undefined
        ? nothing
        : html`${draftMark(control.standing(id))}
            <p>
              <button type="button" @click=${save}>${t('level.keep', { share })}</button>
            </p>`
    }
  </div>`;
}

/**
 * What to do about the level of a circuit, where the core could say.
 *
 * @param {Partial<Balance>} balance
 */
export const amend = ({ amend: word, change } = {}) =>
  word
    ? html`<p class="verdict" role="status">
        ${change ? html`<strong class="value">${text(change[0])}</strong> ` : nothing}${t(word)}
      </p>`
    : nothing;
