import type { Issue } from '$src/core/issue';
import type { PourPlan } from '$src/core/pour/plan';
import { shownValue } from '$src/report/study/quantities';
import { settingNamed, settingWords } from '$src/report/study/settings';
import { AXIS_POINTS, MOST_POINTS, type Study, type StudyAxis } from '$src/report/study/study';
import { checkMeshCells } from './checkComputation';

/** What is wrong with a study around that pour; paths start at the study cell, e.g. `study.axes.0.from`. */
export function checkStudy(study: Study, plan: PourPlan): Issue[] {
  if (study.axes.length === 0)
    return [{ path: 'study.axes', message: 'Nothing is varied.', remedy: 'Choose a setting to vary.' }];
  const issues = study.axes.flatMap((axis, index) => axisIssues(axis, `study.axes.${index}`, plan));
  return [...issues, ...twiceIssues(study), ...sizeIssues(study)];
}

function axisIssues(axis: StudyAxis, path: string, plan: PourPlan): Issue[] {
  const setting = settingNamed(plan, axis.setting);
  if (!setting) {
    const message = `This pour has no ${settingWords(axis.setting)} that could be set.`;
    return [{ path: `${path}.setting`, message, remedy: 'Choose another setting to vary.' }];
  }
  const range = `${shownValue(setting.least, setting.quantity)} to ${shownValue(setting.most, setting.quantity)}`;
  const issues = (['from', 'to'] as const)
    .filter((side) => !(axis[side] >= setting.least - 1e-9 && axis[side] <= setting.most + 1e-9))
    .map((side) => ({
      path: `${path}.${side}`,
      message: `${setting.name} cannot be ${shownValue(axis[side], setting.quantity)}.`,
      remedy: `Give a value from ${range}.`,
    }));
  if (!(axis.to > axis.from)) {
    const message = `The range of ${setting.name} has no length.`;
    issues.push({ path: `${path}.to`, message, remedy: 'Let it end above where it begins.' });
  }
  const { least, most } = AXIS_POINTS;
  if (!(Number.isInteger(axis.points) && axis.points >= least && axis.points <= most)) {
    const message = `${axis.points} points cannot be used.`;
    issues.push({ path: `${path}.points`, message, remedy: `Give a whole number from ${least} to ${most}.` });
  }
  return issues;
}

/** Settings that move the same thing: the one put in last would undo the other. */
const RIVALS: readonly (readonly string[])[] = [
  ['tilt.time', 'tilt.rate'],
  ['charge.mass', 'charge.fromLip', 'charge.head'],
];

function twiceIssues({ axes }: Study): Issue[] {
  const [first, second] = axes.map(({ setting }) => setting);
  if (first === undefined || second === undefined) return [];
  const isRival = first === second || RIVALS.some((both) => both.includes(first) && both.includes(second));
  if (!isRival) return [];
  const message = 'Both axes vary the same thing.';
  return [{ path: 'study.axes.1.setting', message, remedy: 'Choose another setting for one of them.' }];
}

function sizeIssues({ axes, meshCells, repeatability }: Study): Issue[] {
  const issues: Issue[] = [];
  const count = axes.reduce((product, { points }) => product * points, 1);
  if (count > MOST_POINTS) {
    const message = `The study has ${count} points.`;
    issues.push({ path: 'study.axes.0.points', message, remedy: `Give ${MOST_POINTS} at most.` });
  }
  issues.push(...checkMeshCells(meshCells, 'study.meshCells'));
  if (repeatability.some((spread) => !(spread >= 0))) {
    const message = 'A spread cannot be below 0.';
    issues.push({
      path: 'study.repeatability.0',
      message,
      remedy: 'Give how far repeated pours stray, either way.',
    });
  }
  return issues;
}
