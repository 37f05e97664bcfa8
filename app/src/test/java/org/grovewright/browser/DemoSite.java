package org.grovewright.browser;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.function.UnaryOperator;

/** The demo's grove in the database of a browser session. */
final class DemoSite {
  private DemoSite() {}

  /** Puts the demo in and returns the path of its pages. */
  static String of(BrowserSession browser) {
    return of(browser, text -> text);
  }

  /** The same with its description changed. */
  static String of(BrowserSession browser, UnaryOperator<String> change) {
    return of(browser, "Wattlefall Terrace", change);
  }

  /** The same by another name. */
  static String of(BrowserSession browser, String name, UnaryOperator<String> change) {
    try (InputStream in =
        DemoSite.class.getResourceAsStream("/org/grovewright/examples/demo.yaml")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      var author = browser.store().accounts().local().author();
      return "/site/" + browser.store().sites().create(name, change.apply(text), author).id();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
