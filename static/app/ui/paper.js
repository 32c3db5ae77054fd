import { html } from 'lit-html';
import { download, share, shareable } from '../phone/share.js';
import { t } from '../words/catalogue.js';
import { cut } from '../words/cut.js';

/**
 * A sheet to print, save or share; `above` is what only the screen shows.
 *
 * @param {string} title
 * @param {unknown} above
 * @param {unknown} content
 * @param {{ say: (text: string) => void }} app
 */
export const paper = (title, above, content, app) => html`
  <div class="off-paper">
    ${above}
    <div class="entry">
      <button type="button" class="main" @click=${() => print()}>${t('paper.print')}</button>
      <button type="button" class="quiet" @click=${() => hand(title, app)}>
        ${t('paper.share')}
      </button>
    </div>
  </div>
  <article class="paper">${content}</article>
`;

const nameLetters = 60; // of a file: systems take 255 bytes

/** A box to tick by hand. */
export const box = html`<span class="box" aria-hidden="true"></span>`;

// A sheet that travels brings its own few rules of style along.
const style = `body{font:12pt/1.4 sans-serif;margin:2em auto;max-width:48em;padding:0 1em;color:#000;background:#fff}
table{border-collapse:collapse;width:100%}th,td{border-bottom:1px solid #999;padding:.2em .5em .2em 0;text-align:left;vertical-align:top}
h2{font-size:1.1em;margin:1em 0 .2em}img{max-width:15em}.box{border:1px solid;display:inline-block;height:.8em;width:.8em}`;

/**
 * @param {string} title
 * @param {{ say: (text: string) => void }} app
 */
async function hand(title, app) {
  const shown = /** @type {Element} */ (document.querySelector('.paper'));
  const sheet = /** @type {Element} */ (shown.cloneNode(true));
  const drawn = shown.querySelectorAll('img');
  [...sheet.querySelectorAll('img')].forEach((image, n) => (image.src = inline(drawn[n])));
  const page = `<!doctype html><html lang="${document.documentElement.lang}"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${escaped(title)}</title><style>${style}</style>${sheet.outerHTML}</html>`;
  const name = `${cut(title.replace(/[^\p{L}\p{N}]+/gu, '-'), nameLetters).text}.html`;
  const file = new File([page], name, { type: 'text/html' });
  if (!shareable(file)) {
    download(file);
    app.say(t('paper.saved', { name }));
  } else if ((await share(file)) === 'failed') app.say(t('paper.share-failed'));
}

/** @param {string} s */
const escaped = (s) => s.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

/**
 * A picture as text, so that it travels within the sheet.
 *
 * @param {HTMLImageElement} image
 */
function inline(image) {
  const canvas = document.createElement('canvas');
  Object.assign(canvas, { width: image.naturalWidth, height: image.naturalHeight });
  canvas.getContext('2d')?.drawImage(image, 0, 0);
  return canvas.toDataURL('image/jpeg', 0.8);
}
