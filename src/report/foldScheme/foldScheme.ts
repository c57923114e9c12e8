import type { FoldKind } from '$src/core/pour/record';

/** What a line or area of a schematic is. */
export type SchemePart = 'metal' | 'gas' | 'wall' | 'skin' | 'film' | 'flow';

export interface SchemeLine {
  readonly as: SchemePart;
  /** As an SVG path, in the frame of the schematic. */
  readonly path: string;
}

/** How the skin folds in one kind of event: drawn by hand and not to scale, the metal as deep as it was computed. */
export interface FoldScheme {
  readonly lines: readonly SchemeLine[];
  /** What is named in the picture, and the point it is named at. */
  readonly label: { readonly text: string; readonly x: number; readonly y: number };
  /** One plain sentence, also for those who do not see the picture. */
  readonly says: string;
}

/** Frame of every schematic: the metal comes from the left between roof and floor. */
export const FRAME = { width: 144, height: 74, roof: 10, floor: 58, wall: 132 } as const;

/** Shallower or fuller than this no fold could be drawn. */
const FULLNESS = { least: 0.42, most: 0.66, usual: 0.5 } as const;

/** Height of the surface in the picture where metal stands that full, 0 to 1; null = not known. */
function surfaceAt(fullness: number | null): number {
  const drawn = Math.min(FULLNESS.most, Math.max(FULLNESS.least, fullness ?? FULLNESS.usual));
  return Math.round(FRAME.floor - (FRAME.floor - FRAME.roof) * drawn);
}

type Drawing = (top: number) => readonly SchemeLine[];

interface Scheme {
  readonly draw: Drawing;
  readonly label: (top: number) => FoldScheme['label'];
  readonly says: string;
}

const line = (as: SchemePart, path: string): SchemeLine => ({ as, path });
const walls = line('wall', 'M0 10H144M0 58H144');
const closed = line('wall', 'M0 10H132V58H0');
/** A short arrow to the right or left. */
const arrow = (x: number, y: number, to: 1 | -1): SchemeLine =>
  line('flow', `M${x} ${y}h${16 * to}m${-5 * to} -3l${5 * to} 3l${-5 * to} 3`);
const film = (x: number, y: number) => ({ text: 'doubled film', x, y });

const meeting: Drawing = (top) => [
  walls,
  line('metal', `M0 58V${top}H56Q72 ${top} 72 ${top + 9}Q72 ${top} 88 ${top}H144V58Z`),
  line('skin', `M0 ${top}H56Q72 ${top} 72 ${top + 9}Q72 ${top} 88 ${top}H144`),
  line('film', `M72 ${top + 9}V57`),
  arrow(26, top + 10, 1),
  arrow(118, top + 10, -1),
];

