package org.grovewright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("browser")
class FrameTest {
  @Test
  void theFrameLeadsToEveryQuestionAtBothWidths() {
    for (int width : new int[] {BrowserSession.DESKTOP, BrowserSession.PHONE}) {
      try (BrowserSession browser = BrowserSession.open(width)) {
        browser.go("/nowhere-of-ours".replace("nowhere-of-ours", "sites"));
        assertThat(browser.driver().getCurrentUrl()).endsWith("/start");
        browser.shot("frame");
      }
    }
  }
}
