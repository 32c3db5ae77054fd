// The walk in every engine that can be had here, two at a time; ENGINES="webkit firefox"
// names those to walk in. What came of it is written to build/engines.json, of which
// `make engines-table` makes the tables in README.md and DEVELOPERS.md.
import assert from 'node:assert/strict';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { after, before, describe, test } from 'node:test';
import { exportEditions } from '../browser/editions.js';
import { startServer } from '../browser/launch.js';
import { engineNames, NotHere } from './driver.js';
import { faultsAmong } from './complaints.js';
import { expectedOf } from './exceptions.js';
import { leaveOut } from './left-out.js';
import { Phone } from './phone.js';
import { byEngine, rowsIn, tables } from './table.js';
import { linesOf } from './walk.js';

const root = new URL('../../../', import.meta.url);
const names = process.env.ENGINES?.split(' ') ?? engineNames;

/** What all walks share: the editions of the site, and what the core answers natively. */
const shared = {};

const asJSON = (input) => ({
  method: 'POST',
  headers: { 'Content-Type': 'application/json' },
  body: JSON.stringify(input),
});

/** Name of the engine -> what was seen there. */
const seen = {};

/** The complaints that came after those before; an engine that was started anew may have forgotten them. */
const newAmong = (now, before) =>
  before.every((text, n) => now[n] === text) ? now.slice(before.length) : now;

const nonsense = /\b(undefined|NaN|null)\b|\[object|\{\w+\}/;

/** One line: what it came to, and that the engine had nothing to complain of. */
async function walkLine(phone, line) {
  const { engine: first } = phone;
  const before = await first.errors();
  const found = (await line.run(phone)) ?? { outcome: 'works' };
  const expected = expectedOf(first.name, line.id);
  assert.equal(found.outcome, expected.outcome, JSON.stringify({ found, expected }));
  const { engine } = phone; // it may have been started anew
  assert.doesNotMatch(await engine.seen(), nonsense);
  const complaints = faultsAmong(engine.name, newAmong(await engine.errors(), before));
  assert.deepEqual(complaints, [], 'complaints');
  return { ...found, because: expected.because };
}

describe('the walk', { concurrency: 2 }, () => {
  const endings = [];
  const t = { after: (ending) => endings.push(ending) };

  before(async () => {
    const [now, next] = await exportEditions(t);
    const { url } = await startServer(t);
    const ask = async (op, input) => (await fetch(`${url}api/${op}`, asJSON(input))).json();
    Object.assign(shared, { editions: { now, next }, ask });
  });

  after(async () => {
    mkdirSync(new URL('build/', root), { recursive: true });
    writeFileSync(new URL('build/engines.json', root), `${JSON.stringify(seen, null, 2)}\n`);
    for (const ending of endings.reverse()) await ending();
  });

  for (const name of names)
    test(name, async (own) => {
      let phone;
      try {
        phone = await Phone.open(own, name, shared);
      } catch (error) {
        if (!(error instanceof NotHere)) throw error;
        return leaveOut(own, name, error.message);
      }
      seen[name] = { version: phone.engine.version, lines: {} };
      for (const line of linesOf(name))
        await own.test(line.id, async () => {
          seen[name].lines[line.id] = await walkLine(phone, line);
        });
    });
});

test('README.md and DEVELOPERS.md say what was seen', () => {
  for (const [file, rowsOf] of Object.entries(tables)) {
    const told = byEngine(rowsIn(readFileSync(new URL(file, root), 'utf8')));
    for (const [name, now] of Object.entries(byEngine(rowsOf(seen))))
      assert.deepEqual(told[name], now, `${file}, ${name}: make engines-table writes it anew`);
  }
});
