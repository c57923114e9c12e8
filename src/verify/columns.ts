import { GRAVITY } from '$src/core/gravity';
import { fillDepth, runTo, startCase } from './caseRun';
import { channelSection } from './channel';
import type { Effort, Family, Outcome } from './check';
import { atLeast, reported } from './finding';
import { placeOfDepth, settleDepths } from './measure';

/**
 * Front of a collapsing column, T = t √(2g/a), Z = x/a, column a = 57.15 mm wide and 2a high. Martin & Moyce 1952,
 * Phil. Trans. R. Soc. A 244, table 2, as carried in a public example of the lethe project.
 */
const MARTIN_MOYCE = {
  T: [0.41, 0.84, 1.19, 1.43, 1.63, 1.83, 1.98, 2.2, 2.32, 2.51, 2.65, 2.83, 2.98, 3.11, 3.33],
  Z: [1.11, 1.22, 1.44, 1.67, 1.89, 2.11, 2.33, 2.56, 2.78, 3, 3.22, 3.44, 3.67, 3.89, 4.11],
};
/** Koshizuka & Oka 1996, column 146 mm (from memory) and twice as high, as carried in a public example of the pysph project. */
const KOSHIZUKA_OKA = {
  T: [0.381, 0.769, 1.153, 1.537, 1.935, 2.323, 2.719, 3.096],
  Z: [1.111, 1.252, 1.505, 1.892, 2.241, 2.615, 3.003, 3.624],
};

const LIMIT = 'a limit of the model: hydrostatic layers leave at once, real columns must first fall';

function collapse(width: number, times: readonly number[], cells: number): number[] {
  const length = 8 * width;
  const run = startCase({ section: channelSection({ length, cells, roof: 5 * width }), meshCells: cells });
  fillDepth(run, (x) => (x < width ? 2 * width : 0));
  return times.map((T) => {
    runTo(run, T / Math.sqrt((2 * GRAVITY) / width));
    settleDepths(run);
    return placeOfDepth(run, 0.05 * 2 * width) / width;
  });
}

function report(
  name: string,
  width: number,
  measured: { readonly T: readonly number[]; readonly Z: readonly number[] },
  figure: string,
  effort: Effort,
): Outcome {
  const Z = collapse(width, measured.T, effort === 'test' ? 160 : 400);
  const slope = (values: readonly number[]) => {
    const from = measured.T.findIndex((T) => T > 1.4);
    return (values.at(-1)! - values[from]!) / (measured.T.at(-1)! - measured.T[from]!);
  };
  return {
    findings: [
      reported(`late front speed dZ/dT, ${name}`, slope(measured.Z), slope(Z), '', LIMIT),
      reported(`front Z at T = ${measured.T.at(-1)}, ${name}`, measured.Z.at(-1)!, Z.at(-1)!, '', LIMIT),
      atLeast(
        'computed over measured front at the end',
        Z.at(-1)! / measured.Z.at(-1)!,
        1,
        '',
        'were it less, the limit told here would be wrong',
      ),
    ],
    plots: [
      {
        name: figure,
        title: `Collapsing column, ${name}`,
        xLabel: 'T = t √(2g/a)',
        yLabel: 'front Z = x/a',
        curves: [
          { name: 'computed, where 5 % deep', x: measured.T, y: Z, look: 'line' },
          { name: 'measured', x: measured.T, y: measured.Z, look: 'marks' },
        ],
      },
    ],
  };
}

export const columns: Family = {
  name: 'Collapsing columns',
  about:
    'A report, not a gate: columns as high as wide are outside a shallow-water model, which runs ahead of them. They show by how much.',
  checks: [
    {
      id: 'C01',
      title: 'Column collapse',
      source: 'Martin & Moyce 1952, Phil. Trans. R. Soc. A 244',
      setting: 'no friction, no gate, front where 5 % of the height deep',
      run: (effort) => report('Martin & Moyce', 0.05715, MARTIN_MOYCE, 'martin-moyce', effort),
    },
    {
      id: 'C02',
      title: 'Column collapse',
      source: 'Koshizuka & Oka 1996',
      setting: 'the same',
      run: (effort) => report('Koshizuka & Oka', 0.146, KOSHIZUKA_OKA, 'koshizuka-oka', effort),
    },
  ],
};
