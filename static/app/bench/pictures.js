import { chart } from '../ui/picture/chart.js';
import { levelPicture } from '../ui/picture/level.js';

/** @import { CoolAnswer, OilCurveAnswer, RunOutAnswer } from '../core/core.d.ts' */

/** The picture that belongs to a calculation, drawn from its answer. */
export const pictures = {
  /** @param {OilCurveAnswer} answer */
  'oil-curve': ({ temps, low = [], high, ...ticks }) =>
    temps &&
    chart({
      label: 'bench.chart.viscosity',
      x: temps,
      series: [
        high
          ? { y: low, to: high, word: 'bench.chart.grade-band' }
          : { y: low, word: 'bench.chart.this-oil' },
      ],
      log: true,
      ...ticks,
    }),
  /** @param {RunOutAnswer} answer */
  'run-out': ({ times = [], left = [], warmer = [], ...ticks }) =>
    chart({
      label: 'bench.chart.run-out',
      x: times,
      series: [
        { y: left, word: 'bench.chart.as-it-is' },
        { y: warmer, word: 'bench.chart.warmer' },
      ],
      log: true,
      ...ticks,
    }),
  /** @param {CoolAnswer} answer */
  cool: ({ times = [], low = [], high, ...ticks }) =>
    chart({
      label: 'bench.chart.cool',
      x: times,
      series: [{ y: low, to: high, word: 'bench.chart.oil' }],
      ...ticks,
    }),
  level: levelPicture,
};
