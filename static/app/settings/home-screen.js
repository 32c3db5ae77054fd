import { html, nothing } from 'lit-html';
import { canInstall, install, watchInstall } from '../phone/install.js';
import { t } from '../words/catalogue.js';
import { homePicture } from './home-picture.js';
import { wayHere, ways } from './ways.js';

/** @import { Browser } from '../phone/browser.js' */

/** How the app gets onto the home screen: the way here first, the others behind a fold. */
export class HomeScreen {
  #app;
  #agreed = false;
  #unwatch;

  constructor(app) {
    this.#app = app;
    this.#unwatch = watchInstall(() => app.redraw());
  }

  close() {
    this.#unwatch();
  }

  async #install() {
    this.#agreed = await install();
    this.#app.redraw();
  }

  /**
   * @param {Browser} browser
   * @param {{ secure: boolean, installed: boolean }} facts
   */
  draw(browser, facts) {
    const { way, why } = wayHere(browser, facts);
    const others = [...ways.keys()].filter((other) => other !== way);
    return html`
      ${why ? html`<p>${t(why)}</p>` : nothing} ${way ? this.#here(way) : nothing}
      <p role="status" class="told">${this.#agreed ? t('home.agreed') : nothing}</p>
      <details class="more">
        <summary>${t('home.others')}</summary>
        ${others.map(
          (other) =>
            html`<h3>${t(`home.${other}`)}</h3>
              ${wayDrawn(other)}`,
        )}
      </details>
    `;
  }

  /** @param {string} way */
  #here(way) {
    const offered = canInstall()
      ? html`<p>
          <button type="button" @click=${() => this.#install()}>${t('home.install')}</button>
        </p>`
      : nothing;
    const apart = ways.get(way)?.apart;
    return html`${offered} ${wayDrawn(way)}
      <p>${t(apart ? 'home.apart' : 'home.same')}</p>`;
  }
}

/** @param {string} way */
const wayDrawn = (way) =>
  html`${homePicture(way)}
    <ol>
      ${ways.get(way)?.steps.map((step) => html`<li>${t(step)}</li>`)}
    </ol>`;
