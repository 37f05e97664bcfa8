package org.grovewright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.grovewright.store.Journal;
import org.grovewright.store.JournalEntry.Content;
import org.grovewright.store.JournalEntry.SubjectKind;
import org.grovewright.store.JournalKind;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/** The pages by question, as an owner meets them. */
@Tag("browser")
class PagesTest {
  private static final List<String> QUESTIONS =
      List.of("buy", "today?date=2027-12-04", "water", "plants", "plant/A1", "settings", "labels");

  private static String demo(BrowserSession browser) {
    return DemoSite.of(browser);
  }

  @Test
  void everyPageIsAccessibleInLightAndDarkOnDeskAndPhone() {
    for (int width : new int[] {BrowserSession.DESKTOP, BrowserSession.PHONE}) {
      try (BrowserSession browser = BrowserSession.open(width)) {
        String site = demo(browser);
        for (String page : QUESTIONS) {
          browser.go(site + "/" + page);
          browser.waitUntil(d -> !d.findElements(By.cssSelector(".page h1")).isEmpty());
          browser.waitUntil(d -> d.findElements(By.cssSelector(".waiting")).isEmpty());
          for (String theme : List.of("light", "dark")) {
            browser.theme(theme);
            String name = page.replaceAll("[?/].*", "") + (page.contains("/A1") ? "-a1" : "");
            browser.shot("page-" + name + "-" + theme);
            browser.checkAccessible();
          }
        }
        browser.checkQuiet();
      }
    }
  }

