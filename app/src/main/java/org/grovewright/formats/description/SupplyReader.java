package org.grovewright.formats.description;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.formats.units.Measure;
import org.grovewright.formats.words.Nearest;
import org.grovewright.model.Point;
import org.grovewright.model.Supply;
import org.grovewright.model.WateringDays;
import org.grovewright.texts.Sentence;

/** Reads where the water comes from. */
final class SupplyReader {
  private static final double GREATEST_PRESSURE_PA = 1.6e6;
  private static final double GREATEST_FLOW_M3_PER_S = 0.02;
  private static final double SECONDS_PER_DAY = 86_400;
  private static final Pattern HOURS =
      Pattern.compile("(\\d{1,2}:\\d\\d)\\s*[-\u2013]\\s*(\\d{1,2}:\\d\\d)");

  private SupplyReader() {}

  static Supply read(Value value, Catalogue catalogue) {
    Optional<Fields> found = value.fields(Section.SUPPLY);
    if (found.isEmpty()) {
      return null;
    }
    Fields fields = found.get();
    Optional<Supply.SupplyKind> kind =
        fields
            .need("kind", "house tap, well pump or gravity tank")
            .flatMap(v -> v.choice(Supply.SupplyKind.class));
    Optional<Point> at =
        fields.need("at", "the place of the outlet, such as [2 m, 0 m]").flatMap(Value::point);
    double outlet = fields.needQuantity("outlet_height", Measure.LENGTH, -5, 30);
    OptionalDouble pressure =
        fields.quantity("static_pressure", Measure.PRESSURE, 1000, GREATEST_PRESSURE_PA);
    OptionalDouble level = fields.quantity("tank_level", Measure.LENGTH, 0.05, 60);
    OptionalDouble volume = fields.quantity("tank_volume", Measure.VOLUME, 0.001, 1000);
    List<Supply.FlowTest> tests = flowTests(fields, pressure);
    kind.ifPresent(k -> checkKind(fields, k));
    return new Supply(
        kind.orElse(Supply.SupplyKind.HOUSE_TAP),
        at.orElse(new Point(0, 0)),
        outlet,
        pressure,
        level,
        volume,
        tests,
        fields.get("pipe").flatMap(v -> pipe(v, catalogue)),
        fields.quantity("daily_limit", Measure.DAILY_VOLUME, 0.001, 1000),
        fields.quantity("weekly_limit", Measure.VOLUME, 0.001, 7000),
        fields.get("hours").map(SupplyReader::allowedHours).orElse(List.of()),
        fields.get("days").map(WateringDaysReader::read).orElse(WateringDays.ANY),
        fields.quantity("salinity", Measure.SALINITY, 0, 2),
        fields.get("roof").flatMap(SupplyReader::roof));
  }

  private static void checkKind(Fields fields, Supply.SupplyKind kind) {
    String word = Value.word(kind);
    if (kind == Supply.SupplyKind.GRAVITY_TANK) {
      fields.need(
          "tank_level", "the height of the water above the outlet of the tank, such as 1.5 m");
      fields.need("tank_volume", "the volume of the tank, such as 1000 L or 275 gal");
      refuse(fields, "static_pressure", word, "its pressure follows from tank_level");
    } else {
      fields.need("static_pressure", "the pressure with nothing flowing, such as 45 psi or 3 bar");
      fields.need(
          "flow_tests", "at least one bucket test: - {volume: 5 gal, time: 32 s, pressure: 0 psi}");
      refuse(fields, "tank_level", word, "only a gravity tank has it");
      refuse(fields, "tank_volume", word, "only a gravity tank has it");
      refuse(fields, "roof", word, "only a gravity tank is filled by a roof");
    }
  }

  private static void refuse(Fields fields, String key, String kind, String shape) {
    if (fields.has(key)) {
      fields.problem(key, "contradicts kind: {0}; {1}", kind, Sentence.of(shape));
    }
  }

  private static List<Supply.FlowTest> flowTests(Fields fields, OptionalDouble staticPressure) {
    List<Supply.FlowTest> tests = new ArrayList<>();
    List<Value> items = fields.get("flow_tests").map(Value::items).orElse(List.of());
    if (items.isEmpty()) {
      fields
          .get("flow_tests")
          .filter(Value::isList)
          .ifPresent(v -> v.problem("is empty; give at least one bucket test"));
    }
    for (Value item : items) {
      item.fields(Section.FLOW_TEST).ifPresent(test -> tests.add(flowTest(test, staticPressure)));
    }
    List<Supply.FlowTest> byFlow = new ArrayList<>(tests);
    byFlow.removeIf(test -> !(test.flowM3PerS() > 0) || Double.isNaN(test.residualPressurePa()));
    byFlow.sort(Comparator.comparingDouble(Supply.FlowTest::flowM3PerS));
    for (int i = 1; i < byFlow.size(); i++) {
      if (byFlow.get(i).residualPressurePa() > byFlow.get(i - 1).residualPressurePa()) {
        fields.problem(
            "flow_tests",
            "contradict one another: the test with the larger flow left the higher pressure");
      }
    }
    return tests;
  }

