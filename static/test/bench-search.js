// How long the list of bikes takes to follow what is typed, among 10,000 own cards.
import { polling, untilState } from './browser/page.js';
import { field } from './browser/person.js';
import { launchChromium, startServer } from './browser/launch.js';
import { sampleCard, words } from './browser/words.js';
import { median } from './median.js';

const count = 10_000;
const slowdown = 4;
// What is typed, a key at a time, and taken back: few letters fit most bikes.
const typed = ['plainford heron 77', 'wet 1995', '2003 oil', 'no such bike', 'e'];

/**
 * [{name, median, worst}] in ms: from a key to the picture that answers it, and
 * from the address to the own bikes on the screen.
 */
export async function searchTimes() {
  const endings = [];
  const server = await startServer({ after: (end) => endings.push(end) });
  const browser = await launchChromium();
  try {
    const page = await browser.newPage();
    await page.setViewport({ width: 360, height: 740 });
    await page.goto(server.url);
    await untilState(page, 'ready');
    await fill(page);
    const devtools = await page.createCDPSession();
    await devtools.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
    const opened = [];
    for (let run = 0; run < 5; run++) opened.push(await open(page));
    const keys = await keystrokes(page, words('bikes.search'), typed);
    return [
      { name: 'a keystroke', median: median(keys), worst: Math.max(...keys) },
      { name: 'opening the page', median: median(opened), worst: Math.max(...opened) },
    ];
  } finally {
    await browser.close();
    for (const end of endings) await end();
  }
}

/** Puts 10,000 own cards into the store unseen by the page. */
export async function fill(page) {
  const card = sampleCard('ondrake-quarto-830');
  const { ok } = await page.evaluate(
    (sample) => globalThis.tidysump.core.call('cards', { cards: [sample], canonical: true }),
    card,
  );
  const [{ text, ...bike }] = ok.bikes;
  await page.evaluate(plant, { card, text, bike, count });
}

/** Runs in the page. */
function plant({ card, text, bike, count: many }) {
  const models = ['Heron', 'Otter', 'Kestrel', 'Plover', 'Vole', 'Curlew', 'Marten'];
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open('tidysump');
    opening.onsuccess = () => {
      const tx = opening.result.transaction(['cards', 'lines'], 'readwrite');
      for (let n = 0; n < many; n++) {
        const name = `Plainford ${models[n % models.length]} ${n}`;
        const years = `${1980 + (n % 40)}–${1985 + (n % 40)}`;
        const line = {
          key: `key-${n}`,
          bike: { ...bike, id: `bike-${n}`, name, years },
          changed: `2026-01-01T00:00:${String(n % 60).padStart(2, '0')}.000Z`,
          pinned: n % 1000 === 0,
        };
        tx.objectStore('lines').put(line);
        tx.objectStore('cards').put({ ...line, card, text });
      }
      tx.oncomplete = () => (opening.result.close(), resolve());
      tx.onabort = () => reject(tx.error);
    };
  });
}

/** Opens the page anew; resolves to when the own bikes stood there. */
async function open(page) {
  await page.reload();
  const there = () => document.querySelector('.own') && performance.now();
  return (await page.waitForFunction(there, { polling: 'raf' })).jsonValue();
}

/** The time of each key typed into the field of that label, to the end of the frame that shows what it did. */
export async function keystrokes(page, label, typed) {
  const input = await field(page, label);
  await input.focus();
  await input.evaluate((element) => {
    globalThis.times = [];
    element.addEventListener('input', ({ timeStamp }) => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => globalThis.times.push(performance.now() - timeStamp);
      requestAnimationFrame(() => port2.postMessage(0));
    });
  });
  let keys = 0;
  for (const text of typed) {
    for (const key of [...text, ...Array(text.length).fill('Backspace')]) {
      await input.press(key === ' ' ? 'Space' : key);
      await page.waitForFunction((n) => globalThis.times.length >= n, { polling }, ++keys);
    }
  }
  return page.evaluate(() => globalThis.times);
}