  @Test
  void aFigureOpensItsWorkingAndItsInputsCanBeFollowed() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      String site = demo(browser);
      browser.go(site + "/buy");
      WebElement total = browser.find(".lead .worked");
      String text = total.getText();
      browser.click(total);
      browser.waitUntil(
          d -> d.findElement(By.cssSelector("dialog .working-value")).getText().startsWith(text));
      browser.click(browser.find("dialog .inputs button.worked"));
      browser.waitUntil(
          d -> !d.findElement(By.cssSelector("dialog .working-value")).getText().startsWith(text));
      browser.shot("working");
      browser.checkAccessible();
      browser.click("Back");
      browser.waitUntil(
          d -> d.findElement(By.cssSelector("dialog .working-value")).getText().startsWith(text));
      new Actions(browser.driver()).sendKeys(Keys.ESCAPE).perform();
      browser.waitUntil(d -> d.findElements(By.cssSelector("dialog")).isEmpty());
      assertThat(browser.driver().switchTo().activeElement()).isEqualTo(total);
      browser.checkQuiet();
    }
  }

  @Test
  void languageAndUnitsChangeAtOnceAndStay() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.PHONE)) {
      String site = demo(browser);
      browser.go(site + "/settings");
      browser.click(browser.find("input[name=language][value=es]"));
      browser.waitUntil(d -> d.findElement(By.tagName("h1")).getText().equals("Ajustes"));
      assertThat(browser.script("return document.documentElement.lang")).isEqualTo("es");
      browser.click(browser.find("input[name=units][value=us]"));
      browser.waitUntil(d -> d.findElements(By.cssSelector("input[value=us]:checked")).size() == 1);
      for (String page : QUESTIONS) {
        browser.go(site + "/" + page);
        browser.shot("es-" + page.replaceAll("[?/].*", "") + (page.contains("/A1") ? "-a1" : ""));
      }
      browser.go(site + "/plant/A1");
      browser.seeText("A1: Aguacate");
      assertThat(browser.text()).contains("gal/día").doesNotContain("L/day");
      browser.click(browser.find(".facts .worked"));
      browser.waitUntil(
          d -> d.findElement(By.cssSelector("dialog h2")).getText().contains("Copa de A1"));
      browser.go(site + "/settings");
      browser.click(browser.find("input[name=language][value=en]"));
      browser.waitUntil(d -> d.findElement(By.tagName("h1")).getText().equals("Settings"));
      browser.checkQuiet();
    }
  }

  @Test
  void theListAndTheLabelsPrintWithoutTheFrame() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      String site = demo(browser);
      for (String page : List.of("buy", "labels", "water")) {
        browser.go(site + "/" + page);
        browser.waitUntil(d -> !d.findElements(By.cssSelector(".page h1")).isEmpty());
        browser.devTools("Emulation.setEmulatedMedia", Map.of("media", "print"));
        for (String hidden : List.of(".top", ".questions", ".no-print")) {
          assertThat(
                  browser.driver().findElements(By.cssSelector(hidden)).stream()
                      .anyMatch(WebElement::isDisplayed))
              .as(hidden + " on paper")
              .isFalse();
        }
        browser.shot("print-" + page);
        for (double[] paper : new double[][] {{8.27, 11.69}, {8.5, 11}}) {
          Map<String, Object> pdf =
              browser.devTools(
                  "Page.printToPDF",
                  Map.of(
                      "paperWidth", paper[0], "paperHeight", paper[1], "preferCSSPageSize", true));
          browser.keep(
              "print-" + page + (paper[0] > 8.3 ? "-letter" : "-a4"), (String) pdf.get("data"));
        }
        browser.devTools("Emulation.setEmulatedMedia", Map.of("media", ""));
      }
    }
  }

  @Test
  void theJournalOfAPlantPrintsWholeWithoutItsForm() throws IOException {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.PHONE)) {
      String site = demo(browser);
      List<Journal.Change> changes = new ArrayList<>();
      for (int i = 1; i <= 15; i++) {
        Content content =
            new Content(
                "11111111-00" + (10 + i),
                LocalDate.of(2026, 3, i),
                JournalKind.NOTE,
                SubjectKind.PLANT,
                "A1",
                Optional.empty(),
                "leaf number <" + i + ">");
        changes.add(new Journal.Change(content, 0, false));
      }
      browser
          .store()
          .journal()
          .sync(
              site.substring("/site/".length()),
              changes,
              0,
              browser.store().accounts().local().author());
      browser.go(site + "/plant/A1");
      browser.seeText("leaf number <15>");
      assertThat(browser.text()).doesNotContain("leaf number <1>");
      String pdf = (String) browser.devTools("Page.printToPDF", Map.of()).get("data");
      browser.keep("print-journal", pdf);
      try (PDDocument document = Loader.loadPDF(Base64.getDecoder().decode(pdf))) {
        String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        assertThat(text).contains("leaf number <15>").contains("leaf number <1>");
        assertThat(text).doesNotContain("Write it down").doesNotContain("Show all");
      }
    }
  }

  @Test
  void paperIsWhiteInTheDarkThemeTooAndCautionsStandInFull() throws IOException {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      String site = demo(browser);
      browser.go(site + "/settings");
      browser.click(browser.find("input[name=theme][value=dark]"));
      browser.waitUntil(
          d -> "dark".equals(browser.script("return document.documentElement.dataset.theme;")));
      for (String page : List.of("today?date=2027-03-20", "plant/A1", "buy", "water", "plants")) {
        browser.go(site + "/" + page);
        List<?> cautions =
            (List<?>)
                browser.script(
                    "return [...document.querySelectorAll('.caution > p')].map(p =>"
                        + " p.textContent.trim().split(/\\s+/).slice(-3).join(' '));");
        String name = "print-dark-" + page.replaceAll("[/?=]", "-");
        String pdf =
            (String)
                browser.devTools("Page.printToPDF", Map.of("printBackground", true)).get("data");
        browser.keep(name, pdf);
        try (PDDocument document = Loader.loadPDF(Base64.getDecoder().decode(pdf))) {
          String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
          for (Object end : cautions) {
            assertThat(text).as(page).contains((String) end);
          }
          BufferedImage paper = new PDFRenderer(document).renderImageWithDPI(0, 30);
          assertThat(new Color(paper.getRGB(3, 3))).as(page).isEqualTo(Color.WHITE);
          assertThat(new Color(paper.getRGB(paper.getWidth() / 2, paper.getHeight() - 3)))
              .as(page)
              .isEqualTo(Color.WHITE);
        }
        if (page.startsWith("today")) {
          assertThat(cautions).hasSizeGreaterThan(3);
        }
        // The screen is as it was.
        assertThat(browser.script("return document.documentElement.dataset.theme;"))
            .isEqualTo("dark");
      }
      browser.checkQuiet();
    }
  }

  @Test
  void everythingOnAPlantsPageCanBeDoneByKeyboard() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      String site = demo(browser);
      browser.go(site + "/plants");
      browser.find(".plant-list a");
      tabTo(browser, "#plant-search");
      keys(browser, "a2");
      browser.waitUntil(
          d ->
              d.findElements(By.cssSelector(".plant-list a strong")).get(0).getText().equals("A2"));
      tabTo(browser, ".plant-list a");
      keys(browser, Keys.ENTER);
      browser.seeText("A2: Mandarin");
      tabTo(browser, ".journal-form select");
      keys(browser, "Note");
      tabTo(browser, ".journal-form textarea");
      keys(browser, "Leaf miner on two shoots");
      tabTo(browser, ".journal-form button[type=submit]");
      keys(browser, Keys.ENTER);
      browser.waitUntil(
          d ->
              d.findElements(By.cssSelector(".entry-note")).stream()
                  .anyMatch(e -> e.getText().equals("Leaf miner on two shoots")));
      tabTo(browser, ".facts button.worked");
      keys(browser, Keys.SPACE);
      browser.waitUntil(d -> !d.findElements(By.cssSelector("dialog .working-value")).isEmpty());
      keys(browser, Keys.ESCAPE);
      browser.waitUntil(d -> d.findElements(By.cssSelector("dialog")).isEmpty());
      browser.checkQuiet();
    }
  }

  private static void keys(BrowserSession browser, CharSequence... keys) {
    new Actions(browser.driver()).sendKeys(keys).perform();
  }

  /**
   * Presses the tabulator until a control of the selector has the keyboard; what has it is seen.
   */
  private static void tabTo(BrowserSession browser, String selector) {
    for (int i = 0; i < 300; i++) {
      keys(browser, Keys.TAB);
      if (Boolean.TRUE.equals(
          browser.script(
              "return document.activeElement.matches(arguments[0]) &&"
                  + " document.activeElement.matches(':focus-visible');",
              selector))) {
        return;
      }
    }
    throw new AssertionError("the keyboard does not reach " + selector);
  }
}
