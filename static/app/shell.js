import { html, nothing, svg } from 'lit-html';
import { core } from './core/client.js';
import { offline } from './phone/offline.js';
import { address } from './ui/address.js';
import { t } from './words/catalogue.js';

// Each tab with its word and its sign, which stands on a field of 24 by 24.
/** @type {[string, string, import('lit-html').TemplateResult<2>][]} */
const tabs = [
  [
    'bikes',
    'nav.bikes',
    svg`<path d="M2 17a4 4 0 1 0 8 0a4 4 0 1 0-8 0M14 17a4 4 0 1 0 8 0a4 4 0 1 0-8 0M6 17l3-7h7l2 7M5 9l4 1M13 5h2l1 5" />`,
  ],
  ['record', 'nav.record', svg`<path d="M5 3h14v18H5zM9 8h6M9 12h6M9 16h3" />`],
  ['bench', 'nav.bench', svg`<path d="M3 19a9 9 0 0 1 18 0zM12 19l4-6M12 5v2M5 9l1 1" />`],
  [
    'settings',
    'nav.settings',
    svg`<path d="M3 8h4M11 8h10M7 8a2 2 0 1 0 4 0a2 2 0 1 0-4 0M3 16h10M17 16h4M13 16a2 2 0 1 0 4 0a2 2 0 1 0-4 0" />`,
  ],
];

/** The frame round every screen: messages on top, the screen, the tabs below. */
export function shell(app) {
  const { screen } = app;
  return html`
    ${messages(app)} ${app.list?.(screen)}
    <main id="screen" class=${`screen-${screen.name}`}>${screen.draw()}</main>
    <div role="status" class="said">${app.said || nothing}</div>
    ${screen.name === 'job' ? nothing : navigation(screen)}
  `;
}

function navigation({ tab }) {
  return html`<nav class="tabs" aria-label=${t('nav.label')}>
    ${tabs.map(
      ([name, word, sign]) =>
        html`<a href=${address(name)} aria-current=${tab === name ? 'page' : nothing}>
          <svg viewBox="0 0 24 24" aria-hidden="true">${sign}</svg>${t(word)}
        </a>`,
    )}
  </nav>`;
}

function messages(app) {
  const { state } = core;
  return html`
    ${state === 'restarting' || state === 'failed' ? message(t(`core.${state}`)) : nothing}
    ${app.screen.name === 'bikes' && app.asks ? app.asks() : nothing}
    ${app.trouble ? message(t(app.trouble)) : nothing}
    ${app.screen.name === 'job' ? elsewhere() : html`${insecure(app)} ${update(app)} ${app.news?.(app)}`}
  `;
}

/** In a job one quiet line must do: nothing is to be decided there. */
const elsewhere = () =>
  offline.state.updatedElsewhere
    ? html`<p class="aside-line" role="status">${t('update.elsewhere.job')}</p>`
    : nothing;

/** Where the address is at fault, the first screen says so. */
const insecure = ({ screen }) =>
  offline.state.insecure && screen.name === 'bikes' ? message(t('page.insecure')) : nothing;

const message = (content) => html`<div class="message" role="alert"><p>${content}</p></div>`;

/** Offers a waiting version; never during a job, and never by force. */
function update(app) {
  const { waiting, updatedElsewhere } = offline.state;
  if (updatedElsewhere) return message(t('update.elsewhere'));
  if (!waiting || app.updateLater) return nothing;
  const later = () => {
    app.updateLater = true;
    app.redraw();
  };
  return html`<section class="message" aria-label=${t('update.waiting')}>
    <p>${t('update.waiting')}</p>
    <div class="entry">
      <button type="button" @click=${() => offline.takeOver()}>${t('update.take')}</button>
      <button type="button" class="quiet" @click=${later}>${t('update.later')}</button>
    </div>
  </section>`;
}
