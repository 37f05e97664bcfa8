package org.grovewright.web.api;

import java.util.List;

/**
 * Everything the map draws, in metres on the site's own axes (x right, y up on the sketch).
 *
 * @param version version of the site it shows
 * @param pending whether the plan is still being made, so that pipes, emitters and zones are
 *     missing
 * @param fallsShort whether the plan falls short somewhere; null while pending
 * @param bounds what the map must hold at least
 * @param north compass bearing of the y axis, degrees clockwise from true north
 * @param origin the place on the earth of the point 0, 0
 * @param start first day of the plan
 * @param outline corners of the land
 * @param fixtures fixed things
 * @param rows planting rows
 * @param plants plants
 * @param heights measured heights of the ground
 * @param supply where the water comes from
 * @param pipes pipes
 * @param main what the owner says of the main
 * @param ownLines lines of tubing that the owner drew or laid
 * @param trench the trench of the mains
 * @param crossings where it crosses buried services
 * @param emitters emitters
 * @param zones watering zones
 * @param conflicts what is too near to each other
 */
record Scene(
    long version,
    boolean pending,
    Boolean fallsShort,
    Bounds bounds,
    double north,
    Origin origin,
    String start,
    List<double[]> outline,
    List<FixtureView> fixtures,
    List<RowView> rows,
    List<PlantView> plants,
    List<HeightView> heights,
    SupplyView supply,
    List<PipeView> pipes,
    MainView main,
    List<OwnLineView> ownLines,
    List<TrenchView> trench,
    List<CrossingView> crossings,
    List<EmitterView> emitters,
    List<ZoneView> zones,
    List<ConflictView> conflicts) {
  /** A rectangle, metres. */
  record Bounds(double minX, double minY, double maxX, double maxY) {}

  /** A place on the earth, degrees. */
  record Origin(double lat, double lon) {}

  /**
   * A fixed thing.
   *
   * @param index its place in the description's list
   * @param height its height, metres
   * @param clearance distance that plants must keep as the owner wants it, metres
   * @param traffic feet or vehicles where the owner said what goes over it
   * @param service what a buried service carries where the owner said
   * @param depth depth of its top, metres
   */
  record FixtureView(
      String id,
      int index,
      String kind,
      ShapeView shape,
      double height,
      Double clearance,
      String traffic,
      String service,
      Double depth) {}

  /**
   * A shape.
   *
   * @param type area, line or round
   * @param coordinates corners, points, or the centre alone
   * @param radius radius of a round thing, metres
   */
  record ShapeView(String type, List<double[]> coordinates, Double radius) {}

  /** A row with the points it runs through. */
  record RowView(String id, int index, List<double[]> line) {}

  /**
   * A plant.
   *
   * @param role main, companion or groundcover
   * @param movable whether it can be moved by itself; a companion of a row is spread along it
   * @param measuredSpread crown diameter as last measured, metres, if it was
   * @param measuredHeight height as last measured, metres, if it was
   * @param measuredOn day of measuring, if said
   * @param crownDiameterByYear crown diameter at the start of the plan and 1 to 10 years after,
   *     metres; 0 before it is planted
   * @param heightByYear height at the same times, metres
   * @param fullCrownDiameter crown diameter when full-grown, metres
   * @param needLitresPerWeekPeak need in the month of greatest need of the third year, litres a
   *     week
   * @param status ok, conflict or short
   */
  record PlantView(
      String id,
      String species,
      String speciesName,
      String cultivar,
      String role,
      double x,
      double y,
      String row,
      boolean movable,
      String plantedOn,
      Double measuredSpread,
      Double measuredHeight,
      String measuredOn,
      double[] crownDiameterByYear,
      double[] heightByYear,
      double fullCrownDiameter,
      Double needLitresPerWeekPeak,
      String zone,
      String status) {}

  /** A measured height of the ground, metres. */
  record HeightView(int index, double x, double y, double height) {}

  /** Where the water is tapped. */
  record SupplyView(String kind, double x, double y) {}

  /**
   * A pipe.
   *
   * @param type main or lateral
   * @param key catalogue key of the pipe
   * @param size what it is called
   * @param row the row that a lateral serves
   * @param run how a lateral runs: dead-end, loop or two-sided
   * @param laid whether it lies there already
   */
  record PipeView(
      String id,
      String zone,
      String type,
      String key,
      String size,
      List<double[]> line,
      String row,
      String run,
      boolean laid) {}

  /**
   * A part of the trench with the same ground, depth and pipes.
   *
   * @param number its number from 1, as in the report
   * @param text its number, length and depth in the reader's words
   * @param ground the ground it goes through
   * @param depthText depth of its bottom in the reader's units
   * @param widthText its width
   * @param lengthText its length
   */
  record TrenchView(
      int number,
      String text,
      String ground,
      boolean vehicles,
      String depthText,
      String widthText,
      String lengthText,
      List<double[]> line) {}

  /**
   * A place where the trench crosses a buried service.
   *
   * @param service id of the service
   * @param carries what it carries
   * @param segment number of the part of the trench
   */
  record CrossingView(String service, String carries, int segment, double x, double y) {}

  /**
   * What the owner says of the main.
   *
   * @param pipe catalogue key of its pipe
   * @param route its bends
   * @param laid whether it lies there already
   */
  record MainView(String pipe, List<double[]> route, boolean laid) {}

  /**
   * A line of tubing that the owner drew or laid.
   *
   * @param path its place in the description, a JSON Pointer
   * @param run dead-end, loop or two-sided
   * @param tubing catalogue key of its tubing, where given
   * @param route its way; empty where it follows its row
   */
  record OwnLineView(
      String path, String row, String run, String tubing, boolean laid, List<double[]> route) {}

  /**
   * An emitter.
   *
   * @param plant id of the plant it waters
   * @param pressure pressure at it, pascals
   * @param flow what it gives, m3/s
   * @param pressureText the pressure in the reader's units
   * @param flowText the flow in the reader's units
   */
  record EmitterView(
      String id,
      String plant,
      String zone,
      double x,
      double y,
      double pressure,
      double flow,
      String pressureText,
      String flowText) {}

  /** A watering zone with its flow in m3/s and in the reader's units. */
  record ZoneView(String id, double flow, String flowText, double uniformity) {}

  /**
   * Two things that are too near to each other.
   *
   * @param a the plant
   * @param b the other plant or fixed thing; empty for the boundary
   * @param distance distance there is, metres
   * @param wanted distance there should be, metres
   * @param year year of growth in which it begins
   * @param text the same in words, with advice
   */
  record ConflictView(
      String kind, String a, String b, double distance, double wanted, int year, String text) {}
}
