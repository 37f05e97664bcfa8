package org.grovewright.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.grovewright.browser.MapTest.demo;
import static org.grovewright.browser.MapTest.description;
import static org.grovewright.browser.MapTest.heard;
import static org.grovewright.browser.MapTest.keys;
import static org.grovewright.browser.MapTest.openMap;
import static org.grovewright.browser.MapTest.pixel;
import static org.grovewright.browser.MapTest.tabTo;
import static org.grovewright.browser.MapTest.waitForVersion;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.grovewright.store.SiteState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.Select;

/** What hands do on the map: measure heights, drag with a finger, lay a photo, print. */
@Tag("browser")
class MapByHandTest {
  /** Where a place of the site lies in the window. */
  private static int[] inWindow(BrowserSession browser, double x, double y) {
    int[] fromMiddle = pixel(browser, x, y);
    Map<?, ?> box =
        (Map<?, ?>)
            browser.script(
                "const b = document.querySelector('.map-view').getBoundingClientRect();"
                    + " return {x: b.left + b.width / 2, y: b.top + b.height / 2};");
    return new int[] {
      (int) Math.round(((Number) box.get("x")).doubleValue() + fromMiddle[0]),
      (int) Math.round(((Number) box.get("y")).doubleValue() + fromMiddle[1])
    };
  }

  private static void click(BrowserSession browser, double x, double y) {
    int[] at = pixel(browser, x, y);
    new Actions(browser.driver())
        .moveToElement(browser.find(".map-view"), at[0], at[1])
        .click()
        .perform();
  }

  private static void drag(BrowserSession browser, double[] from, double[] to) {
    int[] a = pixel(browser, from[0], from[1]);
    int[] b = pixel(browser, to[0], to[1]);
    WebElement map = browser.find(".map-view");
    Actions actions = new Actions(browser.driver());
    actions.moveToElement(map, a[0], a[1]).clickAndHold();
    for (int i = 1; i <= 8; i++) {
      actions.moveToElement(map, a[0] + (b[0] - a[0]) * i / 8, a[1] + (b[1] - a[1]) * i / 8);
    }
    actions.release().perform();
  }

