package org.grovewright.formats.description;

import java.util.List;
import java.util.Optional;
import org.grovewright.formats.words.Nearest;
import org.grovewright.texts.Sentence;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionEndEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.DocumentStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;

/** Makes the tree of YAML nodes of a text. */
final class YamlTree {
  private static final int DEEPEST = 24;

  private static final String OPEN_QUOTE = "unexpected end of stream";

  /** What the parser says in its own words, and what it means to a gardener. */
  private static final List<PlainWords> PLAIN_WORDS =
      List.of(
          new PlainWords(
              "'\\t(TAB)'", "a tab stands where spaces are needed; indent with spaces only"),
          new PlainWords(
              "mapping values are not allowed here",
              "a colon does not fit here; check the indent of this line and the one above, and put"
                  + " quotes around text that holds a colon and a space"),
          new PlainWords(
              "could not find expected ':'",
              "a colon is missing after the key; write 'key: value'"),
          new PlainWords(
              "did not find expected key",
              "the indent does not match the lines above; keys of one group start in one column"),
          new PlainWords(
              "expected <block end>",
              "the indent does not match the lines above; keys of one group start in one column"),
          new PlainWords("expected ',' or ']'", "a list in [ ] is not closed or lacks a comma"),
          new PlainWords("expected ',' or '}'", "a group in { } is not closed or lacks a comma"),
          new PlainWords(OPEN_QUOTE, "a quote is opened but not closed"));

  /**
   * What is said in the place of the parser's words.
   *
   * @param parser part of what the parser says
   * @param shape what it means
   */
  private record PlainWords(String parser, String shape) {}

  private YamlTree() {}

  /**
   * The root node of the text's only document.
   *
   * @throws DescriptionException if the text is not YAML, is empty, or uses features that have no
   *     place in a description: aliases, several documents, nesting without end
   */
  static Node parse(String text, String file) {
    LoadSettings settings =
        LoadSettings.builder()
            .setLabel(file)
            .setCodePointLimit(SourceText.LIMIT_BYTES + 1)
            .setMaxAliasesForCollections(0)
            .setUseMarks(true)
            .build();
    try {
      checkEvents(text, file, settings);
      Optional<Node> root = new Compose(settings).composeString(text);
      return root.orElseThrow(
          () ->
              problem(file, 1, 1, Sentence.of("the file is empty; start from 'grovewright new'")));
    } catch (MarkedYamlEngineException e) {
      // What is not closed is found at the end of the text, but to be mended where it begins.
      boolean open = String.valueOf(e.getProblem()).contains(OPEN_QUOTE);
      Mark mark =
          (open ? e.getContextMark() : e.getProblemMark()).or(e::getContextMark).orElse(null);
      int line = mark == null ? 0 : mark.getLine() + 1;
      int column = mark == null ? 0 : mark.getColumn() + 1;
      throw problem(file, line, column, plain(e.getProblem()));
    } catch (YamlEngineException e) {
      throw problem(file, 0, 0, plain(e.getMessage()));
    }
  }

  private static void checkEvents(String text, String file, LoadSettings settings) {
    int depth = 0;
    int documents = 0;
    for (Event event : new Parse(settings).parseString(text)) {
      int line = event.getStartMark().map(m -> m.getLine() + 1).orElse(0);
      int column = event.getStartMark().map(m -> m.getColumn() + 1).orElse(0);
      if (event instanceof CollectionStartEvent) {
        depth++;
        if (depth > DEEPEST) {
          throw problem(
              file, line, column, Sentence.of("lists and groups are nested too deep here"));
        }
      } else if (event instanceof CollectionEndEvent) {
        depth--;
      } else if (event instanceof AliasEvent alias) {
        throw problem(
            file,
            line,
            column,
            Sentence.of(
                "the alias *{0} is not allowed; write the value again",
                Nearest.shorten(alias.getAlias().getValue())));
      } else if (event instanceof ScalarEvent scalar && unprintable(scalar.getValue())) {
        throw problem(
            file,
            line,
            column,
            Sentence.of("this text holds a sign that cannot be printed; type the text anew"));
      } else if (event instanceof DocumentStartEvent) {
        documents++;
        if (documents > 1) {
          throw problem(
              file,
              line,
              column,
              Sentence.of("a second description starts here; keep one to a file"));
        }
      }
    }
  }

  /** Whether there are signs that neither XML nor every database has a place for. */
  private static boolean unprintable(String text) {
    return text.codePoints()
        .anyMatch(
            sign ->
                Character.getType(sign) == Character.SURROGATE
                    || (sign & 0xfffe) == 0xfffe
                    || Character.isISOControl(sign) && sign != '\n' && sign != '\t');
  }

  private static Sentence plain(String problem) {
    String text = problem == null ? "" : problem;
    for (PlainWords words : PLAIN_WORDS) {
      if (text.contains(words.parser())) {
        return Sentence.of(words.shape());
      }
    }
    return Sentence.of(
        "this is not well-formed YAML: {0}", text.replaceAll("\\p{Cntrl}+", " ").strip());
  }

  private static DescriptionException problem(
      String file, int line, int column, Sentence sentence) {
    return new DescriptionException(file, List.of(new Problem(line, column, "", sentence)));
  }
}
