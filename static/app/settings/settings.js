import { html, nothing } from 'lit-html';
import { limits, loadLimits } from '../core/limits.js';
import { files } from '../site/files.js';
import { offline } from '../phone/offline.js';
import { set, settings as kept } from '../store/settings.js';
import { loadWordsOf, t } from '../words/catalogue.js';
import { dayText } from '../words/dates.js';
import { languages } from '../words/language.js';
import { changeList } from './changes.js';
import { HomeScreen } from './home-screen.js';
import { RecordsFate } from './records-fate.js';
import { address } from '../ui/address.js';
import { namedRadios, radios, ticks } from '../ui/choice.js';
import { section } from '../ui/section.js';

/** Settings, and how the app stands with this phone. */
export async function settings(_, app) {
  await loadWordsOf('keep');
  loadLimits().then(() => app.redraw());
  const fate = new RecordsFate(app);
  const home = new HomeScreen(app);
  fate.load();
  const change = async (key, value) => {
    await app.attempt(() => set(key, value));
    app.redraw();
  };
  return {
    name: 'settings',
    tab: 'settings',
    title: t('settings.title'),
    draw: () => draw(app, fate, home, change),
    close: () => home.close(),
  };
}

function draw(app, fate, home, change) {
  const { changelog } = app;
  return html`
    <h1 tabindex="-1">${t('settings.title')}</h1>
    ${radios('settings.units', 'plan.units', kept.system, limits.systems ?? [kept.system], (v) => change('system', v))}
    ${radios('settings.theme', 'settings.theme', kept.theme, ['auto', 'light', 'dark'], (v) => change('theme', v))}
    ${languages.length > 1 ? languageChoice(app) : nothing}
    ${ticks('settings.others', [{ label: t('settings.others.work'), on: kept.forOthers }], (_, on) => change('forOthers', on))}
    ${ticks('settings.bills', [{ label: t('settings.bills.write'), on: kept.bills }], (_, on) => change('bills', on))}
    ${ticks('settings.books', [{ label: t('settings.books.write'), on: kept.books }], (_, on) => change('books', on))}
    ${kept.books ? html`<p><a class="button quiet" href=${address('books')}>${t('settings.books.open')}</a></p>` : nothing}
    ${section('settings.offline', html`<p>${offlineWords()}</p>`)}
    ${section('settings.storage', fate.draw())}
    ${section('settings.install', home.draw(fate.browser, fate.facts))}
    ${section(
      'settings.about',
      html`<p>${t('settings.safety')}</p>
        <p>${t('settings.about.text')}</p>
        <p><a href=${files['data/licences.txt']}>${t('settings.licences')}</a></p>`,
    )}
    ${changelog ? section('settings.changes', changeList(changelog)) : ''}
    <p>
      <button type="button" class="quiet" @click=${() => location.reload()}>
        ${t('settings.reload')}
      </button>
    </p>
  `;
}

/** Each language by its own name. The page loads anew, so that all of it is said in the one chosen. */
function languageChoice(app) {
  const pick = async (tag) => {
    if (await app.attempt(() => set('language', tag).then(() => true))) location.reload();
    else app.redraw();
  };
  const lines = languages.map(({ tag, name }) => ({ id: tag, label: name, lang: tag }));
  return namedRadios('settings.language', lines, document.documentElement.lang, pick);
}

function offlineWords() {
  const { supported, insecure, ready, have, want, version, built } = offline.state;
  if (insecure) return t('settings.offline.insecure');
  if (!supported) return t('settings.offline.unsupported');
  if (ready) return t('settings.offline.ready', { version, date: dayText(built) });
  return want ? t('settings.offline.missing', { have, want }) : t('settings.offline.not-yet');
}
