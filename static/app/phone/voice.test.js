// Reading aloud and listening, with a phone that has both, one, or neither.
import assert from 'node:assert/strict';
import { beforeEach, mock, test } from 'node:test';
import { canListen, hear, Listener, wordIn } from './ear.js';
import { canSpeak, hush, speak, speaking } from './voice.js';

globalThis.document = { documentElement: { lang: 'it' } };
Object.defineProperty(globalThis, 'navigator', {
  value: { languages: ['de-DE', 'it-CH', 'it-IT'] },
  configurable: true,
});

let queue;
let voices;

beforeEach(() => {
  hush();
  [queue, voices] = [[], [{ lang: 'it-CH', localService: true }]];
  globalThis.SpeechSynthesisUtterance = function (text) {
    this.text = text;
  };
  globalThis.speechSynthesis = {
    getVoices: () => voices,
    speak: (part) => queue.push(part),
    cancel: () => (queue = []),
  };
});

test('a voice of the network stays out; voices not told yet may be there', () => {
  assert.equal(canSpeak(), true);
  voices = [{ lang: 'it-CH', localService: false }];
  assert.equal(canSpeak(), false);
  voices = [{ lang: 'de_DE', localService: true }];
  assert.equal(canSpeak(), false, 'no voice of this language');
  voices = [];
  assert.equal(canSpeak(), true);
  delete globalThis.speechSynthesis;
  assert.equal(canSpeak(), false);
});

test('sentences are read one by one, in the language of the page, by a voice of the phone', () => {
  let done = 0;
  speak(['One.', 'Two.'], () => done++);
  assert.deepEqual(
    queue.map(({ text, lang, voice }) => [text, lang, voice]),
    [
      ['One.', 'it', voices[0]],
      ['Two.', 'it', voices[0]],
    ],
  );
  assert.equal(speaking(), true);
  queue[1].onend();
  assert.deepEqual([speaking(), done], [false, 1]);
});

test('a second reading ends the first, whose late end ends nothing', () => {
  const ends = [];
  speak(['One.'], () => ends.push(1));
  const [first] = queue;
  speak(['Two.'], () => ends.push(2));
  first.onend();
  assert.deepEqual([ends, speaking()], [[1], true]);
  hush();
  assert.deepEqual([ends, queue, speaking()], [[1, 2], [], false]);
});

class Ear {
  static state = 'available';
  static asked = [];
  static ears = [];
  static async available(options) {
    Ear.asked.push(options);
    return options.langs[0] === 'it-IT' ? Ear.state : 'unavailable';
  }
  starts = 0;
  constructor() {
    Ear.ears.push(this);
  }
  start() {
    this.starts++;
  }
  abort() {
    this.onend?.();
  }
  say(said) {
    this.onresult({ resultIndex: 0, results: [[{ transcript: said }]] });
  }
}

test('listening is offered only where the phone does it by itself', async () => {
  globalThis.SpeechRecognition = Ear;
  assert.equal(await canListen(), 'it-IT');
  assert.ok(Ear.asked.every(({ processLocally }) => processLocally === true));
  for (Ear.state of ['downloadable', 'downloading', 'unavailable'])
    assert.equal(await canListen(), undefined, Ear.state);
  Ear.state = 'available';
  globalThis.SpeechRecognition = class {
    static available = async () => {
      throw new Error('not allowed');
    };
  };
  assert.equal(await canListen(), undefined);
  globalThis.SpeechRecognition = class {}; // an older browser, which would send the sound away
  assert.equal(await canListen(), undefined);
  delete globalThis.SpeechRecognition;
  assert.equal(await canListen(), undefined);
});

test('the last word that counts is the one that was meant', () => {
  const words = ['next', 'back', 'undo', 'read'];
  const rows = [
    ['next', 'next'],
    [' Next.', 'next'],
    ['go back no next', 'next'],
    ['the text', undefined],
    ['nextdoor', undefined],
    ['', undefined],
  ];
  for (const [said, want] of rows) assert.equal(wordIn(said, words), want, said);
});

test('a listener goes on after a silence, never sends sound away, and stops for good', (t) => {
  t.mock.timers.enable({ apis: ['setTimeout'] });
  globalThis.SpeechRecognition = Ear;
  const heard = [];
  const lost = mock.fn();
  const listener = new Listener('it-IT', ['next'], (word) => heard.push(word), lost);
  const ear = Ear.ears.at(-1);
  assert.deepEqual([ear.processLocally, ear.lang, ear.starts], [true, 'it-IT', 1]);
  ear.say('next please');
  ear.say('hello');
  assert.deepEqual(heard, ['next']);
  ear.onerror({ error: 'no-speech' });
  ear.onend();
  t.mock.timers.tick(300);
  assert.deepEqual([ear.starts, lost.mock.callCount()], [2, 0]);
  listener.stop();
  ear.say('next');
  t.mock.timers.tick(300);
  assert.deepEqual([heard, ear.starts], [['next'], 2]);
});

test('a phone that does not allow it ends the listening, and that is told once', (t) => {
  t.mock.timers.enable({ apis: ['setTimeout'] });
  globalThis.SpeechRecognition = Ear;
  const lost = mock.fn();
  new Listener('it-IT', ['next'], () => {}, lost);
  const ear = Ear.ears.at(-1);
  ear.onerror({ error: 'not-allowed' });
  ear.onend();
  t.mock.timers.tick(300);
  assert.deepEqual([ear.starts, lost.mock.callCount()], [1, 1]);
});

test('one line is heard once, and a silence is no line', () => {
  globalThis.SpeechRecognition = Ear;
  const heard = [];
  const lost = mock.fn();
  hear('it-IT', (said) => heard.push(said), lost);
  const ear = Ear.ears.at(-1);
  assert.deepEqual([ear.processLocally, ear.lang, ear.starts], [true, 'it-IT', 1]);
  ear.say('twenty-five newton metres');
  ear.say('and more');
  ear.onend();
  hear('it-IT', (said) => heard.push(said), lost);
  Ear.ears.at(-1).onerror({ error: 'no-speech' });
  Ear.ears.at(-1).onend();
  const stopped = hear('it-IT', (said) => heard.push(said), lost);
  stopped.stop();
  assert.deepEqual([heard, lost.mock.callCount()], [['twenty-five newton metres', ''], 0]);
  hear('it-IT', (said) => heard.push(said), lost);
  Ear.ears.at(-1).onerror({ error: 'not-allowed' });
  Ear.ears.at(-1).onend();
  assert.equal(lost.mock.callCount(), 1, 'told once');
});
