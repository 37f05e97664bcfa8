package org.grovewright.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.JsonPointer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.snakeyaml.engine.v2.api.Dump;
import org.snakeyaml.engine.v2.api.DumpSettings;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.common.FlowStyle;

class YamlDocumentTest {
  private static final String TEXT =
      """
      # my land
      site:
        name: Old name   # as on the deed
        boundary: [[0 m, 0 m], [52 m, 0 m]]
      rows:
        - id: A
          # by the fence
          plants:
            - {species: fig, at: 3 m}   # the old one
            - {species: pear, at: 7 m}
        - id: B
          plants: []
      prices:
        pipe.pe-16: 100 m for 58
      crew:
      """;

  private static YamlDocument document() {
    return YamlDocument.parse(TEXT);
  }

  private static JsonPointer at(String pointer) {
    return JsonPointer.valueOf(pointer);
  }

  @Test
  void changesAValueAndLeavesTheRestLetterByLetter() {
    assertThat(document().set(at("/site/name"), "Étang: new").text())
        .isEqualTo(TEXT.replace("Old name", "'Étang: new'"));
    assertThat(document().set(at("/rows/0/plants/1/at"), "8.25 m").text())
        .isEqualTo(TEXT.replace("7 m", "8.25 m"));
    assertThat(document().set(at("/prices/pipe.pe-16"), "50 m for 30").text())
        .isEqualTo(TEXT.replace("100 m for 58", "50 m for 30"));
    assertThat(document().set(at("/site/boundary"), List.of("a, b", 3)).text())
        .isEqualTo(TEXT.replace("[[0 m, 0 m], [52 m, 0 m]]", "['a, b', 3]"));
  }

  @Test
  void addsKeysAndItemsInTheStyleThatIsThere() {
    assertThat(document().set(at("/rows/0/plants/0/id"), "A1").text())
        .isEqualTo(TEXT.replace("{species: fig, at: 3 m}", "{species: fig, at: 3 m, id: A1}"));
    assertThat(document().set(at("/rows/0/plants/-"), Map.of("species", "fig")).text())
        .isEqualTo(TEXT.replace("pear, at: 7 m}", "pear, at: 7 m}\n      - {species: fig}"));
    assertThat(document().set(at("/rows/1/plants/-"), Map.of("species", "fig")).text())
        .isEqualTo(TEXT.replace("plants: []", "plants: [{species: fig}]"));
    assertThat(document().set(at("/site/elevation"), "3 m").text())
        .isEqualTo(TEXT.replace("[52 m, 0 m]]\n", "[52 m, 0 m]]\n  elevation: 3 m\n"));
    assertThat(document().set(at("/crew"), Map.of("people", 2)).text())
        .isEqualTo(TEXT.replace("crew:\n", "crew: {people: 2}\n"));
    assertThat(document().set(at("/plants/-"), Map.of("id", "p")).text())
        .isEqualTo(TEXT + "plants: [{id: p}]\n");
  }

  @Test
  void removesKeysAndItems() {
    assertThat(document().remove(at("/rows/0/plants/0")).text())
        .isEqualTo(TEXT.replace("- {species: fig, at: 3 m}   # the old one\n      ", ""));
    assertThat(document().remove(at("/rows/0/plants/1")).text())
        .isEqualTo(TEXT.replace("\n      - {species: pear, at: 7 m}", ""));
    assertThat(document().remove(at("/rows/0/plants/1/species")).text())
        .isEqualTo(TEXT.replace("species: pear, ", ""));
    assertThat(document().remove(at("/rows/0/plants/1/at")).text())
        .isEqualTo(TEXT.replace("pear, at: 7 m", "pear"));
    assertThat(document().remove(at("/site/boundary")).text())
        .isEqualTo(TEXT.replace("\n  boundary: [[0 m, 0 m], [52 m, 0 m]]", ""));
    assertThat(document().remove(at("/prices/pipe.pe-16")).text())
        .isEqualTo(TEXT.replace("\n  pipe.pe-16: 100 m for 58", " {}"));
  }

