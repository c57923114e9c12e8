import type { Check, Family, Outcome, Plot } from './check';
import { type Finding, holds, isReport, short } from './finding';

/** What planting one fault did, as `npm run test:faults` found it. */
export interface FaultResult {
  readonly name: string;
  readonly file: string;
  /** First test that turned red; null = the fault went unseen. */
  readonly seenBy: string | null;
}

/** A family with what its checks gave. */
export interface Ran {
  readonly family: Family;
  readonly outcomes: readonly { readonly check: Check; readonly outcome: Outcome }[];
}

/** The verification page as Markdown; plots lie in figures/ beside it. */
export function verificationPage(ran: readonly Ran[], faults: readonly FaultResult[]): string {
  const findings = ran.flatMap(({ outcomes }) => outcomes.flatMap(({ outcome }) => outcome.findings));
  return `${[
    '# Verification',
    '',
    'Made by `npm run verify`, from the same code that `npm test` runs; do not edit it by hand. Each check names where its answer comes from; "from memory" means that the source was not at hand. Lengths, speeds and times are SI.',
    '',
    summary(findings),
    '',
    ...notMet(ran),
    ...ran.flatMap(familyLines),
    ...faultLines(faults),
  ]
    .join('\n')
    .trimEnd()}\n`;
}

export function plotsOf(ran: readonly Ran[]): Plot[] {
  return ran.flatMap(({ outcomes }) => outcomes.flatMap(({ outcome }) => outcome.plots));
}

const isMissed = (finding: Finding): boolean => finding.bar.includes('not met');

function summary(findings: readonly Finding[]): string {
  const graded = findings.filter((finding) => !isReport(finding));
  const missed = graded.filter(isMissed).length;
  const met = graded.filter((finding) => holds(finding) && !isMissed(finding)).length;
  const broken = graded.length - met - missed;
  return `${graded.length} figures are held to a bar: ${met} meet it, ${missed} do not and are listed next with their cause${broken > 0 ? `, **${broken} are worse than they should be**` : ''}. ${findings.length - graded.length} more are told without a bar.`;
}

function notMet(ran: readonly Ran[]): string[] {
  const rows = ran.flatMap(({ outcomes }) =>
    outcomes.flatMap(({ check, outcome }) =>
      outcome.findings
        .filter(isMissed)
        .map(
          (finding) =>
            `| ${check.id} | ${finding.what} | ${figure(finding.found, finding.unit)} | ${finding.bar} | ${finding.note ?? ''} |`,
        ),
    ),
  );
  if (rows.length === 0) return [];
  return [
    '## What is not met',
    '',
    '| check | figure | latest | bar | cause |',
    '| --- | --- | --- | --- | --- |',
    ...rows,
    '',
  ];
}

function familyLines({ family, outcomes }: Ran): string[] {
  return [
    `## ${family.name}`,
    '',
    family.about,
    '',
    ...outcomes.flatMap(({ check, outcome }) => checkLines(check, outcome)),
  ];
}

function checkLines(check: Check, { findings, plots }: Outcome): string[] {
  return [
    `### ${check.id}: ${check.title}`,
    '',
    `Source: ${check.source}. Computed: ${check.setting}.`,
    '',
    '| figure | expected | latest | bar | |',
    '| --- | --- | --- | --- | --- |',
    ...findings.map(row),
    '',
    ...plots.flatMap((plot) => [`![${plot.title}](figures/${plot.name}.svg)`, '']),
  ];
}

function row(finding: Finding): string {
  const expected = finding.expected === null ? '' : figure(finding.expected, finding.unit);
  const note = finding.note && !isMissed(finding) ? ` (${finding.note})` : '';
  return `| ${finding.what}${note} | ${expected} | ${figure(finding.found, finding.unit)} | ${finding.bar} | ${mark(finding)} |`;
}

function mark(finding: Finding): string {
  if (isReport(finding)) return 'told';
  if (!holds(finding)) return '**worse**';
  return isMissed(finding) ? 'not met' : 'met';
}

const figure = (value: number, unit: string): string => `${short(value)}${unit ? ` ${unit}` : ''}`;

function faultLines(faults: readonly FaultResult[]): string[] {
  if (faults.length === 0) return [];
  const seen = faults.filter((fault) => fault.seenBy !== null).length;
  return [
    '## Planted faults',
    '',
    `\`npm run test:faults\` plants one fault at a time in a copy of the sources and runs the tests; each must turn a test red. Seen: ${seen} of ${faults.length}.`,
    '',
    '| fault | planted in | seen by |',
    '| --- | --- | --- |',
    ...faults.map(({ name, file, seenBy }) => `| ${name} | \`${file}\` | ${seenBy ?? '**not seen**'} |`),
    '',
  ];
}
