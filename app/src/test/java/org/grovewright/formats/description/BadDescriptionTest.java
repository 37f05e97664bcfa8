package org.grovewright.formats.description;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Each case spoils one place of the starter. The marker {@code @@} in the spoiled text stands where
 * the problem must be reported, and is taken out before reading.
 */
class BadDescriptionTest {
  private static final String MARK = "@@";

  static Stream<Arguments> cases() {
    return Stream.of(
        // Units and dimensions.
        bad(
            "static_pressure: 50 psi",
            "static_pressure: @@45 gal",
            "supply.static_pressure",
            "is a volume; give a pressure"),
        bad(
            "static_pressure: 50 psi",
            "static_pressure: @@45",
            "supply.static_pressure",
            "has no unit"),
        bad(
            "static_pressure: 50 psi",
            "static_pressure: @@45 pis",
            "supply.static_pressure",
            "did you mean psi?"),
        bad(
            "static_pressure: 50 psi",
            "static_pressure: @@4500 psi",
            "supply.static_pressure",
            "allowed is 0.145 psi to 232 psi"),
        bad(
            "static_pressure: 50 psi",
            "static_pressure: @@-50 psi",
            "supply.static_pressure",
            "out of range"),
        bad(
            "static_pressure: 50 psi",
            "static_pressure: @@.nan",
            "supply.static_pressure",
            "not a number"),
        bad(
            "static_pressure: 50 psi",
            "static_pressure: @@.inf psi",
            "supply.static_pressure",
            "not a number"),
        bad(
            "static_pressure: 50 psi",
            "static_pressure: @@1e999 psi",
            "supply.static_pressure",
            "too large"),
        bad(
            "static_pressure: 50 psi",
            "static_pressure: @@1e999999999 psi",
            "supply.static_pressure",
            "too large"),
        bad(
            "static_pressure: 50 psi",
            "static_pressure: @@1e-999999999 psi",
            "supply.static_pressure",
            "too small"),
        bad(
            "static_pressure: 50 psi",
            "static_pressure: @@1,500 psi",
            "supply.static_pressure",
            "commas"),
        bad(
            "static_pressure: 50 psi",
            "static_pressure: @@2,5 bar",
            "supply.static_pressure",
            "decimal point"),
        bad(
            "static_pressure: 50 psi",
            "static_pressure: @@[50 psi]",
            "supply.static_pressure",
            "single value"),
        bad(
            "static_pressure: 50 psi",
            "static_pressure: @@fifty psi",
            "supply.static_pressure",
            "not understood"),
        bad(
            "elevation: 60 ft ",
            "elevation: @@60 F ",
            "site.elevation",
            "is a temperature; give a length"),
        bad(
            "organic_matter: 2.1 %",
            "organic_matter: @@2.1", "soil.test.organic_matter", "has no unit"),
        bad(
            "organic_matter: 2.1 %",
            "organic_matter: @@2.1 deg", "soil.test.organic_matter", "is an angle"),
        bad(
            "phosphorus: 18 mg/kg",
            "phosphorus: @@18 %",
            "soil.test.phosphorus",
            "is a share; give a content"),
        bad("ph: 6.6", "ph: @@66", "soil.ph", "from 3 to 11"),
        bad(
            "volume: 5 gal, time",
            "volume: @@2 tons, time",
            "supply.flow_tests[0].volume",
            "a ton is not the same"),
        bad("time: 36 s", "time: @@0 s", "supply.flow_tests[0].time", "out of range"),
        bad(
            "mulch.wood-chips: 1 yd3",
            "mulch.wood-chips: @@3 m",
            "on_hand.mulch.wood-chips",
            "is a length; give a volume"),
        bad("pipe.pe-16: 60 ft", "pipe.pe-16: @@60", "on_hand.pipe.pe-16", "has no unit"),
        bad(
            "emitter.pc-1-gal: 10 for",
            "emitter.pc-1-gal: @@2.5 for",
            "prices.emitter.pc-1-gal",
            "whole number"),
        bad("100 ft for 19.50", "@@100 ft at 19.50", "prices.pipe.pe-16", "100 m for 32"),
        bad("100 ft for 19.50", "@@0 ft for 19.50", "prices.pipe.pe-16", "a pack of nothing"),
        bad("currency: USD", "currency: @@Dollar", "prices.currency", "ISO 4217"),
        // Unknown words.
        bad("  latitude: 38.5", "  @@latitud: 38.5", "site.latitud", "did you mean latitude?"),
        bad("crew:\n", "@@krew:\n", "krew", "did you mean crew?"),
        bad("texture: loam", "texture: @@laom", "soil.texture", "did you mean loam?"),
        bad(
            "{species: lemon,",
            "{species: @@lemmon,",
            "rows[0].plants[0].species",
            "did you mean lemon?"),
        bad("kind: house tap", "kind: @@house top", "supply.kind", "did you mean house tap?"),
        bad("kind: building", "kind: @@castle", "site.fixed[0].kind", "allowed: building, fence"),
        bad(
            "mulch: mulch.wood-chips",
            "mulch: @@mulch.wood-chops",
            "ground.mulch",
            "did you mean mulch.wood-chips?"),
        bad(
            "  pipe.pe-16: 60 ft",
            "  pipe.pe-61: @@60 ft",
            "on_hand.pipe.pe-61",
            "did you mean pipe.pe-16?"),
        bad("Sat: 09:00-13:00", "Sax: @@09:00-13:00", "crew.hours.Sax", "did you mean Sat?"),
        bad(
            "around: [B1, B3]",
            "around: [@@B11, B3]",
            "rows[1].companions[0].around[0]",
            "did you mean B1?"),
        bad("units: us", "units: @@imperial", "units", "allowed: metric, us"),
        // Missing.
        bad("  elevation: 60 ft          # above sea level\n", "", "site.elevation", "is missing"),
        bad("start: 2026-02-28", "units: us\n#", "start", "is missing"),
        bad(
            "  static_pressure: 50 psi   # on a gauge, with nothing flowing\n",
            "",
            "supply.static_pressure",
            "is missing"),
        bad("texture: loam", "field_capacity: 27 %", "soil.wilting_point", "is missing"),
        bad("elevation: 60 ft ", "elevation: @@~ #", "site.elevation", "is empty"),
        bad("  people: 2", "  people:@@", "crew.people", "is empty"),
        bad("  wind_height: 2 m\n", "", "climate.wind_height", "is missing"),
        // Contradictions.
        bad(
            "texture: loam",
            "texture: loam\n  field_capacity: @@55 %\n  wilting_point: 14 %",
            "soil.field_capacity",
            "contradicts texture"),
        bad(
            "texture: loam",
            "field_capacity: 14 %\n  wilting_point: @@27 %",
            "soil.wilting_point",
            "contradicts field_capacity"),
        bad(
            "outlet_height: 2 ft",
            "tank_volume: @@500 L\n  outlet_height: 2 ft",
            "supply.tank_volume",
            "only a gravity tank"),
        bad(
            "kind: fence",
            "kind: fence\n      traffic: @@vehicles",
            "site.fixed[1].traffic",
            "paving, gravel or a lawn only"),
        bad(
            "kind: fence",
            "kind: fence\n      depth: @@2 ft",
            "site.fixed[1].depth",
            "a buried service only"),
        bad(
            "kind: fence",
            "kind: buried service\n      service: @@steam",
            "site.fixed[1].service",
            "electric, gas, water, sewer, telecom, unknown"),
        bad(
            "kind: house tap ",
            "tank_level: 2 m\n  tank_volume: 1 m3\n  kind: gravity tank ",
            "supply.static_pressure",
            "contradicts kind"),
        bad(
            "at: 7 ft}",
            "at: @@7 ft, first: 2 ft, every: 3 ft, count: 2}",
            "rows[0].plants[0].at",
            "contradicts first"),
        bad("at: 7 ft}", "at: @@[7 ft, 3 ft]}", "rows[0].plants[0].at", "stands along it"),
        bad("at: [81 ft, 34 ft]", "at: @@8 ft", "plants[0].at", "must be a place"),
        bad("propose: true ", "propose: false #", "watering.zones", "or propose: true"),
        bad(
            "hours: [05:00-09:00]",
            "hours: [@@05:00-05:00]",
            "supply.hours[0]",
            "ends where it begins"),
        bad(
            "hours: [05:00-09:00]",
            "hours: [05:00-09:00, @@08:00-10:00]",
            "supply.hours[1]",
            "overlaps"),
        bad("Sat: 09:00-13:00", "Sat: @@13:00-09:00", "crew.hours.Sat", "ends before it begins"),
        bad(
            "Sat: 09:00-13:00",
            "Sat: 09:00-10:00, saturday: @@11:00-13:00",
            "crew.hours.saturday",
            "twice"),
        bad(
            "pressure: 0 psi",
            "pressure: @@60 psi",
            "supply.flow_tests[0].pressure",
            "contradicts static_pressure"),
        bad(
            "between: each",
            "between: each, distance: 1 m, around: @@each",
            "rows[0].companions[0].around",
            "contradicts between"),
        bad(
            "from: [8 ft, 12 ft]",
            "from: [8 ft, 12 ft]\n    line: @@[[8 ft, 12 ft], [9 ft, 12 ft]]",
            "rows[0].line",
            "contradicts from and to"),
        bad("tmin: 38 41", "tmin: @@58 41", "climate.months.tmin", "contradicts tmax"),
        bad(
            "  north: 0 deg",
            "  boundary_geojson: @@nowhere.geojson\n  north: 0 deg",
            "site.boundary_geojson",
            "contradicts boundary"),
        bad(
            "  months: ",
            "  daily: @@weather.csv\n  months: ",
            "climate.daily",
            "contradicts months"),
        bad(
            "- {at: [90 ft, 0 ft], height: 1 ft}",
            "- @@{at: [0 ft, 0 ft], height: 1 ft}",
            "site.heights[1]",
            "contradicts an earlier height"),
        // Impossible geometry.
        bad(
            "boundary:                 # the corners of the land, in order around it\n    - [0 ft, 0 ft]\n    - [90 ft, 0 ft]\n    - [90 ft, 60 ft]\n    - [0 ft, 60 ft]",
            "boundary:\n    @@- [0 ft, 0 ft]\n    - [90 ft, 60 ft]\n    - [90 ft, 0 ft]\n    - [0 ft, 60 ft]",
            "site.boundary",
            "crosses itself near [45 ft, 30 ft]"),
        bad(
            "    - [90 ft, 60 ft]\n    - [0 ft, 60 ft]",
            "    - [45 ft, 0 ft]",
            "site.boundary",
            "encloses no area"),
        bad(
            "at: [81 ft, 34 ft]",
            "at: [80 ft, 61 ft]",
            "plants[0]",
            "at [80 ft, 61 ft] stands outside the land"),
        bad("to: [82 ft, 12 ft]", "to: @@[92 ft, 12 ft]", "rows[0].to", "leaves the land"),
        bad("at: 22 ft}", "at: 7 ft}", "rows[0].plants[1]", "same place as A1"),
        bad(
            "at: 67 ft}",
            "at: @@75 ft}",
            "rows[0].plants[4].at",
            "75 ft along the row, which is 74 ft"),
        bad("count: 4}", "count: @@40}", "rows[1].plants[0].count", "along the row"),
        bad(
            "area: [[2 ft, 46 ft], [14 ft, 46 ft], [14 ft, 58 ft], [2 ft, 58 ft]]",
            "area: @@[[2 ft, 46 ft], [2 ft, 46 ft], [2 ft, 46 ft]]",
            "site.fixed[0].area",
            "three different corners"),
        bad(
            "line: [[0 ft, 60 ft], [90 ft, 60 ft]]",
            "line: @@[[0 ft, 60 ft], [0 ft, 60 ft]]",
            "site.fixed[1].line",
            "no length"),
        bad(
            "area: [[2 ft, 46 ft], [14 ft, 46 ft], [14 ft, 58 ft], [2 ft, 58 ft]]",
            "at: [3 ft, 3 ft]\n      radius: @@0 m",
            "site.fixed[0].radius",
            "out of range"),
        bad("to: [82 ft, 12 ft]", "to: @@[8 ft, 12 ft]", "rows[0].to", "no length"),
        bad("[14 ft, 50 ft]", "[14 ft, @@9e9 ft]", "supply.at[1]", "out of range"),
        bad("[14 ft, 50 ft]", "@@[14 ft]", "supply.at", "a comma between"),
        bad("[14 ft, 50 ft]", "[@@14, 50 ft]", "supply.at[0]", "has no unit"),
        bad("latitude: 38.5 ", "latitude: @@98.5 ", "site.latitude", "from -66 to 66"),
        bad(
            "count: 2, distance: 3 ft, container: 1 L",
            "count: 2, container: 1 L",
            "rows[1].companions[0].distance",
            "is missing"),
        bad(
            "static_pressure: 50 psi",
            "static_pressure: @@0",
            "supply.static_pressure",
            "0.145 psi"),
        bad(
            "mulch: mulch.wood-chips",
            "fertiliser: @@amend.gypsum",
            "ground.fertiliser",
            "holds no nitrogen"),
        bad("100 ft for 19.50", "@@1 in for 19.50", "prices.pipe.pe-16", "too short for pipe"),
        // Names, dates, numbers.
        bad("  - id: B\n", "  - id: @@A\n", "rows[1].id", "already a row 'A'"),
        bad("id: gate rosemary", "id: @@a1", "plants[0].id", "too like 'A1'"),
        bad("id: shed", "id: @@'*'", "site.fixed[0].id", "cannot be a name"),
        bad("start: 2026-02-28", "start: @@2026-02-30", "start", "no day '2026-02-30'"),
        bad("start: 2026-02-28", "start: @@28.2.2026", "start", "year-month-day"),
        bad("people: 2", "people: @@1.5", "crew.people", "whole number"),
        bad(
            "tmax: 54 61 66 73 82 89 94 93 88 78 64 54 F",
            "tmax: 54 @@61 66 73 82 89 94 93 88 78 64 54 C",
            "climate.months.tmax",
            "if degrees Fahrenheit are meant, write F"),
        bad("tmax: 54 61", "tmax: @@61", "climate.months.tmax", "has 11 numbers"),
        bad("rain: 3.6 3.4", "rain: 3.6 @@-3.4", "climate.months.rain", "out of range"),
        bad("53 59 73 82 %", "53 59 73 82", "climate.months.humidity", "no unit"),
        bad(
            "53 59 73 82 %",
            "53 59 73 82 m", "climate.months.humidity", "is a length; give a share"),
        bad(
            "  outlet_height:",
            "  days: [Tue, @@Satt]\n  outlet_height:",
            "supply.days[1]",
            "'Satt' is no day of the week (did you mean Sat?); give the allowed days"),
        bad(
            "  outlet_height:",
            "  days: [Tue, @@Tue]\n  outlet_height:",
            "supply.days[1]",
            "names Tue twice"),
        bad("  outlet_height:", "  days: @@[]\n  outlet_height:", "supply.days", "is empty; give"),
        bad(
            "days_off: [2026-03-22]",
            "days_off: [2026-03-22, @@2026-03-22]",
            "crew.days_off[1]",
            "twice"));
  }

