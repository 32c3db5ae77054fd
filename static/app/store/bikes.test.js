import 'fake-indexeddb/auto';
import assert from 'node:assert/strict';
import { beforeEach, test } from 'node:test';
import { FakeWorker } from '../../test/fake-worker.js';
import { bikeRow, bikeRows, freshBikes, keepBikes, tellBike, tied } from './bikes.js';
import { factsOf, forget, tell } from './facts.js';
import { removeAll } from './whole.js';

// A core that gives each bike what it was called last and where it went, and refuses "bad".
let asked = [];
let answers = true;

function garage({ facts, adding }) {
  asked.push(facts.map(({ of }) => of));
  if (!answers) return { findings: [{ code: 'core-unavailable', where: '/', grade: 'refuse' }] };
  const bikes = new Map();
  const findings = [];
  if (adding && facts.at(-1).value === 'bad')
    findings.push({ code: 'bad', where: `/facts/${facts.length - 1}/value`, grade: 'refuse' });
  for (const { of, kind, value } of facts) {
    const bike = bikes.get(of) ?? { id: of };
    bikes.set(of, bike);
    if (kind === 'told') bike.called = value;
    if (kind === 'joined') bike.into = value;
  }
  return { ok: { bikes: [...bikes.values()], findings } };
}

globalThis.document = { visibilityState: 'hidden' };
globalThis.Worker = function () {
  return new FakeWorker(({ op, input }) => ({
    output: JSON.stringify(op === 'garage' ? garage(JSON.parse(input)) : { ok: { call: 3000 } }),
  }));
};

beforeEach(async () => {
  await removeAll();
  [asked, answers] = [[], true];
});

const called = (value) => ({ kind: 'told', what: 'called', value });
const names = async () => (await bikeRows()).map(({ id, called }) => [id, called]);

test('what lists show of a bike follows what was told of it', async () => {
  assert.deepEqual(await tellBike('one', called('Blue')), []);
  await tellBike('one', called('Red'));
  const [last] = (await factsOf('bike', 'one')).slice(-1);
  assert.deepEqual(await bikeRow('one'), { id: 'one', called: 'Red', changed: last.time });
  const [{ code }] = await tellBike('one', called('bad'));
  assert.equal(code, 'bad');
  assert.equal((await bikeRow('one')).called, 'Red');
});

test('of what was told while no core answered the line is made at the next start', async () => {
  answers = false;
  await tell('bike', 'one', called('Blue'));
  await freshBikes();
  assert.ok((await bikeRow('one')).stale);
  answers = true;
  await keepBikes('v1');
  assert.deepEqual(await names(), [['one', 'Blue']]);
});

test('one bike that changes has the core asked of it and those joined with it, and of no other', async () => {
  await tellBike('one', called('Blue'));
  await tellBike('two', called('Red'));
  await tellBike('three', called('Green'));
  await tellBike('two', { kind: 'joined', value: 'one' });
  asked = [];
  await tell('bike', 'one', called('Navy'));
  await freshBikes();
  assert.deepEqual(
    asked.map((of) => [...new Set(of)].sort()),
    [['one', 'two']],
  );
  assert.deepEqual(await names(), [
    ['one', 'Navy'],
    ['three', 'Green'],
    ['two', 'Red'],
  ]);
});

test('many bikes go to the core in several calls, each with all of its facts', async () => {
  for (let n = 0; n < 30; n++) await tell('bike', `bike-${n}`, called(`Name ${n}`));
  await freshBikes();
  assert.ok(asked.length > 1, `${asked.length} calls`);
  assert.equal(new Set(asked.flat()).size, 30);
  assert.equal((await bikeRows()).filter(({ called }) => called).length, 30);
});

test('a new version of the app makes all anew, once', async () => {
  await tellBike('one', called('Blue'));
  await keepBikes('v1');
  asked = [];
  await keepBikes('v1');
  assert.deepEqual(asked, []);
  await keepBikes('v2');
  assert.deepEqual(asked, [['one']]);
});

test('a bike of which all is forgotten has no line', async () => {
  await tellBike('one', called('Blue'));
  await forget(await factsOf('bike', 'one'));
  await freshBikes();
  assert.deepEqual(await bikeRows(), []);
});

test('bikes that were joined go together, and those that a job was moved between', () => {
  const fact = (of, kind, how) => ({ of, kind, ...how });
  const groups = tied([
    fact('a', 'joined', { value: 'b' }),
    fact('b', 'told'),
    fact('c', 'job', { what: 'j' }),
    fact('d', 'job', { what: 'j' }),
    fact('e', 'told'),
    fact('f', 'joined', { value: 'a' }),
    fact('g', 'joined', { value: 'g' }),
    fact('h', 'job', { what: 'a' }),
  ]);
  assert.deepEqual(groups.map((group) => group.map(({ of }) => of).join('')).sort(), [
    'abf',
    'cd',
    'e',
    'g',
    'h',
  ]);
});
