// A sketch of the land to scale: its outline, the tap, which side is higher and where north is.
import { h, svg } from '../dom.js';

const STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500];

/**
 * A sketch.
 *
 * @param corners corners as [right, up] in the owner's unit
 * @param tap place of the water, if known
 * @param north compass bearing of up, degrees
 * @param higher which side is higher: top, bottom, left, right
 * @param label what it shows, in words
 * @param onplace called with the place that was clicked, in tenths of the unit
 */
export function sketch({ corners, tap, north = 0, higher, label, unit, onplace }) {
  const all = [...corners, ...(tap ? [tap] : []), ...(corners.length < 2 ? [[0, 0], [30, 20]] : [])];
  const [minX, maxX] = [Math.min(...all.map((p) => p[0])), Math.max(...all.map((p) => p[0]))];
  const [minY, maxY] = [Math.min(...all.map((p) => p[1])), Math.max(...all.map((p) => p[1]))];
  const size = Math.max(maxX - minX, (maxY - minY) * 1.4, 4);
  const pad = size * 0.14;
  const width = maxX - minX + 2 * pad;
  const height = maxY - minY + 2 * pad;
  const flip = (y) => maxY + minY - y;
  const dot = size / 60;
  const step = STEPS.find((one) => size / one <= 14) ?? 1000;
  const lines = [];
  for (let x = Math.ceil((minX - pad) / step) * step; x <= maxX + pad; x += step) {
    lines.push(svg('path', { class: 'sketch-grid', d: `M${x} ${minY - pad}V${maxY + pad}` }));
  }
  for (let y = Math.ceil((minY - pad) / step) * step; y <= maxY + pad; y += step) {
    lines.push(svg('path', { class: 'sketch-grid', d: `M${minX - pad} ${flip(y)}H${maxX + pad}` }));
  }
  const text = (x, y, words, extra) =>
    svg('text', { x, y, 'font-size': size / 26, 'text-anchor': 'middle', 'dominant-baseline': 'middle', ...extra }, words);
  const sides = corners.length > 2
    ? corners.map(([x, y], i) => {
        const [nx, ny] = corners[(i + 1) % corners.length];
        const length = Math.hypot(nx - x, ny - y);
        const [ox, oy] = [(ny - y) / (length || 1), -(nx - x) / (length || 1)];
        const shown = Math.round(length * 10) / 10;
        return text((x + nx) / 2 + ox * size * 0.055, flip((y + ny) / 2 + oy * size * 0.045), `${shown} ${unit}`);
      })
    : [];
  const middle = [(minX + maxX) / 2, (minY + maxY) / 2];
  const slope = { top: [0, 1], bottom: [0, -1], left: [-1, 0], right: [1, 0] }[higher];
  const reach = Math.min(maxX - minX, maxY - minY) * 0.28;
  const arrow = slope
    ? svg(
        'g',
        { class: 'sketch-slope' },
        svg('path', {
          d: `M${middle[0] - slope[0] * reach} ${flip(middle[1] - slope[1] * reach)}L${middle[0] + slope[0] * reach} ${flip(middle[1] + slope[1] * reach)}`,
          'stroke-width': dot,
        }),
        svg('circle', { cx: middle[0] + slope[0] * reach, cy: flip(middle[1] + slope[1] * reach), r: dot * 1.6 }),
      )
    : null;
  const picture = svg(
    'svg',
    {
      class: onplace ? 'sketch clickable' : 'sketch',
      viewBox: `${minX - pad} ${minY - pad} ${width} ${height}`,
      role: 'img',
      'aria-label': label,
    },
    lines,
    corners.length > 2
      ? svg('polygon', { class: 'sketch-land', points: corners.map(([x, y]) => `${x},${flip(y)}`).join(' '), 'stroke-width': dot * 0.7 })
      : corners.length === 2
        ? svg('path', { class: 'sketch-land', d: `M${corners[0][0]} ${flip(corners[0][1])}L${corners[1][0]} ${flip(corners[1][1])}`, 'stroke-width': dot * 0.7 })
        : null,
    corners.map(([x, y]) => svg('circle', { class: 'sketch-corner', cx: x, cy: flip(y), r: dot })),
    sides,
    arrow,
    tap ? svg('circle', { class: 'sketch-tap', cx: tap[0], cy: flip(tap[1]), r: dot * 1.8, 'stroke-width': dot * 0.5 }) : null,
    svg(
      'g',
      { transform: `translate(${maxX + pad * 0.5} ${minY - pad * 0.35}) rotate(${-north})`, class: 'sketch-north' },
      svg('path', { d: `M0 ${-pad * 0.28}L${pad * 0.14} ${pad * 0.22}L0 ${pad * 0.1}L${-pad * 0.14} ${pad * 0.22}Z` }),
    ),
  );
  if (onplace) {
    picture.addEventListener('click', (event) => {
      const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(picture.getScreenCTM().inverse());
      onplace([Math.round(point.x * 10) / 10, Math.round(flip(point.y) * 10) / 10]);
    });
  }
  return h('div', { class: 'sketch-frame' }, picture);
}
