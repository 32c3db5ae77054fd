import assert from 'node:assert/strict';
import { before, test } from 'node:test';
import { saidFigure, saidSentence } from './said.js';
import { loadWords } from './catalogue.js';
import { defaultLanguage, entriesOf } from '../../test/catalogue.js';

before(async (context) => {
  context.mock.method(globalThis, 'fetch', async () => Response.json(entriesOf(defaultLanguage)));
  await loadWords(defaultLanguage);
});

const figures = [
  ['24 N·m', '24 newton metres'],
  ['1 N·m', '1 newton metre'],
  ['1 L', '1 litre'],
  ['1.4 L', '1.4 litres'],
  ['11 L', '11 litres'],
  ['250 mL', '250 millilitres'],
  ['3.2 US qt', '3.2 US quarts'],
  ['8 US fl oz', '8 US fluid ounces'],
  ['18 lbf·ft', '18 pound-feet'],
  ['5–10 min', '5 to 10 minutes'],
  ['-15…-5 °C', '-15 to -5 degrees Celsius'],
  ['65–82 °C', '65 to 82 degrees Celsius'],
  ['20–25 N·m', '20 to 25 newton metres'],
  ['20 s', '20 seconds'],
  ['3/16 in', '3/16 inch'],
  ['0.75 turn', '0.75 turns'],
  ['17\u00a0mm', '17 millimetres'],
  ['10W-40 · JASO MA2', '10W-40 · JASO MA2'],
  ['M12x1.5', 'M12x1.5'],
  ['6000 km', '6000 kilometres'],
];

for (const [figure, said] of figures) {
  test(`"${figure}" is said "${said}"`, () => assert.equal(saidFigure(figure), said));
}

test('in a sentence a unit is said that can be nothing else', () =>
  assert.equal(
    saidSentence('More than 30\u00a0N·m, in 5 min.'),
    'More than 30 newton metres, in 5 min.',
  ));
