import { fromDegrees, toDegrees } from '$src/core/units';
import { degreesMark } from '../chartWords';
import { pathOf, type Spot, short } from '../drawing/paper';

const RADIUS = 46;

const onDial = ({ x, y }: Spot, inclination: number, radius: number): Spot => ({
  x: x + radius * Math.cos(inclination),
  y: y - radius * Math.sin(inclination),
});

/** Start and end of the tilt as an arc, the needle at the start. */
export function cardDial(hub: Spot, start: number, end: number): string {
  const arc = (from: number, to: number): string => {
    const [a, b] = [onDial(hub, from, RADIUS), onDial(hub, to, RADIUS)];
    const isLarge = from - to > Math.PI ? 1 : 0;
    return `M${short(a.x)} ${short(a.y)}A${RADIUS} ${RADIUS} 0 ${isLarge} 1 ${short(b.x)} ${short(b.y)}`;
  };
  const ticks = [90, 60, 30, 0, -30, -60, -90].map((degrees) => {
    const angle = fromDegrees(degrees);
    const at = onDial(hub, angle, RADIUS + 15);
    const line = pathOf([onDial(hub, angle, RADIUS), onDial(hub, angle, RADIUS + 5)]);
    return `<path class="hair" d="${line}"/><text class="middle small" x="${short(at.x)}" y="${short(at.y + 4)}">${degreesMark(degrees)}</text>`;
  });
  const needle = pathOf([onDial(hub, start + Math.PI, 12), onDial(hub, start, RADIUS)]);
  return [
    `<path class="hair" fill="none" d="${arc(fromDegrees(90), fromDegrees(-90))}"/>`,
    ...ticks,
    `<path class="heavy" d="${arc(start, end)}"/>`,
    `<path class="heavy" d="${needle}"/><circle class="solid" cx="${hub.x}" cy="${hub.y}" r="3"/>`,
    `<title>from ${degreesMark(Math.round(toDegrees(start)))} to ${degreesMark(Math.round(toDegrees(end)))}</title>`,
  ].join('');
}
