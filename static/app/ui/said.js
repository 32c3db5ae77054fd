import { html, nothing } from 'lit-html';
import { Directive, directive } from 'lit-html/directive.js';
import { finding } from './findings.js';

/** @import { Finding } from '../core/core.d.ts' */

// What was found about a field stands below it, is tied to it for whoever comes to the
// field, and is read out to whoever can't see that it appears.

/** @param {string} id of a field */
const idOf = (id) => `${id}-said`;

/**
 * What was found about the field of that id, which is `tied` to it; '' is a form as a whole.
 *
 * @param {string} id
 * @param {Finding[] | undefined} list
 * @param {boolean} [loud] whether it comes of what was just entered
 */
export const said = (id, list, loud = true) =>
  list?.length
    ? html`<div class="findings" id=${id ? idOf(id) : nothing} role=${loud ? 'alert' : nothing}>
        ${list.map(finding)}
      </div>`
    : nothing;

/** Which members of a form may be wrong by themselves; of a group its choices say what they are. */
const marked = new Set(['INPUT', 'TEXTAREA', 'SELECT']);

/**
 * Ties what was found about a field to its element: `<input ${tied(id, list)}>`. What is
 * refused makes the field invalid; a doubt leaves it as it is.
 */
export const tied = directive(
  class extends Directive {
    /**
     * @param {string} _id
     * @param {Finding[]} [_list]
     */
    render(_id, _list) {
      return nothing;
    }

    /**
     * @param {import('lit-html/directive.js').ElementPart} part
     * @param {[string, Finding[]?]} found
     */
    update({ element }, [id, list = []]) {
      const refused = list.some(({ grade }) => grade === 'refuse');
      if (list.length) element.setAttribute('aria-describedby', idOf(id));
      else element.removeAttribute('aria-describedby');
      if (refused && marked.has(element.tagName)) element.setAttribute('aria-invalid', 'true');
      else element.removeAttribute('aria-invalid');
      return nothing;
    }
  },
);