  @Test
  void refusesWhatIsNotThere() {
    assertThatThrownBy(() -> document().set(at("/rows/7/id"), "x"))
        .isInstanceOf(EditException.class);
    assertThatThrownBy(() -> document().set(at("/site/name/first"), "x"))
        .isInstanceOf(EditException.class);
    assertThatThrownBy(() -> document().remove(at("/site/none"))).isInstanceOf(EditException.class);
    assertThatThrownBy(() -> document().remove(at(""))).isInstanceOf(EditException.class);
    assertThatThrownBy(() -> YamlDocument.parse("a: [b")).isInstanceOf(EditException.class);
    assertThatThrownBy(() -> YamlDocument.parse("")).isInstanceOf(EditException.class);
    assertThatThrownBy(() -> YamlDocument.parse("a: &x [1]\nb: [*x, *x]"))
        .isInstanceOf(EditException.class);
  }

  @Test
  void countsLettersBeyondTheBasicPlane() {
    YamlDocument document = YamlDocument.parse("name: 🌳🌳\nother: 1\n");
    assertThat(document.set(at("/other"), 2).text()).isEqualTo("name: 🌳🌳\nother: 2\n");
  }

  // The outside judge is the YAML library's own loader: whatever the layout of the text, loading
  // the changed text must give the values with that one change and no other.
  @Property(tries = 300)
  void givesExactlyTheWantedValuesInAnyLayout(
      @ForAll("trees") Map<String, Object> tree,
      @ForAll FlowStyle style,
      @ForAll("scalars") Object value) {
    String text =
        new Dump(DumpSettings.builder().setDefaultFlowStyle(style).build()).dumpToString(tree);
    List<String> places = new ArrayList<>();
    collect(tree, "", places);
    for (String place : places) {
      JsonPointer pointer = at(place);
      String set = YamlDocument.parse(text).set(pointer, value).text();
      assertThat(load(set)).isEqualTo(DataTree.with(load(text), pointer, value));
      String removed = YamlDocument.parse(text).remove(pointer).text();
      assertThat(load(removed)).isEqualTo(DataTree.without(load(text), pointer));
    }
  }

  private static Object load(String text) {
    return new Load(LoadSettings.builder().build()).loadFromString(text);
  }

  private static void collect(Object node, String path, List<String> places) {
    if (!path.isEmpty()) {
      places.add(path);
    }
    if (node instanceof Map<?, ?> map) {
      map.forEach((key, value) -> collect(value, path + "/" + key, places));
    } else if (node instanceof List<?> list) {
      for (int i = 0; i < list.size(); i++) {
        collect(list.get(i), path + "/" + i, places);
      }
    }
  }

  @Provide
  Arbitrary<Object> scalars() {
    return Arbitraries.oneOf(
        Arbitraries.strings().withChars("ab :,-#{}[]'\"é").ofMaxLength(8).map(s -> (Object) s),
        Arbitraries.integers().map(i -> (Object) i),
        Arbitraries.of(true, false).map(b -> (Object) b),
        Arbitraries.of("3 m", "12", "null", "~", "yes", "- x", "[a", "2027-03-06", "two\nlines"));
  }

  @Provide
  Arbitrary<Map<String, Object>> trees() {
    return map(
        Arbitraries.lazyOf(
            this::scalars, this::lists, () -> map(scalars()).map(Objects::requireNonNull)));
  }

  private Arbitrary<Object> lists() {
    return Arbitraries.oneOf(scalars(), map(scalars()).map(m -> (Object) m))
        .list()
        .ofMaxSize(3)
        .map(l -> (Object) l);
  }

  private static Arbitrary<Map<String, Object>> map(Arbitrary<Object> values) {
    return Arbitraries.maps(Arbitraries.of("a", "b", "pipe.pe-16", "key with space", "é"), values)
        .ofMinSize(1)
        .ofMaxSize(4)
        .map(LinkedHashMap::new);
  }
}
