package org.grovewright.irrigation;

import java.nio.file.Path;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.layout.Terrain;
import org.grovewright.model.Grove;
import org.grovewright.quantity.FigureBook;
import org.grovewright.water.WaterNeeds;

/** An invented plot of 60 m by 40 m whose ground may rise away from its south side. */
final class InventedPlot {
  static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();

  private InventedPlot() {}

  /** A house tap whose flow falls to nothing at its pressure at rest. */
  static String tap(String at, String staticPressure) {
    return "{kind: house tap, at: "
        + at
        + ", outlet_height: 0.5 m, static_pressure: "
        + staticPressure
        + ", flow_tests: [{volume: 10 L, time: 20 s, pressure: 0 kPa}]}";
  }

  /** A row of two trees, planted 2 m and 8 m from its start. */
  static String row(String id, String from, String to) {
    return """
          - id: %s
            from: %s
            to: %s
            planted: 2027-03-20
            container: 20 L
            plants:
              - {species: lemon, at: 2 m}
              - {species: fig, at: 8 m}
        """
        .formatted(id, from, to);
  }

  /**
   * The plot.
   *
   * @param rise how much higher its north side is, metres
   * @param supply members of the supply
   * @param rows its rows
   * @param watering members of the watering
   */
  static Grove grove(double rise, String supply, String rows, String watering) {
    return grove(rise, "", supply, rows, watering);
  }

  /**
   * The plot with heights of further places.
   *
   * @param spots flow mappings of heights, each as a line of a list; empty for none
   */
  static Grove grove(double rise, String spots, String supply, String rows, String watering) {
    String text =
        """
        units: metric
        start: 2027-02-20
        site:
          name: Plot (invented)
          latitude: -30.4
          longitude: 152.6
          elevation: 118 m
          boundary: [[0 m, 0 m], [60 m, 0 m], [60 m, 40 m], [0 m, 40 m]]
          north: 0 deg
          heights:
            - {at: [0 m, 0 m], height: 0 m}
            - {at: [60 m, 0 m], height: 0 m}
            - {at: [0 m, 40 m], height: %s m}
        %ssoil: {texture: loam, depth: 1 m, ph: 6.5}
        climate:
          source: invented
          wind_height: 2 m
          months:
            tmin: 18 18 17 13 10 8 7 7 10 12 15 17 °C
            tmax: 28 28 27 24 21 19 19 20 23 25 26 27 °C
            humidity: 74 77 76 73 71 70 66 62 63 67 70 72 %%
            wind: 2 2 2 2 2 2 2 2 2 2 2 2 m/s
            sunshine: 7 7 7 7 6 6 7 8 8 8 8 8 h
            rain: 50 50 50 40 30 30 30 20 20 40 50 50 mm
        supply: %s
        rows:
        %swatering: %s
        crew: {people: 1, hours: {Sat: 08:00-13:00}}
        """
            .formatted(String.valueOf(rise), spots, supply, rows, watering);
    return new DescriptionReader(CATALOGUE, null).read(text, "plot.yaml", Path.of("."));
  }

  /** The watering system of a grove. */
  static WateringSystem system(Grove grove) {
    FigureBook book = new FigureBook();
    WaterNeeds needs = WaterNeeds.of(grove, CATALOGUE, book);
    return WateringSystem.of(grove, CATALOGUE, needs, Terrain.of(grove.site()), book);
  }
}
