// Arrows point one way: which room of the page may import which, and which module
// alone may use an ability of the phone.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { modules, namesIn, nodes, roomOf } from '../test/modules.js';

// The ground, from the lowest up, each with the rooms below it that it builds on.
const ground = {
  site: [],
  words: ['site'],
  core: ['site'],
  phone: ['site'],
  store: ['site', 'words', 'core', 'phone'],
  ui: ['site', 'words', 'phone'],
};

// The features, each with the other features it shows something of. All stand on the ground.
const features = {
  aid: [],
  backup: ['cards'],
  bench: [],
  bikes: ['others', 'plan'],
  bill: ['plain', 'still-open'],
  books: ['photos', 'plain'],
  cards: ['bikes'],
  details: ['backup', 'due', 'photos'],
  due: [],
  edit: ['cards', 'plan'],
  job: ['aid', 'look', 'others', 'photos', 'plain', 'still-open', 'trouble', 'visit'],
  look: [],
  manual: ['cards', 'edit', 'plan'],
  others: [],
  photos: [],
  plain: ['backup', 'photos'],
  plan: ['due', 'trouble'],
  record: [
    'backup',
    'bill',
    'books',
    'due',
    'look',
    'photos',
    'plain',
    'still-open',
    'trouble',
    'visit',
  ],
  settings: [],
  'still-open': [],
  trouble: ['aid', 'still-open'],
  visit: ['bill', 'due', 'photos', 'plain', 'still-open'],
};

const mayImport = (room) => ground[room] ?? [...Object.keys(ground), ...(features[room] ?? [])];

test('every room is in the table', () => {
  const rooms = new Set(modules.map(({ room }) => room).filter(Boolean));
  const table = [...Object.keys(ground), ...Object.keys(features)];
  for (const room of rooms)
    assert.ok(table.includes(room), `the folder ${room} is missing in features, or in ground`);
  for (const room of table) assert.ok(rooms.has(room), `there is no folder ${room}`);
});

test('a room imports only what is below it', () => {
  for (const { path, room, imports } of modules) {
    if (!room) continue; // the frame holds everything together
    for (const other of imports) {
      const there = roomOf(other);
      assert.ok(
        there === room || mayImport(room).includes(there),
        `${path} imports ${other}, which the table above doesn't allow`,
      );
    }
  }
});

test('what the table allows is made use of', () => {
  for (const [room, others] of Object.entries({ ...ground, ...features })) {
    const own = modules.filter((module) => module.room === room);
    const used = own.flatMap(({ imports }) => imports.map(roomOf));
    for (const other of others)
      assert.ok(used.includes(other), `${room} may import ${other} and doesn't`);
  }
});

test('features point in no circle', () => {
  const reached = (room, seen = []) => {
    assert.ok(!seen.includes(room), `a circle: ${[...seen, room].join(' -> ')}`);
    features[room].forEach((other) => reached(other, [...seen, room]));
  };
  Object.keys(features).forEach((room) => reached(room));
});

// The names by which a browser gives its abilities, and who alone uses each.
const abilities = {
  indexedDB: ['rescue-file.js', 'store/whole.js'], // to read it raw, to delete the whole; idb opens it
  BroadcastChannel: ['store/windows.js'],
  Worker: ['core/start.js'],
  serviceWorker: ['phone/notice.js', 'phone/offline.js'],
  Notification: ['phone/notice.js'],
  AudioContext: ['phone/bell.js'],
  vibrate: ['phone/bell.js'],
  locks: ['core/start.js', 'core/worker.js', 'phone/bell.js'],
  speechSynthesis: ['phone/voice.js'],
  SpeechRecognition: ['phone/ear.js'],
  wakeLock: ['phone/lock.js'],
  canShare: ['phone/share.js'],
  clipboard: ['phone/share.js'],
  trustedTypes: ['site/trusted.js'],
  getUserMedia: ['cards/qr/scan.js'],
};

test('an ability of the phone has one owner', () => {
  for (const [name, owners] of Object.entries(abilities)) {
    const users = modules.filter(({ ast }) => namesIn(ast).has(name));
    assert.deepEqual(users.map(({ path }) => path).sort(), owners, name);
  }
});

test('only the store opens its database', () => {
  const opens = ({ ast }) => nodes(ast, 'ImportDeclaration').some((n) => n.source.value === 'idb');
  assert.deepEqual(
    modules.filter(opens).map(({ path }) => path),
    ['store/database.js'],
  );
});
