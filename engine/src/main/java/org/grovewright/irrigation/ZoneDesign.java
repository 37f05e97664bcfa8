package org.grovewright.irrigation;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
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
 * @param year year of the plan whose emitters are open; in later years it is the last one's
 */
public record ZoneDesign(
    String id,
    List<List<Point>> main,
    Pipe mainPipe,
    List<LateralDesign> laterals,
    Optional<Regulator> regulator,
    Filter filter,
    int year) {
  private static final Pattern ZONE = Pattern.compile("^[Zz]one[-_ ]?(?=.)");

  /** Copies the lists. */
  public ZoneDesign {
    main = main.stream().map(List::copyOf).toList();
    laterals = List.copyOf(laterals);
  }

  /** What a zone is called after the word "zone": A for the ids A and zone-A alike. */
  public static String called(String id) {
    return ZONE.matcher(id).replaceFirst("");
  }

  /**
   * One lateral with its tubing.
   *
   * @param id name of the lateral
   * @param rowId the row it serves
   * @param run how it runs
   * @param tubing its tubing
   * @param lines its lines: one, or two where it has two sides
   * @param laid whether its tubing lies there already
   */
  public record LateralDesign(
      String id, String rowId, Run run, Pipe tubing, List<Line> lines, boolean laid) {
    /** Copies the lines. */
    public LateralDesign {
      lines = List.copyOf(lines);
    }

    /** A lateral that is still to be laid. */
    public LateralDesign(String id, String rowId, Run run, Pipe tubing, List<Line> lines) {
      this(id, rowId, run, tubing, lines, false);
    }
  }

  /** A zone as it is in the last year planned. */
  ZoneDesign(
      String id,
      List<List<Point>> main,
      Pipe mainPipe,
      List<LateralDesign> laterals,
      Optional<Regulator> regulator,
      Filter filter) {
    this(id, main, mainPipe, laterals, regulator, filter, WateringSystem.DESIGN_YEAR);
  }

  /** The same zone with the emitters that are open in another year. */
  public ZoneDesign inYear(int other) {
    return new ZoneDesign(id, main, mainPipe, laterals, regulator, filter, other);
  }

  /** The same zone with another main. */
  ZoneDesign with(Pipe main) {
    return new ZoneDesign(id, this.main, main, laterals, regulator, filter, year);
  }

  /** The outlets that are open in the zone's year, in order. */
  public List<Outlet> outlets() {
    return allOutlets().stream().filter(outlet -> outlet.openIn(year)).toList();
  }

  /** The outlets of all years in order. */
  public List<Outlet> allOutlets() {
    return laterals.stream()
        .flatMap(lateral -> lateral.lines().stream())
        .flatMap(line -> line.outlets().stream())
        .toList();
  }
}
