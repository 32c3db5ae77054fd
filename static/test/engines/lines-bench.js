// The lines of the walk about calculations and trouble.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { words } from '../browser/words.js';
import { write } from './write.js';

/** What is typed into each: fields with letters, and lists. */
const questions = [
  { op: 'convert', typed: { text: '18 ft-lb' } },
  { op: 'run-out', typed: { volume: '3 L', hole: '12 mm', temperature: '65 °C' } },
  {
    op: 'cool',
    typed: { first: '95 °C', second: '80 °C', between: '10 min', air: '18 °C', target: '57 °C' },
  },
  { op: 'level', typed: { band: '400 mL', share: '20 %' }, chosen: { gauge: 'window' } },
  {
    op: 'torque-check',
    typed: { thread: 'M12x1.5', torque: '177 N·m' },
    chosen: { what: 'plug', seal: 'flat-copper', seat: 'aluminium' },
  },
];

const told = (text, values) => (text.startsWith('@') ? words(text.slice(1), values) : text);
const plain = (text) =>
  text
    .replace(/\s+/g, ' ')
    .replace(/[\u2066-\u2069]/g, '')
    .trim();

/** The figures of an answer as they are to be read: [name, value]. */
const figuresOf = (answer) =>
  ['before', 'after', 'figures', 'touch', 'assumed']
    .flatMap((list) => answer[list] ?? [])
    .map(({ name, texts = ['@not-known'], values }) => [
      plain(words(name)),
      plain(told(texts[0], values)),
    ]);

/**
 * Runs in the page: the figures that stand there, [name, value]. Where they are to be
 * others, false: an answer to what stood in the form before may stand there still.
 */
const figuresShown = (wanted) => {
  const shown = [...document.querySelectorAll('.worked .figure')].map((row) =>
    ['dt', '.value'].map((part) =>
      row
        .querySelector(part)
        .textContent.replace(/\s+/g, ' ')
        .replace(/[\u2066-\u2069]/g, '')
        .trim(),
    ),
  );
  return !wanted || JSON.stringify(shown) === JSON.stringify(wanted) ? shown : false;
};

/** The value of a list of the form, by its name. */
const choose = (engine, name, value) =>
  engine.until(
    (of, want) => {
      const list = document.querySelector(`.calculation select[name="${of}"]`);
      if (!list) return false;
      list.value = want;
      list.dispatchEvent(new Event('change', { bubbles: true }));
      return list.value === want;
    },
    name,
    value,
  );

async function work(phone, { op, typed, chosen = {} }) {
  const { engine, ask } = phone;
  await phone.goTo(`#/bench/${op}`);
  await engine.untilSeen(words(`calc.${op}`));
  for (const [name, value] of Object.entries(chosen)) await choose(engine, name, value);
  for (const [name, text] of Object.entries(typed))
    await write(engine, `.calculation [name="${name}"]`, text);
  await phone.tap(words('bench.work'), 'button');
  await engine.untilSeen(words('bench.worked'));
  const { ok } = await ask(op, { ...typed, ...chosen, system: 'metric' });
  assert.ok(ok, `${op} is answered natively`);
  const wanted = figuresOf(ok);
  await engine.until(figuresShown, wanted).catch(() => {}); // what stands there instead is told
  const shown = await engine.evaluate(figuresShown);
  assert.deepEqual(shown, wanted, `${op}: ${JSON.stringify({ ...typed, ...chosen })}`);
  if (ok.verdict) await engine.untilSeen(words(ok.verdict));
  if (op === 'convert') for (const text of ok.texts) await engine.untilSeen(text);
  return shown.length;
}

export const calculations = {
  id: 'five calculations, as the core answers natively',
  async run(phone) {
    let figures = 0;
    for (const question of questions) figures += await work(phone, question);
    assert.ok(figures > 10, `${figures} figures`);
  },
};

const answers = { where: 'hard', tyre: 'no' };
const table = JSON.parse(
  readFileSync(new URL('../../../specs/faults.json', import.meta.url), 'utf8'),
);

export const trouble = {
  id: 'trouble with two questions',
  async run(phone) {
    const { engine } = phone;
    await phone.goTo('#/bikes');
    await phone.tap(words('bikes.roadside'), 'link');
    await phone.tap(words('fault-door.drop'), 'link');
    await phone.tap(words('fault.spill'), 'link');
    const follows = (text) => document.querySelector('.follows')?.innerText.includes(text);
    const given = {};
    const outcomes = [];
    for (const [question, answer] of [[], ...Object.entries(answers)]) {
      if (question) {
        await phone.tap(words(`fault-answer.${question}.${answer}`), 'radio');
        given[question] = answer;
      }
      const { ok } = await phone.ask('fault', { table, id: 'spill', answers: given });
      assert.ok(ok, 'answered natively');
      await engine.until(follows, words(`outcome.${ok.outcome}`));
      outcomes.push(ok.outcome);
    }
    assert.deepEqual(outcomes, ['do-not-ride', 'do-not-ride', 'carry-on']);
  },
};
