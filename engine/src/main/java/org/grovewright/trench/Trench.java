package org.grovewright.trench;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.grovewright.catalogue.Pipe;
import org.grovewright.catalogue.TrenchGround;
import org.grovewright.model.Fixture;
import org.grovewright.model.Point;

/**
 * The trench of all mains.
 *
 * @param segments its segments, numbered from the supply on
 * @param crossings where it crosses buried services
 */
public record Trench(List<Segment> segments, List<Crossing> crossings) {
  /** No trench. */
  public static final Trench NONE = new Trench(List.of(), List.of());

  /** Copies the lists. */
  public Trench {
    segments = List.copyOf(segments);
    crossings = List.copyOf(crossings);
  }

  /**
   * A pipe that is to lie in the ground.
   *
   * @param zone the zone it serves
   * @param pipe what it is
   * @param path the points it runs through
   */
  public record Run(String zone, Pipe pipe, List<Point> path) {
    /** Copies the path. */
    public Run {
      path = List.copyOf(path);
    }
  }

  /** A pipe in a segment: the zone it serves and what it is. */
  public record InTrench(String zone, Pipe pipe) {}

  /**
   * A part of the trench whose ground, depth and pipes are the same from end to end.
   *
   * @param number its number from 1
   * @param ground the ground it goes through
   * @param vehicles whether vehicles drive over it
   * @param line the points it runs through
   * @param lengthM its length over the ground, metres
   * @param coverM soil over the pipes, metres
   * @param depthM depth of its bottom, metres
   * @param widthM its width, metres
   * @param pipes the pipes in it
   * @param things ids of the things whose ground it goes through
   */
  public record Segment(
      int number,
      TrenchGround ground,
      boolean vehicles,
      List<Point> line,
      double lengthM,
      double coverM,
      double depthM,
      double widthM,
      List<InTrench> pipes,
      List<String> things) {
    /** Copies the lists. */
    public Segment {
      line = List.copyOf(line);
      pipes = List.copyOf(pipes);
      things = List.copyOf(things);
    }

    /** Soil to be dug, m3. */
    public double volumeM3() {
      return lengthM() * widthM * depthM;
    }

    /** Surface to be taken up, m2. */
    public double areaM2() {
      return lengthM() * widthM;
    }
  }

  /**
   * A place where the trench crosses a buried service.
   *
   * @param service id of the service
   * @param carries what it carries
   * @param serviceDepthM depth of its top, metres; empty where it is not known
   * @param at the place
   * @param angleRad angle between both, from 0 to a right angle
   * @param segment number of the segment
   */
  public record Crossing(
      String service,
      Fixture.Carries carries,
      OptionalDouble serviceDepthM,
      Point at,
      double angleRad,
      int segment) {}

  /** Length of all segments, metres. */
  public double lengthM() {
    return segments.stream().mapToDouble(Segment::lengthM).sum();
  }

  /** Soil to be dug, m3. */
  public double volumeM3() {
    return segments.stream().mapToDouble(Segment::volumeM3).sum();
  }

  /** The segment of a number. */
  public Optional<Segment> segment(int number) {
    return segments.stream().filter(s -> s.number() == number).findFirst();
  }
}
