package org.grovewright.formats.description;

import java.util.List;

/**
 * The mappings of the description language with the keys each of them knows. The path of a mapping
 * in a list ends in {@code []}. The published schema must know the same keys.
 */
enum Section {
  GROVE(
      "",
      "site",
      "soil",
      "climate",
      "supply",
      "rows",
      "plants",
      "ground",
      "watering",
      "on_hand",
      "prices",
      "crew",
      "start",
      "units",
      "friction"),
  SITE(
      "site",
      "name",
      "latitude",
      "longitude",
      "elevation",
      "coordinates_in",
      "boundary",
      "boundary_geojson",
      "north",
      "fixed",
      "heights",
      "frost_depth"),
  FIXTURE(
      "site.fixed[]",
      "id",
      "kind",
      "area",
      "line",
      "at",
      "radius",
      "height",
      "clearance",
      "traffic",
      "service",
      "depth"),
  SPOT_HEIGHT("site.heights[]", "at", "height"),
  SOIL(
      "soil", "texture", "field_capacity", "wilting_point", "depth", "drainage_test", "ph", "test"),
  DRAINAGE_TEST("soil.drainage_test", "drop", "time"),
  SOIL_TEST("soil.test", "organic_matter", "phosphorus", "potassium", "salinity"),
  CLIMATE("climate", "source", "wind_height", "months", "daily"),
  MONTHS(
      "climate.months",
      "tmin",
      "tmax",
      "humidity",
      "dew_point",
      "wind",
      "solar",
      "sunshine",
      "rain"),
  SUPPLY(
      "supply",
      "kind",
      "at",
      "outlet_height",
      "static_pressure",
      "tank_level",
      "tank_volume",
      "flow_tests",
      "pipe",
      "daily_limit",
      "weekly_limit",
      "hours",
      "days",
      "salinity",
      "roof"),
  FLOW_TEST("supply.flow_tests[]", "volume", "time", "pressure"),
  SUPPLY_PIPE("supply.pipe", "pipe", "length"),
  ROOF("supply.roof", "area", "runoff", "first_flush"),
  ROW("rows[]", "id", "from", "to", "line", "planted", "container", "plants", "companions"),
  ROW_PLANT(
      "rows[].plants[]",
      "id",
      "species",
      "cultivar",
      "at",
      "first",
      "every",
      "count",
      "planted",
      "container",
      "measured_spread",
      "measured_height",
      "measured_on",
      "kept_spread",
      "kept_height"),
  COMPANION(
      "rows[].companions[]",
      "species",
      "cultivar",
      "between",
      "around",
      "count",
      "distance",
      "planted",
      "container",
      "measured_spread",
      "measured_height",
      "measured_on",
      "kept_spread",
      "kept_height"),
  PLANT(
      "plants[]",
      "id",
      "species",
      "cultivar",
      "at",
      "row",
      "planted",
      "container",
      "measured_spread",
      "measured_height",
      "measured_on",
      "kept_spread",
      "kept_height"),
  GROUND("ground", "mix", "mix_share", "hole_width", "amendments", "mulch", "fertiliser"),
  WATERING(
      "watering",
      "propose",
      "main",
      "filter",
      "regulator",
      "choose",
      "emitter_sorts",
      "emitter_sorts_in_all",
      "hour_of_work",
      "laterals",
      "zones"),
  MAIN("watering.main", "pipe", "route", "laid"),
  ZONE("watering.zones[]", "id", "laterals"),
  LATERAL(
      "watering.zones[].laterals[]",
      "row",
      "run",
      "tubing",
      "emitter",
      "emitters_per_plant",
      "companion_emitter",
      "offset",
      "route",
      "laid"),
  OWN_LATERAL(
      "watering.laterals[]",
      "row",
      "run",
      "tubing",
      "emitter",
      "emitters_per_plant",
      "companion_emitter",
      "offset",
      "route",
      "laid"),
  CREW("crew", "people", "hours", "days_off");

  private final String path;

  @SuppressWarnings("ImmutableEnumChecker") // List.of makes an unmodifiable list.
  private final List<String> keys;

  Section(String path, String... keys) {
    this.path = path;
    this.keys = List.of(keys);
  }

  /** Where the mapping stands in a description. */
  String path() {
    return path;
  }

  /** The keys it knows, in the order they are usually written. */
  List<String> keys() {
    return keys;
  }
}
