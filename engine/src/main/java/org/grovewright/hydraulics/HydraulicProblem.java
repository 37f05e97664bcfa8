package org.grovewright.hydraulics;

import java.util.Objects;

/**
 * Something wrong with a network, or worth knowing about its solution.
 *
 * @param kind what sort of thing
 * @param partId id of the junction, pipe or other part it concerns; empty for the whole network
 * @param message a plain sentence that names the part, what is wrong and what is allowed
 */
public record HydraulicProblem(Kind kind, String partId, String message) {
  /** What can be wrong or worth knowing. */
  public enum Kind {
    /** Two parts share an id. */
    DUPLICATE_ID,
    /** A part names a node that does not exist. */
    UNKNOWN_NODE,
    /** A number is not a number, infinite or outside what is physically possible. */
    BAD_NUMBER,
    /** A link starts and ends at the same node. */
    SELF_LOOP,
    /** Nothing feeds the network. */
    NO_SOURCE,
    /** A part of the network has no way to any source. */
    ISLAND,
    /** Valves that cannot all do what they are set to. */
    CONTRADICTING_VALVES,
    /** A roughness given for the other friction formula. */
    WRONG_FRICTION_FORMULA,
    /** A part of the network is cut off from every source by closed links. */
    CUT_OFF,
    /** Pressure below atmosphere at a node that water is taken from. */
    NEGATIVE_PRESSURE,
    /** A regulator that cannot hold its set pressure because too little arrives. */
    REGULATOR_STARVED,
    /** A pump that cannot lift against the pressure behind it. */
    PUMP_OVERCOME,
    /** A pump that more water is drawn through than its curve tells of. */
    PUMP_OVERRUN,
    /** No set of flows was found that keeps both laws. */
    NOT_CONVERGED
  }

  /** Checks that no part is missing. */
  public HydraulicProblem {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(partId, "partId");
    Objects.requireNonNull(message, "message");
  }
}
