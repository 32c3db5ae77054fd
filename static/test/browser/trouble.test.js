// Something is wrong: from the first screen and from a job, without a network.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { goTo, openAllSteps, startJob, stored, tapDone, untilStep } from './job-page.js';
import { staysAmiss } from './layout.js';
import { openSite, openWithoutServer } from './open-site.js';
import { polling } from './page.js';
import { choose, heading, seen, tap, tapText, type, untilSeen } from './person.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');

const outcome = (what) => words(`outcome.${what}`);
const answer = (question, a) => words(`fault-answer.${question}.${a}`);

const table = JSON.parse(
  readFileSync(new URL('../../../specs/faults.json', import.meta.url), 'utf8'),
);

/** Opens a problem as one does who is at the doors; gives the taps. */
async function open(page, id) {
  const { door, top } = table.faults.find((fault) => fault.id === id);
  if (!top) await tap(page, words(`fault-door.${door}`), 'link');
  await tap(page, words(`fault.${id}`), 'link');
  return top ? 1 : 2;
}

// What was answered, and what must follow. Of what can't wait the problem is one tap, of
// all others the door is another.
const roads = [
  ['oil-on-brake', [], 'do-not-ride'],
  ['milky', [['milk', 'all']], 'do-not-start'],
  ['metal', [['bits', 'paste']], 'carry-on'],
  ['smoke-pipe', [['pipe', 'spilt']], 'carry-on'],
  [
    'drop-back',
    [
      ['returns', 'drops'],
      ['front', 'dry'],
    ],
    'ride-gently',
  ],
  [
    'lamp-start',
    [
      ['lamp', 'out'],
      ['level', 'right'],
    ],
    'ride-gently',
  ],
  [
    'spill',
    [
      ['where', 'road'],
      ['tyre', 'no'],
    ],
    'do-not-ride',
  ],
];

test('at the roadside an answer is five taps away at most, of the oil lamp four, with the server stopped', async (t) => {
  const page = await openWithoutServer(t);
  for (const [id, answers, want] of roads) {
    await goTo(page, '#/bikes');
    await tap(page, words('bikes.roadside'), 'link');
    let taps = 1 + (await open(page, id));
    for (const [question, a] of answers) {
      await choose(page, answer(question, a));
      taps++;
    }
    await follows(page, want);
    assert.ok(taps <= (id.startsWith('lamp') ? 4 : 5), `${id}: ${taps} taps`);
    await untilSeen(page, words('trouble.defer'));
    assert.equal(await heading(page), words(`fault.${id}`));
  }
});

/** Waits until that is what follows. */
const follows = (page, want) =>
  page.waitForFunction(
    (text) => document.querySelector('.follows')?.innerText.includes(text),
    { polling },
    outcome(want),
  );

test('nothing answered is the worst, what is at hand changes it at once, Back takes it away', async (t) => {
  const page = await openWithoutServer(t);
  await goTo(page, '#/trouble');
  await open(page, 'drop-plug');
  await follows(page, 'do-not-ride');
  await untilSeen(page, words('trouble.open'));
  await choose(page, answer('returns', 'drips'));
  for (const thing of ['spanner', 'washer']) await choose(page, words(`hand.${thing}`));
  await follows(page, 'do-not-ride');
  await choose(page, words('hand.oil'));
  await follows(page, 'ride-gently');
  await untilSeen(page, words('do.look-10'));
  await choose(page, words('hand.oil'));
  await follows(page, 'do-not-ride');
  await page.reload();
  await follows(page, 'do-not-ride');
  assert.ok(await ticked(page, words('hand.washer')), 'a reload loses nothing');
  await page.goBack();
  await untilSeen(page, words('trouble.open'));
  assert.ok(!(await ticked(page, answer('returns', 'drips'))));
  await page.goBack();
  await untilSeen(page, words('fault-group.leak'));
  await page.goBack();
  await untilSeen(page, words('trouble.intro'));
});

const ticked = (page, text) =>
  page.evaluate((want) => {
    const label = [...document.querySelectorAll('label')].find(
      (l) => l.textContent.trim() === want,
    );
    return label?.querySelector('input').checked;
  }, text);

test('the search finds a problem by what one types', async (t) => {
  const page = await openWithoutServer(t);
  await goTo(page, '#/trouble');
  for (const [typed, id] of [
    ['lamp', 'lamp-riding'],
    ['drip', 'drop-plug'],
    ['petrol', 'fuel-smell'],
    ['ball', 'metal'],
  ]) {
    await type(page, words('trouble.search'), typed);
    await untilSeen(page, words(`fault.${id}`));
    assert.ok(!(await seen(page)).includes(words('fault.toppled')), typed);
  }
  await type(page, words('trouble.search'), 'mayonaise');
  await untilSeen(page, words('trouble.near'));
  await untilSeen(page, words('fault.milky'));
  await type(page, words('trouble.search'), 'puncture');
  await untilSeen(page, words('trouble.none'));
  await untilSeen(page, words('fault-door.plug')); // no dead end
});

