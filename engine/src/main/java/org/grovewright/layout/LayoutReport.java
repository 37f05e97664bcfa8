package org.grovewright.layout;

import java.util.List;
import org.grovewright.finding.Finding;

/**
 * What the layout check found.
 *
 * @param conflicts things too near each other, plants against plants first, then against fixed
 *     things, then against the boundary
 * @param findings every remark on the layout, those of the conflicts first
 */
public record LayoutReport(List<Conflict> conflicts, List<Finding> findings) {
  /** Copies the lists. */
  public LayoutReport {
    conflicts = List.copyOf(conflicts);
    findings = List.copyOf(findings);
  }
}
