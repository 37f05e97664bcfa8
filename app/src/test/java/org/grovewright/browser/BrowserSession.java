package org.grovewright.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import com.deque.html.axecore.results.Results;
import com.deque.html.axecore.results.Rule;
import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.store.Account;
import org.grovewright.store.Store;
import org.grovewright.store.StoreAddress;
import org.grovewright.web.ServerSettings;
import org.grovewright.web.WebServer;
import org.junit.jupiter.api.Assumptions;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.Keys;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.TimeoutException;
import org.openqa.selenium.WebDriver;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.ExpectedCondition;
import org.openqa.selenium.support.ui.WebDriverWait;

/**
 * A browser of its own before a server of its own with an empty database: opened by a test, closed
 * at its end. Screenshots go to {@code target/screenshots}. Without a browser on the machine the
 * test is skipped, or fails where {@code CI=true}.
 */
public final class BrowserSession implements AutoCloseable {
  /** Width of a laptop's window. */
  public static final int DESKTOP = 1280;

  /** Width of a phone. */
  public static final int PHONE = 390;

  private static final Duration PATIENCE = Duration.ofSeconds(40);
  private static final Path SHOTS = Path.of("target", "screenshots");
  private static final CompletableFuture<Catalogue> CATALOGUE =
      CompletableFuture.supplyAsync(() -> CatalogueFiles.load().catalogue());

  /** What everybody's password is where one must sign in. */
  public static final String PASSWORD = "correct horse battery";

  private final Path data;
  private Store store;
  private final List<String> hostNames;
  private final boolean guest;
  private final InstantSource clock;
  private final ChromeDriver driver;
  private final List<Throwable> bugs;
  private final List<String> heard = new ArrayList<>();
  private WebServer server;
  private int port;

