package org.grovewright.formats.description;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.grovewright.formats.units.Measure;
import org.grovewright.formats.units.UnitWords;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** Validates with an independent implementation of JSON Schema, draft 2020-12. */
class SchemaTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final JsonNode TREE = tree();
  private static final JsonSchema SCHEMA =
      JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(TREE);
  private static final Path EXAMPLES = Path.of("..", "examples");

  private static JsonNode tree() {
    try {
      return JSON.readTree(Starter.schema());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Set<String> faults(String yaml) {
    Object value = new Load(LoadSettings.builder().build()).loadFromString(yaml);
    return SCHEMA.validate(JSON.valueToTree(value)).stream()
        .map(ValidationMessage::toString)
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  @Test
  void theSchemaIsItselfValid() {
    JsonSchema meta =
        JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(
                com.networknt.schema.SchemaLocation.of(
                    "https://json-schema.org/draft/2020-12/schema"));
    assertThat(meta.validate(TREE)).isEmpty();
  }

  @Test
  void theStarterIsValid() {
    assertThat(faults(Descriptions.starter())).isEmpty();
  }

  static Stream<Path> examples() throws IOException {
    if (!Files.isDirectory(EXAMPLES)) {
      return Stream.empty();
    }
    try (Stream<Path> files = Files.list(EXAMPLES)) {
      return files.filter(path -> path.toString().endsWith(".yaml")).sorted().toList().stream();
    }
  }

  @ParameterizedTest(allowZeroInvocations = true)
  @MethodSource("examples")
  void everyExampleIsValidAndReads(Path example) throws IOException {
    assertThat(faults(Files.readString(example))).isEmpty();
    DescriptionReader reader =
        new DescriptionReader(
            Descriptions.CATALOGUE, new org.grovewright.formats.weather.WeatherOfDescription());
    assertThat(reader.read(example).plantings()).isNotEmpty();
  }

  @Property(tries = 60)
  void whatTheWriterWritesIsValid(@ForAll long seed) {
    String text =
        new DescriptionWriter(Descriptions.CATALOGUE)
            .write(Groves.of(seed, Descriptions.CATALOGUE));
    assertThat(faults(text)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "elevation: 60 ft |elevation: 60 gal ",
        "elevation: 60 ft |elevation: 60 ",
        "  latitude: 38.5|  latitud: 38.5",
        "kind: house tap|kind: gravity tank",
        "kind: house tap|kind: house top",
        "static_pressure: 50 psi|tank_level: 1 m",
        "propose: true|propose: false",
        "propose: true|propose: maybe",
        "tmax: 54 61|tmax: 61",
        "53 59 73 82 %|53 59 73 82 m",
        "units: us|units: imperial",
        "start: 2026-02-28|start: 28.2.2026",
        "start: 2026-02-28|begin: 2026-02-28",
        "people: 2|people: 1.5",
        "Sat: 09:00-13:00|Sax: 09:00-13:00",
        "at: 7 ft}|at: 7 ft, first: 1 ft}",
        "at: 7 ft}|at: [7 ft, 8 ft]}",
        "between: each|between: some",
        "[14 ft, 50 ft]|[14 ft]",
        "kind: building|kind: castle",
        "  - id: B|  - name: B",
        "100 ft for 19.50|100 ft at 19.50",
        "organic_matter: 2.1 %|organic_matter: 2.1 mg/kg",
        "volume: 5 gal, |",
        "texture: loam|field_capacity: 30 %",
        "ph: 6.6|ph: 66",
      })
  void badDescriptionsAreNotValid(String find, String replacement) {
    String starter = Descriptions.starter();
    assertThat(starter).contains(find);
    String bad =
        starter.replaceFirst(
            Pattern.quote(find), Matcher.quoteReplacement(replacement == null ? "" : replacement));
    assertThat(faults(bad)).isNotEmpty();
    assertThat(Descriptions.problems(bad)).isNotEmpty();
  }

  @Test
  void readerAndSchemaKnowTheSameKeys() {
    Map<String, Set<String>> inSchema = new TreeMap<>();
    collect(TREE, "", inSchema);
    Map<String, Set<String>> inReader = new TreeMap<>();
    for (Section section : Section.values()) {
      inReader.put(section.path(), new TreeSet<>(section.keys()));
    }
    // The keys of these are words of the catalogue or the calendar, not of the language.
    inReader.put("prices", Set.of("currency", "typical_times"));
    inReader.put("crew.hours", Set.of("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"));
    assertThat(inSchema).isEqualTo(inReader);
  }

  private static void collect(JsonNode node, String path, Map<String, Set<String>> keys) {
    if (node.path("type").asText().equals("array")) {
      collect(node.path("items"), path + "[]", keys);
    }
    if (!node.has("properties")) {
      return;
    }
    Set<String> names = new TreeSet<>();
    node.path("properties").fieldNames().forEachRemaining(names::add);
    keys.put(path, names);
    for (String name : names) {
      collect(node.path("properties").path(name), path.isEmpty() ? name : path + "." + name, keys);
    }
  }

  @Test
  void everyKeyIsDescribed() {
    assertThat(undescribed(TREE, "")).isEmpty();
  }

  private static Set<String> undescribed(JsonNode node, String path) {
    Set<String> missing = new TreeSet<>();
    node.path("properties")
        .properties()
        .forEach(
            field -> {
              JsonNode value = field.getValue();
              String reference = value.path("$ref").asText().replace("#/$defs/", "");
              boolean described =
                  value.has("description") || TREE.path("$defs").path(reference).has("description");
              if (!described) {
                missing.add(path + "." + field.getKey());
              }
              missing.addAll(undescribed(value, path + "." + field.getKey()));
              missing.addAll(undescribed(value.path("items"), path + "." + field.getKey()));
            });
    return missing;
  }

  /** Each unit word is valid in the schema exactly where the reader takes it. */
  @Test
  void schemaAndReaderTakeTheSameUnits() {
    Map<String, Measure> fields =
        Map.of(
            "area", Measure.AREA,
            "length", Measure.LENGTH,
            "volume", Measure.VOLUME,
            "daily_volume", Measure.DAILY_VOLUME,
            "pressure", Measure.PRESSURE,
            "time", Measure.TIME,
            "share", Measure.SHARE,
            "content", Measure.CONTENT,
            "salinity", Measure.SALINITY,
            "angle", Measure.ANGLE);
    List<String> joined =
        List.of("L/h", "gal/day", "m3/day", "mm/day", "mg/kg", "g/kg", "dS/m", "mS/cm", "uS/cm");
    List<String> words = Stream.concat(UnitWords.all().stream(), joined.stream()).toList();
    fields.forEach(
        (name, measure) -> {
          Pattern pattern =
              Pattern.compile(
                  TREE.path("$defs").path(name).path("anyOf").get(0).path("pattern").asText());
          for (String word : words) {
            assertThat(pattern.matcher("3 " + word).find())
                .as("%s in %s", word, name)
                .isEqualTo(measure.accepts(UnitWords.find(word).orElseThrow()));
          }
        });
    assertThat(Arrays.asList(Measure.values())).containsAll(fields.values());
  }
}
