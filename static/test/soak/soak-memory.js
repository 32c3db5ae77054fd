// What the app holds while a person uses it for as long as is asked:
//   node static/test/soak/soak-memory.js MINUTES SEED
// prints it after each round, and what grew by more than a tenth since the first minute,
// with which it ends with 1. The same seed gives the same acts in the same order.
import { Chance, seedFrom } from '../chance.js';
import { grown, LongUse } from './memory.js';

const minutes = Number(process.argv[2]);
const seed = seedFrom(process.argv[3]);
const samples = 3; // whose median is compared
console.log(`A phone is used for ${minutes} minutes with the seed ${seed}.`);

const endings = [];
const end = async () => {
  for (const ending of endings.splice(0).reverse()) await ending();
};
process.once('SIGINT', () => end().then(() => process.exit(1)));

try {
  const t = { after: (ending) => endings.push(ending) };
  const use = await LongUse.begin(t, new Chance(seed));
  const began = Date.now();
  const held = [];
  let acts = 0;
  for (let passed = 0; passed < minutes || held.length < 2 * samples;) {
    acts += await use.round();
    passed = (Date.now() - began) / 60_000;
    const now = await use.held();
    if (passed > 1) held.push(now);
    const line = Object.entries(now).map(([name, size]) => `${name} ${size}`);
    console.log(`${passed.toFixed(1)} min, ${acts} acts: ${line.join(', ')}`);
  }
  const wrong = grown(held.slice(0, samples), held.slice(-samples));
  console.log(wrong.length ? wrong.join('\n') : 'Nothing grew by more than a tenth.');
  if (wrong.length) process.exitCode = 1;
} finally {
  await end();
}
process.exit();
