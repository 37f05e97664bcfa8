package org.grovewright.exchange;

import io.jenetics.jpx.GPX;
import io.jenetics.jpx.Track;
import io.jenetics.jpx.TrackSegment;
import io.jenetics.jpx.WayPoint;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.grovewright.exchange.Places.PlantPlace;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;

/** Land and plants as GPX 1.1: the boundary is a closed track, every plant a waypoint. */
public final class Gpx {
  private static final String CREATOR = "Grovewright";
  private static final String BOUNDARY = "boundary";
  private static final int MOST_POINTS = 20_000;

  private Gpx() {}

  /** The file of a grove. */
  public static String write(Grove grove) {
    OnEarth earth = OnEarth.of(grove.site());
    TrackSegment.Builder boundary = TrackSegment.builder();
    List<Point> corners = new ArrayList<>(grove.site().boundary());
    corners.add(corners.get(0));
    corners.forEach(corner -> boundary.addPoint(place(earth, corner).build()));
    GPX.Builder file =
        GPX.builder(GPX.Version.V11, CREATOR)
            .metadata(metadata -> metadata.name(grove.site().name()))
            .addTrack(
                Track.builder()
                    .name(grove.site().name())
                    .type(BOUNDARY)
                    .addSegment(boundary.build())
                    .build());
    for (Planting plant : grove.plantings()) {
      file.addWayPoint(place(earth, plant.at()).name(plant.id()).type(plant.speciesKey()).build());
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      GPX.Writer.of(new GPX.Writer.Indent("  ")).write(file.build(), bytes);
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory cannot fail", e);
    }
    return bytes.toString(StandardCharsets.UTF_8).replace("\r\n", "\n");
  }

  private static WayPoint.Builder place(OnEarth earth, Point point) {
    double[] latLon = earth.toEarth(point);
    return WayPoint.builder().lat(latLon[0]).lon(latLon[1]);
  }

  /**
   * Reads outline and plants: the outline is the track of type {@code boundary}, or else the only
   * track or route; every waypoint is a plant.
   *
   * @throws ExchangeException if the text is no such file
   */
  public static Places read(String text) {
    if (text.contains("<!DOCTYPE") || text.contains("<!ENTITY")) {
      throw new ExchangeException("The file declares a document type, which GPX has no need of.");
    }
    GPX file;
    try {
      file =
          GPX.Reader.of(GPX.Reader.Mode.LENIENT)
              .read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
    } catch (IOException | IllegalArgumentException e) {
      throw new ExchangeException("The file is not GPX, or is cut off.");
    }
    List<PlantPlace> plants = new ArrayList<>();
    for (WayPoint point : file.getWayPoints()) {
      plants.add(
          new PlantPlace(
              point.getName().orElse(""),
              Optional.ofNullable(point.getType().orElse(null)),
              point.getLatitude().doubleValue(),
              point.getLongitude().doubleValue()));
    }
    if (plants.size() > MOST_POINTS) {
      throw new ExchangeException("The file has more than {0} waypoints.", MOST_POINTS);
    }
    return new Places(outline(file), plants);
  }

  private static List<double[]> outline(GPX file) {
    List<Track> marked =
        file.getTracks().stream()
            .filter(track -> track.getType().equals(Optional.of(BOUNDARY)))
            .toList();
    List<Track> tracks = marked.isEmpty() ? file.getTracks() : marked;
    int lines = tracks.size() + (marked.isEmpty() ? file.getRoutes().size() : 0);
    if (lines == 0) {
      return List.of();
    }
    if (lines > 1) {
      throw new ExchangeException(
          "The file has {0} tracks and routes; keep the one round the land.", lines);
    }
    List<double[]> corners = new ArrayList<>();
    (tracks.isEmpty()
            ? file.getRoutes().get(0).points()
            : tracks.get(0).segments().flatMap(TrackSegment::points))
        .forEach(
            point ->
                corners.add(
                    new double[] {
                      point.getLatitude().doubleValue(), point.getLongitude().doubleValue()
                    }));
    int last = corners.size() - 1;
    if (last > 0
        && corners.get(0)[0] == corners.get(last)[0]
        && corners.get(0)[1] == corners.get(last)[1]) {
      corners.remove(last);
    }
    if (corners.size() < 3) {
      throw new ExchangeException("The track round the land needs at least three corners.");
    }
    return corners;
  }
}