  private static Supply.FlowTest flowTest(Fields fields, OptionalDouble staticPressure) {
    double volume = fields.needQuantity("volume", Measure.VOLUME, 0.00005, 2);
    double seconds = fields.needQuantity("time", Measure.TIME, 1, SECONDS_PER_DAY);
    double pressure = fields.needQuantity("pressure", Measure.PRESSURE, 0, GREATEST_PRESSURE_PA);
    if (staticPressure.isPresent() && pressure >= staticPressure.getAsDouble()) {
      fields.problem(
          "pressure",
          "contradicts static_pressure: while water flows the pressure is lower than that; for a"
              + " bucket under an open tap it is 0 psi");
    }
    if (volume / seconds > GREATEST_FLOW_M3_PER_S) {
      fields.problem(
          "time", "is too short for that volume: more than 20 L/s comes from no garden outlet");
    }
    return new Supply.FlowTest(volume, seconds, pressure);
  }

  private static Optional<Supply.SupplyPipe> pipe(Value value, Catalogue catalogue) {
    Optional<Fields> fields = value.fields(Section.SUPPLY_PIPE);
    if (fields.isEmpty()) {
      return Optional.empty();
    }
    double length = fields.get().needQuantity("length", Measure.LENGTH, 0.01, 2000);
    return fields
        .get()
        .need("pipe", "the catalogue's key of the pipe")
        .flatMap(v -> v.key(catalogue.pipes(), "pipe"))
        .map(key -> new Supply.SupplyPipe(key, length));
  }

  private static Optional<Supply.Roof> roof(Value value) {
    return value
        .fields(Section.ROOF)
        .map(
            fields ->
                new Supply.Roof(
                    fields.needQuantity("area", Measure.AREA, 0.5, 20_000),
                    fields.quantity("runoff", Measure.SHARE, 0.05, 1),
                    fields.quantity("first_flush", Measure.VOLUME, 0, 10).orElse(0)));
  }

  private static List<Supply.Hours> allowedHours(Value value) {
    List<Supply.Hours> hours = new ArrayList<>();
    boolean[] taken = new boolean[24 * 60];
    for (Value item : value.items()) {
      Optional<Supply.Hours> span = hours(item);
      if (span.isPresent()) {
        hours.add(span.get());
        if (overlaps(span.get(), taken)) {
          item.problem("overlaps the hours above; join them");
        }
      }
    }
    return hours;
  }

  private static boolean overlaps(Supply.Hours span, boolean[] taken) {
    boolean overlap = false;
    int minute = span.from().toSecondOfDay() / 60;
    for (int i = 0; i < span.seconds() / 60; i++) {
      int at = (minute + i) % taken.length;
      overlap |= taken[at];
      taken[at] = true;
    }
    return overlap;
  }

  /** A span of the day; 00:00-24:00 is all of it. */
  static Optional<Supply.Hours> hours(Value value) {
    Sentence wanted = Sentence.of("a span of the day such as 17:30-20:00");
    Optional<String> text = value.text(wanted);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Matcher matcher = HOURS.matcher(text.get());
    Optional<LocalTime> from = matcher.matches() ? time(matcher.group(1)) : Optional.empty();
    Optional<LocalTime> until = matcher.matches() ? time(matcher.group(2)) : Optional.empty();
    if (from.isEmpty() || until.isEmpty()) {
      value.problem("'{0}' is not understood; give {1}", Nearest.shorten(text.get()), wanted);
      return Optional.empty();
    }
    boolean wholeDay = text.get().replace(" ", "").matches("0?0:00[-\u2013]24:00");
    if (from.get().equals(until.get()) && !wholeDay) {
      value.problem(
          "'{0}' ends where it begins; give {1}, or 00:00-24:00 for all day", text.get(), wanted);
      return Optional.empty();
    }
    return Optional.of(new Supply.Hours(from.get(), until.get()));
  }

  private static Optional<LocalTime> time(String text) {
    int colon = text.indexOf(':');
    int hour = Integer.parseInt(text.substring(0, colon));
    int minute = Integer.parseInt(text.substring(colon + 1));
    if (hour == 24 && minute == 0) {
      return Optional.of(LocalTime.MIDNIGHT);
    }
    return hour < 24 && minute < 60 ? Optional.of(LocalTime.of(hour, minute)) : Optional.empty();
  }
}
