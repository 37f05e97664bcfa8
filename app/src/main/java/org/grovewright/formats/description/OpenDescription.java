package org.grovewright.formats.description;

import java.util.List;
import java.util.Map;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.formats.description.DescriptionReader.Described;
import org.grovewright.model.Grove;
import org.grovewright.model.Point;
import org.snakeyaml.engine.v2.nodes.Node;

/**
 * A description that was read and can be read again as if plants stood elsewhere. Only rows and
 * plants are read again, for a place of a plant changes nothing of the rest.
 */
public final class OpenDescription {
  private final Catalogue catalogue;
  private final String name;
  private final Node tree;
  private final Described described;

  OpenDescription(Catalogue catalogue, String name, Node tree, Described described) {
    this.catalogue = catalogue;
    this.name = name;
    this.tree = tree;
    this.described = described;
  }

  /** The grove as it is described. */
  public Described described() {
    return described;
  }

  /**
   * The grove as if plants stood elsewhere, companions that stand between or around them too: what
   * the text would say after the plants were moved, without writing it.
   *
   * @param moved places of plants by their names; a plant of a row stands at the nearest place of
   *     its row
   * @throws DescriptionException if plants cannot stand there
   */
  public Grove moved(Map<String, Point> moved) {
    Grove grove = described.grove();
    Reading reading = new Reading();
    Value root = new Value(tree, "", reading);
    Fields fields = root.fields(Section.GROVE).orElseThrow();
    PlantingReader plants = PlantingReader.read(fields, root, catalogue, grove.site(), moved);
    List<Problem> problems = reading.problems();
    if (!problems.isEmpty()) {
      throw new DescriptionException(name, problems);
    }
    return new Grove(
        grove.site(),
        grove.soil(),
        grove.climate(),
        grove.supply(),
        plants.rows(),
        plants.plantings(),
        grove.watering(),
        grove.stock(),
        grove.crew(),
        grove.start(),
        grove.preferences());
  }
}
