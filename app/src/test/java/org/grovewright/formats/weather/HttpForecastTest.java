package org.grovewright.formats.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicReference;
import org.grovewright.model.Climate.DayWeather;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A forecast service on this machine, well and ill behaved. */
class HttpForecastTest {
  private static final String LISTS =
      """
      {"daily": {"day": ["2027-07-12", "2027-07-13"], "low": [60, 62.6], "high": [95, 86],
                 "rain": [0, 0.5]}}
      """;
  private static final String LISTED =
      """
      date=/daily/day
      tmin_f=/daily/low
      tmax_f=/daily/high
      rain_in=/daily/rain
      """;

  @TempDir private Path folder;
  private HttpServer server;
  private ExecutorService threads;
  private final CountDownLatch over = new CountDownLatch(1);
  private final AtomicReference<String> asked = new AtomicReference<>();

  private interface Answer {
    void give(HttpExchange exchange) throws IOException;
  }

  @BeforeEach
  void startServer() throws IOException {
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    threads = Executors.newCachedThreadPool();
    server.setExecutor(threads);
    server.start();
  }

  @AfterEach
  void stopServer() {
    over.countDown();
    server.stop(0);
    threads.shutdownNow();
  }

  private HttpForecast service(String more, Answer answer) throws IOException {
    server.createContext(
        "/",
        exchange -> {
          asked.set(exchange.getRequestURI().toString());
          try (exchange) {
            answer.give(exchange);
          }
        });
    String address =
        "address=http://127.0.0.1:"
            + server.getAddress().getPort()
            + "/days?lat={latitude}&lon={longitude}&k={key}\nkey_variable=MY_KEY\ntimeout_seconds=1\n";
    Path file = Files.writeString(folder.resolve("f.properties"), address + more);
    return new HttpForecast(ForecastSettings.read(file, name -> "s3cret/" + name));
  }

  private static Answer text(int status, String body) {
    return exchange -> {
      byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
      exchange.sendResponseHeaders(status, bytes.length);
      exchange.getResponseBody().write(bytes);
    };
  }

  @Test
  void readsListsInTheUnitsOfTheirNames() throws IOException {
    List<DayWeather> days = service(LISTED, text(200, LISTS)).days(38.9, -121.2);
    assertThat(asked.get()).isEqualTo("/days?lat=38.9000&lon=-121.2000&k=s3cret%2FMY_KEY");
    assertThat(days).extracting(DayWeather::date).containsExactly(day(12), day(13));
    assertThat(days.get(1).tminC()).isCloseTo(17, within(1e-9));
    assertThat(days.get(0).tmaxC()).isCloseTo(35, within(1e-9));
    assertThat(days.get(1).rainM().orElseThrow()).isCloseTo(0.0127, within(1e-12));
  }

  @Test
  void theExampleOfSettingsCanBeRead() {
    ForecastSettings settings =
        ForecastSettings.read(Path.of("../examples/forecast.properties"), name -> "k");
    assertThat(settings.at(1.5, -2).toString())
        .isEqualTo("https://forecast.example/daily?lat=1.5000&lon=-2.0000&key=k");
    assertThat(settings.columns()).containsKeys("date", "tmin_c", "tmax_c", "rain_mm");
  }

  @Test
  void readsDayByDay() throws IOException {
    String body =
        """
        [{"when": "2027-07-12T00:00:00Z", "t": {"lo": 12, "hi": 30}},
         {"when": "2027-07-13T00:00:00Z", "t": {"lo": 13, "hi": 31}, "mm": 4}]
        """;
    String mapping = "each=\ndate=/when\ntmin=/t/lo\ntmax=/t/hi\nrain_mm=/mm\n";
    List<DayWeather> days = service(mapping, text(200, body)).days(0, 0);
    assertThat(days).extracting(DayWeather::date).containsExactly(day(12), day(13));
    assertThat(days.get(0).rainM()).isEmpty();
    assertThat(days.get(1).rainM().orElseThrow()).isCloseTo(0.004, within(1e-12));
  }

