package org.grovewright.irrigation;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Constant;
import org.grovewright.catalogue.Part;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.layout.Terrain;
import org.grovewright.model.Grove;
import org.grovewright.quantity.FigureBook;
import org.grovewright.water.WaterNeeds;

/** Small invented groves, made from a seed, of which every system can be tried. */
final class SmallCase {
  private static final List<String> TREES =
      List.of("lemon", "fig", "avocado", "persimmon", "mandarin", "pomegranate");
  private static final List<String> COMPANIONS = List.of("comfrey", "lemongrass", "yarrow");

  private static final int MOST_EMITTERS = 3;

  private SmallCase() {}

  /** The catalogue with few pipes and emitters, so that all of their combinations can be tried. */
  static Catalogue few(Catalogue all) {
    Map<String, Constant> constants = new LinkedHashMap<>(all.constants());
    constants.computeIfPresent(
        "irrigation.max-emitters-per-plant",
        (key, c) -> new Constant(key, c.name(), MOST_EMITTERS, c.kind(), c.source()));
    // One roll of tape serves all zones, which sums over single zones would count several times.
    Map<String, Part> parts = new LinkedHashMap<>(all.parts());
    parts.remove("part.marking-tape");
    return new Catalogue(
        all.species(),
        all.textures(),
        only(
            all.pipes(),
            "pipe.pe-13",
            "pipe.pe-16",
            "pipe.feeder-4",
            "pipe.pe100-pn16-20",
            "pipe.pe100-pn16-25"),
        only(all.emitters(), "emitter.pc-2", "emitter.pc-4", "emitter.turb-4"),
        only(all.filters(), "filter.screen-25"),
        only(all.regulators(), "reg.1-bar-low", "reg.1-5-bar-low"),
        all.mixes(),
        all.amendments(),
        all.mulches(),
        parts,
        all.tasks(),
        all.cautions(),
        all.clearances(),
        all.grounds(),
        constants,
        all.prices());
  }

  private static <T> Map<String, T> only(Map<String, T> all, String... keys) {
    Map<String, T> few = new LinkedHashMap<>();
    for (String key : keys) {
      few.put(key, all.get(key));
    }
    return few;
  }

  /** The grove of a seed. */
  static Grove grove(long seed, Catalogue catalogue) {
    return new DescriptionReader(catalogue, null)
        .read(text(seed), "seed-" + seed + ".yaml", Path.of("."));
  }

  /** The site of a seed's grove, ready to be designed for. */
  static DesignSite site(long seed, Catalogue catalogue) {
    Grove grove = grove(seed, catalogue);
    FigureBook book = new FigureBook();
    Terrain terrain = Terrain.of(grove.site());
    WaterNeeds needs = WaterNeeds.of(grove, catalogue, book);
    SupplyModel supply = SupplyModel.of(grove, catalogue, terrain, book);
    return WateringSystem.siteOf(
        grove, catalogue, needs, terrain, supply, new KnownDesigns(), new ArrayList<>());
  }

  /** One row of two or three plants, or two rows of one or two, behind a tap. */
  private static String text(long seed) {
    Random random = new Random(seed);
    double staticKpa = 150 + random.nextInt(300);
    double full = 12 + random.nextInt(60);
    StringBuilder text = new StringBuilder();
    text.append(
        """
        units: metric
        friction: %s
        start: 2027-02-20
        site:
          name: Seed %d (invented)
          latitude: -30.4
          longitude: 152.6
          elevation: 118 m
          boundary: [[0 m, 0 m], [60 m, 0 m], [60 m, 40 m], [0 m, 40 m]]
          north: 0 deg
          heights:
            - {at: [0 m, 0 m], height: 0 m}
            - {at: [60 m, 0 m], height: %s m}
            - {at: [0 m, 40 m], height: %s m}
        soil: {texture: loam, depth: 1 m, ph: 6.5}
        climate:
          source: invented
          wind_height: 2 m
          months:
            tmin: 18 18 17 13 10 8 7 7 10 12 15 17 °C
            tmax: 28 28 27 24 21 19 19 20 23 25 26 27 °C
            humidity: 74 77 76 73 71 70 66 62 63 67 70 72 %%
            wind: 2 2 2 2 2 2 2 2 2 2 2 2 m/s
            sunshine: 7 7 7 7 6 6 7 8 8 8 8 8 h
            rain: %d %d 90 60 40 40 30 20 20 40 60 80 mm
        supply:
          kind: house tap
          at: [2 m, 2 m]
          outlet_height: 0.5 m
          static_pressure: %s kPa
          flow_tests:
            - {volume: 10 L, time: %s s, pressure: 0 kPa}
        """
            .formatted(
                random.nextBoolean() ? "darcy weisbach" : "hazen williams",
                seed,
                number(random.nextDouble() * 3 - 1),
                number(random.nextDouble() * 6 - 1),
                20 + random.nextInt(100),
                20 + random.nextInt(100),
                number(staticKpa),
                number(full)));
    text.append("rows:\n");
    switch (random.nextInt(6)) {
      case 0 -> row(text, random, "A", 6, "TT");
      case 1 -> row(text, random, "A", 6, "TC");
      case 2 -> row(text, random, "A", 6, "TCT");
      case 3 -> {
        row(text, random, "A", 6, "T");
        row(text, random, "B", 14, "TC");
      }
      default -> {
        row(text, random, "A", 6, "T");
        row(text, random, "B", 14, "T");
      }
    }
    // Zones are priced one by one there, so a trench that two of them share must cost nothing.
    text.append("watering: {propose: true, hour_of_work: 0}\n");
    text.append("crew: {people: 1, hours: {Sat: 08:00-13:00}}\n");
    return text.toString();
  }

  private static void row(StringBuilder text, Random random, String id, double y, String plants) {
    double x = 3 + random.nextInt(6);
    double at = 1 + random.nextInt(4);
    double gap = 3 + random.nextInt(6);
    double length = at + gap * plants.length() + 2;
    text.append("  - id: ").append(id).append('\n');
    text.append("    from: [%s m, %s m]\n".formatted(number(x), number(y)));
    text.append("    to: [%s m, %s m]\n".formatted(number(x + length), number(y)));
    text.append("    planted: 2027-03-20\n    container: 20 L\n    plants:\n");
    for (char plant : plants.toCharArray()) {
      List<String> from = plant == 'T' ? TREES : COMPANIONS;
      text.append(
          "      - {species: %s, at: %s m}\n"
              .formatted(from.get(random.nextInt(from.size())), number(at)));
      at += gap;
    }
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }
}
