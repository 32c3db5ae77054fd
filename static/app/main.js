import { render } from 'lit-html';
import './console.js';
import { App, fetchScreens } from './app.js';
import { core } from './core/client.js';
import { file } from './data.js';
import { watchTextSize } from './large-text.js';
import { offline } from './offline.js';
import { loadSettings } from './settings.js';
import { blocked } from './store.js';
import { firstVisit } from './view/changes.js';
import { shell } from './view/shell.js';
import { loadWords } from './words.js';

const root = document.getElementById('app');
const app = new App((state) => render(shell(state), root));

watchTextSize(root);
await loadWords();
blocked.tell = () => app.fail('store.blocked');
addEventListener('hashchange', () => app.open());
await app.open();

core.onState(() => app.redraw());
core.start();
offline.subscribe(() => app.redraw());
offline.start();

// What the first screen can do without comes after it.
const fetched = fetchScreens().catch(() => {}); // the next tap tries again
fetched.then((screens) => screens?.tellDue()).catch(() => {}); // it stands on the first screen too
loadSettings()
  .then(async () => {
    await fetched; // what is new is told in words that come with the screens
    app.changelog = await file('changelog.json');
    await firstVisit(app.changelog);
    app.redraw();
  })
  .catch(() => app.fail('store.failed'));
