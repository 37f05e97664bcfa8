package org.grovewright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;

/** The frame round the pages. */
@Tag("browser")
class FrameTest {
  @Test
  void theFrameLeadsToEveryQuestionAtBothWidths() {
    for (int width : new int[] {BrowserSession.DESKTOP, BrowserSession.PHONE}) {
      try (BrowserSession browser = BrowserSession.open(width)) {
        browser.go("/sites");
        assertThat(browser.driver().getCurrentUrl()).as("without a site").endsWith("/start");
        String site = "/site/" + MapTest.demo(browser).id();
        browser.go("/sites");
        browser.find(".site-list a");
        browser.shot("sites");
        browser.checkAccessible();
        browser.go(site + "/settings");
        for (String question : List.of("map", "buy", "today", "water", "plants")) {
          WebElement link = browser.find(".questions a[href='" + site + "/" + question + "']");
          browser.click(link);
          browser.find(".questions a[href$='/" + question + "'][aria-current=page]");
          browser.ready();
        }
        List<WebElement> links = browser.driver().findElements(By.cssSelector(".questions a"));
        assertThat(links)
            .hasSize(5)
            .allSatisfy(
                link -> {
                  assertThat(link.getSize().height).isGreaterThanOrEqualTo(44);
                  assertThat(link.getSize().width).isGreaterThanOrEqualTo(44);
                });
      }
    }
  }
}