  private BrowserSession(int width, String language, InstantSource clock, List<String> hostNames) {
    try {
      data = Files.createTempDirectory("grovewright-browser");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    this.hostNames = hostNames;
    this.clock = clock;
    guest = false;
    bugs = Collections.synchronizedList(new ArrayList<>());
    store = Store.open(new StoreAddress.Folder(data), clock);
    if (!hostNames.isEmpty()) {
      store.accounts().setPassword(Account.LOCAL, "Rosa", PASSWORD);
    }
    serve();
    driver = new ChromeDriver(service(), options(width, language));
    resize(width);
  }

  private BrowserSession(BrowserSession host, int width) {
    data = host.data;
    hostNames = host.hostNames;
    clock = host.clock;
    guest = true;
    bugs = host.bugs;
    store = host.store;
    port = host.port;
    driver = new ChromeDriver(service(), options(width, "en"));
    resize(width);
  }

  /** Opens a browser of a width, in English. */
  public static BrowserSession open(int width) {
    return open(width, "en");
  }

  /** Opens a browser of a width whose owner prefers a language. */
  public static BrowserSession open(int width, String language) {
    checkThere();
    return new BrowserSession(width, language, InstantSource.system(), List.of());
  }

  /** Opens a browser of a width, in English, by a clock that the test moves on. */
  public static BrowserSession open(int width, InstantSource clock) {
    checkThere();
    return new BrowserSession(width, "en", clock, List.of());
  }

  /**
   * Opens a browser before a server that others reach too, so that everybody must sign in; the
   * owner is Rosa.
   */
  public static BrowserSession openForMany(int width) {
    return openForMany(width, InstantSource.system());
  }

  /** The same by a clock that the test moves on. */
  public static BrowserSession openForMany(int width, InstantSource clock) {
    checkThere();
    return new BrowserSession(width, "en", clock, List.of("grove.example.org"));
  }

  /** Opens another device before the same server. It is closed before this one. */
  public BrowserSession another(int width) {
    return new BrowserSession(this, width);
  }

  /** Waits until the pages are kept for a time without the server. */
  public void waitForKeeping() {
    waitUntil(d -> Boolean.TRUE.equals(script("return !!(navigator.serviceWorker?.controller);")));
  }

  private static void checkThere() {
    boolean there = program("chromedriver").isPresent() && chromium().isPresent();
    if (!there && "true".equals(System.getenv("CI"))) {
      fail("There is no Chromium with its driver; run this through scripts/with-browser.");
    }
    Assumptions.assumeTrue(there, "no Chromium with its driver on this machine");
  }

  private static Optional<Path> program(String name) {
    return Stream.of(System.getenv("PATH").split(java.io.File.pathSeparator))
        .map(folder -> Path.of(folder, name))
        .filter(Files::isExecutable)
        .findFirst();
  }

  private static Optional<Path> chromium() {
    return program("chromium").or(() -> program("chromium-browser"));
  }

  private static ChromeDriverService service() {
    return new ChromeDriverService.Builder()
        .usingDriverExecutable(program("chromedriver").orElseThrow().toFile())
        .usingAnyFreePort()
        .build();
  }

  private static ChromeOptions options(int width, String language) {
    ChromeOptions options = new ChromeOptions();
    options.setBinary(chromium().orElseThrow().toString());
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-dev-shm-usage",
        "--hide-scrollbars",
        "--force-color-profile=srgb",
        "--lang=" + language);
    options.setExperimentalOption("prefs", Map.of("intl.accept_languages", language));
    if (width < 600) {
      options.setExperimentalOption(
          "mobileEmulation",
          Map.of(
              "deviceMetrics",
              Map.of("width", width, "height", 844, "pixelRatio", 2.0, "touch", true)));
    }
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.BROWSER, java.util.logging.Level.WARNING);
    options.setCapability("goog:loggingPrefs", logs);
    return options;
  }

  private void serve() {
    server =
        WebServer.start(
            new ServerSettings("127.0.0.1", port, Optional.empty(), hostNames),
            store,
            CATALOGUE,
            bugs::add);
    port = server.port();
  }

  /** Cuts the server off, as when a phone leaves the house. */
  public void cutOff() {
    server.close();
    server = null;
  }

  /** Starts the server at the same address again. */
  public void bringBack() {
    serve();
  }

  /** What happens to the folder of the data while the program does not run. */
  public interface Meanwhile {
    /** Does it. */
    void with(Path folder) throws IOException;
  }

  /** Ends the program and starts it again at the same address, after something has happened. */
  public void startAnew(Meanwhile meanwhile) {
    cutOff();
    store.close();
    try {
      meanwhile.with(data);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    store = Store.open(new StoreAddress.Folder(data), clock);
    serve();
  }

  /** The driver, for what this class has no word for. */
  public WebDriver driver() {
    return driver;
  }

  /** The database that is served. */
  public Store store() {
    return store;
  }

  /** Gives the browser a width and a height that suits it. */
  public void resize(int width) {
    if (width >= 600) {
      driver.manage().window().setSize(new Dimension(width, 900));
    }
  }

  /** Goes to a path and waits until its page is drawn. */
  public void go(String path) {
    driver.get(address() + path);
    ready();
  }

  /** Signs in with the password of all. */
  public void signIn(String name) {
    go("/login");
    type("Name", name);
    type("Password", PASSWORD);
    click("Sign in");
    waitUntil(d -> !d.getCurrentUrl().endsWith("/login"));
    ready();
  }

  /** The address of the server without a slash at its end. */
  public String address() {
    return "http://127.0.0.1:" + port;
  }

  /** Waits until the frame has drawn a page. */
  public void ready() {
    waitUntil(
        d ->
            Boolean.TRUE.equals(
                script(
                    "const m = document.querySelector('main'); return !!m &&"
                        + " !m.hasAttribute('aria-busy') && !!m.querySelector('h1');")));
  }

  /** Waits until something holds. */
  public <T> T waitUntil(ExpectedCondition<T> condition) {
    try {
      return new WebDriverWait(driver, PATIENCE, Duration.ofMillis(50))
          .ignoring(StaleElementReferenceException.class)
          .until(condition);
    } catch (TimeoutException e) {
      shot("waited-in-vain");
      throw new AssertionError(
          "Waited in vain at "
              + driver.getCurrentUrl()
              + "; the page says: "
              + complaints()
              + "; the server says: "
              + bugs,
          e);
    }
  }

  /** Runs a script in the page. */
  public Object script(String body, Object... arguments) {
    return ((JavascriptExecutor) driver).executeScript(body, arguments);
  }

  /** The first shown element of a CSS selector, waited for. */
  public WebElement find(String selector) {
    return waitUntil(
        d ->
            d.findElements(By.cssSelector(selector)).stream()
                .filter(WebElement::isDisplayed)
                .findFirst()
                .orElse(null));
  }

  /** The control that a shown label names, waited for. */
  public WebElement field(String label) {
    return waitUntil(
        d ->
            (WebElement)
                script(
                    "return [...document.querySelectorAll('label')].filter(l => l.offsetParent"
                        + " !== null && l.textContent.trim().startsWith(arguments[0])).map(l =>"
                        + " l.control)[0] ?? null;",
                    label));
  }

  /** The shown button or link of these words, waited for. */
  public WebElement button(String words) {
    return waitUntil(
        d ->
            (WebElement)
                script(
                    "return [...document.querySelectorAll('button, a, summary')].filter(b =>"
                        + " b.offsetParent !== null && ((b.getAttribute('aria-label') ??"
                        + " b.textContent).trim() === arguments[0]))[0] ?? null;",
                    words));
  }

  /** Clicks the button or link of these words. */
  public void click(String words) {
    waitUntil(
        d -> {
          // A page that draws itself anew meanwhile takes the button from under the finger.
          click(button(words));
          return true;
        });
  }

  /** Clicks an element, in the middle of the window if it must be moved there. */
  public void click(WebElement element) {
    script("arguments[0].scrollIntoView({block: 'center', behavior: 'instant'});", element);
    element.click();
  }

  /** Types into the field of a label, in the place of what it held. */
  public void type(String label, String text) {
    WebElement field = field(label);
    script("arguments[0].scrollIntoView({block: 'center', behavior: 'instant'});", field);
    field.sendKeys(Keys.chord(Keys.CONTROL, "a"), Keys.DELETE);
    field.sendKeys(text);
  }

  /** All text of the page that is shown. */
  public String text() {
    return driver.findElement(By.tagName("body")).getText();
  }

  /** Waits until the page shows some words. */
  public void seeText(String words) {
    waitUntil(d -> text().contains(words));
  }

  /** Chooses how bright the pages are: light, dark or system. */
  public void theme(String theme) {
    script(
        "if (arguments[0] === 'system') delete document.documentElement.dataset.theme; else"
            + " document.documentElement.dataset.theme = arguments[0];",
        theme);
  }

  /** Keeps a picture of the window; the name gets the width. */
  public void shot(String name) {
    Number width = (Number) script("return window.innerWidth;");
    try {
      Files.createDirectories(SHOTS);
      Files.write(
          SHOTS.resolve(name + "-" + width.intValue() + ".png"),
          driver.getScreenshotAs(OutputType.BYTES));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Sends a command to the browser's own tools. */
  public Map<String, Object> devTools(String command, Map<String, Object> parameters) {
    return driver.executeCdpCommand(command, parameters);
  }

  /** Does something at a laptop's width and again, in the same page, at a phone's. */
  public void atBothWidths(Runnable look) {
    look.run();
    devTools(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", PHONE, "height", 844, "deviceScaleFactor", 2, "mobile", true));
    waitUntil(d -> Boolean.TRUE.equals(script("return window.innerWidth === " + PHONE + ";")));
    look.run();
    devTools("Emulation.clearDeviceMetricsOverride", Map.of());
    waitUntil(d -> Boolean.TRUE.equals(script("return window.innerWidth > 600;")));
  }

  /** Keeps a printed page, given in base 64. */
  public void keep(String name, String pdf) {
    try {
      Files.createDirectories(SHOTS);
      Files.write(SHOTS.resolve(name + ".pdf"), java.util.Base64.getDecoder().decode(pdf));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Checks the page for faults of accessibility after WCAG 2.2, levels A and AA. */
  public void checkAccessible() {
    heard.addAll(complaints());
    Results results =
        new AxeBuilder()
            .withTags(
                List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"))
            .analyze(driver);
    // The engine tries to put a style into the page, which the page's policy refuses.
    complaints();
    assertThat(results.getViolations().stream().map(BrowserSession::describe).toList())
        .as("faults of accessibility at " + driver.getCurrentUrl())
        .isEmpty();
    Boolean wide =
        (Boolean) script("return document.documentElement.scrollWidth > window.innerWidth + 1;");
    assertThat(wide).as("the page is wider than the window").isFalse();
  }

  private static String describe(Rule rule) {
    return rule.getId()
        + ": "
        + rule.getHelp()
        + " at "
        + rule.getNodes().stream()
            .map(node -> node.getHtml() + " " + node.getFailureSummary())
            .collect(Collectors.joining("; "));
  }

  /** Fails if the page complained, other than about what the server refused on purpose. */
  public void checkQuiet() {
    heard.addAll(complaints());
    List<String> complaints =
        heard.stream()
            .filter(message -> !message.contains("Failed to load resource"))
            // The drawing library's own remark on how it reads pixels.
            .filter(message -> !message.contains("Canvas2D"))
            .toList();
    assertThat(complaints).as("complaints of the page").isEmpty();
    assertThat(bugs).as("bugs of the server").isEmpty();
  }

  private List<String> complaints() {
    return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
        .map(LogEntry::getMessage)
        .toList();
  }

  @Override
  public void close() {
    try {
      driver.quit();
    } finally {
      if (!guest) {
        closeServer();
      }
    }
  }

  private void closeServer() {
    try {
      if (server != null) {
        server.close();
      }
    } finally {
      store.close();
      try (Stream<Path> files = Files.walk(data)) {
        for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(file);
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
