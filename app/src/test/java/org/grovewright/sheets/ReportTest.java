package org.grovewright.sheets;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.xml.xpath.XPathConstants;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.weather.WeatherOfDescription;
import org.grovewright.irrigation.LateralProfile;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.layout.CrownSizes;
import org.grovewright.model.Planting;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.grovewright.quantity.Figure;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class ReportTest {
  private static Plan plan;
  private static String html;
  private static Document page;
  private static Map<String, String> sheets;

  @BeforeAll
  static void makeReport() throws Exception {
    Catalogue catalogue = CatalogueFiles.load().catalogue();
    try (InputStream in =
        ReportTest.class.getResourceAsStream("/org/grovewright/examples/us-gravity.yaml")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      // A name that would break a page which forgot to escape it.
      String named =
          text.replaceFirst("name: [^\n]+", "name: 'Bench <b>&amp; \"Sons\"</b> ]]> {0}'");
      plan =
          Planner.plan(
              new DescriptionReader(catalogue, new WeatherOfDescription())
                  .read(named, "us-gravity.yaml", Path.of("")),
              catalogue);
    }
    sheets = Sheets.of(plan);
    html = sheets.get("report.html");
    // The page is written so that it is XML too, which lets a strict reader check it.
    page = XmlChecks.parse(html.replace("<!DOCTYPE html>", ""));
  }

  private static List<Element> all(String path) throws Exception {
    NodeList nodes = (NodeList) XmlChecks.find(page, path, XPathConstants.NODESET);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < nodes.getLength(); i++) {
      elements.add((Element) nodes.item(i));
    }
    return elements;
  }

  @Test
  void namesAreEscapedEverywhere() throws Exception {
    assertThat(XmlChecks.text(page, "//h1")).isEqualTo("Bench <b>&amp; \"Sons\"</b> ]]> {0}");
    assertThat(XmlChecks.parse(sheets.get("map.svg"))).isNotNull();
  }

  @Test
  void nothingIsFetchedFromOutside() throws Exception {
    for (Element element : all("//*[@src or @href or @action or @data or @poster]")) {
      assertThat(element.getAttribute("src")).isEmpty();
      assertThat(element.getAttribute("href")).startsWith("#");
    }
    assertThat(all("//link|//iframe|//img|//object|//embed|//form")).isEmpty();
    assertThat(
            html.replace("http://www.w3.org/1999/xhtml", "")
                .replace("http://www.w3.org/2000/svg", ""))
        .doesNotContain("http:")
        .doesNotContain("https:")
        .doesNotContain("@import")
        .doesNotContainPattern("url\\((?!#)");
    assertThat(html).contains("Content-Security-Policy", "default-src 'none'");
  }

  @Test
  void everyLinkLeadsSomewhereAndNoIdIsThereTwice() throws Exception {
    Set<String> ids = new HashSet<>();
    for (Element element : all("//*[@id]")) {
      assertThat(ids.add(element.getAttribute("id"))).as(element.getAttribute("id")).isTrue();
    }
    for (Element link : all("//a")) {
      assertThat(ids).contains(link.getAttribute("href").substring(1));
    }
    for (Element element : all("//*[@aria-labelledby]")) {
      assertThat(ids).contains(element.getAttribute("aria-labelledby").split(" "));
    }
  }

  /** The numbers of a section that a reader would want to check must open their working. */
  @Test
  void everySectionWithNumbersShowsWorkings() throws Exception {
    for (String section :
        List.of("layout", "ground", "water", "pressure", "timer", "work", "care")) {
      assertThat(all("//section[@id='" + section + "']//a[@class='fig']")).as(section).isNotEmpty();
    }
    long inZones =
        all("//section[@id='water']//table[caption='Each zone while it runs']//a[@class='fig']")
            .size();
    assertThat(inZones).isEqualTo(6L * plan.watering().zones().size());
  }

  @Test
  void aShownFigureHasTheValueOfThePlan() throws Exception {
    ReaderUnits units = Sheets.unitsOf(plan);
    String shown = XmlChecks.text(page, "//*[@id='w.buy.total.cost']/*[1]/*[1]");
    assertThat(shown).isEqualTo(units.text(plan.figure("buy.total.cost").orElseThrow()));
  }

  /** The formula of a crown, worked out from nothing but its shown inputs, gives the crown. */
  @Test
  void aCrownCanBeCheckedFromItsWorking() {
    for (Planting planting : plan.grove().plantings()) {
      for (String id :
          List.of(CrownSizes.firstId(planting.id()), CrownSizes.laterId(planting.id()))) {
        Figure crown = plan.figure(id).orElseThrow();
        Map<String, Double> in = new HashMap<>();
        crown.working().inputs().forEach(i -> in.put(i.symbol().split(" ")[0], i.value()));
        double mature = in.get("M");
        double start = Math.min(in.get("a") * Math.cbrt(in.get("V")), 0.855 * mature);
        double k = Math.log(Math.log(start / mature) / Math.log(0.95)) / in.get("Y");
        double grown = mature * Math.exp(Math.log(start / mature) * Math.exp(-k * in.get("t")));
        double spread = Math.min(grown, in.getOrDefault("kept", Double.POSITIVE_INFINITY));
        assertThat(in).doesNotContainKey("measured");
        assertThat(crown.value()).as(id).isCloseTo(spread, within(1e-9));
      }
    }
  }

  @Test
  void headingsGoDownOneLevelAtATime() throws Exception {
    int level = 0;
    for (Element heading : all("//h1|//h2|//h3|//h4|//h5|//h6")) {
      int next = heading.getTagName().charAt(1) - '0';
      assertThat(next).as(heading.getTextContent()).isLessThanOrEqualTo(level + 1);
      level = next;
    }
    assertThat(all("//h1")).hasSize(1);
  }

  @Test
  void tablesSayWhatTheirRowsAndColumnsAre() throws Exception {
    assertThat(all("//table")).isNotEmpty();
    assertThat(all("//table[not(caption)]")).isEmpty();
    assertThat(all("//th[not(@scope)]")).isEmpty();
    assertThat(all("//tbody/tr[not(th[@scope='row'])]")).isEmpty();
    assertThat(all("//td[not(@data-label)]")).isEmpty();
  }

  @Test
  void picturesAndControlsHaveNames() throws Exception {
    assertThat(all("//*[local-name()='svg'][not(@role='img') or not(@aria-labelledby)]")).isEmpty();
    assertThat(all("//input[not(@id = //label/@for)]")).isEmpty();
    assertThat(page.getDocumentElement().getAttribute("lang")).isEqualTo("en");
  }

  @Test
  void everyPlantAndEveryShortfallIsInIt() {
    plan.grove().plantings().forEach(p -> assertThat(html).contains(">" + p.id() + "<"));
    ReaderUnits units = Sheets.unitsOf(plan);
    plan.findings().forEach(f -> assertThat(html).contains(escaped(Words.message(f, units))));
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;")
        .replace("'", "&#39;");
  }

  /** Each zone has its pictures, each emitter its mark, and the plant served worst is named. */
  @Test
  void everyEmitterHasAMarkAndTheWorstPlantIsNamed() throws Exception {
    int emitters = plan.watering().zones().stream().mapToInt(z -> z.outlets().size()).sum();
    String section = "//section[@id='pressure']";
    assertThat(all(section + "//*[local-name()='g'][*[contains(@class,'step-')]]"))
        .hasSize(2 * emitters);
    assertThat(all(section + "//*[local-name()='svg'][@class='chart']"))
        .hasSize(plan.watering().zones().stream().mapToInt(z -> LateralProfile.of(z).size()).sum());
    for (ZoneResult zone : plan.watering().zones()) {
      String worst = plan.grove().plantings().get(zone.weakest().outlet().plant()).id();
      assertThat(XmlChecks.text(page, section)).contains("Served worst is " + worst);
    }
  }

  @Test
  void shoppingListsEveryLineAndTheTotal() {
    List<String> lines = sheets.get("shopping.csv").lines().toList();
    assertThat(lines).hasSize(plan.shopping().lines().size() + 2);
    assertThat(lines.get(lines.size() - 1))
        .contains(Decimals.plain(plan.shopping().total(), 2))
        .contains(plan.grove().stock().currency());
  }
}
