// A card from one phone to the other by QR codes: drawn by the page, read by a
// decoder that is not ours, from pictures and from a camera that films them.
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { test } from 'node:test';
import { untilRow } from './bike-page.js';
import { keep, openReady, ownCard, packOf } from './cards-page.js';
import { goTo, plant, plantIn, stored } from './job-page.js';
import { launchChromium, startServer, temporaryFolder } from './launch.js';
import { untilState } from './page.js';
import { patience } from './patience.js';
import { field, seen, tap, tapText, untilSeen } from './person.js';
import { film } from './film.js';
import { pieces, words } from './words.js';
import { codesOf } from '../../app/cards/qr/codes.js';

const decoder = readFileSync(createRequire(import.meta.url).resolve('jsqr'), 'utf8');

/** The sample card that says most. */
const largest = readdirSync(new URL('../../../specs/cards', import.meta.url))
  .map((name) => readFileSync(new URL(`../../../specs/cards/${name}`, import.meta.url), 'utf8'))
  .map((text) => JSON.parse(text))
  .sort((a, b) => JSON.stringify(b).length - JSON.stringify(a).length)[0];

/** Gives a page the decoder, as the browser's own where it has none. */
async function withDecoder(page) {
  await page.evaluateOnNewDocument(`{ const module = {}; const exports = {}; globalThis.jsQR = (() => {
    const self = {}; ${decoder}; return self.jsQR ?? module.exports ?? exports.jsQR; })(); }`);
  await page.evaluateOnNewDocument(() => {
    globalThis.BarcodeDetector = class {
      static getSupportedFormats = async () => ['qr_code'];
      async detect(source) {
        const [width, height] = [
          source.videoWidth ?? source.width,
          source.videoHeight ?? source.height,
        ];
        if (!width) return [];
        const context = new OffscreenCanvas(width, height).getContext('2d');
        context.drawImage(source, 0, 0);
        const { data } = context.getImageData(0, 0, width, height);
        const found = globalThis.jsQR(data, width, height);
        return found?.data ? [{ rawValue: found.data }] : [];
      }
    };
  });
}

/** Shows a card's codes; resolves to {texts, pictures}, PNG as a phone shows them. */
async function photograph(page, key) {
  await goTo(page, `#/cards/show/${key}`);
  return photographed(page);
}

/** The codes on the screen, as {texts, pictures}. */
async function photographed(page) {
  await untilSeen(page, words('qr.show.how'));
  await tapText(page, words('qr.as-text'));
  const texts = (await (await field(page, words('qr.as-text.how'))).evaluate((f) => f.value)).split(
    '\n',
  );
  const pictures = [];
  for (let n = 1; n <= texts.length; n++) {
    await untilSeen(page, words('qr.code', { n, of: texts.length }));
    pictures.push(Buffer.from(await (await page.$('.qr svg')).screenshot({ type: 'png' })));
    if (texts.length > 1) await tap(page, words('qr.next'));
  }
  return { texts, pictures };
}

test('the largest sample card comes back to the byte from pictures, in any order', async (t) => {
  const { page, complaints } = await openReady(t, withDecoder);
  const { texts, pictures } = await photograph(page, largest.id);
  assert.ok(texts.length > 1, 'several codes');
  const folder = await temporaryFolder(t);
  const paths = pictures.map((_, n) => join(folder, `${n}.png`));
  await Promise.all(pictures.map((picture, n) => writeFile(paths[n], picture)));

  await goTo(page, '#/cards/read');
  const input = await page.waitForSelector('#qr-pictures');
  await input.uploadFile(paths.at(-1));
  await untilSeen(page, words('qr.got', { read: 1, count: texts.length, got: texts.length }));
  await input.uploadFile(...paths.slice(0, -1).reverse());
  await untilSeen(page, words('pack.same.why'));
  assert.deepEqual(complaints, []);
});

