package org.grovewright.irrigation;

import java.util.List;
import java.util.Optional;
import org.grovewright.catalogue.Filter;
import org.grovewright.catalogue.Pipe;
import org.grovewright.catalogue.Regulator;
import org.grovewright.model.Point;
import org.grovewright.model.Watering.Run;

/**
 * One zone with every size chosen.
 *
 * @param id name of the zone
 * @param main legs of the main in order from the supply; leg i ends at the feed of lateral i
 * @param mainPipe pipe of the main
 * @param laterals the laterals
 * @param regulator regulator of the zone, if one is wanted
 * @param filter filter that the zone's water passes
 */
public record ZoneDesign(
    String id,
    List<List<Point>> main,
    Pipe mainPipe,
    List<LateralDesign> laterals,
    Optional<Regulator> regulator,
    Filter filter) {
  /** Copies the lists. */
  public ZoneDesign {
    main = main.stream().map(List::copyOf).toList();
    laterals = List.copyOf(laterals);
  }

  /**
   * One lateral with its tubing.
   *
   * @param id name of the lateral
   * @param rowId the row it serves
   * @param run how it runs
   * @param tubing its tubing
   * @param lines its lines: one, or two where it has two sides
   */
  public record LateralDesign(String id, String rowId, Run run, Pipe tubing, List<Line> lines) {
    /** Copies the lines. */
    public LateralDesign {
      lines = List.copyOf(lines);
    }
  }

  /** All outlets in order. */
  public List<Outlet> outlets() {
    return laterals.stream()
        .flatMap(lateral -> lateral.lines().stream())
        .flatMap(line -> line.outlets().stream())
        .toList();
  }
}