test('the search finds what is behind another door', async (t) => {
  const page = await openWithoutServer(t);
  await goTo(page, '#/trouble?door=plug');
  await untilSeen(page, words('fault.plug-stuck'));
  assert.ok(!(await seen(page)).includes(words('fault.milky')));
  await type(page, words('trouble.search'), 'mayonnaise');
  await untilSeen(page, words('fault.milky'));
  assert.ok(!(await seen(page)).includes(words('fault.plug-stuck')));
});

test('the doors and what can’t wait stand whole on the first screen', async (t) => {
  const page = await openWithoutServer(t);
  await goTo(page, '#/trouble');
  await untilSeen(page, words('trouble.intro'));
  const low = await page.evaluate(() => {
    const links = [...document.querySelectorAll('.doors a')];
    const bar = document.querySelector('nav.tabs')?.getBoundingClientRect().top;
    return links
      .filter((link) => link.getBoundingClientRect().bottom > (bar ?? innerHeight))
      .map((link) => link.textContent.trim())
      .concat(links.length === 7 ? [] : `${links.length} links`);
  });
  assert.deepEqual(low, []);
});

test('an address that carries JSON, as an earlier version wrote it, still leads there', async (t) => {
  const page = await openWithoutServer(t);
  const state = { answers: { returns: 'damp' }, hand: ['spanner'] };
  await goTo(page, `#/trouble/drop-plug/${encodeURIComponent(JSON.stringify(state))}`);
  await follows(page, 'ride-gently');
  await choose(page, answer('returns', 'nothing'));
  await follows(page, 'carry-on');
  assert.equal(
    await page.evaluate(() => location.hash),
    '#/trouble/drop-plug?returns=nothing&hand=spanner',
  );
});

test('none of these counts as the worst, and what stops says until when', async (t) => {
  const page = await openWithoutServer(t);
  await goTo(page, '#/trouble/milky');
  await choose(page, answer('milk', 'cap'));
  await follows(page, 'ride-gently');
  assert.ok(!(await seen(page)).includes(words('trouble.until')));
  await choose(page, words('fault-answer.other'));
  await follows(page, 'do-not-start');
  await untilSeen(page, words('trouble.other'));
  await untilSeen(page, words('until.twice'));
});

test('by keyboard alone: from the first screen to an answer', async (t) => {
  const page = await openWithoutServer(t);
  await goTo(page, '#/bikes');
  await tabTo(page, words('bikes.roadside'));
  await page.keyboard.press('Enter');
  await untilSeen(page, words('trouble.intro'));
  await tabTo(page, words('fault-door.drop'));
  await page.keyboard.press('Enter');
  await untilSeen(page, words('fault.drop-plug'));
  await tabTo(page, words('fault.drop-plug'));
  await page.keyboard.press('Enter');
  await follows(page, 'do-not-ride');
  await tabTo(page, answer('returns', 'nothing'));
  await page.keyboard.press('Space');
  await follows(page, 'carry-on');
  await page.keyboard.press('ArrowDown');
  await follows(page, 'ride-gently');
  await tabTo(page, words('hand.spanner'));
  await page.keyboard.press('Space');
  await untilSeen(page, words('do.plug-once'));
});

/** Tabs on until what has the focus begins with the text; nothing may cover it. */
async function tabTo(page, text) {
  for (let tabs = 0; tabs < 80; tabs++) {
    await page.keyboard.press('Tab');
    const [name] = await page.evaluate(focused);
    if (!name.startsWith(text)) continue;
    const covered = async () => {
      const [now, isCovered] = await page.evaluate(focused);
      return isCovered ? [now] : [];
    };
    assert.deepEqual(await staysAmiss(page, covered), [], 'covered by something');
    return;
  }
  throw new Error(`Tab never comes to "${text}"`);
}

/** Runs in the page: what has the focus, and whether something covers it. */
function focused() {
  const element = document.activeElement;
  const shown = element.closest('label') ?? element;
  const { x, y, width, height } = shown.getClientRects()[0] ?? new DOMRect();
  const top = document.elementFromPoint(x + width / 2, y + height / 2);
  return [
    shown.textContent.replace(/\s+/g, ' ').trim(),
    !(shown.contains(top) || top?.contains(shown)),
  ];
}

