package org.grovewright.catalogue.files;

import static org.grovewright.catalogue.files.Column.choice;
import static org.grovewright.catalogue.files.Column.key;
import static org.grovewright.catalogue.files.Column.months;
import static org.grovewright.catalogue.files.Column.number;
import static org.grovewright.catalogue.files.Column.reference;
import static org.grovewright.catalogue.files.Column.source;
import static org.grovewright.catalogue.files.Column.text;
import static org.grovewright.catalogue.files.Column.whole;
import static org.grovewright.catalogue.files.Column.yesNo;

import java.util.List;
import org.grovewright.catalogue.Species;
import org.grovewright.catalogue.Species.Feeding;
import org.grovewright.catalogue.Species.Group;
import org.grovewright.catalogue.Species.Kc;
import org.grovewright.catalogue.Species.Role;

/** The table of plants. */
final class PlantTables {
  private PlantTables() {}

  static final Table<Species> SPECIES =
      new Table<>(
          "species",
          "plants: size, water, hardiness, soil and feeding",
          List.of(
              key("key of the species, used in descriptions of groves"),
              text("name", "common name"),
              text("latin", "botanical name"),
              choice("group", "climate group or use", Group.class),
              choice("role", "what it is planted for", Role.class),
              yesNo("evergreen", "whether it keeps its leaves all year"),
              number("mature_height_m", "m", 0.02, 60, "height when mature"),
              number("mature_spread_m", "m", 0.05, 40, "crown diameter when mature"),
              number(
                  "years_to_mature",
                  "years",
                  0.1,
                  60,
                  "years from planting until about 95 % of the mature spread"),
              number("spacing_m", "m", 0.05, 40, "usual distance between plants of the kind"),
              number("root_depth_m", "m", 0.05, 5, "effective root depth when mature"),
              number(
                  "depletion_fraction",
                  "",
                  0.1,
                  0.8,
                  "share of the available water that may be used before stress begins, at 5 mm/day"),
              number("kc_ini", "", 0, 1.5, "crop coefficient at the start of the season"),
              number("kc_mid", "", 0, 1.5, "crop coefficient in mid-season"),
              number("kc_end", "", 0, 1.5, "crop coefficient at the end of the season"),
              whole("ini_days", "days", 0, 365, "length of the initial stage"),
              whole("dev_days", "days", 0, 365, "length of the development stage"),
              whole("mid_days", "days", 0, 365, "length of the mid-season"),
              whole("late_days", "days", 0, 365, "length of the late season"),
              whole(
                  "season_start_month",
                  "",
                  1,
                  12,
                  "month in which the season starts in the northern hemisphere"),
              number(
                      "salinity_threshold_ds_per_m",
                      "dS/m",
                      0,
                      30,
                      "salinity of the saturation extract at which growth begins to fall")
                  .over(10)
                  .optional(),
              number(
                      "salinity_limit_ds_per_m",
                      "dS/m",
                      0,
                      60,
                      "salinity of the saturation extract at which nothing grows any more")
                  .over(10)
                  .optional(),
              number("cold_limit_c", "°C", -60, 20, "temperature that a mature plant survives"),
              number("ph_min", "", 3, 10, "lowest suitable soil pH"),
              number("ph_max", "", 3, 10, "highest suitable soil pH"),
              number(
                      "nitrogen_year_one_g",
                      "g",
                      0,
                      1000,
                      "nitrogen per plant in the first full year")
                  .over(1000),
              number("nitrogen_mature_g", "g", 0, 3000, "nitrogen per plant and year when mature")
                  .over(1000),
              months("feeding_months", "months of feeding in the northern hemisphere"),
              reference("caution", "key of the caution on handling or eating it").optional(),
              source()),
          List.of(
              "key",
              "name",
              "group",
              "mature_height_m",
              "mature_spread_m",
              "spacing_m",
              "root_depth_m",
              "kc_mid",
              "cold_limit_c"),
          List.of(new Table.Rule("ph_min", "ph_max", false)),
          PlantTables::species);

  private static Species species(Values v) {
    return new Species(
        v.text("key"),
        v.text("name"),
        v.text("latin"),
        v.choice("group", Group.class),
        v.choice("role", Role.class),
        v.yes("evergreen"),
        v.si("mature_height_m"),
        v.si("mature_spread_m"),
        v.si("years_to_mature"),
        v.si("spacing_m"),
        v.si("root_depth_m"),
        v.si("depletion_fraction"),
        new Kc(
            v.si("kc_ini"),
            v.si("kc_mid"),
            v.si("kc_end"),
            v.whole("ini_days"),
            v.whole("dev_days"),
            v.whole("mid_days"),
            v.whole("late_days"),
            v.whole("season_start_month")),
        v.siIfAny("salinity_threshold_ds_per_m"),
        v.siIfAny("salinity_limit_ds_per_m"),
        v.si("cold_limit_c"),
        v.si("ph_min"),
        v.si("ph_max"),
        new Feeding(
            v.si("nitrogen_year_one_g"), v.si("nitrogen_mature_g"), v.months("feeding_months")),
        v.textIfAny("caution"),
        v.source());
  }
}
