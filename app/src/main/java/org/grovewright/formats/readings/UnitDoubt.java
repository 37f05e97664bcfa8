package org.grovewright.formats.readings;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.grovewright.formats.readings.ReadingsCsv.Written;
import org.grovewright.formats.units.Measure;
import org.grovewright.formats.units.NotAQuantityException;
import org.grovewright.formats.units.QuantityText;
import org.grovewright.trouble.FieldReading;
import org.grovewright.trouble.PlacedReading;

/** Notices readings whose heading names another unit than they were taken in. */
public final class UnitDoubt {
  private static final List<String> PRESSURES = List.of("psi", "kPa", "bar", "mbar");
  private static final List<String> FLOWS =
      List.of("L/min", "gal/min", "m3/h", "L/h", "gal/h", "L/s");
  private static final List<String> VOLUMES = List.of("mL", "L", "gal");

  /** A reading may be so much above what the supply can give, by noise. */
  private static final double SLACK = 1.15;

  /** Beyond this ratio of readings to the plan a unit is doubted, if another fits far better. */
  private static final double FAR_OFF = 4;

  /** A unit fits where the readings come so near to the plan. */
  private static final double NEAR = 1.6;

  private UnitDoubt() {}

  /**
   * Looks at every reading.
   *
   * @param written the readings as written
   * @param placed the same readings in the same order, with their places
   * @throws ReadingsException if a reading cannot be, or all of a kind look like another unit
   */
  public static void check(List<Written> written, List<PlacedReading> placed) {
    for (int i = 0; i < written.size(); i++) {
      impossible(written.get(i), placed.get(i));
    }
    for (FieldReading.Kind kind : FieldReading.Kind.values()) {
      List<Double> ratios = new ArrayList<>();
      Written first = null;
      PlacedReading firstPlaced = null;
      for (int i = 0; i < written.size(); i++) {
        PlacedReading p = placed.get(i);
        boolean comparable = p.expected() > 0 && p.reading().value() > 0 && p.closed().isEmpty();
        if (p.reading().kind() == kind && comparable) {
          ratios.add(p.reading().value() / p.expected());
          first = first == null ? written.get(i) : first;
          firstPlaced = firstPlaced == null ? p : firstPlaced;
        }
      }
      if (ratios.size() >= 2) {
        allOff(kind, ratios, first, firstPlaced);
      }
    }
  }

  private static void impossible(Written written, PlacedReading placed) {
    double value = placed.reading().value();
    if (value <= placed.most() * SLACK) {
      return;
    }
    String line = "line " + placed.reading().line() + ": ";
    String what = word(placed.reading().kind());
    String most = placed.most() > 0 ? inUnit(placed.most(), written, placed.reading()) : "nothing";
    String looks =
        better(written, placed)
            .map(
                unit ->
                    " The number looks like "
                        + unit
                        + ": if it is, write "
                        + unit
                        + " in the heading.")
            .orElse(" Look at the number and at the unit in the heading.");
    throw new ReadingsException(
        line
            + what
            + " of "
            + written.text()
            + " "
            + written.unit()
            + " is more than the supply can give there ("
            + most
            + ")."
            + looks);
  }

  private static void allOff(
      FieldReading.Kind kind, List<Double> ratios, Written first, PlacedReading placed) {
    List<Double> sorted = new ArrayList<>(ratios);
    sorted.sort(Double::compare);
    double middle = sorted.get(sorted.size() / 2);
    boolean alike = sorted.get(sorted.size() - 1) < 3 * sorted.get(0);
    if (!alike || middle > 1 / FAR_OFF && middle < FAR_OFF) {
      return;
    }
    for (String unit : candidates(kind)) {
      double size = size(unit, kind) / size(first.unit(), kind);
      double ratio = middle * size;
      if (ratio > 1 / NEAR && ratio < NEAR) {
        throw new ReadingsException(
            "All readings of "
                + word(kind)
                + " are about "
                + String.format(Locale.ROOT, "%.3g", middle)
                + " times what the plan has; they look like "
                + unit
                + ", not "
                + first.unit()
                + " (line "
                + placed.reading().line()
                + " is the first). Put the unit in the heading right.");
      }
    }
  }

  /** The unit in which a reading comes nearest to the plan, if it comes near at all. */
  private static Optional<String> better(Written written, PlacedReading placed) {
    FieldReading.Kind kind = placed.reading().kind();
    String best = null;
    double least = Math.log(2 * NEAR);
    for (String unit : candidates(kind)) {
      double value = placed.reading().value() * size(unit, kind) / size(written.unit(), kind);
      double off = Math.abs(Math.log(value / placed.expected()));
      if (value <= placed.most() * SLACK && off < least) {
        least = off;
        best = unit;
      }
    }
    return Optional.ofNullable(best);
  }

  private static List<String> candidates(FieldReading.Kind kind) {
    return switch (kind) {
      case METER -> FLOWS;
      case PRESSURE -> PRESSURES;
      case CATCH -> VOLUMES;
    };
  }

  private static String word(FieldReading.Kind kind) {
    return switch (kind) {
      case METER -> "meter";
      case PRESSURE -> "pressure";
      case CATCH -> "caught water";
    };
  }

  private static double size(String unit, FieldReading.Kind kind) {
    Measure measure =
        switch (kind) {
          case METER -> Measure.FLOW;
          case PRESSURE -> Measure.PRESSURE;
          case CATCH -> Measure.VOLUME;
        };
    try {
      return QuantityText.read("1 " + unit, measure).value();
    } catch (NotAQuantityException e) {
      throw new IllegalStateException("a unit of ours is not known: " + unit, e);
    }
  }

  private static String inUnit(double value, Written written, FieldReading reading) {
    if (reading.kind() == FieldReading.Kind.CATCH) {
      return String.format(Locale.ROOT, "%.3g L/h", value * 3.6e6);
    }
    return String.format(
        Locale.ROOT, "%.3g %s", value / size(written.unit(), reading.kind()), written.unit());
  }
}
