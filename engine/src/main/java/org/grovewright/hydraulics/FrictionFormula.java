package org.grovewright.hydraulics;

/** The law by which a network's pipes lose head to friction. */
public enum FrictionFormula {
  /** Empirical, for cool water in turbulent flow; the pipe's figure is its C. */
  HAZEN_WILLIAMS,
  /** Physical, for laminar to turbulent flow; the pipe's figure is the height of its roughness. */
  DARCY_WEISBACH
}
