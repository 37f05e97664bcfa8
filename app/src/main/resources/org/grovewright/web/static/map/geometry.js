// Plane geometry in metres.

export function distance([ax, ay], [bx, by]) {
  return Math.hypot(bx - ax, by - ay);
}

export function lengthOf(points) {
  let sum = 0;
  for (let i = 1; i < points.length; i += 1) {
    sum += distance(points[i - 1], points[i]);
  }
  return sum;
}

/** Area within corners in order. */
export function areaOf(corners) {
  let twice = 0;
  corners.forEach(([x, y], i) => {
    const [nextX, nextY] = corners[(i + 1) % corners.length];
    twice += x * nextY - nextX * y;
  });
  return Math.abs(twice) / 2;
}

/** The point of a line nearest to a place. */
export function nearestOn(line, place) {
  let best = line[0];
  let least = Infinity;
  for (let i = 1; i < line.length; i += 1) {
    const [ax, ay] = line[i - 1];
    const dx = line[i][0] - ax;
    const dy = line[i][1] - ay;
    const square = dx * dx + dy * dy;
    const share = square === 0 ? 0 : Math.max(0, Math.min(1, ((place[0] - ax) * dx + (place[1] - ay) * dy) / square));
    const point = [ax + share * dx, ay + share * dy];
    const away = distance(point, place);
    if (away < least) {
      least = away;
      best = point;
    }
  }
  return { point: best, away: least };
}

export function moved(points, dx, dy) {
  return points.map(([x, y]) => [x + dx, y + dy]);
}

/** The way from points of a picture to places on the ground: turned, scaled and shifted. */
export function similarity([p1, p2], [g1, g2]) {
  // Rows of a picture count downwards, the ground upwards.
  const px = p2[0] - p1[0];
  const py = -(p2[1] - p1[1]);
  const square = px * px + py * py;
  const gx = g2[0] - g1[0];
  const gy = g2[1] - g1[1];
  const a = (gx * px + gy * py) / square;
  const b = (gy * px - gx * py) / square;
  return {
    a,
    b,
    e: g1[0] - a * p1[0] - b * p1[1],
    f: g1[1] - b * p1[0] + a * p1[1],
    /** Metres of one point of the picture. */
    scale: Math.hypot(a, b),
  };
}

/** Where on the ground a point of the picture lies. */
export function onGround({ a, b, e, f }, [x, y]) {
  return [a * x + b * y + e, b * x - a * y + f];
}
