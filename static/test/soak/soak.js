// Kills of every kind at random moments while a person works, for as long as is asked:
//   node static/test/soak/soak.js MINUTES SEED
// prints what was made, lost and doubled for each kind of kill. The same seed gives the
// same person and the same kills; at which moment of an act a kill comes depends on the
// machine. It ends with 1 when anything was lost or doubled.
import { Chance, seedFrom } from '../chance.js';
import { Kills } from './kills.js';

const minutes = Number(process.argv[2]);
const seed = seedFrom(process.argv[3]);
console.log(`Kills for ${minutes} minutes with the seed ${seed}.`);

const endings = [];
const end = async () => {
  for (const ending of endings.splice(0).reverse()) await ending();
};
process.once('SIGINT', () => end().then(() => process.exit(1)));

try {
  const kills = await Kills.begin({ after: (ending) => endings.push(ending) }, new Chance(seed));
  const last = Date.now() + minutes * 60_000;
  while (Date.now() < last) await kills.next();
  console.log(kills.table());
  const wrong = [...kills.harm, ...kills.forgotten];
  if (wrong.length) {
    console.error(`${wrong.join('\n')}\nMINUTES=${minutes} SEED=${seed} repeats it.`);
    process.exitCode = 1;
  }
} finally {
  await end();
}
