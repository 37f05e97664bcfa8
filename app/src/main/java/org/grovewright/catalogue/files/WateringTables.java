package org.grovewright.catalogue.files;

import static org.grovewright.catalogue.files.Column.choice;
import static org.grovewright.catalogue.files.Column.key;
import static org.grovewright.catalogue.files.Column.number;
import static org.grovewright.catalogue.files.Column.reference;
import static org.grovewright.catalogue.files.Column.source;
import static org.grovewright.catalogue.files.Column.text;
import static org.grovewright.catalogue.files.Column.yesNo;

import java.util.List;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Filter;
import org.grovewright.catalogue.Market;
import org.grovewright.catalogue.Part;
import org.grovewright.catalogue.Pipe;
import org.grovewright.catalogue.Regulator;

/** The tables of the goods of a watering system. */
final class WateringTables {
  private WateringTables() {}

  static final Table<Pipe> PIPES =
      new Table<>(
          "pipes",
          "tubing and pipe by bore, wall and rating",
          List.of(
              key("key of the pipe"),
              text("name", "name in plain words"),
              choice("use", "what it is fit for", Pipe.Use.class),
              text("standard", "standard of its dimensions"),
              millimetres("inside_diameter_mm", 1, 500, "inside diameter"),
              millimetres("outside_diameter_mm", 1, 600, "outside diameter"),
              number("hazen_williams_c", "", 60, 170, "Hazen-Williams coefficient"),
              millimetres("roughness_mm", 0, 5, "absolute roughness"),
              pressure("pressure_rating_kpa", 20, 10_000, "highest lasting pressure at 20 °C"),
              choice("joint", "how it is joined", Pipe.Joint.class),
              market(),
              source()),
          List.of(
              "key",
              "name",
              "use",
              "inside_diameter_mm",
              "outside_diameter_mm",
              "pressure_rating_kpa",
              "joint"),
          List.of(new Table.Rule("inside_diameter_mm", "outside_diameter_mm", false)),
          v ->
              new Pipe(
                  v.text("key"),
                  v.text("name"),
                  v.choice("use", Pipe.Use.class),
                  v.text("standard"),
                  v.si("inside_diameter_mm"),
                  v.si("outside_diameter_mm"),
                  v.si("hazen_williams_c"),
                  v.si("roughness_mm"),
                  v.si("pressure_rating_kpa"),
                  v.choice("joint", Pipe.Joint.class),
                  v.choice("market", Market.class),
                  v.source()));

  static final Table<EmitterType> EMITTERS =
      new Table<>(
          "emitters",
          "drippers, bubblers and micro sprinklers",
          List.of(
              key("key of the emitter"),
              text("name", "name in plain words"),
              flow("nominal_flow_l_per_h", 0.1, 500, "flow at the nominal pressure"),
              pressure("nominal_pressure_kpa", 1, 1000, "nominal pressure"),
              number(
                  "exponent",
                  "",
                  0,
                  1,
                  "exponent of the pressure; within the range if it compensates"),
              yesNo("compensating", "whether it compensates pressure"),
              pressure("min_pressure_kpa", 0.5, 1000, "start of the working range"),
              pressure("max_pressure_kpa", 1, 1000, "end of the working range"),
              number(
                      "manufacturing_cv_percent",
                      "%",
                      0.1,
                      40,
                      "coefficient of manufacturing variation")
                  .over(100),
              pressure("shut_off_pressure_kpa", 0, 300, "pressure below which it holds water back")
                  .optional(),
              number("wetted_diameter_m", "m", 0.1, 10, "typical diameter wetted on loam"),
              number("filter_opening_um", "um", 20, 1000, "largest filter opening protecting it")
                  .over(1e6),
              number(
                  "barb_loss_m",
                  "m",
                  0,
                  5,
                  "length of tubing whose friction equals the loss at its barb"),
              choice("pattern", "how it gives its water", EmitterType.Pattern.class),
              market(),
              source()),
          List.of(
              "key",
              "name",
              "nominal_flow_l_per_h",
              "nominal_pressure_kpa",
              "exponent",
              "compensating",
              "min_pressure_kpa",
              "max_pressure_kpa"),
          List.of(
              new Table.Rule("min_pressure_kpa", "max_pressure_kpa", false),
              new Table.Rule("min_pressure_kpa", "nominal_pressure_kpa", true),
              new Table.Rule("nominal_pressure_kpa", "max_pressure_kpa", true)),
          v ->
              new EmitterType(
                  v.text("key"),
                  v.text("name"),
                  v.si("nominal_flow_l_per_h"),
                  v.si("nominal_pressure_kpa"),
                  v.si("exponent"),
                  v.yes("compensating"),
                  v.si("min_pressure_kpa"),
                  v.si("max_pressure_kpa"),
                  v.si("manufacturing_cv_percent"),
                  v.siIfAny("shut_off_pressure_kpa"),
                  v.si("wetted_diameter_m"),
                  v.si("filter_opening_um"),
                  v.si("barb_loss_m"),
                  v.choice("pattern", EmitterType.Pattern.class),
                  v.choice("market", Market.class),
                  v.source()));