test('a problem kept in a job warns on its steps until it is taken back, and stands in the record', async (t) => {
  const page = await openWithoutServer(t);
  await startJob(page, `${card.make} ${card.model}`);
  await tap(page, words('job.trouble'), 'link');
  await untilSeen(page, words('fault.wrong-place')); // fits the step
  assert.ok(!(await seen(page)).includes(words('fault.milky')), 'does not');
  await open(page, 'cap-off');
  await choose(page, answer('tyre', 'yes'));
  await follows(page, 'do-not-ride');
  await tap(page, words('trouble.keep'));
  await untilSeen(page, words('trouble.kept'));
  const [event] = (await stored(page, 'events')).filter(({ kind }) => kind === 'problem');
  const { what, value, signs, step } = event;
  assert.deepEqual(
    { what, value, signs, step },
    { what: 'cap-off', value: 'do-not-ride', signs: { tyre: 'yes' }, step: 'identify' },
  );
  await tap(page, words('trouble.back-to-job'), 'link');
  await untilStep(page, 1);
  await untilSeen(page, outcome('do-not-ride'));
  await tapDone(page);
  await untilStep(page, 2);
  await untilSeen(page, outcome('do-not-ride'));
  await page.reload();
  await untilSeen(page, words('fault.cap-off'));

  const { job } = event;
  await goTo(page, `#/record/${job}`);
  await untilSeen(page, words('record.problems'));
  await untilSeen(page, words('fault.cap-off'));
  await goTo(page, `#/job/${job}`);
  await tap(page, words('trouble.take-back'));
  await untilSeen(page, words('job.undone'));
  assert.ok(!(await seen(page)).includes(outcome('do-not-ride')));
  await untilStep(page, 2);
});

test('a stop stays told when the job is closed all the same', async (t) => {
  const page = await openWithoutServer(t);
  await startJob(page, `${card.make} ${card.model}`);
  await tap(page, words('job.trouble'), 'link');
  await open(page, 'fell-in');
  await follows(page, 'do-not-start');
  await tap(page, words('trouble.keep'));
  await untilSeen(page, words('trouble.kept'));
  await tap(page, words('trouble.back-to-job'), 'link');
  await openAllSteps(page);
  await untilSeen(page, outcome('do-not-start'));
  await tap(page, words('job.finish'));
  const problem = '@fault.fell-in';
  await untilSeen(page, words('finding.finished-with-problem', { problem }));
});

test('behind the door of amounts it stands how this bike is read, and what is not known', async (t) => {
  const page = await openWithoutServer(t);
  await goTo(page, '#/trouble?door=amount');
  await untilSeen(page, words('fault.no-level'));
  assert.ok(!(await seen(page)).includes(words('reading.title')), 'no bike is known');
  await goTo(page, `#/trouble?door=amount&bike=${card.id}`);
  await untilSeen(page, words('reading.title'));
  const { device, state, stance, where } = card.circuits[0].level;
  for (const line of [
    words('reading.device-at', { device: `@device.${device}`, where }),
    words('reading.state', { state: `@state.${state}` }),
    words('reading.stance', { stance: `@stance.${stance}` }),
  ])
    await untilSeen(page, line);
  assert.ok(!(await seen(page)).includes(words('reading.manual')), 'all of it is known');
  await goTo(page, `#/trouble?door=drop&bike=${card.id}`);
  await untilSeen(page, words('fault.drop-plug'));
  assert.ok(!(await seen(page)).includes(words('reading.title')), 'a drop asks for no level');
});

test('what to say to whoever fetches the bike is copied, and follows the answers', async (t) => {
  const { page } = await openSite(t);
  await goTo(page, `#/trouble/drop-plug?bike=${card.id}`);
  await follows(page, 'do-not-ride');
  await choose(page, answer('returns', 'drips'));
  await choose(page, words('hand.washer'));
  await tapText(page, words('say.text'));
  const ask = '@fault-ask.returns';
  const told = words('say.answer', { ask, answer: '@fault-answer.returns.drips' });
  await untilSeen(page, told);
  await page.evaluate(() => {
    navigator.clipboard.writeText = async (text) => void (window.copied = text);
  });
  await tap(page, words('say.copy'));
  await untilSeen(page, words('say.copied'));
  const lines = (await page.evaluate(() => window.copied)).split('\n');
  for (const line of [
    words('say.bike', { bike: `${card.make} ${card.model}` }),
    words('say.fetch.do-not-ride'),
    told,
    words('say.hand', { thing: '@hand.washer' }),
    words('say.bring', { thing: '@hand.oil' }),
    words('say.where'),
  ])
    assert.ok(lines.includes(line), `"${line}" is not in\n${lines.join('\n')}`);
  assert.ok(!lines.includes(words('say.bring', { thing: '@hand.washer' })), 'it is there');
});
