// What the settings tell of the records, and of the way to the home screen: it is true of
// the browser that it is told in.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { goTo, startJob, stored } from './job-page.js';
import { openBrowser, startServer } from './launch.js';
import { openSite } from './open-site.js';
import { untilState } from './page.js';
import { patience } from './patience.js';
import { seen, tap, tapText, untilSeen } from './person.js';
import { applePhone } from './phones.js';
import { words } from './words.js';

/** What lies in the store of what the browser said. */
const remembered = async (page) =>
  (await stored(page, 'settings')).find((value) => typeof value?.kept === 'boolean');

/** Asserts that a sentence is on the screen, or that it isn't. */
async function told(page, id, is = true) {
  const text = await seen(page);
  assert.equal(text.includes(words(id)), is, `${id} in: ${text}`);
}

/** Runs in the page, before it: the browser's own offers to install it never come. */
const withoutOffers = () =>
  addEventListener(
    'beforeinstallprompt',
    (event) => event.isTrusted && event.stopImmediatePropagation(),
  );

test('in a tab of Chromium: not asked, then asked, then promised, as the browser says itself', async (t) => {
  const { page, url, browser, complaints } = await openSite(t);
  const persisted = () => page.evaluate(() => navigator.storage.persisted());
  await untilState(page, 'ready');
  await goTo(page, '#/settings');
  assert.equal(await persisted(), false, 'what is tested here');
  await untilSeen(page, words('storage.promise.not-asked'));
  await told(page, 'storage.rule.chromium');
  await told(page, 'storage.private');
  for (const id of ['storage.seven-days', 'storage.promise.granted', 'storage.spared'])
    await told(page, id, false);

  await goTo(page, '#/bikes');
  await startJob(page, 'Corda'); // which asks
  for (const from = Date.now(); !(await remembered(page));)
    assert.ok(Date.now() - from < patience(), 'the answer is remembered');
  assert.equal((await remembered(page)).kept, await persisted());
  await goTo(page, '#/settings');
  await untilSeen(page, words('storage.promise.refused'));
  await tap(page, words('storage.ask'));
  await untilSeen(page, words('storage.asked-again'));

  await browser
    .defaultBrowserContext()
    .overridePermissions(url.replace(/\/$/, ''), ['persistent-storage']);
  await tap(page, words('storage.ask'));
  await untilSeen(page, words('storage.promise.granted'));
  assert.equal(await persisted(), true);
  await told(page, 'storage.ask', false);
  assert.deepEqual(complaints, []);
});

test('in a window of its own: it says so, and no longer how it gets there', async (t) => {
  const { url } = await startServer(t);
  const browser = await openBrowser(t, undefined, [`--app=${url}`]);
  const [page] = await browser.pages();
  page.setDefaultTimeout(patience());
  await untilState(page, 'ready');
  const standalone = () => matchMedia('(display-mode: standalone)').matches;
  assert.ok(await page.evaluate(standalone), 'what is tested here');
  await goTo(page, '#/settings');
  await untilSeen(page, words('home.is-there'));
  for (const id of ['home.install', 'home.same', 'storage.private', 'storage.rule.chromium'])
    await told(page, id, false);
});

test('on the home screen of an iPhone: spared the seven days, with records of its own', async (t) => {
  const { page } = await openSite(t, async (page) => {
    await page.evaluateOnNewDocument(applePhone);
    await page.evaluateOnNewDocument(() => void (navigator.standalone = true));
  });
  await untilState(page, 'ready');
  await goTo(page, '#/settings');
  await untilSeen(page, words('storage.spared'));
  await told(page, 'storage.own');
  await told(page, 'home.is-there');
  for (const id of ['storage.seven-days', 'storage.private', 'home.apart'])
    await told(page, id, false);
});

test('in a browser of an iPhone: seven days, its own way first, the others behind a fold', async (t) => {
  const { page, complaints } = await openSite(t, async (page) => {
    await page.evaluateOnNewDocument(applePhone);
    await page.evaluateOnNewDocument(withoutOffers); // of Chromium, which it is
  });
  await untilState(page, 'ready');
  await goTo(page, '#/settings');
  await untilSeen(page, words('storage.seven-days'));
  await told(page, 'storage.rule.webkit');
  await told(page, 'home.share-below');
  await told(page, 'home.apart');
  for (const id of ['home.dots-above', 'home.dock', 'home.iphone', 'home.install'])
    await told(page, id, false);
  const pictures = () =>
    page.$$eval('figure.sketch svg', (all) =>
      all.filter((svg) => svg.checkVisibility()).map((svg) => svg.ariaLabel),
    );
  assert.deepEqual(await pictures(), [words('home.iphone.picture')]);
  await tapText(page, words('home.others'));
  await untilSeen(page, words('home.dock'));
  const all = await pictures();
  assert.equal(new Set(all).size, all.length, `each its own: ${all}`);
  assert.equal(all.length, 7);
  assert.deepEqual(complaints, []);
});

test('where the browser offers to install it, a button takes the offer, once', async (t) => {
  const { page } = await openSite(t, (page) => page.evaluateOnNewDocument(withoutOffers));
  await untilState(page, 'ready');
  await goTo(page, '#/settings');
  await untilSeen(page, words('settings.install'));
  const prevented = await page.evaluate(() => {
    const offer = new Event('beforeinstallprompt', { cancelable: true });
    offer.prompt = async () => ({ outcome: 'accepted' });
    dispatchEvent(offer);
    return offer.defaultPrevented;
  });
  assert.ok(prevented, 'the browser puts no bar of its own over the job');
  await tap(page, words('home.install'));
  await untilSeen(page, words('home.agreed'));
  await told(page, 'home.install', false);
});
