package org.grovewright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;

/** Whoever reads Spanish reads in Spanish what is wrong, beside the field it is wrong in. */
@Tag("browser")
class SpanishErrorsTest {
  /** What is said beside a field, to a screen reader too. */
  private static String besideOf(BrowserSession browser, String label) {
    WebElement field = browser.field(label);
    String error =
        java.util.Arrays.stream(field.getDomAttribute("aria-describedby").split(" "))
            .filter(id -> id.endsWith("-error"))
            .findFirst()
            .orElseThrow();
    return browser.driver().findElement(By.id(error)).getText();
  }

  private static void seeBeside(BrowserSession browser, String label, String words) {
    browser.waitUntil(d -> besideOf(browser, label).contains(words));
    assertThat(browser.field(label).getDomAttribute("aria-invalid")).isEqualTo("true");
  }

  private static void next(BrowserSession browser, String title) {
    browser.click("Siguiente");
    browser.waitUntil(
        d -> d.findElements(By.tagName("h1")).stream().anyMatch(h -> h.getText().equals(title)));
    browser.ready();
  }

  @Test
  void aWrongAnswerOfTheFirstPlanIsToldInSpanishBesideItsField() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.PHONE, "es")) {
      browser.go("/start");
      browser.type("¿Cómo lo llama?", "Huerta de arriba");
      next(browser, "¿Qué tamaño tiene?");
      browser.type("Ancho, de izquierda a derecha", "32");
      browser.type("Largo, de abajo arriba", "24,5");
      next(browser, "¿De dónde viene el agua?");
      browser.click(browser.field("Con un grifo de la casa"));
      browser.type("El cubo contiene", "500");
      browser.type("Se llenó en", "1");
      next(browser, "¿Cómo es el suelo?");
      next(browser, "¿Qué quiere cultivar?");
      new Select(browser.find("#start-species-0")).selectByValue("fig");
      browser.find("#start-count-0").sendKeys("2");
      next(browser, "Dinero y tiempo");
      next(browser, "¿Está bien así?");
      browser.seeText("de ninguna toma de jardín salen más de 20 L/s");
      browser.shot("spanish-error-review");

      browser.go("/start?step=water");
      browser.click("Siguiente");
      seeBeside(browser, "Se llenó en", "Es muy poco tiempo para ese volumen");
      browser.shot("spanish-error-beside");
      browser.checkAccessible();
      browser.type("Se llenó en", "40");
      browser.type("El cubo contiene", "10");
      next(browser, "¿Cómo es el suelo?");
      browser.checkQuiet();
    }
  }

  @Test
  void aNameThatNobodyHasIsToldInSpanishBesideItsField() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP, "es")) {
      String site = DemoSite.of(browser);
      browser.go(site + "/settings");
      browser.type("Nombre de la cuenta", "Nadie");
      browser.click("Compartir con esta cuenta");
      seeBeside(browser, "Nombre de la cuenta", "Nadie con ese nombre tiene una cuenta aquí");
      browser.checkQuiet();
    }
  }
}
