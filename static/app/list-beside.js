import { html, nothing } from 'lit-html';
import { bikes } from './bikes/bikes.js';
import { t } from './words/catalogue.js';

/** @import { App, Screen } from './app.js' */

const enough = '(min-width: 51.25rem)'; // as in style/wide.css

/**
 * The list of bikes beside the plan of one, in a window that is wide enough for both: what
 * `app.list` draws. It stays as it is from plan to plan, and is made anew after other screens.
 *
 * @param {App} app
 */
export function listBeside(app) {
  const wide = matchMedia(enough);
  wide.addEventListener('change', () => app.redraw());
  /** @type {Screen | undefined} */
  let list;
  let asked = false;

  async function open() {
    asked = true;
    const made = await bikes([], app);
    if (asked) list = made;
    else made.close?.();
    app.redraw();
  }

  function close() {
    asked = false;
    list?.close?.();
    list = undefined;
  }

  return (/** @type {Screen} */ screen) => {
    const shown = wide.matches && screen.name === 'bike';
    document.documentElement.toggleAttribute('data-list', shown);
    if (!shown) {
      close();
      return nothing;
    }
    if (!asked) app.attempt(open);
    queueMicrotask(mark);
    return html`<aside class="list-beside screen-bikes" aria-label=${t('nav.bikes')}>
      ${list?.draw()}
    </aside>`;
  };
}

/** Says which of the list is shown beside it. */
function mark() {
  for (const row of document.querySelectorAll('.list-beside .bikes a'))
    if (row.getAttribute('href') === location.hash) row.setAttribute('aria-current', 'page');
    else row.removeAttribute('aria-current');
}
