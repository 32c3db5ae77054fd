import { render } from 'lit-html';
import './console.js';
import { App, fetchScreens } from './app.js';
import { core } from './core/client.js';
import { file } from './site/data.js';
import { offline } from './phone/offline.js';
import { loadSettings } from './store/settings.js';
import { ifSoon, standing } from './store/database.js';
import { setting } from './store/store.js';
import { shell } from './shell.js';
import { loadWords } from './words/catalogue.js';
import { languageFor, languages } from './words/language.js';

const root = /** @type {HTMLElement} */ (document.getElementById('app'));
const app = new App((state) => render(shell(state), root));

await speak();
standing.see = () => app.redraw();
addEventListener('hashchange', () => app.open());
loadSettings();
await app.open();

core.onState(() => app.redraw());
core.start();
offline.subscribe(() => app.redraw());
offline.start();

/**
 * Has everything said in the language that was chosen, else in that of the phone. Should
 * the store be slow to say which was chosen, the page is drawn anew when it does.
 */
async function speak() {
  // With one language there is nothing to wait for.
  const asked = languages.length > 1 ? setting('language').catch(() => {}) : undefined;
  const language = languageFor([asked && (await ifSoon(asked)), ...navigator.languages]);
  await speakIn(language);
  asked?.then(async (chosen) => {
    const other = languageFor([chosen, ...navigator.languages]);
    if (other !== language) await speakIn(other).then(() => app.open());
  });
}

async function speakIn(language) {
  const { tag: lang, dir } = language;
  Object.assign(document.documentElement, { lang, dir });
  await loadWords(language);
}

// The head has it fetched early, whichever the first screen is: a browser complains of what
// nobody takes.
file('bikes.json').catch(() => {});

// What the first screen can do without comes after it.
const fetched = fetchScreens().catch(() => undefined); // the next tap tries again
fetched.then((screens) => screens?.begin(app, root)).catch(() => {}); // each of it is done at the next start
