package org.grovewright.hydraulics;

import java.util.Objects;

/**
 * Like emitters at one node.
 *
 * @param id name, unique among emitter groups
 * @param nodeId the node they hang on
 * @param curve the curve of one of them
 * @param count how many there are
 */
public record EmitterGroup(String id, String nodeId, EmitterCurve curve, int count) {
  /** Checks that no part is missing. */
  public EmitterGroup {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(nodeId, "nodeId");
    Objects.requireNonNull(curve, "curve");
  }
}
