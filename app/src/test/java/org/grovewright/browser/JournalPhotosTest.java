package org.grovewright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.grovewright.store.Author;
import org.grovewright.store.Journal;
import org.grovewright.store.JournalEntry;
import org.grovewright.store.JournalEntry.Content;
import org.grovewright.store.JournalEntry.SubjectKind;
import org.grovewright.store.JournalKind;
import org.grovewright.store.PhotoType;
import org.grovewright.store.Photos;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;

/** Photos in the journal, with and without the server. */
@Tag("browser")
class JournalPhotosTest {
  @TempDir Path folder;

  /** A picture as large as those of phones, upright; half of it is of a colour. */
  private Path picture(String name, Color colour) throws IOException {
    BufferedImage image = new BufferedImage(2400, 3200, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = image.createGraphics();
    pen.setColor(colour);
    pen.fillRect(0, 0, 2400, 1600);
    pen.setColor(new Color(90, 60, 30));
    pen.fillRect(0, 1600, 2400, 1600);
    pen.dispose();
    Path file = folder.resolve(name);
    ImageIO.write(image, "png", file.toFile());
    return file;
  }

  private static void choose(BrowserSession browser, Path file) {
    browser
        .waitUntil(d -> d.findElement(By.cssSelector(".photo-field input[type=file]")))
        .sendKeys(file.toAbsolutePath().toString());
  }

  private static void note(BrowserSession browser, String words) {
    new Select(browser.find(".journal-form select")).selectByValue("note");
    browser.type("In words", words);
  }

  private static List<JournalEntry> entries(BrowserSession browser, String site) {
    return browser.store().journal().list(site.substring("/site/".length()));
  }

  private static Optional<Photos.Kept> photo(BrowserSession browser, String site) {
    String id = site.substring("/site/".length());
    return entries(browser, site).stream()
        .findFirst()
        .flatMap(entry -> browser.store().photos().find(id, entry.content().id()));
  }

  /** The address of the photo under an entry, once it is drawn. */
  private static String drawn(BrowserSession browser, String begin) {
    return browser.waitUntil(
        d -> {
          WebElement image = browser.find(".entry-photo img");
          browser.script("arguments[0].scrollIntoView({block: 'center'});", image);
          String source = image.getDomProperty("src");
          boolean there =
              Boolean.TRUE.equals(
                  browser.script(
                      "return arguments[0].complete && arguments[0].naturalWidth > 0;", image));
          return there && source.startsWith(begin) ? source : null;
        });
  }

  private static int red(Photos.Kept photo) throws IOException {
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(photo.content()));
    return new Color(image.getRGB(image.getWidth() / 2, image.getHeight() / 4)).getRed();
  }

