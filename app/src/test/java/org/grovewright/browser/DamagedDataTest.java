package org.grovewright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Path;
import org.grovewright.store.HandClock;
import org.grovewright.store.StoreException.Reason;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;

/** A damaged database: its owner is told and finds the way back to a daily copy. */
@Tag("browser")
class DamagedDataTest {
  /** Bytes within the tables are made nonsense, the head stays. */
  private static void damage(Path folder) throws IOException {
    try (RandomAccessFile file =
        new RandomAccessFile(folder.resolve("grovewright.db").toFile(), "rw")) {
      byte[] nonsense = new byte[4096];
      java.util.Arrays.fill(nonsense, (byte) 0x5a);
      for (long at = 4096; at + 4096 <= file.length(); at += 8192) {
        file.seek(at);
        file.write(nonsense);
      }
    }
  }

  @Test
  void theOwnerIsToldOnEveryPageAndGoesBackToACopy() {
    HandClock clock = new HandClock("2027-03-01T08:00:00Z");
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP, clock)) {
      String site = DemoSite.of(browser);
      assertThat(browser.store().copyIfDue()).isTrue();
      browser.startAnew(DamagedDataTest::damage);
      assertThat(browser.store().trouble())
          .hasValueSatisfying(e -> assertThat(e.reason()).isEqualTo(Reason.DAMAGED));
      browser.go(site + "/map");
      browser.seeText("is damaged, so nothing more is written to it");
      browser.click("To the daily copies");
      browser.seeText("Daily copies");
      browser.atBothWidths(
          () -> {
            browser.shot("damaged");
            browser.checkAccessible();
          });
      browser.click("Go back to the copy of 2027-03-01");
      browser.click("Not now");
      browser.click("Go back to the copy of 2027-03-01");
      browser.click("Yes, go back to 2027-03-01");
      browser.seeText("Wattlefall Terrace");
      browser.waitUntil(d -> d.findElements(By.cssSelector(".trouble")).isEmpty());
      assertThat(browser.store().trouble()).isEmpty();
      browser.go(site + "/map");
      browser.find("[data-tool=undo]");
    }
  }
}
