// The same work by the core natively, as WebAssembly in Node, and in the page's
// worker with all that lies between the page and it.
import { execFile } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { launchChromium, startServer } from './browser/launch.js';
import { coreInNode } from './core-in-node.js';
import { median } from './median.js';

const root = new URL('../../', import.meta.url);
const warmUp = 100;
const runs = 500;
const surveys = 40;
const starts = 5; // of browsers

/** [{name, micros}]: what the plans of all sample cards cost; native comes first. */
export async function coreCosts() {
  return [
    { name: 'native', micros: await native() },
    { name: 'WebAssembly in Node', micros: await inNode() },
    { name: "the page's worker", micros: await inPage() },
  ];
}

const cards = () => {
  const folder = new URL('specs/cards/', root);
  return readdirSync(folder).map((name) => JSON.parse(readFileSync(new URL(name, folder), 'utf8')));
};

/** [{name, micros}]: what one job of 30 events costs among 200 in a call. */
export async function surveyCosts() {
  const folder = await mkdtemp(join(tmpdir(), 'survey-'));
  try {
    const SURVEY = join(folder, 'input.json');
    const micros = await native('Survey', { SURVEY });
    const input = await readFile(SURVEY, 'utf8');
    const { length } = JSON.parse(input).jobs;
    const call = await coreInNode();
    const times = Array.from({ length: surveys }, () => {
      const begin = performance.now();
      call('survey', input);
      return performance.now() - begin;
    });
    return [
      { name: 'native', micros },
      { name: 'WebAssembly in Node', micros: (median(times) * 1000) / length },
    ];
  } finally {
    await rm(folder, { recursive: true });
  }
}

const pages = () => {
  const folder = new URL('testdata/pages/', root);
  const files = readdirSync(folder, { recursive: true }).filter((name) => name.endsWith('.json'));
  return files.map((name) => JSON.parse(readFileSync(new URL(name, folder), 'utf8')).text);
};

/**
 * [{name, micros}]: what it costs to read 100 kB of manuals' pages, of many bikes, and what
 * the first text costs that a program reads, warmed up or not: what it needs is made then,
 * and its code is still slow. Then a page of 2 kB.
 */
export async function pageCosts() {
  const text = pages().join('\n\n').slice(0, 100_000);
  const small = text.slice(0, 2000);
  const input = JSON.stringify({ text });
  const call = await coreInNode();
  const times = Array.from({ length: surveys }, () => {
    const begin = performance.now();
    call('read-page', input);
    return performance.now() - begin;
  });
  const rows = [
    { name: 'native', micros: await native('Read$/^100kB', {}, './internal/manual') },
    { name: 'WebAssembly in Node', micros: median(times) * 1000 },
  ];
  for (const [what, given] of [
    ["the page's worker", text],
    ['a page of 2 kB there', small],
  ]) {
    const { later, warm, cold } = await readInPage(given);
    rows.push(
      { name: what, micros: later },
      { name: '  the first text, warmed up', micros: warm },
      { name: '  the first text, not', micros: cold },
    );
  }
  return rows;
}

/** [{name, micros}]: what a kB costs natively of texts of so many kB. */
export async function kiloCosts() {
  const rows = [];
  for (const size of [10, 50, 100]) {
    const micros = await native(`Read$/^${size}kB`, {}, './internal/manual');
    rows.push({ name: `of ${size} kB`, micros: micros / size });
  }
  return rows;
}

/** What a text costs the page's worker in µs: the first of all, and later. */
async function readInPage(text) {
  const endings = [];
  const server = await startServer({ after: (end) => endings.push(end) });
  const firsts = { warm: [], cold: [] };
  const laters = [];
  for (let run = 0; run < 2 * starts; run++) {
    const how = run % 2 ? 'warm' : 'cold';
    const browser = await launchChromium();
    try {
      const page = await browser.newPage();
      await page.goto(server.url);
      const [first, , ...later] = await page.evaluate(timeReading, text, how, surveys / starts);
      firsts[how].push(first);
      laters.push(...later);
    } finally {
      await browser.close();
    }
  }
  for (const end of endings) await end();
  const [later, warm, cold] = [laters, firsts.warm, firsts.cold].map((list) => median(list) * 1000);
  return { later, warm, cold };
}

/** Runs in the page. */
async function timeReading(text, how, count) {
  const { core } = globalThis.tidysump;
  await core.call('forms', {}); // the program has started
  for (let warm = 1, more = how === 'warm'; more; warm++) {
    const { ok } = await core.call('read-page', { text: '', warm });
    more = ok.more;
  }
  const times = [];
  for (let run = 0; run <= count; run++) {
    const begin = performance.now();
    await core.call('read-page', { text });
    times.push(performance.now() - begin);
  }
  return times;
}

async function native(benchmark = 'Plan', env = {}, room = './internal/core') {
  const args = ['test', '-run', '^$', '-bench', `^Benchmark${benchmark}$`, '-count', '7'];
  const { stdout } = await promisify(execFile)('go', [...args, room], {
    cwd: fileURLToPath(root),
    env: { ...process.env, ...env },
  });
  return median([...stdout.matchAll(/([\d.]+) ns\/op/g)].map(([, nanos]) => nanos / 1000));
}

async function inNode() {
  const call = await coreInNode();
  const inputs = cards().map((card) => JSON.stringify({ card }));
  const times = [];
  for (let run = -warmUp; run < runs; run++) {
    const begin = performance.now();
    for (const input of inputs) call('plan', input);
    if (run >= 0) times.push(performance.now() - begin);
  }
  return median(times) * 1000;
}

async function inPage() {
  const endings = [];
  const server = await startServer({ after: (end) => endings.push(end) });
  const browser = await launchChromium();
  try {
    const page = await browser.newPage();
    await page.goto(server.url);
    const times = await page.evaluate(timePlans, cards(), warmUp, runs);
    return median(times) * 1000;
  } finally {
    await browser.close();
    for (const end of endings) await end();
  }
}

/** Runs in the page. */
async function timePlans(inputs, warmUp, runs) {
  const times = [];
  for (let run = -warmUp; run < runs; run++) {
    const begin = performance.now();
    for (const card of inputs) await globalThis.tidysump.core.call('plan', { card });
    if (run >= 0) times.push(performance.now() - begin);
  }
  return times;
}
