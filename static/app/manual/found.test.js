import assert from 'node:assert/strict';
import { test } from 'node:test';
import { cells } from './found.js';

const read = (...whats) => whats.map((what) => ({ what, text: what }));
const shown = (list) =>
  list.map(({ name, first, others }) => [name, first.what, ...others.map(({ what }) => what)]);

test('a thing has one cell, and what is looked for stands first in it', () => {
  const readings = read(
    'bolt.drain.thread',
    'bolt.drain.torque',
    'oil.engine.marks',
    'oil.engine.grades',
    'oil.engine.dry',
    'interval.months',
    'interval.distance',
    'interval.first-months',
    'interval.filter-first',
    'level.gearbox.state',
    'level.gearbox.device',
    'model',
    'make',
  );
  assert.deepEqual(shown(cells(readings)), [
    ['manual.of.bolt.drain', 'bolt.drain.torque', 'bolt.drain.thread'],
    ['manual.cell.oil.engine', 'oil.engine.grades', 'oil.engine.marks'],
    ['manual.cell.oil.engine.dry', 'oil.engine.dry'],
    ['manual.cell.interval.usual', 'interval.distance', 'interval.months'],
    ['manual.cell.interval.first', 'interval.first-months'],
    ['manual.cell.interval.filter', 'interval.filter-first'],
    ['manual.of.level.gearbox', 'level.gearbox.device', 'level.gearbox.state'],
    ['manual.cell.bike', 'model', 'make'],
  ]);
});