  static final Table<Filter> FILTERS =
      new Table<>(
          "filters",
          "filters by opening and flow",
          List.of(
              key("key of the filter"),
              text("name", "name in plain words"),
              number("opening_um", "um", 10, 2000, "size of its openings").over(1e6),
              number("mesh", "", 5, 1000, "openings in an inch of its screen"),
              number("screen_area_cm2", "cm2", 5, 50_000, "area of its screen or discs").over(1e4),
              flow("rated_flow_l_per_h", 50, 100_000, "highest flow for continuous use"),
              pressure("loss_at_rated_kpa", 0.1, 200, "pressure lost at that flow when clean"),
              pressure("dirty_allowance_kpa", 0, 200, "pressure to allow for dirt"),
              pressure("max_pressure_kpa", 5, 2000, "highest pressure at its inlet").optional(),
              source()),
          List.of("key", "name", "opening_um", "rated_flow_l_per_h", "loss_at_rated_kpa"),
          List.of(),
          v ->
              new Filter(
                  v.text("key"),
                  v.text("name"),
                  v.si("opening_um"),
                  v.si("mesh"),
                  v.si("screen_area_cm2"),
                  v.si("rated_flow_l_per_h"),
                  v.si("loss_at_rated_kpa"),
                  v.si("dirty_allowance_kpa"),
                  v.siIfAny("max_pressure_kpa").orElse(Double.POSITIVE_INFINITY),
                  v.source()));

  static final Table<Regulator> REGULATORS =
      new Table<>(
          "regulators",
          "preset pressure regulators",
          List.of(
              key("key of the regulator"),
              text("name", "name in plain words"),
              pressure("set_pressure_kpa", 5, 1000, "pressure it holds downstream"),
              flow("min_flow_l_per_h", 0, 50_000, "least flow at which it regulates"),
              flow("max_flow_l_per_h", 10, 100_000, "greatest flow"),
              pressure("loss_at_max_kpa", 0, 200, "pressure it takes at that flow, wide open"),
              pressure("max_inlet_kpa", 50, 2000, "highest inlet pressure"),
              market(),
              source()),
          List.of("key", "name", "set_pressure_kpa", "min_flow_l_per_h", "max_flow_l_per_h"),
          List.of(
              new Table.Rule("min_flow_l_per_h", "max_flow_l_per_h", false),
              new Table.Rule("set_pressure_kpa", "max_inlet_kpa", false)),
          v ->
              new Regulator(
                  v.text("key"),
                  v.text("name"),
                  v.si("set_pressure_kpa"),
                  v.si("min_flow_l_per_h"),
                  v.si("max_flow_l_per_h"),
                  v.si("loss_at_max_kpa"),
                  v.si("max_inlet_kpa"),
                  v.choice("market", Market.class),
                  v.source()));

  static final Table<Part> PARTS =
      new Table<>(
          "parts",
          "fittings, valves, tools and consumables",
          List.of(
              key("key of the part"),
              text("name", "name in plain words"),
              reference("role", "the role it fills in a plan"),
              reference("fits", "key of the pipe it fits; empty for any").optional(),
              number(
                  "loss_coefficient",
                  "",
                  0,
                  200,
                  "minor loss coefficient K on the velocity head of its pipe"),
              source()),
          List.of("key", "name", "role", "fits", "loss_coefficient"),
          List.of(),
          v ->
              new Part(
                  v.text("key"),
                  v.text("name"),
                  v.text("role"),
                  v.text("fits"),
                  v.si("loss_coefficient"),
                  v.source()));

  private static Column millimetres(String name, double min, double max, String meaning) {
    return number(name, "mm", min, max, meaning).over(1000);
  }

  private static Column pressure(String name, double min, double max, String meaning) {
    return number(name, "kPa", min, max, meaning).times(1000);
  }

  private static Column market() {
    return choice("market", "where it is sold", Market.class);
  }

  private static Column flow(String name, double min, double max, String meaning) {
    return number(name, "L/h", min, max, meaning).over(3.6e6);
  }
}
