package org.grovewright.sheets;

/** An upright rectangle of a drawing. */
record Box(double left, double top, double right, double bottom) {
  static Box around(double x, double y, double halfWidth, double halfHeight) {
    return new Box(x - halfWidth, y - halfHeight, x + halfWidth, y + halfHeight);
  }

  boolean overlaps(Box other) {
    return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
  }

  boolean within(Box outer) {
    return left >= outer.left && right <= outer.right && top >= outer.top && bottom <= outer.bottom;
  }

  /** Whether a straight line between two points passes through the box. */
  boolean meetsLine(double x1, double y1, double x2, double y2) {
    // Clips the line against the four sides in turn (Liang and Barsky's method).
    double[] p = {x1 - x2, x2 - x1, y1 - y2, y2 - y1};
    double[] q = {x1 - left, right - x1, y1 - top, bottom - y1};
    double from = 0;
    double to = 1;
    for (int i = 0; i < 4; i++) {
      if (p[i] == 0) {
        if (q[i] < 0) {
          return false;
        }
      } else if (p[i] < 0) {
        from = Math.max(from, q[i] / p[i]);
      } else {
        to = Math.min(to, q[i] / p[i]);
      }
    }
    return from <= to;
  }
}
