package org.grovewright.formats.description;

/**
 * The values a field may take.
 *
 * @param min the least
 * @param max the greatest
 */
record Range(double min, double max) {
  boolean holds(double value) {
    return value >= min && value <= max;
  }
}
