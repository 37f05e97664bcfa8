package org.grovewright.catalogue.files;

import static org.grovewright.catalogue.files.Column.choice;
import static org.grovewright.catalogue.files.Column.key;
import static org.grovewright.catalogue.files.Column.number;
import static org.grovewright.catalogue.files.Column.reference;
import static org.grovewright.catalogue.files.Column.source;
import static org.grovewright.catalogue.files.Column.text;
import static org.grovewright.catalogue.files.Column.yesNo;

import java.util.List;
import org.grovewright.catalogue.Amendment;
import org.grovewright.catalogue.Mulch;
import org.grovewright.catalogue.SoilMix;
import org.grovewright.catalogue.SoilTexture;

/** The tables of soils and of what is put into and onto them. */
final class SoilTables {
  private SoilTables() {}

  private static final Table.Rule WATER =
      new Table.Rule("wilting_point_percent", "field_capacity_percent", false);

  static final Table<SoilTexture> TEXTURES =
      new Table<>(
          "textures",
          "USDA soil texture classes",
          List.of(
              key("key of the texture class"),
              text("name", "name of the class"),
              percent("field_capacity_percent", 1, 70, "water at field capacity, by volume"),
              percent("wilting_point_percent", 0, 60, "water at wilting point, by volume"),
              number("infiltration_mm_per_h", "mm/h", 0.1, 500, "basic infiltration rate")
                  .over(3.6e6),
              number("bulk_density_kg_per_m3", "kg/m3", 200, 2000, "dry bulk density"),
              percent("swell_percent", 0, 80, "growth in volume when dug and heaped"),
              number("readily_evaporable_mm", "mm", 1, 20, "readily evaporable water").over(1000),
              source()),
          List.of(
              "key",
              "name",
              "field_capacity_percent",
              "wilting_point_percent",
              "infiltration_mm_per_h",
              "bulk_density_kg_per_m3",
              "swell_percent"),
          List.of(WATER),
          v ->
              new SoilTexture(
                  v.text("key"),
                  v.text("name"),
                  v.si("field_capacity_percent"),
                  v.si("wilting_point_percent"),
                  v.si("infiltration_mm_per_h"),
                  v.si("bulk_density_kg_per_m3"),
                  v.si("swell_percent"),
                  v.si("readily_evaporable_mm"),
                  v.source()));

  static final Table<SoilMix> MIXES =
      new Table<>(
          "mixes",
          "soil mixes and composts sold by the load or bag",
          List.of(
              key("key of the mix"),
              text("name", "name in plain words"),
              number("loose_density_kg_per_m3", "kg/m3", 50, 2000, "bulk density as delivered"),
              percent("settlement_percent", 0, 60, "volume lost by settling"),
              yesNo("bulk", "whether it is sold as a load"),
              percent("field_capacity_percent", 1, 80, "water at field capacity, by volume"),
              percent("wilting_point_percent", 0, 60, "water at wilting point, by volume"),
              source()),
          List.of("key", "name", "loose_density_kg_per_m3", "settlement_percent", "bulk"),
          List.of(WATER),
          v ->
              new SoilMix(
                  v.text("key"),
                  v.text("name"),
                  v.si("loose_density_kg_per_m3"),
                  v.si("settlement_percent"),
                  v.yes("bulk"),
                  v.si("field_capacity_percent"),
                  v.si("wilting_point_percent"),
                  v.source()));

  static final Table<Amendment> AMENDMENTS =
      new Table<>(
          "amendments",
          "soil amendments and fertilisers",
          List.of(
              key("key of the amendment"),
              text("name", "name in plain words"),
              number("density_kg_per_m3", "kg/m3", 50, 3000, "bulk density"),
              percent("nitrogen_percent", 0, 50, "nitrogen N, by mass"),
              percent("phosphate_percent", 0, 60, "phosphate as P2O5, by mass"),
              percent("potash_percent", 0, 65, "potash as K2O, by mass"),
              number(
                  "planting_rate_kg_per_m3",
                  "kg/m3",
                  0,
                  400,
                  "amount for a cubic metre of backfill at planting; 0 if not used then"),
              choice("use", "when it is used", Amendment.Use.class),
              reference("caution", "key of its caution").optional(),
              source()),
          List.of(
              "key",
              "name",
              "nitrogen_percent",
              "phosphate_percent",
              "potash_percent",
              "planting_rate_kg_per_m3",
              "use"),
          List.of(),
          v ->
              new Amendment(
                  v.text("key"),
                  v.text("name"),
                  v.si("density_kg_per_m3"),
                  v.si("nitrogen_percent"),
                  v.si("phosphate_percent"),
                  v.si("potash_percent"),
                  v.si("planting_rate_kg_per_m3"),
                  v.choice("use", Amendment.Use.class),
                  v.textIfAny("caution"),
                  v.source()));

  static final Table<Mulch> MULCHES =
      new Table<>(
          "mulches",
          "what is spread over the soil, with depth and life",
          List.of(
              key("key of the mulch"),
              text("name", "name in plain words"),
              number("density_kg_per_m3", "kg/m3", 20, 2500, "bulk density as delivered"),
              percent("settlement_percent", 0, 80, "depth lost in the first season"),
              number("depth_mm", "mm", 10, 300, "usual settled depth").over(1000),
              number("renew_years", "years", 0.1, 30, "years until it is renewed"),
              percent(
                  "evaporation_reduction_percent",
                  0,
                  100,
                  "share by which it lowers evaporation from covered soil"),
              source()),
          List.of("key", "name", "density_kg_per_m3", "settlement_percent", "depth_mm"),
          List.of(),
          v ->
              new Mulch(
                  v.text("key"),
                  v.text("name"),
                  v.si("density_kg_per_m3"),
                  v.si("settlement_percent"),
                  v.si("depth_mm"),
                  v.si("renew_years"),
                  v.si("evaporation_reduction_percent"),
                  v.source()));

  private static Column percent(String name, double min, double max, String meaning) {
    return number(name, "%", min, max, meaning).over(100);
  }
}