  @ParameterizedTest(name = "{2}: {3}")
  @MethodSource("cases")
  void saysWhereAndWhat(String find, String replacement, String path, String words) {
    String starter = Descriptions.starter();
    assertThat(starter).contains(find);
    String marked =
        starter.replaceFirst(Pattern.quote(find), Matcher.quoteReplacement(replacement));
    int mark = marked.indexOf(MARK);
    List<Problem> problems = Descriptions.problems(marked.replace(MARK, ""));
    assertThat(problems)
        .anySatisfy(
            problem -> {
              assertThat(problem.path()).isEqualTo(path);
              assertThat(problem.message()).contains(words);
              assertThat(problem.line()).isPositive();
              if (mark >= 0) {
                String before = marked.substring(0, mark);
                assertThat(problem.line())
                    .isEqualTo(1 + (int) before.chars().filter(c -> c == '\n').count());
                assertThat(problem.column()).isEqualTo(before.length() - before.lastIndexOf('\n'));
              }
            });
    // One mistake must not set off a flood of others.
    assertThat(problems).hasSizeLessThanOrEqualTo(4);
  }

  @Test
  void aMistakeIsToldOnceWhereItIs() {
    String starter = Descriptions.starter();
    assertThat(Descriptions.problems(starter.replaceFirst("planted: 2026-\\S+", "planted: soon")))
        .extracting(Problem::path)
        .containsExactly("rows[0].planted");
    assertThat(Descriptions.problems(starter.replace("  elevation:", "  elevatoin:")))
        .extracting(Problem::path)
        .containsExactly("site.elevatoin");
    assertThat(Descriptions.problems(starter.replaceFirst("name: ", "name: \"")))
        .extracting(Problem::line)
        .containsExactly((int) starter.substring(0, starter.indexOf("name: ")).lines().count());
  }

  private static Arguments bad(String find, String replacement, String path, String words) {
    return Arguments.of(find, replacement, path, words);
  }
}
