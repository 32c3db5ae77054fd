import { html, nothing } from 'lit-html';
import { download, share, shareable } from '../phone/share.js';
import { t } from '../words/catalogue.js';

/**
 * The ways in which a file leaves the phone. `give` is called with the one that was
 * tapped, which resolves to what is to be said of it.
 *
 * @param {File} file
 * @param {(way: (file: File) => any) => void} give
 */
export function handOut(file, give) {
  const saved = (file) => (download(file), 'keep.saved');
  const shared = async (file) => {
    const answer = await share(file);
    return answer === 'failed' ? 'keep.share-failed' : answer && 'keep.shared';
  };
  return html`<p class="entry">
    <button type="button" @click=${() => give(saved)}>${t('keep.save')}</button>
    ${
      shareable(file)
        ? html`<button type="button" class="quiet" @click=${() => give(shared)}>
            ${t('keep.share')}
          </button>`
        : nothing
    }
  </p>`;
}
