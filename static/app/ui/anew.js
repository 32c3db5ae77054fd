import { Directive, directive } from 'lit-html/directive.js';
import { clearPart, setCommittedValue } from 'lit-html/directive-helpers.js';

/**
 * Draws something anew, with nothing left of what stood there, whenever its key is
 * another. (lit-html's own `keyed` forgets to let go what it replaces if a `ref` lies in
 * it, as of 3.3.3: all steps that were ever on the screen would stay in memory.)
 */
export const anew = directive(
  class extends Directive {
    /** @type {unknown} */
    #key;

    /**
     * @param {unknown} key
     * @param {unknown} value
     */
    render(key, value) {
      this.#key = key;
      return value;
    }

    /**
     * @param {import('lit-html/directive.js').ChildPart} part
     * @param {[unknown, unknown]} values
     */
    update(part, [key, value]) {
      if (key !== this.#key) {
        clearPart(part);
        setCommittedValue(part);
      }
      return this.render(key, value);
    }
  },
);
