// The bench: every calculation with its answer.
import { goTo } from '../job-page.js';
import { tap, type, untilSeen } from '../person.js';
import { words } from '../words.js';
import { on, openAll } from './on-screen.js';

const calculation = (op, given) => async (page) => {
  await goTo(page, `#/bench/${op}/${encodeURIComponent(JSON.stringify(given))}`);
  await untilSeen(page, words(`calc.${op}`));
  await tap(page, words('bench.work'));
  await page.waitForSelector('.worked h2, .finding');
  await openAll(page);
};

const line = (text) => async (page) => {
  await goTo(page, '#/bench');
  await type(page, words('bench.line'), text);
  await tap(page, words('bench.line.read'));
  await page.waitForSelector('.worked h2, .worked .finding');
  await openAll(page);
};

const wrenches = [
  { id: 'short', low: '5 N·m', high: '25 N·m' },
  { id: 'long', low: '20 N·m', high: '100 N·m', graduation: '0.5 N·m' },
];

export const bench = {
  bench: async (page) => {
    await goTo(page, '#/bench');
    await untilSeen(page, words('bench.intro'));
  },
  'a line, read and answered': line(
    '25 Nm, wrench with 60 mm adapter, scale 10 to 60 Nm, grip 300 mm',
  ),
  'a line that asks back': line('set the wrench to 18 lb, quickly'),
  'a line that is not understood': line('hello there'),
  'bench without a core': on('no core', async (page) => {
    await goTo(page, '#/bench');
    await untilSeen(page, words('finding.core-unavailable'));
  }),
  'calculation, nothing typed': on('new', async (page) => {
    await goTo(page, '#/bench/oil-suits');
    await openAll(page);
  }),
  'calculation, its caution first': on('new', async (page) => {
    await goTo(page, '#/bench/oil-pressure');
    await untilSeen(page, words('finding.engine-runs-hot'));
  }),
  'calculation: does the oil suit': calculation('oil-suits', {
    grades: '10W-40, 20W-50',
    marks: 'MA2',
    service: 'SL',
    clutch: 'wet',
    bottleGrade: '5W-30',
    bottleMark: 'none',
    bottleService: 'API SP-RC',
    coldest: '-5 °C',
    purpose: 'change',
  }),
  'calculation: does the oil suit, by the manual’s chart': calculation('oil-suits', {
    grades: '10W-40, 20W-50',
    clutch: 'dry',
    bottleGrade: '10W-40',
    coldest: '22 °C',
    hottest: '35 °C',
    chart: '10W-40: -10 to 30 °C; 20W-50: from 20 °C',
  }),
  'calculation: bottles': calculation('bottles', {
    need: '2.6 L',
    bottles: [{ size: '4 L', left: '1 L' }, { size: '2 L' }],
  }),
  'calculation: cooling': calculation('cool', {
    first: '95 °C',
    second: '80 °C',
    between: '10 min',
    air: '18 °C',
    target: '57 °C',
  }),
  'calculation: running out': calculation('run-out', {
    volume: '3 L',
    hole: '12 mm',
    temperature: '65 °C',
  }),
  'calculation: a plastic cap as hot as the oil': calculation('cool', {
    first: '60 °C',
    second: '70 °C',
    between: '5 min',
    air: '18 °C',
    surface: 'plastic',
  }),
  'calculation: how far with this leak': calculation('leak', {
    tyre: 'no',
    lamp: 'out',
    side: 'pan',
    way: 'drops',
    taps: '0 2.1 4 6.1 8',
    engine: 'running',
    share: '60 %',
    band: '400 mL',
    oil: '3 L',
  }),
  'calculation: a leak that stops': calculation('leak', {
    tyre: 'yes',
    lamp: 'out',
    side: 'pan',
    way: 'cap',
    caught: '5 mL',
    time: '1 h',
    engine: 'off',
  }),
  'calculation: what came out': calculation('debris', {
    found: 'flakes',
    size: 'two',
    amount: 'few',
    colour: 'bright',
    magnet: 'not-tried',
    oil: 'dark',
    noise: 'fades',
  }),
  'calculation: torque, checked': calculation('torque-check', {
    what: 'plug',
    thread: 'M12x1.5',
    seal: 'flat-copper',
    torque: '177 Nm',
  }),
  'calculation: torque, guessed': calculation('torque-guess', {
    what: 'plug',
    thread: 'M14x1.5',
    seal: 'flat-copper',
    seat: 'aluminium',
  }),
  'calculation: wrenches': calculation('wrench', { torque: '25 N·m', wrenches }),
  'calculation: which O-ring': calculation('o-ring', {
    inside: '25 mm',
    section: '3.5 mm',
    groove: '25.6 mm',
    depth: '2.8 mm',
    used: true,
  }),
  'calculation: wrenches, marks too coarse': calculation('wrench', {
    torque: '25 N·m',
    adapter: '50 mm',
    grip: '300 mm',
    wrenches: [{ low: '10 N·m', high: '100 N·m', graduation: '5 N·m' }],
  }),
  'calculation: is the wrench right': calculation('wrench-check', {
    mass: '10 kg',
    lever: '400 mm',
    own: '1.2 kg',
    centre: '180 mm',
    high: '100 N·m',
    readings: [{ reading: '41.5 N·m' }, { reading: '45 N·m' }],
  }),
  'calculation: turn': calculation('turn', { thread: '3/4-16 UNF', turn: '3/4 turn' }),
  'calculation: first pour': calculation('first-fill', {
    volume: '3 L',
    filter: 'spin-on',
    mount: 'sideways',
    layout: 'wet-sump',
  }),
  'calculation: level window': calculation('level', {
    gauge: 'window',
    band: '400 mL',
    share: '20 %',
  }),
  'calculation: level stick': calculation('level', {
    gauge: 'stick-screwed',
    band: '400 mL',
    share: '110 %',
  }),
  'calculation: viscosity': calculation('oil-curve', { grade: '10W-40' }),
  'calculation: fuel': calculation('fuel', {
    volume: '2.5 L',
    rise: '150 mL',
    grade: '10W-40',
    fresh: '14.5',
    measured: '11.2',
  }),
  'calculation: mixture': calculation('oil-mix', {
    firstVolume: '3 L',
    firstViscosity: '14.5',
    secondVolume: '1000 ml',
    secondViscosity: '10.9',
  }),
  'calculation: volume': calculation('oil-volume', {
    volume: '3 L',
    from: '20 °C',
    to: '90 °C',
    density: '0.88 g/cm³',
  }),
  'calculation: pressure': calculation('oil-pressure', {
    pressure: '1.2 bar',
    temperature: '80 °C',
    speed: '3000',
    least: '340 kPa',
    most: '540 kPa',
    meantAt: '80 °C',
    meantSpeed: '3000',
    fullScale: '10 bar',
  }),
  'calculation: converted': calculation('convert', { text: '18 ft-lb' }),
  'calculation refused': calculation('torque-check', { what: 'plug', thread: 'M99', torque: '25' }),
};
