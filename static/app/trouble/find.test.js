// The search of problems, with the words as they are.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { defaultLanguage, entriesOf } from '../../test/catalogue.js';
import { find, isSlip, namesOf } from './find.js';

const words = entriesOf(defaultLanguage);
const { faults } = JSON.parse(
  readFileSync(new URL('../../../specs/faults.json', import.meta.url), 'utf8'),
);
const lines = faults.map(({ id }) => ({
  id,
  words: namesOf(words[`fault.${id}`], words[`fault.${id}.also`]),
}));
const found = (typed) => find(lines, typed).fits.map(({ id }) => id);

// What a rider or a mechanic would type: common practice, no source.
const names = {
  burnt: ['burn', 'burnt skin', 'I hurt my hand', 'first aid', 'oil in my eye'],
  'drop-plug': [
    'drain plug drips',
    'sump plug leaking',
    'weeping drain plug',
    'oil under the bung',
  ],
  'drop-filter': ['filter leaks', 'oil canister weeps', 'damp spin-on filter'],
  'drop-filter-cover': ['filter cover leaks', 'filter housing drips', 'o-ring of the filter cap'],
  'drop-back': ['leak behind', 'drip below the engine', 'oil residue'],
  'drop-cover': ['clutch cover leak', 'generator cover wet', 'sight glass leaks'],
  'drop-hose': ['hose leaks', 'oil cooler leak', 'banjo union drips'],
  'drop-wheel': ['final drive leak', 'oil at rear wheel', 'hub leaks', 'bevel gear'],
  'filter-burst': [
    'filter burst',
    'oil gushes out',
    'filter blew out',
    'oil sprays out of the filter',
  ],
  'lost-plug': ['plug fell out', 'lost drain plug', 'sump plug gone'],
  'lamp-start': [
    'oil light stays on after change',
    'no oil pressure at start',
    'warning light red at the start',
  ],
  'lamp-riding': ['oil light came on riding', 'red lamp on the road', 'engine seized'],
  'lamp-flicker': ['lamp flickers', 'oil light flashing', 'light blinks in corners'],
  noise: ['noise', 'engine knocks', 'ticking', 'top end rattle'],
  'smoke-exhaust': ['blue smoke', 'exhaust smoking', 'burning oil', 'airbox'],
  'smoke-pipe': ['smoke from header', 'fire', 'burning smell from the pipe'],
  'clutch-slips': ['clutch slips', 'clutch slipping', 'revs rise'],
  'clutch-drags': ['clutch drags', 'neutral hard to find', 'hard gears'],
  'plug-stuck': ['drain plug stuck', 'plug seized', "can't undo the bolt"],
  'plug-rounded': ['rounded plug', 'stripped head', 'hex rounded off'],
  'plug-turns': ['plug spins', 'stripped drain thread', 'helical insert', 'plug turns and turns'],
  'plug-mend': ['repair stripped thread', 'helical insert', 'oversize plug', 'tap a thread'],
  'plug-askew': ['cross-threaded', 'plug crooked', 'plug binds'],
  'torque-forgotten': ['forgot to tighten', 'torque unknown', 'forgot the torque'],
  'too-tight': ['overtightened', 'plug too tight', 'wrong torque'],
  'wrong-washer': ['wrong washer', 'crush washer missing', 'copper ring', 'two washers'],
  'filter-backwards': ['filter backwards', 'element reversed', 'spring left over'],
  'filter-stuck': ['filter stuck', 'filter torn', "can't remove filter", 'filter seized'],
  'ring-missing': ['double gasket', 'old ring not found', 'two rings'],
  'stud-out': ['stud', 'stud came out', 'filter bolt came out', 'threaded pipe'],
  'wrong-filter': ['wrong filter', 'filter does not fit', 'filter with another number'],
  snapped: ['snapped screw', 'broken bolt', 'stud sheared off', 'screw'],
  'thread-small': ['screw stripped', 'stripped small thread', 'helical insert', 'cover bolt spins'],
  'fell-in': ['dropped a nut', 'washer fell in', 'rag in the engine'],
  'too-much': ['overfilled', 'too much oil', 'breather', 'oil in airbox'],
  'too-little': ['low oil', 'not enough oil: below the mark', 'underfilled'],
  'no-level': ['sight glass empty', 'dipstick blank', 'window fogged'],
  'level-gone': ['oil disappeared', 'oil consumption', 'level dropped'],
  'no-fill': ["oil won't go in", 'filler blocked', 'pour too slow', 'oil backs up'],
  'came-short': ['too little came out', 'drained less', 'nothing came out'],
  'car-oil': ['car oil', 'friction modifier', 'energy conserving oil'],
  'wrong-grade': ['wrong viscosity', 'wrong grade', 'mixed oil', 'wrong bottle'],
  'wrong-place': ['drained the gearbox', 'wrong hole', 'wrong plug', 'mixed up primary'],
  'wrong-fluid': ['diesel', 'brake fluid filled in', 'coolant in the oil filler', 'cleaner'],
  milky: ['mayonnaise', 'white oil', 'water in oil', 'creamy'],
  'fuel-smell': ['petrol smell', 'oil thin', 'smells of gasoline'],
  metal: ['ball', 'metal flakes', 'glitter', 'swarf', 'bits on the magnet'],
  'oil-on-tyre': ['oil on tire', 'slippery rear tyre', 'oil on the front tyre'],
  'oil-on-brake': ['brake disc', 'oil on pads', 'caliper'],
  'cap-off': ['cap left off', 'lost filler cap', 'forgot the cap'],
  spill: ['spilled oil', 'puddle on the floor', 'oil on the ground'],
  toppled: ['fell over', 'bike tipped over', 'crash', 'bent lever'],
  cracked: ['cracked case', 'hole in the sump', 'stone broke the pan'],
};

