import { html, nothing } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import { limits, loadLimits } from '../../core/limits.js';
import { canDeflate } from './deflate.js';
import { Codes } from './codes.js';
import { Camera, codesIn, detector } from './scan.js';
import { t } from '../../words/catalogue.js';
import { back } from './show.js';

/** Reading the QR codes of a card or of a bike: by camera, from pictures, or as pasted text. */
export class QrRead {
  #app;
  #done;
  #codes = new Codes();
  /** @type {string | null} word id of what was wrong with the latest */
  #said = null;
  #reader;
  /** @type {Camera | null} */
  #camera = null;
  #watch = (video) => {
    if (video && this.#camera) this.#camera.watch(video, this.#reader, (code) => this.#add(code));
  };

  /** `done` is given the text, and what it is of. */
  constructor(app, done) {
    this.#app = app;
    this.#done = done;
    detector().then((reader) => {
      this.#reader = reader;
      app.redraw();
    });
  }

  /** Ends the camera. */
  close() {
    this.#camera?.stop();
    this.#camera = null;
  }

  #say(word) {
    this.#said = word;
    this.#app.redraw();
  }

  async #add(code) {
    this.#say(this.#codes.add(code));
    if (!this.#codes.complete) return;
    const codes = this.#codes;
    this.#codes = new Codes();
    await loadLimits();
    const { text, fault } = await codes.text(limits.call ?? 0);
    if (text === undefined) return this.#say(fault);
    this.close();
    this.#done(text, codes.kind);
  }

  async #open() {
    const camera = new Camera();
    this.#camera = camera;
    try {
      await camera.start();
      this.#say(null);
    } catch {
      this.#camera = null;
      this.#say('qr.no-camera');
    }
  }

  async #pictures(list) {
    for (const picture of list) {
      const found = await codesIn(picture, this.#reader).catch(() => []);
      if (!found.length) this.#say('qr.none-in-picture');
      for (const code of found) await this.#add(code);
    }
  }

  draw() {
    const { got, of } = this.#codes;
    const anew = () => {
      this.#codes = new Codes();
      this.#say(null);
    };
    return html`
      <h1 tabindex="-1">${t('qr.read')}</h1>
      <p role="status" class="told">
        ${of ? t('qr.got', { got: got.join(', '), read: got.length, count: of }) : t('qr.read.how')}
      </p>
      ${this.#said ? html`<p class="finding" data-grade="refuse">${t(this.#said)}</p>` : nothing}
      ${of ? html`<p><button type="button" class="quiet" @click=${anew}>${t('qr.anew')}</button></p>` : nothing}
      ${canDeflate() ? this.#ways() : html`<p>${t('qr.cannot')}</p>`} ${back()}
    `;
  }

  #ways() {
    return html`${this.#reader ? this.#seeing() : html`<p>${t('qr.no-reader')}</p>`}
    ${this.#pasting()}`;
  }

  #seeing() {
    const pick = ({ target }) => this.#pictures([...target.files]);
    return html`
      ${
        this.#camera?.stream
          ? html`<video class="camera" playsinline muted ${ref(this.#watch)}></video>`
          : html`<p>
              <button type="button" @click=${() => this.#open()}>${t('qr.camera')}</button>
            </p>`
      }
      <p class="file">
        <input id="qr-pictures" type="file" accept="image/*" multiple @change=${pick} />
        <label for="qr-pictures" class="button quiet">${t('qr.pictures')}</label>
      </p>
    `;
  }

  #pasting() {
    const read = async (event) => {
      event.preventDefault();
      const field = event.target.elements.codes;
      // Blanks at the end of a line may be letters of the code.
      const lines = field.value.split(/\r?\n/).filter((line) => line.trim());
      field.value = '';
      for (const line of lines) await this.#add(line);
    };
    return html`<form class="ask" @submit=${read}>
      <label for="qr-codes">${t('qr.paste')}</label>
      <textarea id="qr-codes" name="codes" rows="4" spellcheck="false"></textarea>
      <button type="submit">${t('qr.paste.read')}</button>
    </form>`;
  }
}