test('a camera films the codes of a card of one’s own, and it is taken in', async (t) => {
  const heron = ownCard('heron', 'Heron 500');
  const { page, url } = await openReady(t, withDecoder);
  await goTo(page, '#/cards');
  await tapText(page, words('cards.paste'));
  const area = await field(page, words('cards.paste.text'));
  await area.evaluate((element, value) => (element.value = value), packOf(heron));
  await tap(page, words('cards.paste.read'));
  await keep(page, 1);
  const [{ key, text }] = await stored(page, 'cards');
  const { pictures } = await photograph(page, key);
  const path = join(await temporaryFolder(t), 'codes.y4m');
  await film(page, pictures, path);

  const browser = await launchChromium(undefined, [
    '--use-fake-ui-for-media-stream',
    '--use-fake-device-for-media-stream',
    `--use-file-for-fake-video-capture=${path}`,
  ]);
  t.after(() => browser.close());
  const other = await browser.newPage();
  await withDecoder(other);
  await other.goto(url);
  await untilState(other, 'ready');
  await goTo(other, '#/cards/read');
  await tap(other, words('qr.camera'));
  await untilSeen(other, words('pack.new.why'), patience(60));
  assert.equal(await other.$('video'), null, 'the camera is off');
  await keep(other, 1);
  assert.equal((await stored(other, 'cards'))[0].text, text);
});

test('codes as text: pasted, mixed, foreign and cut ones are told', async (t) => {
  const { page, complaints } = await openReady(t);
  const { texts } = await photograph(page, largest.id);
  const { texts: others } = await photograph(page, 'marrowick-pip-130');
  await goTo(page, '#/cards/read');
  await untilSeen(page, words('qr.no-reader'));
  const paste = async (lines) => {
    const area = await field(page, words('qr.paste'));
    await area.evaluate((element, value) => (element.value = value), lines.join('\n'));
    await tap(page, words('qr.paste.read'));
  };
  await paste([texts[1]]);
  await untilSeen(page, words('qr.got', { read: 1, count: texts.length, got: 2 }));
  await paste([others[0]]);
  await untilSeen(page, words('qr.other'));
  await paste(['hello']);
  await untilSeen(page, words('qr.not-ours'));
  await paste([texts[0].slice(0, -3), ...texts.slice(2)]);
  await untilSeen(page, words('qr.damaged'));
  await paste(texts);
  await untilSeen(page, words('pack.same.why'));
  assert.ok(!(await seen(page)).includes(words('qr.damaged')));
  assert.deepEqual(complaints, []);
});

const told = (seq, kind, more) => ({
  book: 'bike',
  of: 'twin',
  id: `f${seq}`,
  kind,
  time: `2026-11-20T09:0${seq}:00.000Z`,
  day: '2026-11-20',
  seq,
  ...more,
});

/** A bike of somebody, with one job. */
async function fill(page) {
  const { id, make, model } = largest;
  await plantIn(
    page,
    'facts',
    told(1, 'follows', { value: id }),
    told(2, 'told', { what: 'called', value: 'The green one' }),
    told(3, 'told', { what: 'plate', value: 'KX 12' }),
    told(4, 'told', { what: 'owner', value: 'Odile Quarry' }),
  );
  await plantIn(page, 'bikes', { id: 'twin', stale: 'planted' });
  const started = '2026-11-20T09:00:00.000Z';
  const bench = { system: 'metric', place: 'garage' };
  const name = `${make} ${model}`;
  const job = { id: 'j', name, started, card: largest, bench, bike: 'twin', summary: {} };
  await plant(page, job, [{ id: 'e1', kind: 'note', text: 'Quiet engine', time: started }]);
  await page.reload();
  await untilRow(page, 'The green one');
}

/** Reads texts of codes as pasted lines. */
async function pasteCodes(page, lines, anew = true) {
  if (anew) await goTo(page, '#/cards/read');
  const area = await field(page, words('qr.paste'));
  await area.evaluate((element, value) => (element.value = value), lines.join('\n'));
  await tap(page, words('qr.paste.read'));
}

