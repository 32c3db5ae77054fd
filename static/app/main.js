import { render } from 'lit-html';
import './console.js';
import { App, fetchScreens } from './app.js';
import { core } from './core/client.js';
import { file } from './site/data.js';
import { watchTextSize } from './phone/text-size.js';
import { offline } from './phone/offline.js';
import { loadSettings } from './store/settings.js';
import { blocked } from './store/store.js';
import { firstVisit } from './settings/changes.js';
import { shell } from './shell.js';
import { loadWords } from './words/catalogue.js';

const root = document.getElementById('app');
const app = new App((state) => render(shell(state), root));

watchTextSize(root);
await loadWords();
blocked.report = () => app.fail('store.blocked');
addEventListener('hashchange', () => app.open());
await app.open();

core.onState(() => app.redraw());
core.start();
offline.subscribe(() => app.redraw());
offline.start();

// What the first screen can do without comes after it.
const fetched = fetchScreens().catch(() => {}); // the next tap tries again
fetched.then((screens) => screens?.notifyDue()).catch(() => {}); // it stands on the first screen too
loadSettings()
  .then(async () => {
    await fetched; // what is new is said in words that come with the screens
    app.changelog = await file('changelog.json');
    await firstVisit(app.changelog);
    app.redraw();
  })
  .catch(() => app.fail('store.failed'));
