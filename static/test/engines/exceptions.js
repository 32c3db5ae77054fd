// What is expected not to work in an engine, and why. A line that works though it is
// listed here fails, so that this list stays true.

/** [{engine, line, outcome, because}]: `because` says whether it is the engine or its port to this machine. */
export const exceptions = [
  {
    engine: 'webkit-old',
    line: 'screen stays on in a job',
    outcome: 'missing',
    because: 'no wake lock before iOS 16.4; the port films no canvas either, Safari does',
  },
  {
    engine: 'webkit-old',
    line: 'photo, upright and without its place',
    outcome: 'missing',
    because: 'the canvas of the port writes no JPEG, that of Safari does',
  },
  {
    engine: 'webkit-old',
    line: 'card as QR codes, and back',
    outcome: 'falls back',
    because: 'no CompressionStream before iOS 16.4',
  },
  {
    engine: 'webkit-old',
    line: 'how much space is left',
    outcome: 'missing',
    because: 'no estimate before iOS 17',
  },
];

/** What is expected of a line in an engine. */
export const expectedOf = (engine, line) =>
  exceptions.find((one) => one.engine === engine && one.line === line) ?? { outcome: 'works' };
