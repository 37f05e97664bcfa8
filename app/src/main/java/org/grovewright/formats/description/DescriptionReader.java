package org.grovewright.formats.description;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.model.Climate;
import org.grovewright.model.Crew;
import org.grovewright.model.GroundChoices;
import org.grovewright.model.Grove;
import org.grovewright.model.Preferences;
import org.grovewright.model.Site;
import org.grovewright.model.Soil;
import org.grovewright.model.Stock;
import org.grovewright.model.Supply;
import org.grovewright.model.Watering;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads descriptions of groves. */
public final class DescriptionReader {
  private final Catalogue catalogue;
  private final DailyWeather dailyWeather;

  /**
   * A reader.
   *
   * @param catalogue knows the plants and goods that descriptions may name
   * @param dailyWeather reads the files of daily weather that descriptions may name
   */
  public DescriptionReader(Catalogue catalogue, DailyWeather dailyWeather) {
    this.catalogue = catalogue;
    this.dailyWeather = dailyWeather;
  }

  /**
   * Reads a file; files it names are sought in its own folder.
   *
   * @throws DescriptionException if it cannot be read as a description
   */
  public Grove read(Path file) {
    Path folder = file.toAbsolutePath().getParent();
    return read(SourceText.of(file), file.toString(), folder);
  }

  /**
   * Reads a text.
   *
   * @param text the description
   * @param name what to call it in messages
   * @param folder where files are sought that it names
   * @throws DescriptionException if the text is not a description, with all that is wrong
   */
  public Grove read(String text, String name, Path folder) {
    return describe(text, name, Optional.of(folder)).grove();
  }

  /**
   * Reads a text that may name no files, and tells where each plant is described. For texts from
   * elsewhere, whose writers must not choose what is read on this machine.
   *
   * @param text the description
   * @param name what to call it in messages
   * @throws DescriptionException if the text is not a description, with all that is wrong
   */
  public Described describe(String text, String name) {
    return describe(text, name, Optional.empty());
  }

  /**
   * A grove with the entries it was read from.
   *
   * @param grove the grove
   * @param plantEntries path of the entry that a plant was read from, such as {@code
   *     rows[0].plants[2]}, by the plant's id
   */
  public record Described(Grove grove, Map<String, String> plantEntries) {
    /** Copies the entries in their order. */
    public Described {
      plantEntries = Collections.unmodifiableMap(new LinkedHashMap<>(plantEntries));
    }

    /** Whether a plant is one of the companions that a row spreads along itself. */
    public boolean isSpread(String plantId) {
      return plantEntries.get(plantId).contains("].companions[");
    }
  }

  /**
   * Reads a text that may name no files, to read it again later with plants in other places.
   *
   * @param text the description
   * @param name what to call it in messages
   * @throws DescriptionException if the text is not a description, with all that is wrong
   */
  public OpenDescription open(String text, String name) {
    SourceText.checkCharacters(text, name);
    Node tree = YamlTree.parse(text, name);
    return new OpenDescription(catalogue, name, tree, describe(tree, name, Optional.empty()));
  }

  private Described describe(String text, String name, Optional<Path> folder) {
    SourceText.checkCharacters(text, name);
    return describe(YamlTree.parse(text, name), name, folder);
  }

  private Described describe(Node tree, String name, Optional<Path> folder) {
    Reading reading = new Reading();
    Value root = new Value(tree, "", reading);
    Map<String, String> entries = new LinkedHashMap<>();
    Grove grove =
        root.fields(Section.GROVE).map(fields -> grove(fields, root, folder, entries)).orElse(null);
    List<Problem> problems = reading.problems();
    if (!problems.isEmpty()) {
      throw new DescriptionException(name, problems);
    }
    return new Described(grove, entries);
  }

  private Grove grove(
      Fields fields, Value root, Optional<Path> folder, Map<String, String> entries) {
    // Sections that cannot be read are null here; then a problem is noted and no grove comes out.
    Site site = fields.need("site", "the land").map(v -> SiteReader.read(v, folder)).orElse(null);
    Soil soil =
        fields.need("soil", "the native soil").map(v -> SoilReader.read(v, catalogue)).orElse(null);
    Climate climate =
        fields
            .need("climate", "the weather of the months, or daily: a file")
            .map(v -> ClimateReader.read(v, folder, dailyWeather))
            .orElse(null);
    Supply supply =
        fields
            .need("supply", "where the water comes from")
            .map(v -> SupplyReader.read(v, catalogue))
            .orElse(null);
    PlantingReader plants = PlantingReader.read(fields, root, catalogue, site, Map.of());
    entries.putAll(plants.entries());
    if (!fields.has("rows") && !fields.has("plants")) {
      fields.problemOfAll("has no plants; give rows with plants, or plants");
    } else if (plants.plantings().isEmpty() && fields.noProblemsYet()) {
      fields.problem(fields.has("rows") ? "rows" : "plants", "holds no plant");
    }
    Watering watering =
        fields
            .get("watering")
            .map(v -> new WateringReader(catalogue, plants.rowIds()).read(v))
            .orElseGet(WateringReader::proposal);
    Stock stock = new StockReader(catalogue).read(fields.get("on_hand"), fields.get("prices"));
    Crew crew = fields.need("crew", "who works and when").map(CrewReader::read).orElse(null);
    LocalDate start =
        fields
            .need("start", "the first day on which work may be done, such as 2026-03-01")
            .flatMap(Value::date)
            .orElse(LocalDate.EPOCH);
    Preferences preferences = preferences(fields);
    if (!fields.noProblemsYet()) {
      return null;
    }
    return new Grove(
        site,
        soil,
        climate,
        supply,
        plants.rows(),
        plants.plantings(),
        watering,
        stock,
        crew,
        start,
        preferences);
  }

  private Preferences preferences(Fields fields) {
    Optional<Preferences.Units> units =
        fields.get("units").flatMap(v -> v.choice(Preferences.Units.class));
    Optional<Preferences.Friction> friction =
        fields.get("friction").flatMap(v -> v.choice(Preferences.Friction.class));
    return new Preferences(
        units.orElse(Preferences.Units.METRIC),
        friction.orElse(Preferences.Friction.HAZEN_WILLIAMS),
        fields.get("ground").map(v -> GroundReader.read(v, catalogue)).orElse(GroundChoices.NONE));
  }
}