const SCHEMES: Readonly<Record<FoldKind, Scheme>> = {
  'front over critical': {
    draw: (top) => [
      walls,
      line('metal', `M0 58V${top}H84C112 ${top} 120 ${top + 12} 112 58Z`),
      line('skin', `M0 ${top}H84C112 ${top} 120 ${top + 12} 112 58`),
      line('film', 'M112 57C100 57 96 50 84 51'),
      arrow(60, top + 9, 1),
    ],
    label: () => film(92, 53),
    says: 'The front rolls: skin from above goes down over the nose and is laid beneath the metal, doubled.',
  },
  tongue: {
    draw: (top) => {
      const low = Math.max(top, 44);
      const high = Math.min(low - 12, top);
      return [
        walls,
        line('metal', `M0 58V${high}H56Q74 ${high} 74 ${low}H116Q128 ${low} 128 58Z`),
        line('skin', `M0 ${high}H56Q74 ${high} 74 ${low}H116Q128 ${low} 128 58`),
        line('film', `M74 ${low}H22`),
        arrow(40, (high + low) / 2, 1),
      ];
    },
    label: () => film(48, 46),
    says: 'A thin stream has run ahead; the metal that follows rolls over it, and the two skins stay between them.',
  },
  'breaking bore': {
    draw: (top) => [
      walls,
      line('metal', `M0 58V${top + 12}H62C52 ${top + 2} 58 ${top - 6} 74 ${top - 6}H144V58Z`),
      line('skin', `M0 ${top + 12}H62C52 ${top + 2} 58 ${top - 6} 74 ${top - 6}H144`),
      line('film', `M62 ${top + 12}C76 ${top + 14} 84 ${top + 4} 98 ${top + 8}`),
      arrow(22, top + 16, 1),
    ],
    label: (top) => film(84, top + 8),
    says: 'A step in the surface topples over its own foot: the skins of step and foot meet and go down into the metal.',
  },
  'undular bore': {
    draw: (top) => [
      walls,
      line(
        'metal',
        `M0 58V${top + 6}H34Q44 ${top - 8} 54 ${top + 6}Q64 ${top - 6} 74 ${top + 6}Q84 ${top - 4} 94 ${top + 6}H144V58Z`,
      ),
      line(
        'skin',
        `M0 ${top + 6}H34Q44 ${top - 8} 54 ${top + 6}Q64 ${top - 6} 74 ${top + 6}Q84 ${top - 4} 94 ${top + 6}H144`,
      ),
      line('film', `M54 ${top + 6}v9M74 ${top + 6}v8M94 ${top + 6}v6`),
      arrow(10, top + 15, 1),
    ],
    label: (top) => film(74, top + 12),
    says: 'A train of waves runs along the surface; the skin is stretched on the crests and creased in between.',
  },
  'lip jet': {
    draw: () => [
      line('wall', 'M0 10H144M0 38H54V58H144'),
      line('metal', 'M0 38V26H50C74 27 92 40 98 58H84C80 48 70 39 52 38Z'),
      line('metal', 'M70 58Q76 50 86 52H112Q126 52 128 58Z'),
      line(
        'skin',
        'M0 26H50C74 27 92 40 97 52M52 38C70 39 80 48 84 53M70 58Q76 50 84 52M97 52H112Q126 52 128 58',
      ),
      line('film', 'M84 53C88 58 98 57 108 57'),
      arrow(12, 32, 1),
    ],
    label: () => film(98, 57),
    says: 'The stream leaves the floor at a lip: it has skin above and below, and both are driven into the metal where it lands.',
  },
  'end impact': {
    draw: (top) => [
      closed,
      line('metal', `M0 58V${top}H104C116 ${top} 120 32 120 22L128 14Q132 15 132 20V58Z`),
      line('metal', `M128 14C108 10 94 20 96 ${top}H104C103 28 110 20 120 22Z`),
      line(
        'skin',
        `M0 ${top}H96C94 20 108 10 128 14M120 22C110 20 103 28 104 ${top}C116 ${top} 120 32 120 22`,
      ),
      line('film', `M100 ${top}C102 ${top + 8} 110 ${top + 9} 120 ${top + 7}`),
      arrow(48, top + 10, 1),
    ],
    label: (top) => film(112, top + 8),
    says: 'The metal strikes the end wall, climbs it and falls back on itself: skin lands on skin.',
  },
  'return wave': {
    draw: (top) => [
      closed,
      line('metal', `M0 58V${top}H78C66 ${top - 6} 70 ${top - 14} 84 ${top - 14}H132V58Z`),
      line('skin', `M0 ${top}H78C66 ${top - 6} 70 ${top - 14} 84 ${top - 14}H132`),
      line('film', `M78 ${top}C94 ${top + 3} 104 ${top - 1} 122 ${top + 2}`),
      arrow(24, top + 10, 1),
      arrow(116, top - 6, -1),
    ],
    label: (top) => film(102, top + 1),
    says: 'A wave comes back from the end wall and rolls over the metal that still arrives: their skins are shut in between.',
  },
  'fronts meet': {
    draw: meeting,
    label: (top) => film(72, top + 20),
    says: 'Two fronts run into each other; each brings its skin, and both stand face to face in the metal.',
  },
  lap: {
    draw: meeting,
    label: (top) => ({ text: 'lap line', x: 72, y: top + 20 }),
    says: 'The metal that meets here is too cold to join: the two skins stay, as a line in the casting.',
  },
  'front stalls': {
    draw: (top) => [
      walls,
      line('metal', `M0 58V${top}H98Q118 ${top} 120 58Z`),
      line('skin', `M0 ${top}H98Q118 ${top} 120 58`),
      line('film', `M58 ${top}Q78 ${top} 80 57`),
      arrow(88, top + 12, 1),
    ],
    label: (top) => ({ text: 'lap line', x: 78, y: top + 18 }),
    says: 'The front stood and its skin grew thick; the metal that moved on broke out of it and left it inside, as a lap line.',
  },
  'front falls back': {
    draw: (top) => [
      walls,
      line('metal', `M0 58V${top}H64Q84 ${top} 86 58Z`),
      line('skin', `M0 ${top}H64Q84 ${top} 86 58`),
      line('film', 'M86 57H124'),
      arrow(44, top + 8, -1),
      arrow(44, top + 16, 1),
    ],
    label: () => ({ text: 'skin left behind', x: 104, y: 57 }),
    says: 'The front ran up, fell back and left its skin on the wall; what returns runs over it.',
  },
  'gas sealed in': {
    draw: () => [
      walls,
      line('metal', 'M0 58V10H46Q50 32 72 32Q94 32 98 10H124Q136 12 138 58Z'),
      line('gas', 'M46 10Q50 32 72 32Q94 32 98 10Z'),
      line('skin', 'M46 10Q50 32 72 32Q94 32 98 10M124 10Q136 12 138 58'),
      line('film', 'M106 11V36'),
      arrow(16, 44, 1),
    ],
    label: () => film(106, 34),
    says: 'The metal has reached the roof on both sides of a pocket of gas: skin all round it, doubled where it closed.',
  },
  'gas left under the roof': {
    draw: () => [
      closed,
      line('metal', 'M0 58V10H84Q90 28 132 28V58Z'),
      line('gas', 'M84 10Q90 28 132 28V10Z'),
      line('skin', 'M84 10Q90 28 132 28'),
      arrow(24, 42, 1),
    ],
    label: () => ({ text: 'gas', x: 112, y: 18 }),
    says: 'Gas has stayed in a corner under the roof: the die is not full there, and the skin lies against it.',
  },
  'skin contraction': {
    draw: (top) => [
      walls,
      line('metal', `M0 58V${top}${CREASED}V58Z`),
      line('skin', `M0 ${top}${CREASED}`),
      line('film', `M42 ${top + 4}v10M72 ${top + 4}v14M102 ${top + 4}v10`),
      line('flow', `M8 ${top - 6}h16m-5 -3l5 3l-5 3M136 ${top - 6}h-16m5 -3l-5 3l5 3`),
    ],
    label: (top) => film(72, top + 16),
    says: 'A surface that was wide has become narrow: its skin has nowhere to go but down, in creases.',
  },
};

/** What lies beneath comes first. */
const ORDER: readonly SchemePart[] = ['metal', 'gas', 'wall', 'skin', 'film', 'flow'];

/** From the left edge on: level, with three creases that dip into the metal. */
const CREASED = 'H36q4 -4 6 4q2 -8 6 -4H66q4 -4 6 4q2 -8 6 -4H96q4 -4 6 4q2 -8 6 -4H144';

/** The schematic of a kind of fold; `fullness` is how full the section stood there, 0 to 1, null where that is not known. */
export function foldScheme(kind: FoldKind, fullness: number | null = null): FoldScheme {
  const { draw, label, says } = SCHEMES[kind];
  const top = surfaceAt(fullness);
  const lines = draw(top).toSorted((a, b) => ORDER.indexOf(a.as) - ORDER.indexOf(b.as));
  return { lines, label: label(top), says };
}

export const FOLD_KINDS = Object.keys(SCHEMES) as readonly FoldKind[];
