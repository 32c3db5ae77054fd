import { html, nothing } from 'lit-html';
import { askToKeep } from '../store/promise.js';
import { download } from '../phone/share.js';
import { shrink } from '../photos/shrink.js';
import { pictureFrom } from '../photos/take.js';
import { shelfOf } from '../photos/photos.js';
import { t } from '../words/catalogue.js';

/** A form of which what is typed is told with a picture, as soon as one is taken, or without. */
export class Pictured {
  /** @type {any} a picture that is not kept yet */
  waiting = null;
  said = ''; // what goes on, as a word id
  #account;
  #place;
  #fact;

  /**
   * @param {any} account
   * @param {string} place of its findings
   * @param {() => { fact: any, fields: string[] }} fact what is told
   */
  constructor(account, place, fact) {
    this.#account = account;
    this.#place = place;
    this.#fact = fact;
  }

  async #take(file) {
    if (this.said === 'photo.keeping') return;
    this.#say('photo.keeping');
    try {
      const blob = await shrink(file);
      this.waiting = { what: 'other', blob, bytes: blob.size };
    } catch {
      return this.#say('photo.unreadable');
    }
    await this.#add();
  }

  async #add() {
    const { fact, fields } = this.#fact();
    const { waiting: photo } = this;
    const told = photo ? { ...fact, signs: { ...fact.signs, photo: 'yes' } } : fact;
    const kept = await this.#account.tell(told, this.#place, { photo: photo ?? undefined, fields });
    if (kept && photo) {
      this.waiting = null;
      askToKeep();
      await shelfOf(this.#account.job, this.#account.app).load();
    }
    this.#say('');
  }

  #say(word) {
    this.said = word;
    this.#account.app.redraw();
  }

  /** @param {string} add word id of the button that tells it without a picture */
  draw(add) {
    const id = `visit-${this.#place}`;
    const take = (file) => this.#take(file);
    return html`<div class="entry">
        <button type="button" @click=${() => this.#add()}>${t(add)}</button>
        ${pictureFrom('camera', { id }, take)} ${pictureFrom('choose', { id }, take)}
      </div>
      <p class="kept">${t('photo.private')}</p>
      <p role="status" class="told">${this.said ? t(this.said) : nothing}</p>
      ${this.waiting && this.said !== 'photo.keeping' ? this.#left() : nothing}`;
  }

  #left() {
    const file = () => new File([this.waiting.blob], 'photo.jpg', { type: 'image/jpeg' });
    const drop = () => {
      this.waiting = null;
      this.#say('');
    };
    return html`<div class="message">
      <p>${t('photo.waiting')}</p>
      <p class="entry">
        <button type="button" @click=${() => this.#add()}>${t('photo.again')}</button>
        <button type="button" class="quiet" @click=${() => download(file())}>
          ${t('photo.as-file')}
        </button>
        <button type="button" class="quiet" @click=${drop}>${t('photo.dropped')}</button>
      </p>
    </div>`;
  }
}
