package org.grovewright.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.weather.WeatherOfDescription;
import org.grovewright.model.Grove;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.grovewright.quantity.FigureBook;
import org.grovewright.season.SeasonPlan;
import org.grovewright.season.SeasonSettings;
import org.grovewright.texts.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/** Every sheet of both examples in Spanish: nothing on it may be left in English. */
class SpanishSheetsTest {
  private static final Language SPANISH = Language.of("es");
  private static final Pattern WORD = Pattern.compile("\\p{L}{3,}");

  /** Words that no Spanish sentence of a sheet has, names of plants and places left out. */
  private static final Pattern ENGLISH =
      Pattern.compile(
          "(?i)\\b(the|of|and|with|for|from|which|are|is|at|by|year|month|day|days|plants?|zone"
              + "|row|nothing|every|each|needs?|soil|water|after|out|side|inches|feet)\\b");

  /** Keys of catalogue rows, figures and ways; currencies and units. */
  private static final Pattern MACHINE =
      Pattern.compile(
          "\\b[a-z0-9]+([.-][a-z0-9*-]+)+|\\b[A-Z]{3}\\b|\\b(gal|psi|bar|min|mph|Tmin|Tmax)\\b");

  private static final List<String> ATTRIBUTES =
      List.of("aria-label", "data-label", "data-back", "data-close");

  private static Plan plan(String example) {
    Catalogue catalogue = CatalogueFiles.load().catalogue();
    Path file = Path.of("..", "examples", example);
    return Planner.plan(
        new DescriptionReader(catalogue, new WeatherOfDescription()).read(file), catalogue);
  }

  /** Names that the owner gave, names of zones and scientific names. */
  private static Set<String> own(Plan plan) {
    Grove grove = plan.grove();
    Set<String> own = new HashSet<>();
    own.add(grove.site().name());
    grove.plantings().forEach(p -> own.add(p.id()));
    grove.plantings().forEach(p -> p.cultivar().ifPresent(own::add));
    grove.rows().forEach(r -> own.add(r.id()));
    grove.site().fixtures().forEach(f -> own.add(f.id()));
    plan.watering().zones().forEach(z -> own.add(z.design().id()));
    plan.catalogue().species().values().forEach(s -> own.add(s.latin()));
    return own;
  }

  private static List<String> texts(String page) throws Exception {
    Document document = XmlChecks.parse(page.replace("<!DOCTYPE html>", ""));
    List<String> texts = new ArrayList<>();
    collect(document.getDocumentElement(), texts);
    return texts;
  }

  private static void collect(Element element, List<String> texts) {
    String name = element.getTagName();
    // Ids of figures stand in small code; formulas are compared as all else.
    boolean machine =
        name.equals("style")
            || name.equals("script")
            || name.equals("code") && element.getParentNode().getNodeName().equals("span");
    if (machine) {
      return;
    }
    for (String attribute : ATTRIBUTES) {
      if (element.hasAttribute(attribute)) {
        texts.add(element.getAttribute(attribute));
      }
    }
    NodeList inside = element.getChildNodes();
    for (int i = 0; i < inside.getLength(); i++) {
      Node node = inside.item(i);
      if (node instanceof Element child) {
        collect(child, texts);
      } else if (node.getNodeType() == Node.TEXT_NODE && !node.getTextContent().isBlank()) {
        texts.add(node.getTextContent().strip());
      }
    }
  }

  /** What reads alike in both languages though it holds words, or holds English in Spanish. */
  private static List<String> leftInEnglish(
      List<String> english, List<String> spanish, Set<String> own) {
    // Labels that a longer word crowds out make the two unlike in number, so that sets are
    // compared.
    Set<String> before = new HashSet<>(english);
    Set<String> left = new LinkedHashSet<>();
    for (String text : spanish) {
      boolean same = before.contains(text) && WORD.matcher(text).find();
      if (same && !SPANISH.canSay(text) && !ownOnly(text, own)
          || ENGLISH.matcher(withoutNames(text, own)).find()) {
        left.add(text);
      }
    }
    return List.copyOf(left);
  }

  private static boolean ownOnly(String text, Set<String> own) {
    String rest = withoutNames(text, own).strip();
    return !WORD.matcher(rest).find()
        || SPANISH.canSay(rest)
        || SPANISH.canSay(Words.capital(rest))
        || SPANISH.canSay(rest.replaceAll("[ :()\u2018\u2019]+", " ").strip());
  }

  private static String withoutNames(String text, Set<String> own) {
    String rest = MACHINE.matcher(text).replaceAll("");
    for (String name :
        own.stream().sorted((a, b) -> b.length() - a.length()).collect(Collectors.toList())) {
      rest = rest.replaceAll("(?<![\\p{L}0-9])" + Pattern.quote(name) + "(?![\\p{L}0-9])", "");
    }
    return rest;
  }

  @ParameterizedTest
  @ValueSource(strings = {"demo.yaml", "us-gravity.yaml"})
  void nothingOnTheReportMapAndListsIsLeftInEnglish(String example) throws Exception {
    Plan plan = plan(example);
    Set<String> own = own(plan);
    Map<String, String> english = Sheets.of(plan);
    Map<String, String> spanish = Sheets.of(plan, SPANISH);
    for (String page : List.of("report.html", "map.svg")) {
      List<String> left = leftInEnglish(texts(english.get(page)), texts(spanish.get(page)), own);
      assertThat(String.join("\n", left)).as(page).isEmpty();
    }
    assertThat(texts(spanish.get("report.html"))).hasSizeGreaterThan(3000);
    List<String> left =
        leftInEnglish(
            events(english.get("calendar.ics")), events(spanish.get("calendar.ics")), own);
    assertThat(String.join("\n", left)).as("calendar").isEmpty();
    for (String list : List.of("shopping.csv", "watering.csv")) {
      assertThat(
              ENGLISH.matcher(withoutNames(spanish.get(list), own)).results().map(m -> m.group()))
          .as(list)
          .isEmpty();
    }
    assertThat(spanish.get("plan.json")).isEqualTo(english.get("plan.json"));
  }

  @Test
  void theCardForTheTimerAndItsReportAreInSpanish() throws Exception {
    Plan plan = plan("demo.yaml");
    FigureBook book = new FigureBook();
    plan.figures()
        .values()
        .forEach(f -> book.enter(f.id(), f.label(), f.value(), f.kind(), f.working()));
    SeasonPlan season =
        SeasonPlan.of(
            plan.grove(),
            plan.catalogue(),
            plan.water(),
            plan.watering(),
            plan.programme(),
            new SeasonSettings(1, 4, 4, 0.9),
            book);
    Set<String> own = own(plan);
    Map<String, String> english =
        SeasonSheets.of(plan.grove(), List.of(season), book.all(), Sheets.unitsOf(plan));
    Map<String, String> spanish =
        SeasonSheets.of(plan.grove(), List.of(season), book.all(), Sheets.unitsOf(plan, SPANISH));
    assertThat(spanish.keySet()).isEqualTo(english.keySet());
    for (String page : english.keySet()) {
      List<String> left = leftInEnglish(texts(english.get(page)), texts(spanish.get(page)), own);
      assertThat(String.join("\n", left)).as(page).isEmpty();
    }
  }

  /** Summaries, descriptions and categories of a calendar. */
  private static List<String> events(String calendar) {
    return calendar
        .replace("\r\n ", "")
        .lines()
        .filter(line -> line.matches("(SUMMARY|DESCRIPTION|CATEGORIES):.*"))
        .map(line -> line.replaceFirst("^[A-Z]+:", "").replace("\\n", " ").replace("\\", ""))
        .toList();
  }
}