test('every problem is found by at least three names that people give it', () => {
  assert.deepEqual(Object.keys(names).sort(), faults.map(({ id }) => id).sort());
  for (const [id, list] of Object.entries(names)) {
    assert.ok(list.length >= 3, `${id} has ${list.length} names`);
    for (const name of list) {
      const ids = found(name);
      assert.ok(ids.includes(id), `"${name}" finds ${ids}, not ${id}`);
      assert.ok(ids.length <= 8, `"${name}" finds ${ids.length} problems: ${ids}`);
    }
  }
});

test('a word counts as a whole: what only contains it is not found', () => {
  for (const [typed, ...wrong] of [
    ['tick', 'plug-stuck', 'filter-stuck', 'no-level'],
    ['car', 'filter-backwards', 'drop-filter-cover'],
    ['ear', 'clutch-drags', 'wrong-place'],
    ['light', 'too-tight', 'plug-stuck'],
    ['art', 'lamp-start'],
    ['crew', 'snapped', 'thread-small'],
    ['rake', 'oil-on-brake'],
    ['over', 'drop-cover', 'drop-filter-cover', 'cracked'],
    ['ring', 'filter-backwards', 'noise'],
  ])
    for (const id of wrong) assert.ok(!found(typed).includes(id), `"${typed}" finds ${id}`);
  assert.deepEqual(found('tick'), ['noise']);
});

test('while one types, the beginning of a word finds what it may become', () => {
  for (const { id, words: own } of lines)
    for (const word of own)
      if (word.length > 5)
        assert.ok(
          find(lines, word.slice(0, 4)).fits.length,
          `"${word.slice(0, 4)}", the beginning of ${word} (${id}), finds nothing`,
        );
});

test('one slip of a letter is forgiven, where nothing is called so, and told', () => {
  for (const [typed, id] of [
    ['cluch', 'clutch-slips'],
    ['helcal', 'plug-mend'],
    ['mayonaise', 'milky'],
    ['exahust', 'smoke-exhaust'],
    ['grommet cooler', 'drop-hose'],
  ]) {
    const { fits, near } = find(lines, typed);
    assert.ok(
      fits.some((line) => line.id === id),
      `"${typed}" finds ${fits.map((line) => line.id)}`,
    );
    assert.ok(near, `"${typed}" is said to be spelt right`);
  }
  assert.equal(find(lines, 'my clutch is slipping').near, false, 'small words say nothing');
  assert.deepEqual(found('tock'), [], 'two slips are another word');
  assert.deepEqual(found('puncture'), []);
  assert.deepEqual(found('oil everywhere'), [], 'what half of them are called says nothing alone');
});

test('a slip is one letter wrong, missing, too many, or changed with the next', () => {
  for (const [a, b] of [
    ['plug', 'plag'],
    ['clutch', 'cluch'],
    ['filter', 'fiter'],
    ['filter', 'fitler'],
    ['lamp', 'lamps'],
  ])
    assert.ok(isSlip(a, b) && isSlip(b, a), `${a}, ${b}`);
  for (const [a, b] of [
    ['plug', 'plat'],
    ['plug', 'plguu'],
    ['crew', 'screw'],
    ['card', 'hard'],
    ['rag', 'rug'], // three letters are too few to tell a slip from another word
    ['drag', 'rag'],
    ['10w40', '10w30'], // another number is another thing
    ['sae40', 'sae4'],
  ])
    assert.ok(!isSlip(a, b) && !isSlip(b, a), `${a}, ${b}`);
});
