package org.grovewright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.grovewright.store.Author;
import org.grovewright.store.NewEdit;
import org.grovewright.store.SiteState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/** The map, by hand and by keys. */
@Tag("browser")
class MapTest {
  private static final Author OWNER = new Author("local", "Test");

  static SiteState demo(BrowserSession browser) {
    return browser.store().sites().create("Wattlefall Terrace", demoText(), OWNER);
  }

  private static String demoText() {
    try (InputStream in =
        MapTest.class.getResourceAsStream("/org/grovewright/examples/demo.yaml")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static void openMap(BrowserSession browser, SiteState site) {
    browser.go("/site/" + site.id() + "/map");
    browser.find("[data-figure=cost]");
  }

  static String description(BrowserSession browser, SiteState site) {
    return browser.store().sites().get(site.id()).description();
  }

  static void waitForVersion(BrowserSession browser, SiteState site, long version) {
    browser.waitUntil(d -> browser.store().sites().get(site.id()).version() >= version);
  }

  /** Where a place of the site lies, in pixels from the middle of the map. */
  static int[] pixel(BrowserSession browser, double x, double y) {
    String[] view = browser.find(".map-view[data-view]").getDomAttribute("data-view").split(" ");
    double resolution = Double.parseDouble(view[2]);
    return new int[] {
      (int) Math.round((x - Double.parseDouble(view[0])) / resolution),
      (int) Math.round((Double.parseDouble(view[1]) - y) / resolution)
    };
  }

  @Test
  void theMapIsDrawnAndAccessibleAtBothWidthsInBothThemes() {
    for (int width : new int[] {BrowserSession.DESKTOP, BrowserSession.PHONE}) {
      try (BrowserSession browser = BrowserSession.open(width)) {
        openMap(browser, demo(browser));
        for (String theme : List.of("light", "dark")) {
          browser.theme(theme);
          browser.shot("map-" + theme);
          browser.checkAccessible();
        }
        browser.checkQuiet();
      }
    }
  }

  @Test
  void aDraggedTreeShowsItsFiguresAtOnceAndIsSavedWhenItIsDropped() throws IOException {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      SiteState site = fifty(browser);
      openMap(browser, site);
      int[] from = pixel(browser, 9, 12);
      int[] to = pixel(browser, 14.5, 12);
      WebElement map = browser.find(".map-view");
      Actions drag = new Actions(browser.driver());
      drag.moveToElement(map, from[0], from[1]).clickAndHold();
      int steps = 40;
      for (int i = 1; i <= steps; i++) {
        drag.moveToElement(
            map, from[0] + (to[0] - from[0]) * i / steps, from[1] + (to[1] - from[1]) * i / steps);
      }
      drag.perform();
      browser.waitUntil(d -> browser.find("[data-figure=spacing]").getText().contains("too close"));
      // What the move costs is known before the tree is let go.
      browser.find(".map-figures[data-costs] [data-figure=cost]");
      browser.shot("map-drag");
      WebElement figures = browser.find(".map-figures");
      String measured =
          "a tree of 50 dragged: "
              + figures.getDomAttribute("data-waited")
              + " ms from the question to the new figures in the browser, of which "
              + figures.getDomAttribute("data-server")
              + " ms of figures on the server, after "
              + figures.getDomAttribute("data-count")
              + " questions; all waits, ms: "
              + figures.getDomAttribute("data-waits")
              + "; waits for the cost, ms: "
              + figures.getDomAttribute("data-costs");
      Path shown = Path.of("target", "screenshots", "drag-measured.txt");
      Files.writeString(shown, measured + "\n");
      assertThat(figures.getDomAttribute("data-count")).isNotEqualTo("0");
      new Actions(browser.driver()).release().perform();
      waitForVersion(browser, site, 2);
      assertThat(description(browser, site)).isNotEqualTo(site.description());
      browser.find("[data-tool=undo][aria-disabled=false]");
      browser.click("Undo");
      waitForVersion(browser, site, 3);
      assertThat(description(browser, site)).isEqualTo(site.description());
      browser.find("[data-tool=redo][aria-disabled=false]");
      new Actions(browser.driver())
          .keyDown(Keys.CONTROL)
          .keyDown(Keys.SHIFT)
          .sendKeys("z")
          .keyUp(Keys.SHIFT)
          .keyUp(Keys.CONTROL)
          .perform();
      waitForVersion(browser, site, 4);
      assertThat(description(browser, site)).isNotEqualTo(site.description());
      browser.checkQuiet();
    }
  }

  /** The demonstration with fifty plants and no companions. */
  private static SiteState fifty(BrowserSession browser) {
    StringBuilder rows = new StringBuilder("rows:\n");
    for (int row = 0; row < 5; row++) {
      rows.append("  - id: ").append((char) ('A' + row)).append('\n');
      rows.append("    from: [4 m, ").append(8 + 4 * row).append(" m]\n");
      rows.append("    to: [49 m, ").append(8 + 4 * row).append(" m]\n");
      rows.append("    planted: 2027-03-20\n    container: 10 L\n    plants:\n");
      for (int plant = 0; plant < 10; plant++) {
        rows.append("      - {species: pomegranate, kept_spread: 3 m, kept_height: 3 m, at: ");
        rows.append(4.5 * plant).append(plant == 1 ? "" : "").append(" m}\n");
      }
    }
    String text = demoText();
    String land = text.substring(0, text.indexOf("rows:\n"));
    String rest = text.substring(text.indexOf("watering:\n"));
    String all = land + rows.toString().replace("at: 4.5 m", "at: 5 m") + "\n" + rest;
    return browser.store().sites().create("Fifty", all, OWNER);
  }

  @Test
  void everythingCanBeDoneByKeysAlone() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      SiteState site = demo(browser);
      openMap(browser, site);

      // Choose a tree in the list, go to the map, move it with the arrows.
      tabTo(browser, "A3 Lemon");
      keys(browser, Keys.ENTER);
      heard(browser, "A3 Lemon is chosen.");
      browser.checkAccessible();
      browser.shot("map-plant-chosen");
      tabTo(browser, "Map of the place");
      keys(browser, Keys.ARROW_RIGHT, Keys.ARROW_RIGHT);
      heard(browser, "Water at the peak");
      waitForVersion(browser, site, 2);
      assertThat(description(browser, site)).contains("at: 17.5 m");
      heard(browser, "now stands at");

      // Take it back.
      browser.waitUntil(d -> !browser.text().contains("being worked out"));
      keys(browser, Keys.chord(Keys.CONTROL, "z"));
      waitForVersion(browser, site, 3);
      assertThat(description(browser, site)).isEqualTo(site.description());

      // Delete it through its form.
      tabTo(browser, "Delete");
      keys(browser, Keys.ENTER);
      waitForVersion(browser, site, 4);
      assertThat(description(browser, site)).doesNotContain("species: lemon,");

      // Add a building through its form.
      tabTo(browser, "Add other things");
      keys(browser, Keys.ENTER);
      tabTo(browser, "Building");
      keys(browser, Keys.ENTER);
      tabTo(browser, "Right");
      keys(browser, "40", Keys.TAB, "2", Keys.TAB, "5", Keys.TAB, "three", Keys.ENTER);
      browser.seeText("Give a number in m.");
      browser.shot("map-building-form");
      browser.checkAccessible();
      keys(browser, Keys.chord(Keys.CONTROL, "a"), "3", Keys.ENTER);
      waitForVersion(browser, site, 5);
      assertThat(description(browser, site)).contains("[[40 m, 2 m], [45 m, 2 m], [45 m, 5 m]");

      // Add a plant through its form.
      tabTo(browser, "Add plants");
      keys(browser, Keys.ENTER);
      tabTo(browser, "Plant");
      keys(browser, "Quince");
      tabTo(browser, "Right");
      keys(browser, "46", Keys.TAB, "9", Keys.ENTER);
      waitForVersion(browser, site, 6);
      assertThat(description(browser, site)).contains("species: quince");
      heard(browser, "was chosen", "is chosen", "was added");

      // Change the outline and the year, measure, and leave a row.
      tabTo(browser, "Crowns");
      keys(browser, Keys.END);
      assertThat(browser.find("#map-year").getDomAttribute("aria-valuetext"))
          .isEqualTo("full-grown");
      browser.waitUntil(d -> !browser.text().contains("being worked out"));
      browser.shot("map-full-grown");
      browser.checkQuiet();
    }
  }

  @Test
  void whatIsOpenedWhileASaveIsUnderWayStaysOpen() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      SiteState site = demo(browser);
      openMap(browser, site);
      browser.script(
          "const send = window.fetch; window.fetch = async (to, how) => {"
              + " const answer = await send(to, how);"
              + " if (String(to).includes('/edits')) { await new Promise((ready) => {"
              + " window.letItArrive = ready; }); }"
              + " return answer; };");
      tabTo(browser, "A3 Lemon");
      keys(browser, Keys.ENTER);
      tabTo(browser, "Delete");
      keys(browser, Keys.ENTER);
      waitForVersion(browser, site, 2);
      tabTo(browser, "Add other things");
      keys(browser, Keys.ENTER);
      tabTo(browser, "Building");
      keys(browser, Keys.ENTER);
      tabTo(browser, "Right");
      keys(browser, "40");
      browser.waitUntil(d -> browser.script("return Boolean(window.letItArrive)").equals(true));
      browser.script("window.letItArrive()");
      heard(browser, "Saved");
      assertThat(browser.script("return document.activeElement.value")).isEqualTo("40");
    }
  }

  static void keys(BrowserSession browser, CharSequence... keys) {
    for (CharSequence one : keys) {
      if (one.toString().contains(Keys.NULL) && one.length() > 1) {
        browser.driver().switchTo().activeElement().sendKeys(one);
      } else {
        new Actions(browser.driver()).sendKeys(one).perform();
      }
    }
  }

  /** Presses the tabulator until what has the focus is called so. */
  static void tabTo(BrowserSession browser, String name) {
    for (int i = 0; i < 200; i++) {
      String focused =
          (String)
              browser.script(
                  "const e = document.activeElement; return (e.getAttribute('aria-label') ??"
                      + " (e.labels && e.labels.length ? e.labels[0].textContent : e.textContent))"
                      + ".trim();");
      if (focused != null && focused.startsWith(name) && focused.length() < name.length() + 140) {
        return;
      }
      new Actions(browser.driver()).sendKeys(Keys.TAB).perform();
    }
    throw new AssertionError("No '" + name + "' can be reached with the tabulator.");
  }

  static void heard(BrowserSession browser, String... anyOf) {
    browser.waitUntil(
        d -> {
          String said =
              d.findElement(By.cssSelector("#app > [role=status]")).getDomProperty("textContent");
          return List.of(anyOf).stream().anyMatch(said::contains);
        });
  }

  @Test
  void whoSavesOnAStaleTabIsToldAndMayMakeTheChangeAgain() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      SiteState site = demo(browser);
      openMap(browser, site);
      String other = site.description().replace("depth: 0.9 m", "depth: 0.8 m");
      browser
          .store()
          .sites()
          .edit(
              site.id(),
              site.version(),
              new NewEdit(Optional.empty(), "Other tab", "{}", site.name(), other),
              OWNER);
      browser.click("A3 Lemon");
      browser.click("Move right");
      browser.seeText("This place was changed meanwhile");
      browser.shot("map-stale");
      browser.checkAccessible();
      browser.click("Show the newest and make my change again");
      waitForVersion(browser, site, 3);
      assertThat(description(browser, site)).contains("depth: 0.8 m", "at: 17 m");
      browser.checkQuiet();
    }
  }

  @Test
  void rowsAndPathsAreDrawnByHandAndADistanceIsMeasured() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      SiteState site = demo(browser);
      openMap(browser, site);

      browser.click("Add other things");
      browser.click("Path or paving");
      draw(browser, new double[][] {{24, 2}, {28, 2}, {28, 5}, {24, 5}});
      waitForVersion(browser, site, 2);
      assertThat(description(browser, site)).containsPattern("kind: paving, area: \\[\\[2[34]");
      browser.waitUntil(d -> browser.find(".map-panel h2").getText().equals("path"));

      browser.click("All things");
      browser.click("Add other things");
      browser.click("Add a row");
      draw(browser, new double[][] {{30, 7}, {47, 7}});
      waitForVersion(browser, site, 3);
      assertThat(description(browser, site)).containsPattern("id: C, from: \\[(29|30)");
      browser.waitUntil(d -> browser.find(".map-panel h2").getText().equals("Row C"));

      browser.click("All things");
      browser.click("Measure");
      draw(browser, new double[][] {{30, 24}, {40, 24}});
      browser.waitUntil(
          d -> browser.text().matches("(?s).*The line is (9\\.9\\d?|10|10\\.0\\d?).m long.*"));
      browser.shot("map-measure");
      browser.checkAccessible();
      browser.checkQuiet();
    }
  }

  static void draw(BrowserSession browser, double[][] points) {
    browser.find(".map-view.drawing");
    WebElement map = browser.find(".map-view");
    Actions actions = new Actions(browser.driver());
    for (int i = 0; i < points.length; i++) {
      int[] at = pixel(browser, points[i][0], points[i][1]);
      actions.moveToElement(map, at[0], at[1]);
      if (i < points.length - 1) {
        // Two clicks that follow each other too fast would be taken for the last one.
        actions.click().pause(java.time.Duration.ofMillis(400));
      } else {
        actions.click().click();
      }
    }
    actions.perform();
  }

  @Test
  void aPhotoIsLaidUnderTheMapByTwoPointsAndIsSentNowhere() throws IOException {
    Path file = Files.createTempFile("photo", ".png");
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      SiteState site = demo(browser);
      openMap(browser, site);
      ImageIO.write(picture(), "png", file.toFile());
      browser.click("Photo");
      browser.field("Picture").sendKeys(file.toString());
      browser.seeText("Find two points on the photo");
      browser.script(
          "window.sent = []; const send = window.fetch; window.fetch = (to, how) => {"
              + " window.sent.push(typeof how?.body === 'string' ? how.body.length :"
              + " how?.body ? 1e9 : 0); return send(to, how); };");
      List<WebElement> fields =
          browser.driver().findElements(By.cssSelector(".map-panel fieldset input"));
      String[] values = {"10", "90", "0", "0", "90", "10", "52", "27"};
      for (int i = 0; i < values.length; i++) {
        browser.click(fields.get(i));
        fields.get(i).sendKeys(Keys.chord(Keys.CONTROL, "a"), values[i]);
      }
      browser.shot("map-photo-form");
      browser.checkAccessible();
      browser.click("Lay it under the map");
      heard(browser, "The photo lies under the map.");
      browser.shot("map-photo");
      assertThat((Number) browser.script("return Math.max(0, ...window.sent);"))
          .as("characters of the longest message that was sent")
          .satisfies(longest -> assertThat(longest.intValue()).isLessThan(1000));
      openMap(browser, site);
      browser.click("Show");
      browser.field("Photo");
      // So the files that the server makes are without it, and the page that offers them says so.
      browser.go("/site/" + site.id() + "/settings");
      browser.seeText("The photo under your map is in none of these files");
      browser.atBothWidths(
          () -> {
            browser.script("document.querySelector('.exports').scrollIntoView();");
            browser.shot("photo-exports");
            browser.checkAccessible();
          });
      browser.checkQuiet();
    } finally {
      Files.delete(file);
    }
  }

  private static BufferedImage picture() {
    BufferedImage picture = new BufferedImage(800, 500, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = picture.createGraphics();
    pen.setColor(new Color(120, 140, 90));
    pen.fillRect(0, 0, 800, 500);
    pen.setColor(new Color(190, 180, 140));
    for (int x = 0; x < 800; x += 60) {
      pen.fillRect(x, 0, 24, 500);
    }
    pen.dispose();
    return picture;
  }

  @Test
  void whatCannotStandIsRefusedWithItsReasonAndNothingIsLost() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.PHONE)) {
      SiteState site = demo(browser);
      openMap(browser, site);
      browser.click("Add plants");
      browser.type("Right", "200");
      browser.type("Up", "5");
      browser.click("Add it here");
      browser.seeText("Choose what to plant first.");
      new org.openqa.selenium.support.ui.Select(browser.field("Plant")).selectByVisibleText("Fig");
      browser.click("Add it here");
      browser.seeText("stands outside the land.");
      assertThat(browser.field("Right").getDomProperty("value")).isEqualTo("200");
      browser.shot("map-refused");
      browser.checkAccessible();
      assertThat(browser.store().sites().get(site.id()).version()).isEqualTo(1);
    }
  }

  @Test
  void everythingIsThereInSpanishToo() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP, "es")) {
      browser.go("/start");
      browser.seeText("¿Dónde está su terreno?");
      browser.shot("start-es");
      openMap(browser, demo(browser));
      browser.seeText("Elementos del mapa");
      browser.shot("map-es");
      List<String> untranslated = new ArrayList<>();
      for (String line : browser.text().split("\n")) {
        if (line.matches("(map|start|shell)\\.[a-zA-Z.-]+")) {
          untranslated.add(line);
        }
      }
      assertThat(untranslated).isEmpty();
      browser.checkAccessible();
    }
  }
}
