package org.grovewright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.model.Site;
import org.grovewright.model.Soil;
import org.grovewright.model.Supply;
import org.grovewright.quantity.Kind;
import org.grovewright.sheets.ReaderUnits;
import org.grovewright.sheets.Words;
import org.locationtech.jts.algorithm.Area;
import org.locationtech.jts.geom.Coordinate;

/** Says in one paragraph what a grove file describes, so that its writer sees it was understood. */
final class GroveSummary {
  private final Grove grove;
  private final Catalogue catalogue;
  private final ReaderUnits units;

  GroveSummary(Grove grove, Catalogue catalogue) {
    this.grove = grove;
    this.catalogue = catalogue;
    this.units = new ReaderUnits(grove.preferences().units(), grove.stock().currency());
  }

  String text() {
    List<String> sentences = new ArrayList<>();
    sentences.add(land());
    sentences.add(soil());
    sentences.add(climate());
    sentences.add(plants());
    sentences.add(water());
    sentences.add(work());
    return String.join(" ", sentences).replace('\u00a0', ' ').replace('\u202f', ' ');
  }

  private String land() {
    Site site = grove.site();
    String place =
        String.format(
            Locale.ROOT,
            "%.2f\u00b0 %s, %.2f\u00b0 %s",
            Math.abs(site.latitudeDeg()),
            site.latitudeDeg() < 0 ? "S" : "N",
            Math.abs(site.longitudeDeg()),
            site.longitudeDeg() < 0 ? "W" : "E");
    return site.name()
        + ": "
        + units.text(area(site.boundary()), Kind.AREA)
        + " of land at "
        + place
        + ", "
        + units.text(site.elevationM(), Kind.HEAD)
        + " above the sea, with "
        + count(site.fixtures().size(), "fixed thing")
        + " on it and "
        + (site.spotHeights().isEmpty()
            ? "taken as level"
            : count(site.spotHeights().size(), "spot height"))
        + ".";
  }

  private static double area(List<Point> corners) {
    List<Coordinate> ring = new ArrayList<>();
    corners.forEach(corner -> ring.add(new Coordinate(corner.x(), corner.y())));
    ring.add(ring.get(0));
    return Area.ofRing(ring.toArray(Coordinate[]::new));
  }

  private String soil() {
    Soil soil = grove.soil();
    String what =
        soil.textureKey()
            .map(key -> catalogue.textures().get(key).name())
            .orElse("a soil known by measured water contents");
    return "The soil is "
        + what.toLowerCase(Locale.ROOT)
        + ", "
        + units.text(soil.depthM(), Kind.HEAD)
        + " deep.";
  }

  private String climate() {
    double rain = grove.climate().normals().stream().mapToDouble(m -> m.rainM().orElse(0)).sum();
    double coldest =
        grove.climate().normals().stream().mapToDouble(m -> m.tminC()).min().orElseThrow();
    double warmest =
        grove.climate().normals().stream().mapToDouble(m -> m.tmaxC()).max().orElseThrow();
    int days = grove.climate().daily().size();
    return "The weather is from "
        + (days == 0 ? "twelve months" : count(days, "day"))
        + ": "
        + units.text(rain, Kind.WATER_DEPTH)
        + " of rain a year, the coldest month down to "
        + units.text(coldest, Kind.TEMPERATURE)
        + " and the warmest up to "
        + units.text(warmest, Kind.TEMPERATURE)
        + " on a usual day.";
  }

  private String plants() {
    Map<String, Long> bySpecies =
        grove.plantings().stream()
            .collect(
                Collectors.groupingBy(Planting::speciesKey, TreeMap::new, Collectors.counting()));
    String list =
        bySpecies.entrySet().stream()
            .map(e -> e.getValue() + " " + catalogue.species().get(e.getKey()).name())
            .collect(Collectors.joining(", "));
    return "There are "
        + count(grove.plantings().size(), "plant")
        + " in "
        + count(grove.rows().size(), "row")
        + " and beside them: "
        + list
        + ".";
  }

  private String water() {
    Supply supply = grove.supply();
    StringBuilder text = new StringBuilder("Water comes from a ");
    text.append(supply.kind().name().toLowerCase(Locale.ROOT).replace('_', ' '));
    supply
        .staticPressurePa()
        .ifPresent(p -> text.append(" at ").append(units.text(p, Kind.PRESSURE)));
    supply
        .tankLevelM()
        .ifPresent(
            h -> text.append(", ").append(units.text(h, Kind.HEAD)).append(" above its outlet"));
    if (!supply.flowTests().isEmpty()) {
      double flow = supply.flowTests().get(0).flowM3PerS();
      text.append(", ").append(units.text(flow, Kind.FLOW)).append(" in the first bucket test");
    }
    if (!supply.allowedDays().any()) {
      text.append("; it may run only ").append(Words.on(supply.allowedDays()));
    }
    int zones = grove.watering().zones().size();
    text.append(
        zones == 0
            ? "; the zones are to be proposed."
            : "; there are " + count(zones, "zone") + ".");
    return text.toString();
  }

  private String work() {
    double weekly = grove.crew().hours().values().stream().mapToDouble(Supply.Hours::seconds).sum();
    return count(grove.crew().people(), "person")
        + " can work "
        + units.text(weekly, Kind.WORK_TIME)
        + " a week from "
        + grove.start()
        + ".";
  }

  private static String count(int number, String noun) {
    if (noun.equals("person")) {
      return number + (number == 1 ? " person" : " people");
    }
    return number + " " + noun + (number == 1 ? "" : "s");
  }
}
