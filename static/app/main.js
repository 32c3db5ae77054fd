import { render } from 'lit-html';
import './console.js';
import { App, fetchScreens } from './app.js';
import { core } from './core/client.js';
import { file } from './site/data.js';
import { watchTextSize } from './phone/text-size.js';
import { offline } from './phone/offline.js';
import { loadSettings } from './store/settings.js';
import { blocked, setting } from './store/store.js';
import { firstVisit } from './settings/changes.js';
import { shell } from './shell.js';
import { loadWords } from './words/catalogue.js';
import { languageFor, languages } from './words/language.js';

const root = /** @type {HTMLElement} */ (document.getElementById('app'));
const app = new App((state) => render(shell(state), root));

watchTextSize(root);
await speak();
blocked.report = () => app.fail('store.blocked');
addEventListener('hashchange', () => app.open());
await app.open();

core.onState(() => app.redraw());
core.start();
offline.subscribe(() => app.redraw());
offline.start();

/** Has everything said in the language that was chosen, else in that of the phone. */
async function speak() {
  // With one language there is nothing to wait for.
  const chosen = languages.length > 1 ? await setting('language').catch(() => {}) : '';
  const language = languageFor([chosen, ...navigator.languages]);
  const { tag: lang, dir } = language;
  Object.assign(document.documentElement, { lang, dir });
  await loadWords(language);
}

// What the first screen can do without comes after it.
const fetched = fetchScreens().catch(() => undefined); // the next tap tries again
fetched.then((screens) => screens?.notifyDue()).catch(() => {}); // it stands on the first screen too
fetched.then((screens) => screens?.sweepDrafts()).catch(() => {}); // at the next start then
loadSettings()
  .then(async () => {
    await fetched; // what is new is said in words that come with the screens
    app.changelog = await file('changelog.json');
    await firstVisit(app.changelog);
    app.redraw();
  })
  .catch(() => app.fail('store.failed'));