test('a bike goes with its record from one phone to another as codes, once it is agreed to', async (t) => {
  const { page, complaints } = await openReady(t);
  await fill(page);
  await goTo(page, '#/details/twin');
  await tap(page, words('give.codes'), 'link');
  await untilSeen(page, words('give.codes.without'));
  assert.equal((await seen(page)).includes('KX 12'), false, 'no picture of it shows the plate');
  const { texts, pictures } = await photographed(page);
  assert.ok(texts.length > 1, 'several codes');
  assert.ok(texts.every((code) => code.startsWith('TSB1:')));
  await tap(page, words('give.back'), 'link');
  await untilSeen(page, words('give.codes.how'));

  const { page: other, complaints: others } = await openReady(t, withDecoder);
  const folder = await temporaryFolder(t);
  const paths = pictures.map((_, n) => join(folder, `${n}.png`));
  await Promise.all(pictures.map((picture, n) => writeFile(paths[n], picture)));
  await goTo(other, '#/cards/read');
  const input = await other.waitForSelector('#qr-pictures');
  await input.uploadFile(...paths.reverse());
  await untilSeen(other, words('restore.rule'));
  const [whole] = pieces('restore.codes-whole');
  assert.ok((await seen(other)).includes(whole.trim()));
  for (const list of ['facts', 'jobs', 'bikes'])
    assert.deepEqual(await stored(other, list), [], `${list} before it is agreed to`);

  await tap(other, words('restore.do'));
  await untilSeen(other, words('restore.done'));
  assert.deepEqual((await stored(other, 'facts')).map(({ id }) => id).sort(), ['f1', 'f2']);
  await tap(other, words('restore.bikes'), 'link');
  await untilSeen(other, 'The green one');
  await goTo(other, '#/record/j');
  await untilSeen(other, 'Quiet engine');
  assert.deepEqual([...complaints, ...others], []);
});

test('codes of a bike: mixed with a card’s, left alone, and hostile ones are told', async (t) => {
  const { page, complaints } = await openReady(t);
  await fill(page);
  await goTo(page, '#/keep/show/twin?persons=yes');
  await untilSeen(page, words('give.codes.with'));
  const { texts } = await photographed(page);
  const { page: other, complaints: others } = await openReady(t);
  const cards = await codesOf(JSON.stringify(largest));
  await pasteCodes(other, [texts[0], cards[0]]);
  await untilSeen(other, words('qr.other'));
  await pasteCodes(other, texts.slice(1), false);
  await untilSeen(other, words('restore.rule'));
  await tap(other, words('restore.leave'));
  await untilSeen(other, words('keep.why'));
  assert.deepEqual(await stored(other, 'facts'), []);

  await pasteCodes(other, await codesOf('{"format":"something else"}\n', 'bike'));
  await untilSeen(other, words('restore.codes-damaged'));
  await tap(other, words('restore.codes-again'), 'link');
  await pasteCodes(other, await codesOf('x'.repeat(9_000_000), 'bike'));
  await untilSeen(other, words('qr.too-large'));
  assert.deepEqual(await stored(other, 'facts'), []);
  assert.deepEqual([...complaints, ...others], []);
});

test('a bike whose record fits into no codes says so', async (t) => {
  const { page } = await openReady(t);
  await fill(page);
  const word = (n) => ((n * 2654435761) % 4294967296).toString(36);
  const value = (n) => Array.from({ length: 12 }, (_, at) => word(n * 97 + at * 9973)).join(' ');
  const long = Array.from({ length: 300 }, (_, n) =>
    told(5, 'told', { id: `l${n}`, seq: n + 5, what: 'words', value: value(n) }),
  );
  await plantIn(page, 'facts', ...long);
  await goTo(page, '#/keep/show/twin');
  await untilSeen(page, words('give.codes.large'));
  assert.equal(await page.$('.qr'), null);
});

test('a camera that is refused is said, with what else can be done', async (t) => {
  const { page } = await openReady(t, async (fresh) => {
    await withDecoder(fresh);
    await fresh.evaluateOnNewDocument(() => {
      navigator.mediaDevices.getUserMedia = async () => {
        throw new DOMException('planted', 'NotAllowedError');
      };
    });
  });
  await goTo(page, '#/cards/read');
  await tap(page, words('qr.camera'));
  await untilSeen(page, words('qr.no-camera'));
});

test('the server lets the page, and no other, use the camera', async (t) => {
  const { url } = await startServer(t);
  const policy = (await fetch(url)).headers.get('permissions-policy');
  assert.match(policy, /camera=\(self\)/);
  assert.match(policy, /geolocation=\(\)/);
});
