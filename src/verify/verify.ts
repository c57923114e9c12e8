import type { Family } from './check';
import { FAMILIES } from './families';
import { holds, short } from './finding';
import { type FaultResult, plotsOf, type Ran, verificationPage } from './page';
import { plotSvg } from './plot';

export interface Verified {
  readonly page: string;
  readonly figures: readonly { readonly name: string; readonly svg: string }[];
  /** Figures that miss what they are held to. */
  readonly worse: readonly string[];
}

/** Runs every check at full effort, then those of `further`; `tell` hears of each family as it is done. */
export function verify(
  faults: readonly FaultResult[],
  tell: (line: string) => void,
  further: readonly Family[] = [],
): Verified {
  const ran: Ran[] = [...FAMILIES, ...further].map((family) => {
    const outcomes = family.checks.map((check) => ({ check, outcome: check.run('report') }));
    tell(`${family.name}: ${outcomes.length} checks`);
    return { family, outcomes };
  });
  const findings = ran.flatMap(({ outcomes }) =>
    outcomes.flatMap(({ check, outcome }) => outcome.findings.map((finding) => ({ check, finding }))),
  );
  return {
    page: verificationPage(ran, faults),
    figures: plotsOf(ran).map((plot) => ({ name: plot.name, svg: plotSvg(plot) })),
    worse: findings
      .filter(({ finding }) => !holds(finding))
      .map(
        ({ check, finding }) => `${check.id}: ${finding.what} ${short(finding.found)}, bar ${finding.bar}`,
      ),
  };
}
