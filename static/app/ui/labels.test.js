// What is said beside a field names it as its label does.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { defaultLanguage, entriesOf } from '../../test/catalogue.js';
import { coreInNode } from '../../test/core-in-node.js';
import { loadWords, t } from '../words/catalogue.js';
import { named } from './labels.js';

const words = entriesOf(defaultLanguage);

test('what is missing in any form, or in a row of it, is named by the label of its field', async ({
  mock,
}) => {
  mock.method(globalThis, 'fetch', async () => Response.json(words));
  await loadWords(/** @type {any} */ ({ tag: defaultLanguage, direction: 'ltr' }));
  const call = await coreInNode();
  const ask = (op, input) => JSON.parse(call(op, JSON.stringify(input)));
  const { forms } = ask('forms', {}).ok;
  let told = 0;
  for (const { op, fields } of forms) {
    const lists = fields.filter(({ kind }) => kind === 'list');
    const rows = lists.flatMap(({ name, rows: of }) =>
      of.map((field) => ({ [name]: [{ [field.name]: field.words?.[0] ?? '1' }] })),
    );
    for (const input of [{}, ...rows])
      for (const found of ask(op, input).findings ?? []) {
        if (found.code !== 'missing') continue;
        const [, name, , inner] = found.where.split('/');
        const whole = fields.find((f) => f.name === name);
        const field = inner ? whole.rows.find((f) => f.name === inner) : whole;
        const { values } = named(op, field, found);
        const said = t('finding.missing', values);
        const label = words[`ask.${op}.${field.name}`] ?? words[`ask.${field.name}`];
        assert.ok(label && said.includes(label), `${op} ${found.where}: ${said}`);
        told++;
      }
  }
  assert.ok(told > 30, `${told} are told`);
});
