import assert from 'node:assert/strict';
import { test } from 'node:test';
import { bikeName } from './bike-name.js';

const model = 'Tessaly Corda 570';

test('a bike of which nothing is told goes by its model alone', () => {
  for (const bike of [undefined, null, {}, { called: '', plate: '' }])
    assert.equal(bikeName(bike, model), model, JSON.stringify(bike));
});

test('what it is called and its plate come before the model, other words only without them', () => {
  const words = 'red tank';
  assert.equal(
    bikeName({ called: 'Bertha', plate: 'AB 12', words }, model),
    `Bertha · AB 12 · ${model}`,
  );
  assert.equal(bikeName({ plate: 'AB 12', words }, model), `AB 12 · ${model}`);
  assert.equal(bikeName({ words }, model), `${model} · red tank`);
});

test('without a model it goes by what is told', () => {
  assert.equal(bikeName({ called: 'Bertha' }, ''), 'Bertha');
  assert.equal(bikeName({}, ''), '');
});