  @Test
  void aPhotoTakenWithoutTheServerIsKeptMadeSmallAndSentWithItsEntry() throws IOException {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.PHONE)) {
      String site = DemoSite.of(browser);
      browser.go(site + "/plant/A1");
      browser.waitForKeeping();
      browser.go(site + "/plant/A1");
      assertThat(browser.find(".photo-field button").getText()).isEqualTo("Take a photo");

      browser.cutOff();
      note(browser, "first flowers");
      choose(browser, picture("flowers.png", new Color(220, 40, 40)));
      browser.find(".photo-preview img");
      browser.shot("photo-form");
      browser.click("Write it down");
      browser.seeText("1 entry waits to be sent");
      drawn(browser, "blob:");
      // A phone that was switched off meanwhile has forgotten nothing.
      browser.go(site + "/plant/A1");
      drawn(browser, "blob:");
      browser.seeText("photo not sent yet");
      browser.shot("photo-offline");
      browser.checkAccessible();

      browser.bringBack();
      browser.go(site + "/plant/A1");
      browser.waitUntil(d -> photo(browser, site).isPresent());
      Photos.Kept sent = photo(browser, site).orElseThrow();
      assertThat(sent.about().type()).isEqualTo(PhotoType.JPEG);
      assertThat(sent.content().length).isLessThan(Photos.LARGEST);
      BufferedImage image = ImageIO.read(new ByteArrayInputStream(sent.content()));
      assertThat(image.getWidth()).isEqualTo(1200);
      assertThat(image.getHeight()).isEqualTo(1600);
      assertThat(red(sent)).isBetween(210, 230);
      drawn(browser, browser.address() + "/api/sites/");
      browser.waitUntil(d -> !browser.text().contains("to be sent"));
      assertThat(browser.find(".entry-photo img").getDomAttribute("alt"))
          .startsWith("Photo of ")
          .contains("A1")
          .contains("first flowers");
      browser.shot("photo-sent");
      browser.checkAccessible();

      try (BrowserSession laptop = browser.another(BrowserSession.DESKTOP)) {
        laptop.go(site + "/plant/A1");
        drawn(laptop, browser.address() + "/api/sites/");
        laptop.shot("photo-sent");
        laptop.checkAccessible();
        laptop.checkQuiet();
      }

      // What was seen once can be seen in the garden again.
      browser.cutOff();
      browser.go(site + "/plant/A1");
      drawn(browser, browser.address() + "/api/sites/");
      browser.bringBack();
      browser.checkQuiet();
    }
  }

  @Test
  void aPhotoThatMeetsAnotherIsShownAndBothStayUntilTheOwnerChooses() throws IOException {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.PHONE)) {
      String site = DemoSite.of(browser);
      browser.go(site + "/plant/A1");
      note(browser, "spots on a leaf");
      browser.click("Write it down");
      browser.waitUntil(d -> entries(browser, site).size() == 1);
      browser.seeText("Written down.");

      browser.cutOff();
      browser.click("Change");
      choose(browser, picture("red.png", new Color(220, 40, 40)));
      browser.find(".photo-preview img");
      browser.click("Save the change");
      browser.seeText("photo not sent yet");
      // Meanwhile somebody adds a photo to the same entry elsewhere.
      String id = site.substring("/site/".length());
      byte[] theirs = Files.readAllBytes(picture("green.png", new Color(40, 160, 60)));
      browser
          .store()
          .photos()
          .add(
              id,
              entries(browser, site).get(0).content().id(),
              theirs,
              browser.store().accounts().local().author());

      browser.bringBack();
      browser.go(site + "/plant/A1");
      browser.seeText("This photo could not be taken over: This entry has another photo already.");
      drawn(browser, "blob:");
      assertThat(photo(browser, site).orElseThrow().content()).isEqualTo(theirs);
      browser.shot("photo-refused");
      browser.checkAccessible();
      browser.click("Take the photo back");
      drawn(browser, browser.address() + "/api/sites/");
      assertThat(photo(browser, site).orElseThrow().content()).isEqualTo(theirs);
      browser.checkQuiet();
    }
  }

  @Test
  void aPhotoIsReplacedAndTakenAwayAndOtherFilesAreRefused() throws IOException {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      String site = DemoSite.of(browser);
      browser.go(site + "/plant/A1");
      Path letter = Files.writeString(folder.resolve("letter.png"), "no picture");
      note(browser, "a leaf");
      choose(browser, letter);
      browser.seeText("This file is no picture");
      browser.checkAccessible();
      assertThat(browser.field("In words").getDomProperty("value")).isEqualTo("a leaf");

      choose(browser, picture("red.png", new Color(220, 40, 40)));
      browser.find(".photo-preview img");
      browser.click("Write it down");
      browser.waitUntil(d -> photo(browser, site).isPresent());
      drawn(browser, browser.address() + "/api/sites/");

      browser.click("Change");
      browser.find(".photo-preview img");
      choose(browser, picture("green.png", new Color(40, 160, 60)));
      browser.waitUntil(
          d -> browser.find(".photo-preview img").getDomProperty("src").startsWith("blob:"));
      browser.click("Save the change");
      browser.waitUntil(
          d -> {
            try {
              return photo(browser, site).isPresent()
                  && red(photo(browser, site).orElseThrow()) < 60;
            } catch (IOException e) {
              throw new IllegalStateException(e);
            }
          });
      drawn(browser, browser.address() + "/api/sites/");

      browser.click("Change");
      browser.click("No photo");
      browser.click("Save the change");
      browser.waitUntil(d -> photo(browser, site).isEmpty());
      browser.waitUntil(d -> d.findElements(By.cssSelector(".entry-photo")).isEmpty());
      assertThat(entries(browser, site)).hasSize(1);
      browser.checkQuiet();
    }
  }

  @Test
  void everyPhotoOfALongJournalIsOnThePaper() throws IOException {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      String site = DemoSite.of(browser);
      String id = site.substring("/site/".length());
      Author owner = browser.store().accounts().local().author();
      int count = 16;
      for (int i = 0; i < count; i++) {
        Content content =
            new Content(
                "22222222-00" + (10 + i),
                LocalDate.of(2026, 3, 1 + i),
                JournalKind.NOTE,
                SubjectKind.PLANT,
                "A1",
                Optional.empty(),
                "photo number " + i);
        browser
            .store()
            .journal()
            .sync(id, List.of(new Journal.Change(content, 0, false)), 0, owner);
        byte[] bytes = Files.readAllBytes(picture("n" + i + ".png", new Color(10 * i, 99, 200)));
        browser.store().photos().add(id, content.id(), bytes, owner);
      }
      browser.go(site + "/plant/A1");
      browser.seeText("photo number 15");
      String pdf = (String) browser.devTools("Page.printToPDF", Map.of()).get("data");
      browser.keep("print-journal-photos", pdf);
      Set<Integer> seen = new TreeSet<>();
      try (PDDocument document = Loader.loadPDF(Base64.getDecoder().decode(pdf))) {
        for (PDPage page : document.getPages()) {
          for (COSName name : page.getResources().getXObjectNames()) {
            if (page.getResources().getXObject(name) instanceof PDImageXObject image) {
              BufferedImage drawn = image.getImage();
              Color colour = new Color(drawn.getRGB(drawn.getWidth() / 2, drawn.getHeight() / 4));
              if (colour.getGreen() == 99) {
                seen.add(colour.getRed() / 10);
              }
            }
          }
        }
      }
      assertThat(seen).hasSize(count);
      browser.checkQuiet();
    }
  }

  private static JournalEntry entry(BrowserSession browser, String site, String words) {
    return entries(browser, site).stream()
        .filter(one -> one.content().note().equals(words))
        .findFirst()
        .orElseThrow();
  }

  private static void deleteElsewhere(BrowserSession browser, String site, JournalEntry entry) {
    browser
        .store()
        .journal()
        .sync(
            site.substring("/site/".length()),
            List.of(new Journal.Change(entry.content(), entry.revision(), true)),
            0,
            browser.store().accounts().local().author());
  }

  private static void changePhoto(BrowserSession browser, Path picture) {
    browser.click("Change");
    choose(browser, picture);
    browser.find(".photo-preview img");
    browser.click("Save the change");
    browser.seeText("photo not sent yet");
  }

  @Test
  void aPhotoForAnEntryThatWasDeletedElsewhereWaitsForTheOwnersWord() throws IOException {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.PHONE)) {
      String site = DemoSite.of(browser);
      String id = site.substring("/site/".length());
      browser.go(site + "/plant/A1");
      note(browser, "spots on a leaf");
      browser.click("Write it down");
      browser.waitUntil(d -> entries(browser, site).size() == 1);
      browser.waitForKeeping();
      browser.go(site + "/plant/A1");
      browser.seeText("spots on a leaf");

      browser.cutOff();
      changePhoto(browser, picture("red.png", new Color(220, 40, 40)));
      note(browser, "new shoots");
      choose(browser, picture("green.png", new Color(40, 160, 60)));
      browser.find(".photo-preview img");
      browser.click("Write it down");
      browser.seeText("2 entries wait to be sent");
      JournalEntry spots = entry(browser, site, "spots on a leaf");
      deleteElsewhere(browser, site, spots);
      assertThat(entries(browser, site)).isEmpty();

      // The new entry goes in; the deleted one is asked about, its photo still before one's eyes.
      browser.bringBack();
      browser.go(site + "/plant/A1");
      browser.seeText("was changed on two devices");
      browser.seeText("Deleted there.");
      browser.waitUntil(d -> entries(browser, site).size() == 1);
      String shoots = entry(browser, site, "new shoots").content().id();
      browser.waitUntil(d -> browser.store().photos().find(id, shoots).isPresent());
      browser.waitUntil(
          d ->
              browser.find(".conflict .entry-photo img").getDomProperty("src").startsWith("blob:"));
      assertThat(browser.text()).doesNotContain("could not be taken over");
      browser.shot("photo-deleted-elsewhere");
      browser.checkAccessible();
      browser.click("Keep this device's");
      browser.waitUntil(d -> entries(browser, site).size() == 2);
      String back = entry(browser, site, "spots on a leaf").content().id();
      assertThat(back).isEqualTo(spots.content().id());
      browser.waitUntil(d -> browser.store().photos().find(id, back).isPresent());
      assertThat(red(browser.store().photos().find(id, back).orElseThrow())).isBetween(210, 230);
      browser.waitUntil(d -> d.findElements(By.cssSelector(".conflict")).isEmpty());
      browser.waitUntil(d -> !browser.text().contains("not sent yet"));
      browser.checkQuiet();
    }
  }

  @Test
  void whoLetsTheOtherDevicesDeletionStandStillHasThePhotoUntilItIsTakenBack() throws IOException {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.PHONE)) {
      String site = DemoSite.of(browser);
      browser.go(site + "/plant/A1");
      note(browser, "spots on a leaf");
      browser.click("Write it down");
      browser.waitUntil(d -> entries(browser, site).size() == 1);
      browser.waitForKeeping();
      browser.go(site + "/plant/A1");
      browser.seeText("spots on a leaf");
      browser.cutOff();
      changePhoto(browser, picture("red.png", new Color(220, 40, 40)));
      deleteElsewhere(browser, site, entry(browser, site, "spots on a leaf"));
      browser.bringBack();
      browser.go(site + "/plant/A1");
      browser.seeText("Deleted there.");
      browser.click("Keep the other");
      browser.seeText("This photo could not be taken over");
      drawn(browser, "blob:");
      assertThat(entries(browser, site)).isEmpty();
      browser.shot("photo-of-deleted");
      browser.checkAccessible();
      browser.click("Take the photo back");
      browser.seeText("Nothing is written down yet.");
      browser.checkQuiet();
    }
  }
}
