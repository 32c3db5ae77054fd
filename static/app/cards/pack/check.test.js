import assert from 'node:assert/strict';
import { beforeEach, test } from 'node:test';
import { unavailable, unreachable } from '../../core/answer.js';
import { core } from '../../core/client.js';
import { checkTexts } from './check.js';

let answers;
beforeEach(() => {
  answers = { limits: { ok: {} } };
  core.call = async (op, input) => {
    const answer = answers[op];
    return typeof answer === 'function' ? answer(JSON.parse(String(input))) : answer;
  };
});

for (const [name, answer, word] of [
  ['a core that has stopped', unavailable, 'cards.failed'],
  ['a server that is out of reach', unreachable, 'finding.server-unreachable'],
])
  test(`${name} is told as that`, async () => {
    answers.cards = answer;
    await assert.rejects(checkTexts(['{"id":"a"}', '{"id":"b"}']), { word });
  });

test('what the core refuses is found at that card, and the others are read', async () => {
  const refused = { code: 'too-deep', where: '/', grade: 'refuse', values: {} };
  answers.cards = ({ cards }) =>
    cards.some(({ bad }) => bad)
      ? { findings: [refused] }
      : { ok: { bikes: cards.map(({ id }, place) => ({ id, place, text: id })) } };
  const entries = await checkTexts(['{"id":"a"}', '{"bad":true}', '{"id":"c"}']);
  assert.deepEqual(
    entries.map(({ text, findings }) => text ?? findings),
    ['a', [refused], 'c'],
  );
});