  private static LocalDate day(int day) {
    return LocalDate.of(2027, 7, day);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "500|{}|answered with the status 500",
        "302|{}|answered with the status 302",
        "200|<html>sorry</html>|did not answer in JSON",
        "200|{} {}|did not answer in JSON",
        "200|{}|gave no list at /daily/",
        "200|{\"daily\":{\"day\":[\"2027-07-12\"],\"low\":[],\"high\":[1],\"rain\":[1]}}|unlike length",
        "200|{\"daily\":{\"day\":[],\"low\":[],\"high\":[],\"rain\":[]}}|gave 0 days",
        "200|{\"daily\":{\"day\":[\"2027-07-12\"],\"low\":[900],\"high\":[1],\"rain\":[1]}}|out of range",
        "200|{\"daily\":{\"day\":[\"a,b\"],\"low\":[9],\"high\":[1],\"rain\":[1]}}|neither a number nor a date",
      })
  void badAnswersAreTold(int status, String body, String message) throws IOException {
    HttpForecast service = service(LISTED, text(status, body));
    assertThatThrownBy(() -> service.days(0, 0))
        .isInstanceOf(ForecastException.class)
        .hasMessageStartingWith("the forecast service at 127.0.0.1 ")
        .hasMessageContaining(message)
        .hasMessageNotContaining("s3cret");
  }

  @Test
  void aSilentServiceIsNotWaitedForLong() throws IOException {
    HttpForecast service = service(LISTED, exchange -> await());
    assertThatThrownBy(() -> service.days(0, 0))
        .hasMessageContaining("did not answer within 1 sec");
  }

  @Test
  void neitherIsOneThatStopsInTheMiddle() throws IOException {
    HttpForecast service =
        service(
            LISTED,
            exchange -> {
              exchange.sendResponseHeaders(200, 0);
              exchange.getResponseBody().write("{".getBytes(StandardCharsets.UTF_8));
              exchange.getResponseBody().flush();
              await();
            });
    assertThatThrownBy(() -> service.days(0, 0))
        .hasMessageContaining("did not answer within 1 sec");
  }

  private void await() {
    try {
      over.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Test
  void aHugeAnswerIsHungUpOn() throws IOException {
    HttpForecast service =
        service(
            "timeout_seconds=60\n" + LISTED,
            exchange -> {
              exchange.sendResponseHeaders(200, 0);
              byte[] spaces = " ".repeat(100_000).getBytes(StandardCharsets.UTF_8);
              OutputStream out = exchange.getResponseBody();
              for (int i = 0; i < 200; i++) {
                out.write(spaces);
              }
            });
    assertThatThrownBy(() -> service.days(0, 0)).hasMessageContaining("more than 2 MB");
  }

  @Test
  void aServiceThatIsNotThereIsTold() throws IOException {
    HttpForecast service = service(LISTED, text(200, LISTS));
    server.stop(0);
    assertThatThrownBy(() -> service.days(0, 0)).hasMessageContaining("could not be reached");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "date=/d|address",
        "address=ftp://a.example/|must be an address",
        "address=http://a b/|must be an address",
        "address=http://a.example/{key}|key_variable",
        "address=http://a.example/{key}#key_variable=NONE|NONE, which is not set",
        "address=http://a.example/#timeout_seconds=0|from 1 to 120",
        "address=http://a.example/#dates=/d|is no column of weather",
        "address=http://a.example/#date=d|must be a JSON pointer",
        "address=http://a.example/#date=/d#tmin_c=/t|tmax",
      })
  void settingsAreChecked(String lines, String message) throws IOException {
    Path file = Files.writeString(folder.resolve("bad.properties"), lines.replace('#', '\n'));
    assertThatThrownBy(() -> ForecastSettings.read(file, name -> null))
        .isInstanceOf(WeatherFileException.class)
        .hasMessageContaining("bad.properties")
        .hasMessageContaining(message);
  }
}
