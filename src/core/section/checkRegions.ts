import type { Issue } from '$src/core/issue';
import { fromCelsius, toCelsius } from '$src/core/units';
import { SAME_PLACE } from './lineAt';
import { millimetres as mm } from './millimetres';
import type { Region, Section } from './section';
import { SIZES } from './sizes';

/** Regions must follow each other from the back wall to the die end, each with a usable width. */
export function checkRegions(section: Section): Issue[] {
  const { regions } = section;
  if (regions.length === 0) {
    return [
      {
        path: 'regions',
        message: 'The section has no width into the page.',
        remedy: 'Add a region with a width.',
      },
    ];
  }
  const each = regions.flatMap((region, i) => [
    ...checkWidth(region, i),
    ...checkEnd(section, i),
    ...checkHeatOf(region, i),
  ]);
  return each.length > 0 ? each : checkCover(section);
}

const isUsable = (width: number): boolean => width >= SIZES.least && width <= SIZES.most;

function checkWidth({ name, width, widthAtEnd }: Region, index: number): Issue[] {
  const issues: Issue[] = [];
  const range = `from ${mm(SIZES.least)} to ${mm(SIZES.most)} mm`;
  if (!isUsable(width))
    issues.push({
      path: `regions.${index}.width`,
      message: `Region ${name} has ${widthWords(width)}.`,
      remedy: `Type a width ${range}.`,
    });
  if (widthAtEnd !== undefined && !isUsable(widthAtEnd))
    issues.push({
      path: `regions.${index}.widthAtEnd`,
      message: `Region ${name} has ${widthWords(widthAtEnd)} at its end.`,
      remedy: `Type a width ${range}, or leave it empty where the width stays the same.`,
    });
  return issues;
}

/** Widest heat transfer that means anything here [W/(m² K)], and the coldest and hottest die [K]. */
const TRANSFER = { low: 1, high: 50_000 };
const DIE = { coldest: fromCelsius(0), hottest: fromCelsius(1200) };

function checkHeatOf({ name, transfer, dieTemperature }: Region, index: number): Issue[] {
  const issues: Issue[] = [];
  if (transfer !== undefined && !(transfer >= TRANSFER.low && transfer <= TRANSFER.high))
    issues.push({
      path: `regions.${index}.transfer`,
      message: `Region ${name} has no usable heat transfer.`,
      remedy: `Choose a coat, or type ${TRANSFER.low} to ${TRANSFER.high} W/m²K; 1000 to 3000 is usual under a coat.`,
    });
  if (dieTemperature !== undefined && !(dieTemperature >= DIE.coldest && dieTemperature <= DIE.hottest))
    issues.push({
      path: `regions.${index}.dieTemperature`,
      message: `Region ${name} has no usable die temperature.`,
      remedy: `Type ${toCelsius(DIE.coldest)} to ${toCelsius(DIE.hottest)} °C.`,
    });
  return issues;
}

function widthWords(width: number): string {
  if (!Number.isFinite(width)) return 'a width that is not a number';
  if (width === 0) return 'no width';
  return width < 0 ? 'a negative width' : `a width of ${mm(width)} mm`;
}

function checkEnd({ floor, regions }: Section, index: number): Issue[] {
  const { name, end } = regions[index]!;
  const start = index === 0 ? floor[0]!.x : regions[index - 1]!.end;
  if (end > start + SAME_PLACE || Number.isNaN(start)) return [];
  const message = Number.isFinite(end)
    ? `Region ${name} ends at ${mm(end)} mm, not after ${mm(start)} mm where it begins.`
    : `Region ${name} ends nowhere.`;
  return [
    {
      path: `regions.${index}.end`,
      message,
      remedy: `Set its end to more than ${mm(start)} mm, or take the region out.`,
    },
  ];
}

function checkCover({ floor, regions }: Section): Issue[] {
  const dieEnd = floor.at(-1)!.x;
  const last = regions.at(-1)!;
  if (Math.abs(last.end - dieEnd) <= SAME_PLACE) return [];
  return [
    {
      path: `regions.${regions.length - 1}.end`,
      message: `The last region, ${last.name}, ends at ${mm(last.end)} mm; the die ends at ${mm(dieEnd)} mm.`,
      remedy: `Set its end to ${mm(dieEnd)} mm.`,
      at: floor.at(-1)!,
    },
  ];
}
