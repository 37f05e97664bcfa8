package org.grovewright.formats.description;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.formats.units.Measure;
import org.grovewright.model.GroundChoices;

/** Reads what the owner wants in and on the ground. */
final class GroundReader {
  private GroundReader() {}

  static GroundChoices read(Value value, Catalogue catalogue) {
    Optional<Fields> found = value.fields(Section.GROUND);
    if (found.isEmpty()) {
      return GroundChoices.NONE;
    }
    Fields fields = found.get();
    OptionalDouble share = fields.quantity("mix_share", Measure.SHARE, 0, 1);
    if (fields.has("mix") && share.isPresent() && share.getAsDouble() == 0) {
      fields.problem("mix", "contradicts mix_share: a share of 0 % uses no mix");
    }
    OptionalDouble width =
        fields
            .get("hole_width")
            .map(
                v ->
                    v.number(
                        new Range(1, 10),
                        "a number from 1 to 10: hole over root ball, such as 2 for twice as wide"))
            .orElse(OptionalDouble.empty());
    return new GroundChoices(
        fields.key("mix", catalogue.mixes(), "soil mix"),
        share,
        width,
        amendments(fields, catalogue),
        fields.key("mulch", catalogue.mulches(), "mulch"),
        fertiliser(fields, catalogue));
  }

  private static Optional<String> fertiliser(Fields fields, Catalogue catalogue) {
    Optional<String> key = fields.key("fertiliser", catalogue.amendments(), "fertiliser");
    if (key.isPresent() && catalogue.amendments().get(key.get()).nitrogen() == 0) {
      fields.problem(
          "fertiliser",
          "{0} holds no nitrogen, by which feeding is planned; choose one that does",
          key.get());
    }
    return key;
  }

  private static List<String> amendments(Fields fields, Catalogue catalogue) {
    List<String> keys = new ArrayList<>();
    for (Value item : fields.get("amendments").map(Value::items).orElse(List.of())) {
      Optional<String> key = item.key(catalogue.amendments(), "amendment");
      if (key.isPresent() && keys.contains(key.get())) {
        item.problem("is given twice");
      }
      key.ifPresent(keys::add);
    }
    return keys;
  }
}
