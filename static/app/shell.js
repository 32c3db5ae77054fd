import { html, nothing } from 'lit-html';
import { core } from './core/client.js';
import { offline } from './phone/offline.js';
import { address } from './ui/address.js';
import { t } from './words/catalogue.js';
import { changes } from './settings/changes.js';

const tabs = [
  ['bikes', 'nav.bikes'],
  ['record', 'nav.record'],
  ['bench', 'nav.bench'],
  ['settings', 'nav.settings'],
];

/** The frame round every screen: messages on top, the screen, the tabs below. */
export function shell(app) {
  const { screen } = app;
  return html`
    ${messages(app)}
    <main id="screen" class=${`screen-${screen.name}`}>${screen.draw()}</main>
    <div role="status" class="said">${app.said || nothing}</div>
    ${screen.name === 'job' ? nothing : navigation(screen)}
  `;
}

function navigation({ tab }) {
  return html`<nav class="tabs" aria-label=${t('nav.label')}>
    ${tabs.map(
      ([name, word]) =>
        html`<a href=${address(name)} aria-current=${tab === name ? 'page' : nothing}
          >${t(word)}</a
        >`,
    )}
  </nav>`;
}

function messages(app) {
  const { state } = core;
  return html`
    ${state === 'restarting' || state === 'failed' ? message(t(`core.${state}`)) : nothing}
    ${app.trouble ? message(t(app.trouble)) : nothing}
    ${app.screen.name === 'job' ? elsewhere() : html`${insecure(app)} ${update(app)} ${changes(app)}`}
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
