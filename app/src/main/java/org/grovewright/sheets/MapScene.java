package org.grovewright.sheets;

import java.util.List;
import org.grovewright.model.Fixture;
import org.grovewright.model.Point;

/**
 * What is to be seen on the map, in the site's frame and in metres.
 *
 * @param title name of the land
 * @param boundary corners of the land
 * @param northBearingDeg compass bearing of the frame's y axis, degrees clockwise from true north
 * @param fixtures fixed things
 * @param rows centre lines of the rows
 * @param stages names of the moments for which crowns are drawn, the earliest first
 * @param plants plants
 * @param pipes pipes
 * @param emitters emitters
 * @param devices supply, filter, valves and the like
 */
record MapScene(
    String title,
    List<Point> boundary,
    double northBearingDeg,
    List<Fixture> fixtures,
    List<RowMark> rows,
    List<String> stages,
    List<PlantMark> plants,
    List<PipeMark> pipes,
    List<Point> emitters,
    List<DeviceMark> devices) {
  MapScene {
    boundary = List.copyOf(boundary);
    fixtures = List.copyOf(fixtures);
    rows = List.copyOf(rows);
    stages = List.copyOf(stages);
    plants = List.copyOf(plants);
    pipes = List.copyOf(pipes);
    emitters = List.copyOf(emitters);
    devices = List.copyOf(devices);
  }

  /** A planting row. */
  record RowMark(String id, List<Point> line) {}

  /**
   * A plant.
   *
   * @param label what is written beside it
   * @param title its name and species, shown when pointed at
   * @param at where it stands
   * @param main whether it is a main plant
   * @param spreadsM crown diameter at each stage, metres
   */
  record PlantMark(String label, String title, Point at, boolean main, List<Double> spreadsM) {}

  /**
   * A pipe.
   *
   * @param title what it is, shown when pointed at
   * @param zone number of its zone from 0; -1 for the main that serves all zones
   * @param lateral whether it waters plants, rather than feeding other pipes
   * @param line the points it runs through
   */
  record PipeMark(String title, int zone, boolean lateral, List<Point> line) {}

  /** A supply, filter or valve with the word written beside it. */
  record DeviceMark(String label, Point at) {}
}