  /** The colour of the map at a place. */
  private static Color colourAt(BrowserSession browser, double x, double y) {
    int[] at = pixel(browser, x, y);
    WebElement map = browser.find(".map-view");
    try {
      BufferedImage shot =
          ImageIO.read(new ByteArrayInputStream(map.getScreenshotAs(OutputType.BYTES)));
      double scale = shot.getWidth() / (double) map.getSize().getWidth();
      return new Color(
          shot.getRGB(
              (int) (shot.getWidth() / 2.0 + at[0] * scale),
              (int) (shot.getHeight() / 2.0 + at[1] * scale)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void heightsOfTheGroundAreMeasuredMovedChangedAndTakenAway() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      SiteState site = demo(browser);
      openMap(browser, site);
      browser.click("Add other things");
      browser.click("Height of the ground");
      browser.find(".map-view.drawing");
      click(browser, 40, 16);
      browser.waitUntil(d -> !browser.field("Right").getDomProperty("value").isEmpty());
      keys(browser, "high", Keys.ENTER);
      browser.seeText("Give a number in m.");
      browser.checkAccessible();
      keys(browser, Keys.chord(Keys.CONTROL, "a"), "2.75", Keys.ENTER);
      waitForVersion(browser, site, 2);
      assertThat(description(browser, site))
          .containsPattern("at: \\[(39.9\\d?|40|40.0\\d?) m, (15.9\\d?|16|16.0\\d?) m\\]")
          .contains("height: 2.75 m");

      // The form stays for the next one, which is typed.
      browser.waitUntil(d -> browser.field("Right").getDomProperty("value").isEmpty());
      tabTo(browser, "Right");
      keys(browser, "10", Keys.TAB, "20", Keys.TAB, "3,05", Keys.ENTER);
      waitForVersion(browser, site, 3);
      assertThat(description(browser, site)).contains("{at: [10 m, 20 m], height: 3.05 m}");
      browser.click("Done");
      browser.shot("map-heights");

      // A finger on the map chooses one; a drag moves it.
      drag(browser, new double[] {26, 13}, new double[] {27, 15});
      waitForVersion(browser, site, 4);
      assertThat(description(browser, site)).doesNotContain("at: [26 m, 13 m]");
      heard(browser, "now stands at");
      browser.waitUntil(d -> browser.find(".map-panel h2").getText().equals("Height 5"));
      browser.waitUntil(d -> !browser.text().contains("being worked out"));
      browser.type("Height of the ground", "2.1");
      browser.click("Save");
      waitForVersion(browser, site, 5);
      assertThat(description(browser, site)).contains("height: 2.1 m}");

      // Keys move it, and take it away.
      tabTo(browser, "Map of the place");
      keys(browser, Keys.ARROW_UP, Keys.ENTER);
      waitForVersion(browser, site, 6);
      browser.checkAccessible();
      tabTo(browser, "Delete");
      keys(browser, Keys.ENTER);
      waitForVersion(browser, site, 7);
      assertThat(description(browser, site)).doesNotContain("height: 2.1 m}");
      browser.find("[data-tool=undo][aria-disabled=false]");
      browser.click("Undo");
      waitForVersion(browser, site, 8);
      assertThat(description(browser, site)).contains("height: 2.1 m}");
      browser.checkQuiet();
    }
  }

  @Test
  void whatWasMeasuredOfATreeIsTypedBesideItOnTheMap() {
    for (int width : new int[] {BrowserSession.DESKTOP, BrowserSession.PHONE}) {
      try (BrowserSession browser = BrowserSession.open(width)) {
        SiteState site = demo(browser);
        openMap(browser, site);
        click(browser, 27, 12);
        browser.waitUntil(d -> browser.find(".map-panel h2").getText().startsWith("A4"));
        browser.type("Measured height", "75");
        browser.type("Measured spread", "wide");
        date(browser, "2020-05-01");
        browser.click("Save");
        browser.seeText("Give a length from 0.02 m to 60 m.");
        browser.seeText("Give a number in m.");
        browser.seeText("That is before the day of planting.");
        browser.shot("map-measured-wrong");
        browser.checkAccessible();
        assertThat(browser.store().sites().get(site.id()).version()).isEqualTo(1);

        browser.type("Measured height", "1,9");
        browser.type("Measured spread", "2.2");
        date(browser, "2028-05-01");
        browser.click("Save");
        waitForVersion(browser, site, 2);
        assertThat(description(browser, site))
            .contains("measured_height: 1.9 m", "measured_spread: 2.2 m")
            .contains("measured_on: 2028-05-01");
        browser.waitUntil(d -> !browser.text().contains("being worked out"));
        openMap(browser, site);
        click(browser, 27, 12);
        browser.waitUntil(
            d -> browser.field("Measured spread").getDomProperty("value").equals("2.2"));
        browser.shot("map-measured");

        browser.type("Measured height", "");
        browser.type("Measured spread", "");
        browser.click("Save");
        browser.seeText("Give the height or the spread that was measured on that day, or no day.");
        date(browser, "");
        browser.click("Save");
        waitForVersion(browser, site, 3);
        assertThat(description(browser, site)).doesNotContain("measured_");
        browser.checkQuiet();
      }
    }
  }

  private static void date(BrowserSession browser, String day) {
    browser.script("arguments[0].value = arguments[1];", browser.field("Measured on"), day);
  }

  @Test
  void aFingerDragsATreeThatItHasChosenAndOtherwiseTheMap() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.PHONE)) {
      SiteState site = demo(browser);
      openMap(browser, site);
      browser.script("document.querySelector('.map-stage').scrollIntoView();");
      String before = browser.find(".map-view[data-view]").getDomAttribute("data-view");
      swipe(browser, inWindow(browser, 27, 12), inWindow(browser, 33, 16));
      browser.waitUntil(
          d -> !browser.find(".map-view[data-view]").getDomAttribute("data-view").equals(before));
      assertThat(browser.store().sites().get(site.id()).version())
          .as("a finger on a tree that was not chosen moves the map, not the tree")
          .isEqualTo(1);

      int[] tree = inWindow(browser, 27, 12);
      touch(browser, "touchStart", tree);
      touch(browser, "touchEnd", null);
      heard(browser, "A4 Feijoa is chosen.");
      swipe(browser, inWindow(browser, 27, 12), inWindow(browser, 30, 12));
      waitForVersion(browser, site, 2);
      assertThat(description(browser, site)).containsPattern("species: feijoa, at: 2[56][.\\d]* m");
      browser.shot("map-touch");
      browser.checkQuiet();
    }
  }

  private static void swipe(BrowserSession browser, int[] from, int[] to) {
    touch(browser, "touchStart", from);
    for (int i = 1; i <= 10; i++) {
      touch(
          browser,
          "touchMove",
          new int[] {from[0] + (to[0] - from[0]) * i / 10, from[1] + (to[1] - from[1]) * i / 10});
    }
    touch(browser, "touchEnd", null);
  }

  private static void touch(BrowserSession browser, String type, int[] at) {
    List<Map<String, Object>> fingers =
        at == null ? List.of() : List.of(Map.of("x", at[0], "y", at[1]));
    browser.devTools("Input.dispatchTouchEvent", Map.of("type", type, "touchPoints", fingers));
  }

  @Test
  void crownsFollowTheYearAndThingsSnapToTenths() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      SiteState site = demo(browser);
      openMap(browser, site);
      browser.click("Show");
      browser.click(browser.field("Names of plants"));
      WebElement year = browser.find("#map-year");
      year.sendKeys(Keys.HOME);
      browser.waitUntil(d -> browser.text().contains("at planting (2027)"));
      // The second avocado stands at 41, 12 and grows to 5 m across.
      Color bare = colourAt(browser, 42.4, 13.1);
      year.sendKeys(Keys.END);
      browser.waitUntil(d -> browser.text().contains("full-grown"));
      Color crown = colourAt(browser, 42.4, 13.1);
      assertThat(crown).isNotEqualTo(bare);
      assertThat(crown.getGreen()).isGreaterThan(crown.getRed());

      drag(browser, new double[] {13.5, 6.5}, new double[] {14.53, 8.17});
      waitForVersion(browser, site, 2);
      assertThat(description(browser, site))
          .containsPattern("kind: house tap\\s+at: \\[14\\.[456] m, 8(\\.[123])? m\\]");
      browser.checkQuiet();
    }
  }

  @Test
  void aPhotoIsScaledByTwoPointsThatAreClickedOnIt() throws IOException {
    Path file = Files.createTempFile("halves", ".png");
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      openMap(browser, demo(browser));
      ImageIO.write(halves(), "png", file.toFile());
      browser.click("Photo");
      browser.field("Picture").sendKeys(file.toString());
      browser.seeText("Find two points on the photo");
      WebElement picture = browser.find("canvas.photo-picture");
      browser.script("arguments[0].scrollIntoView({block: 'center'});", picture);
      // The middle of the picture is where the colours meet; its right edge lies 300 dots beyond.
      int wide = picture.getSize().getWidth();
      browser.click("Click point 1");
      browser.script("arguments[0].scrollIntoView({block: 'center'});", picture);
      new Actions(browser.driver()).moveToElement(picture, 0, 0).click().perform();
      new Actions(browser.driver()).moveToElement(picture, wide * 3 / 8, 0).click().perform();
      List<WebElement> fields =
          browser.driver().findElements(By.cssSelector(".map-panel fieldset input"));
      String[] places = {"26", "13.5", "46", "13.5"};
      int[] at = {2, 3, 6, 7};
      for (int i = 0; i < at.length; i++) {
        browser.click(fields.get(at[i]));
        fields.get(at[i]).sendKeys(Keys.chord(Keys.CONTROL, "a"), places[i]);
      }
      browser.click("Lay it under the map");
      heard(browser, "The photo lies under the map.");
      browser.shot("map-photo-halves");
      // The picture now spans 26 - 26.7 m to 26 + 26.7 m; left of the middle it is blue.
      for (double x : new double[] {15.2, 24.2}) {
        Color left = colourAt(browser, x, 16.3);
        assertThat(left.getBlue()).as("blue at " + x).isGreaterThan(left.getRed() + 20);
      }
      for (double x : new double[] {27.7, 43.2}) {
        Color right = colourAt(browser, x, 16.3);
        assertThat(right.getRed()).as("red at " + x).isGreaterThan(right.getBlue() + 20);
      }
      browser.checkQuiet();
    } finally {
      Files.delete(file);
    }
  }

  /** A picture of 800 by 500 dots, blue to the left and red to the right. */
  private static BufferedImage halves() {
    BufferedImage picture = new BufferedImage(800, 500, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = picture.createGraphics();
    pen.setColor(Color.BLUE);
    pen.fillRect(0, 0, 400, 500);
    pen.setColor(Color.RED);
    pen.fillRect(400, 0, 400, 500);
    pen.dispose();
    return picture;
  }

  @Test
  void aLineThatLiesAlreadyIsDrawnKeptAndLeftToTheProgramAgain() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      SiteState site = demo(browser);
      openMap(browser, site);
      browser.click("Add other things");
      browser.click("Line of tubing along a row");
      browser.checkAccessible();
      tabTo(browser, "Line of row A");
      keys(browser, Keys.ENTER);
      browser.seeText("Proposed by the program");
      new Select(browser.field("How it runs")).selectByVisibleText("one line");
      browser.click(browser.field("It lies there already"));
      browser.click("Keep it like this");
      browser.seeText("Say which tubing lies there");
      browser.checkAccessible();
      browser.shot("map-line-form");
      new Select(browser.field("Tubing")).selectByIndex(1);
      browser.click("Draw its way");
      MapTest.draw(browser, new double[][] {{3.5, 12.6}, {43, 12.6}});
      waitForVersion(browser, site, 2);
      assertThat(description(browser, site))
          .containsPattern(
              "laterals:\\s+(- |\\[)\\{row: A, run: dead end, tubing: pipe[^,]+, laid: true, route:"
                  + " \\[\\[3\\.[456]");
      browser.seeText("Kept as you want it");
      browser.waitUntil(d -> !browser.text().contains("being worked out"));
      browser.shot("map-line-laid");

      // Its far end is taken with the mouse and laid elsewhere.
      drag(browser, new double[] {43, 12.6}, new double[] {45, 13.5});
      waitForVersion(browser, site, 3);
      assertThat(description(browser, site))
          .containsPattern("\\[4[45][.\\d]* m, 13[.\\d]* m\\]\\]");

      // Keys alone: another run and way for it, then the program's own again.
      heard(browser, "Moved Line of row A. Saved.");
      browser.waitUntil(d -> !browser.text().contains("being worked out"));
      browser.find("[data-tool=undo][aria-disabled=false]");
      tabTo(browser, "Its way");
      keys(browser, Keys.chord(Keys.CONTROL, "a"), "3; 11.5\n42; 11.5\n42; 12.5\n3; 12.5");
      new Select(browser.field("How it runs")).selectByVisibleText("loop");
      tabTo(browser, "Save");
      keys(browser, Keys.ENTER);
      waitForVersion(browser, site, 4);
      assertThat(description(browser, site)).contains("run: loop", "[42 m, 12.5 m]");
      browser.waitUntil(d -> browser.text().contains("80 m long"));
      browser.shot("map-line-loop");
      tabTo(browser, "Leave it to the program");
      keys(browser, Keys.ENTER);
      waitForVersion(browser, site, 5);
      assertThat(description(browser, site)).doesNotContain("laterals:");
      browser.seeText("Proposed by the program");
      browser.waitUntil(d -> !browser.text().contains("being worked out"));

      // The main pipe is chosen among the pipes.
      browser.click("All things");
      tabTo(browser, "Way of the main pipe");
      keys(browser, Keys.ENTER);
      new Select(browser.field("Pipe")).selectByIndex(2);
      browser.checkAccessible();
      browser.click("Save");
      waitForVersion(browser, site, 6);
      assertThat(description(browser, site)).containsPattern("(?s)main:.{0,80}pipe: pipe\\.");

      // It lies there already, as far as its last point. Until the answer is there the form is
      // drawn
      // anew.
      browser.find(".map-panel h2:focus");
      browser.waitUntil(d -> !browser.text().contains("being worked out"));
      browser.click(browser.field("It lies there already"));
      new Select(browser.field("Pipe")).selectByIndex(0);
      browser.click("Save");
      browser.seeText("Choose which pipe lies there.");
      browser.checkAccessible();
      new Select(browser.field("Pipe")).selectByIndex(2);
      browser.click("Save");
      waitForVersion(browser, site, 7);
      assertThat(description(browser, site))
          .containsPattern("(?s)main:.{0,200}pipe: pipe\\..{0,50}laid: true");
      browser.waitUntil(d -> !browser.text().contains("being worked out"));
      browser.shot("map-main-laid");
      browser.checkQuiet();
    }
  }

  @Test
  void aBuriedServiceIsDrawnWithWhatItCarriesAndItsDepth() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      SiteState site = demo(browser);
      openMap(browser, site);
      browser.click("Add other things");
      browser.click("Buried pipe or cable");
      new Select(browser.field("Carries")).selectByVisibleText("Gas");
      browser.type("Depth of its top", "deep");
      MapTest.draw(browser, new double[][] {{30, 1}, {30, 8}});
      browser.seeText("Give a number in m.");
      browser.checkAccessible();
      browser.type("Depth of its top", "0.6");
      MapTest.draw(browser, new double[][] {{30, 1}, {30, 8}});
      waitForVersion(browser, site, 2);
      assertThat(description(browser, site))
          .containsPattern("kind: buried service, line: [^}]+service: gas, depth: 0\\.6 m");
      browser.waitUntil(d -> browser.find(".map-panel h2").getText().equals("buried line"));
      browser.waitUntil(d -> !browser.text().contains("being worked out"));
      new Select(browser.field("Carries")).selectByVisibleText("Water");
      browser.click("Save");
      waitForVersion(browser, site, 3);
      assertThat(description(browser, site)).contains("service: water");
      browser.shot("map-service");

      // The trench is listed by parts, and seen on the map while it is looked at.
      browser.click("All things");
      browser.waitUntil(d -> !browser.text().contains("being worked out"));
      byte[] bare = browser.find(".map-view").getScreenshotAs(OutputType.BYTES);
      WebElement trench =
          browser.waitUntil(
              d ->
                  d.findElements(By.cssSelector(".map-panel summary")).stream()
                      .filter(one -> one.getText().startsWith("Trench of the mains"))
                      .findFirst()
                      .orElse(null));
      browser.click(trench);
      browser.seeText("deep");
      assertThat(browser.driver().findElements(By.cssSelector(".map-trench > li"))).isNotEmpty();
      assertThat(browser.find(".map-view").getScreenshotAs(OutputType.BYTES)).isNotEqualTo(bare);
      browser.checkAccessible();
      browser.shot("map-trench");
      browser.checkQuiet();
    }
  }

  @Test
  void theFormsOfPipesHeightsAndTrenchAreAccessibleOnAPhoneInBothThemes() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.PHONE)) {
      openMap(browser, demo(browser));
      browser.click(browser.find("[data-tool=add]"));
      browser.click("Height of the ground");
      inBothThemes(browser, "map-height-form");
      browser.click("Done");
      browser.click(browser.find("[data-tool=add]"));
      browser.click("Line of tubing along a row");
      tabTo(browser, "Line of row A");
      keys(browser, Keys.ENTER);
      browser.seeText("Proposed by the program");
      inBothThemes(browser, "map-line");
      browser.click("All things");
      WebElement trench =
          browser.waitUntil(
              d ->
                  d.findElements(By.cssSelector(".map-panel summary")).stream()
                      .filter(one -> one.getText().startsWith("Trench of the mains"))
                      .findFirst()
                      .orElse(null));
      browser.click(trench);
      browser.seeText("Part 1:");
      inBothThemes(browser, "map-trench");
      browser.checkQuiet();
    }
  }

  private static void inBothThemes(BrowserSession browser, String name) {
    for (String theme : List.of("light", "dark")) {
      browser.theme(theme);
      browser.checkAccessible();
      browser.shot(name + "-" + theme);
    }
  }

  @Test
  void theMapIsPrintedToAScaleWithABarAndAnArrowToTheNorth() throws IOException {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      SiteState site = demo(browser);
      openMap(browser, site);
      browser.theme("dark");
      assertThat(browser.button("Print").isDisplayed()).isTrue();
      for (double[] paper : new double[][] {{8.27, 11.69}, {8.5, 11}}) {
        Map<String, Object> pdf =
            browser.devTools(
                "Page.printToPDF",
                Map.of(
                    "paperWidth",
                    paper[0],
                    "paperHeight",
                    paper[1],
                    "printBackground",
                    true,
                    "preferCSSPageSize",
                    true));
        String data = (String) pdf.get("data");
        browser.keep("print-map" + (paper[0] > 8.3 ? "-letter" : "-a4"), data);
        try (PDDocument document = Loader.loadPDF(Base64.getDecoder().decode(data))) {
          assertThat(document.getNumberOfPages()).isEqualTo(1);
          assertThat(new PDFTextStripper().getText(document).replace('\u00a0', ' '))
              .contains("Wattlefall Terrace", "Scale 1:250", "2.5 m on the ground", "20 m");
          // Ten dots to a millimetre.
          BufferedImage page = new PDFRenderer(document).renderImageWithDPI(0, 254);
          int[] edges = edgesOf(page, new Color(0x5d, 0x5a, 0x45));
          // 52 m at 1:250 are 208 mm; the outline's own width may add some tenths.
          assertThat((edges[1] - edges[0]) / 10.0)
              .as("the land on paper, mm")
              .isBetween(207.0, 210.0);
        }
      }
      assertThat(browser.driver().findElements(By.cssSelector(".map-print"))).isEmpty();
      browser.shot("map-after-print");
      browser.checkQuiet();
    }
  }

  /** Least and greatest column in which a colour stands thick. */
  private static int[] edgesOf(BufferedImage page, Color wanted) {
    int least = Integer.MAX_VALUE;
    int most = -1;
    for (int x = 0; x < page.getWidth(); x++) {
      int dots = 0;
      for (int y = 0; y < page.getHeight(); y++) {
        Color dot = new Color(page.getRGB(x, y));
        boolean near =
            Math.abs(dot.getRed() - wanted.getRed()) < 14
                && Math.abs(dot.getGreen() - wanted.getGreen()) < 14
                && Math.abs(dot.getBlue() - wanted.getBlue()) < 14;
        dots += near ? 1 : 0;
      }
      if (dots > page.getHeight() / 3) {
        least = Math.min(least, x);
        most = Math.max(most, x);
      }
    }
    return new int[] {least, most};
  }

  @Test
  void theLabelsOfThePlantsAreReachedFromThePlantsAndPrinted() throws IOException {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      SiteState site = demo(browser);
      browser.go("/site/" + site.id() + "/plants");
      browser.click("Print plant labels");
      browser.waitUntil(d -> d.findElements(By.cssSelector(".label-card")).size() == 12);
      browser.checkAccessible();
      Map<String, Object> pdf =
          browser.devTools("Page.printToPDF", Map.of("paperWidth", 8.27, "paperHeight", 11.69));
      byte[] bytes = Base64.getDecoder().decode((String) pdf.get("data"));
      try (PDDocument document = Loader.loadPDF(bytes)) {
        assertThat(new PDFTextStripper().getText(document)).contains("A1", "B6", "Avocado");
        BufferedImage page = new PDFRenderer(document).renderImageWithDPI(0, 150);
        int dark = 0;
        for (int y = 0; y < page.getHeight(); y++) {
          for (int x = 0; x < page.getWidth(); x++) {
            dark += (page.getRGB(x, y) & 0xff) < 80 ? 1 : 0;
          }
        }
        assertThat(dark / (double) (page.getWidth() * page.getHeight()))
            .as("share of the page under ink")
            .isGreaterThan(0.02);
      }
      browser.checkQuiet();
    }
  }
}
