// The calendar file, read by a parser that is not ours.
import assert from 'node:assert/strict';
import { before, test } from 'node:test';
import ICAL from 'ical.js';
import { coreInNode } from '../../test/core-in-node.js';
import { calendarName } from './calendar.js';

let core;

before(async () => {
  core = await coreInNode();
});

function write(texts) {
  const input = {
    maker: 'Tidysump',
    stamp: '2026-11-25T10:09:01.000Z',
    entries: texts.map((summary, n) => ({
      uid: `one-${n}@tidysump`,
      day: '2027-02-28',
      summary,
      description: `${summary}\nsecond line; end`,
    })),
  };
  return JSON.parse(core('calendar', JSON.stringify(input))).ok.text;
}

const events = (text) =>
  new ICAL.Component(ICAL.parse(text))
    .getAllSubcomponents('vevent')
    .map((part) => new ICAL.Event(part));

test('commas, semicolons, breaks, backslashes and emoji at the fold come back whole', () => {
  const texts = [
    'Oil due: Plainford One, engine; look',
    'back\\slash and "quotes" and a colon: here',
    ...Array.from({ length: 9 }, (_, n) => `${'x'.repeat(60 + n)}🛢️🏍️ü漢字, end`),
  ];
  const file = write(texts);
  for (const line of file.split('\r\n')) assert.ok(Buffer.byteLength(line) <= 75, line);
  assert.ok(!file.replaceAll('\r\n', '').match(/[\r\n]/), 'every break is CRLF');
  const read = events(file);
  assert.deepEqual(
    read.map(({ summary }) => summary),
    texts,
  );
  for (const [n, { description }] of read.entries())
    assert.equal(description, `${texts[n]}\nsecond line; end`);
});

test('each is a whole day with a stamp, an id of its own and an alarm', () => {
  const [one, other] = events(write(['One', 'Other']));
  assert.ok(one.startDate.isDate);
  assert.equal(one.startDate.toString(), '2027-02-28');
  assert.equal(one.endDate.toString(), '2027-03-01');
  assert.notEqual(one.uid, other.uid);
  const stamp = one.component.getFirstPropertyValue('dtstamp');
  assert.equal(stamp.toString(), '2026-11-25T10:09:01Z');
  const alarm = one.component.getFirstSubcomponent('valarm');
  assert.equal(alarm.getFirstPropertyValue('action'), 'DISPLAY');
  assert.equal(alarm.getFirstPropertyValue('trigger').toSeconds(), 9 * 3600);
});

test('the file is called as the bike is, with its first day, whatever the bike is called', () => {
  const days = ['2027-06-01', '2027-05-02'];
  for (const [bike, want] of [
    ['Tessaly Corda 570', 'Tessaly Corda 570 2027-05-02.ics'],
    ['The grey one · XY 12', 'The grey one · XY 12 2027-05-02.ics'],
    ['a/b\\c:d*?"<>|\n\u202ee', 'a b c d e 2027-05-02.ics'],
    ['../..', '2027-05-02.ics'],
    ['', '2027-05-02.ics'],
    ['🏍'.repeat(90), `${'🏍'.repeat(60)} 2027-05-02.ics`],
  ])
    assert.equal(calendarName(bike, days), want);
});
