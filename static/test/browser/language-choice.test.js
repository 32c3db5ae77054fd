// In which language the page speaks.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { defaultLanguage } from '../catalogue.js';
import { pseudoLanguages } from '../pseudo.js';
import { goTo } from './job-page.js';
import { openBrowser, startServer } from './launch.js';
import { openSite } from './open-site.js';
import { untilState } from './page.js';
import { choose, seen, untilSeen } from './person.js';
import { buildPseudoSite, setPhone } from './pseudo-site.js';
import { readIn, words } from './words.js';

const [longer, mirrored] = pseudoLanguages;
const unknown = 'tlh'; // a language that the page can't speak

let archive;
let remove;
before(async () => ({ archive, remove } = await buildPseudoSite()));
after(() => remove());

/** A page on a phone that is set to these languages: {page, server, url}. */
async function openOn(t, ...tags) {
  const server = await startServer(t, '-site', archive);
  const page = await (await openBrowser(t)).newPage();
  await page.evaluateOnNewDocument(setPhone, ...tags);
  await page.goto(server.url);
  await untilState(page, 'ready');
  return { page, server };
}

/** The page says and shows that it speaks this language. */
async function speaks(page, language, heading = 'bikes.title') {
  readIn(language);
  await untilSeen(page, words(heading));
  const root = () => [document.documentElement.lang, document.documentElement.dir];
  assert.deepEqual(await page.evaluate(root), [language.tag, language.dir]);
}

test('the page speaks the first language of the phone that it can', async (t) => {
  const { page } = await openOn(t, unknown, `${mirrored.tag}-x-here`, longer.tag);
  await speaks(page, mirrored);
});

test('a phone without any of them hears the default', async (t) => {
  const { page } = await openOn(t, unknown);
  await speaks(page, defaultLanguage);
});

test('the settings offer each language by its own name; what is chosen stays', async (t) => {
  const { page, server } = await openOn(t, longer.tag);
  await goTo(page, '#/settings');
  await speaks(page, longer, 'settings.language');
  for (const { name } of [defaultLanguage, ...pseudoLanguages]) await untilSeen(page, name);
  await choose(page, mirrored.name);
  await speaks(page, mirrored, 'settings.title');
  await server.stop(); // it is kept on the phone, as all is
  await page.goto(server.url);
  await speaks(page, mirrored);
});

test('with one language there is none to choose', async (t) => {
  readIn(defaultLanguage);
  const { page } = await openSite(t);
  await untilState(page, 'ready');
  await goTo(page, '#/settings');
  await untilSeen(page, words('settings.title'));
  assert.ok(!(await seen(page)).includes(words('settings.language')));
});
