import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { before, test } from 'node:test';
import { spoken } from './spoken.js';
import { loadWords } from '../words/catalogue.js';
import { defaultLanguage, entriesOf } from '../../test/catalogue.js';

const plan = async (name) =>
  JSON.parse(
    await readFile(new URL(`../../../testdata/plans/${name}.json`, import.meta.url), 'utf8'),
  );

before(async (context) => {
  context.mock.method(globalThis, 'fetch', async () => Response.json(entriesOf(defaultLanguage)));
  await loadWords(defaultLanguage);
});

test('a step is read in the order of the screen: title, cautions, doing, timer, figures, readings', async () => {
  const { steps } = await plan('tessaly-corda-570.metric');
  const [title, ...rest] = spoken(steps.find(({ id }) => id === 'run-out'));
  assert.equal(title, 'Let it run: engine');
  const order = [
    'WARNING! ',
    'Let the oil run. Open the filler',
    'Timer: Oil runs out, 5 minutes',
    'Let it run: 5 to 10',
  ];
  assert.equal(rest.length, order.length);
  order.forEach((begin, i) => assert.ok(rest[i].startsWith(begin), `${rest[i]} / ${begin}`));
  const tighten = spoken(steps.find(({ id }) => id === 'tighten-drain'));
  assert.ok(tighten.includes('Write down: Torque used'), tighten.join('\n'));
});

test('every step of every plan is read whole: no id, no placeholder, no unit as a sign', async () => {
  for (const name of [
    'ondrake-meridano-1130.all',
    'tessaly-corda-570.us-keep-filter',
    'hallowmoor-drover-1360.all',
  ]) {
    for (const step of (await plan(name)).steps) {
      for (const sentence of spoken(step)) {
        const odd = sentence.match(
          /[{}@]|\u00a0|N·m|lbf|°|\b(step|caution|figure|timer|say)\.[a-z]|undefined/,
        );
        assert.equal(odd, null, `${name}, ${step.id}: ${sentence}`);
      }
    }
  }
});

test('what is not known is said as that, with the place to find it', () => {
  const step = {
    word: 'step.tighten',
    values: { purpose: '@purpose.drain-plug' },
    figures: [{ name: 'figure.torque', standing: 'unknown', lookup: 'lookup.torque' }],
  };
  const said = spoken(step).at(-1);
  assert.ok(said.startsWith('Torque: not known. Look in the manual for the table'), said);
});

test('what was found on the way, and says stop, is read before the step', () => {
  const step = { id: 'first-start', word: 'step.first-start', warns: [] };
  const state = {
    warns: [{ step: 'first-start', signal: 'WARNING', word: 'caution.found-stop' }],
    problems: [
      { what: 'fell-in', outcome: 'do-not-start', stops: true },
      { what: 'drop-plug', outcome: 'carry-on' },
    ],
  };
  const said = spoken(step, state);
  assert.ok(said[1].endsWith(': Do not start'), said[1]);
  assert.ok(said[2].startsWith('WARNING! '), said[2]);
  assert.equal(said.length, 4, 'what does not stop the bike is not among them');
  assert.equal(spoken({ ...step, id: 'identify' }, { ...state, problems: [] }).length, 2);
});

test('the step that decides reads the verdict and what to do next', async () => {
  const { steps } = await plan('tessaly-corda-570.metric');
  const step = steps.find(({ sums }) => sums);
  const said = spoken(step, { verdict: 'debris.stop', actions: ['next.no-start', 'next.keep'] });
  const at = said.findIndex((sentence) => sentence.startsWith('Stop: do not start or ride it'));
  assert.ok(at > 0 && said[at + 1].startsWith('Do not start or ride it'), said.join('\n'));
  assert.ok(said[at + 2].startsWith('Keep the pieces'), said.join('\n'));
  const unsaid = spoken(step).join('\n');
  assert.match(unsaid, /Nobody has told what came out/);
});

test('what is open is read before a step at which it must not be, and at no other', () => {
  const step = { id: 'first-start', word: 'step.first-start' };
  const state = {
    open: [{ of: 'drain', purpose: 'purpose.drain-plug', place: 'below', count: 1, step: 'on' }],
    openAt: [{ step: 'first-start', signal: 'WARNING', word: 'caution.still-open' }],
  };
  const said = spoken(step, state);
  assert.ok(said[1].startsWith('WARNING! Something is open, and'), said[1]);
  assert.equal(said[2], '1 × drain plug: below');
  assert.equal(spoken({ ...step, id: 'decide' }, state).length, 2);
});

test('the notes of the card come before the act, what is to be touched after it', () => {
  const item = { word: 'tally.place', count: 6 };
  const said = spoken({
    id: 'count',
    word: 'step.other-version',
    values: { id: 'x' },
    notes: ['Mind the @hose.'],
    tally: [{ ...item, values: { place: 'below', purpose: '@purpose.strainer-cap' } }],
  });
  const note = said.findIndex((sentence) => sentence.endsWith('Mind the @hose.'));
  assert.equal(note, 1, said.join(' | '));
  assert.equal(said.at(-1), '6 × strainer cap: below');
  assert.equal(said.length, 4);
});
