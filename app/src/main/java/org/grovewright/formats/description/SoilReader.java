package org.grovewright.formats.description;

import java.util.Optional;
import java.util.OptionalDouble;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.SoilTexture;
import org.grovewright.formats.units.Measure;
import org.grovewright.model.Soil;
import org.grovewright.texts.Sentence;

/** Reads the native soil. */
final class SoilReader {
  /** Most that a measured water content may lie off its texture class, volume share. */
  private static final double TEXTURE_TOLERANCE = 0.12;

  private SoilReader() {}

  static Soil read(Value value, Catalogue catalogue) {
    Optional<Fields> found = value.fields(Section.SOIL);
    if (found.isEmpty()) {
      return null;
    }
    Fields fields = found.get();
    Optional<String> texture =
        fields.get("texture").flatMap(v -> v.key(catalogue.textures(), "soil texture"));
    OptionalDouble capacity = fields.quantity("field_capacity", Measure.SHARE, 0.02, 0.65);
    OptionalDouble wilting = fields.quantity("wilting_point", Measure.SHARE, 0.005, 0.5);
    if (!fields.has("texture")) {
      if (!fields.has("field_capacity") && !fields.has("wilting_point")) {
        fields.need(
            "texture", "the texture such as loam, or both field_capacity and wilting_point");
      }
    }
    if (fields.has("field_capacity") != fields.has("wilting_point")) {
      String missing = fields.has("field_capacity") ? "wilting_point" : "field_capacity";
      fields.need(missing, "it as well, since the other was measured, as in 18 %");
    }
    if (capacity.isPresent()
        && wilting.isPresent()
        && wilting.getAsDouble() >= capacity.getAsDouble()) {
      fields.problem(
          "wilting_point",
          "contradicts field_capacity: a soil holds less water at wilting point than at field"
              + " capacity");
    }
    texture
        .map(catalogue.textures()::get)
        .ifPresent(row -> checkTexture(fields, row, capacity, wilting));
    double depth = fields.needQuantity("depth", Measure.LENGTH, 0.05, 10);
    OptionalDouble ph =
        fields
            .get("ph")
            .map(v -> v.number(new Range(3, 11), "a soil reaction from 3 to 11, such as 6.5"))
            .orElse(OptionalDouble.empty());
    return new Soil(
        texture,
        capacity,
        wilting,
        depth,
        fields.get("drainage_test").flatMap(SoilReader::drainageTest),
        ph,
        fields.get("test").map(SoilReader::test).orElse(Soil.SoilTest.NONE));
  }

  private static void checkTexture(
      Fields fields, SoilTexture row, OptionalDouble capacity, OptionalDouble wilting) {
    if (capacity.isPresent()
        && Math.abs(capacity.getAsDouble() - row.fieldCapacity()) > TEXTURE_TOLERANCE) {
      disagree(fields, "field_capacity", row, row.fieldCapacity());
    }
    if (wilting.isPresent()
        && Math.abs(wilting.getAsDouble() - row.wiltingPoint()) > TEXTURE_TOLERANCE) {
      disagree(fields, "wilting_point", row, row.wiltingPoint());
    }
  }

  private static void disagree(Fields fields, String key, SoilTexture row, double usual) {
    fields.problem(
        key,
        "contradicts texture: {0} has about {1} %; correct one of them or leave the texture out",
        Sentence.term(row.name()),
        Math.round(usual * 100));
  }

  private static Optional<Soil.DrainageTest> drainageTest(Value value) {
    return value
        .fields(Section.DRAINAGE_TEST)
        .map(
            fields ->
                new Soil.DrainageTest(
                    fields.needQuantity("drop", Measure.LENGTH, 0.001, 2),
                    fields.needQuantity("time", Measure.TIME, 10, 7 * 86_400)));
  }

  private static Soil.SoilTest test(Value value) {
    return value
        .fields(Section.SOIL_TEST)
        .map(
            fields ->
                new Soil.SoilTest(
                    fields.quantity("organic_matter", Measure.SHARE, 0, 0.6),
                    fields.quantity("phosphorus", Measure.CONTENT, 0, 2000),
                    fields.quantity("potassium", Measure.CONTENT, 0, 5000),
                    fields.quantity("salinity", Measure.SALINITY, 0, 5)))
        .orElse(Soil.SoilTest.NONE);
  }
}
