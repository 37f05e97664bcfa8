package org.grovewright.model;

/** Kinds of fixed things. */
public enum FixtureKind {
  BUILDING,
  FENCE,
  WALL,
  TANK,
  WELL,
  SEPTIC_FIELD,
  EXISTING_TREE,
  PAVING,
  GRAVEL,
  LAWN,
  BURIED_SERVICE
}
