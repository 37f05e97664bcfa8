package org.grovewright.formats.weather;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Flow;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.grovewright.model.Climate.DayWeather;

/**
 * Asks a forecast service over HTTP, once, and reads its JSON by the owner's settings. Values are
 * checked like those of a weather table.
 */
public final class HttpForecast implements ForecastSource {
  private static final int MOST_BYTES = 2_000_000;
  private static final int MOST_DAYS = 400;
  private static final ObjectMapper JSON =
      new ObjectMapper().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);

  private final ForecastSettings settings;

  /** A service that is asked by these settings. */
  public HttpForecast(ForecastSettings settings) {
    this.settings = settings;
  }

  @Override
  public List<DayWeather> days(double latitudeDeg, double longitudeDeg) {
    byte[] body = ask(latitudeDeg, longitudeDeg);
    JsonNode answer;
    try {
      answer = JSON.readTree(body);
    } catch (JacksonException e) {
      throw failure("did not answer in JSON");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    String table = table(answer);
    try {
      WeatherTable weather = WeatherCsv.read("the answer", new StringReader(table));
      return ClimateOfDays.days(weather);
    } catch (WeatherFileException e) {
      throw failure("gave weather that cannot be used: " + e.problems().get(0).describe("answer"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private byte[] ask(double latitudeDeg, double longitudeDeg) {
    HttpClient client =
        HttpClient.newBuilder()
            .connectTimeout(settings.timeout())
            .followRedirects(HttpClient.Redirect.NEVER)
            .build();
    HttpRequest request =
        HttpRequest.newBuilder(settings.at(latitudeDeg, longitudeDeg))
            .timeout(settings.timeout())
            .header("Accept", "application/json")
            .build();
    CompletableFuture<HttpResponse<byte[]>> answer =
        client.sendAsync(request, head -> new LimitedBody());
    try {
      HttpResponse<byte[]> response =
          answer.get(settings.timeout().toMillis(), TimeUnit.MILLISECONDS);
      if (response.statusCode() != 200) {
        throw failure("answered with the status " + response.statusCode());
      }
      return response.body();
    } catch (TimeoutException e) {
      answer.cancel(true);
      throw failure("did not answer within " + settings.timeout().toSeconds() + " seconds");
    } catch (InterruptedException e) {
      answer.cancel(true);
      Thread.currentThread().interrupt();
      throw failure("was not waited for");
    } catch (ExecutionException e) {
      throw failure(reason(e.getCause()));
    }
  }

  private String reason(Throwable cause) {
    for (Throwable at = cause; at != null; at = at.getCause()) {
      if (at instanceof TooLongException) {
        return "gave an answer of more than " + MOST_BYTES / 1_000_000 + " MB";
      }
      if (at instanceof java.net.http.HttpTimeoutException) {
        return "did not answer within " + settings.timeout().toSeconds() + " seconds";
      }
    }
    return "could not be reached";
  }

  private ForecastException failure(String what) {
    return new ForecastException("the forecast service at " + settings.host() + " " + what);
  }

  /** The answer as a weather table, so that it is checked like one. */
  private String table(JsonNode answer) {
    List<List<String>> columns = new ArrayList<>();
    int days = -1;
    for (Map.Entry<String, JsonPointer> column : settings.columns().entrySet()) {
      List<String> cells = cells(answer, column.getKey(), column.getValue());
      if (days >= 0 && cells.size() != days) {
        throw failure("gave columns of unlike length");
      }
      days = cells.size();
      columns.add(cells);
    }
    if (days < 1 || days > MOST_DAYS) {
      throw failure("gave " + Math.max(0, days) + " days, of which nothing can be made");
    }
    StringBuilder table = new StringBuilder(String.join(",", settings.columns().keySet()));
    for (int day = 0; day < days; day++) {
      table.append('\n');
      for (int i = 0; i < columns.size(); i++) {
        table.append(i == 0 ? "" : ",").append(columns.get(i).get(day));
      }
    }
    return table.append('\n').toString();
  }

  private List<String> cells(JsonNode answer, String name, JsonPointer pointer) {
    List<String> cells = new ArrayList<>();
    JsonNode list = answer.at(settings.each().orElse(pointer));
    if (!list.isArray()) {
      throw failure(
          "gave no list at " + settings.each().orElse(pointer) + ", where " + name + " should be");
    }
    for (JsonNode item : list) {
      JsonNode value = settings.each().isPresent() ? item.at(pointer) : item;
      cells.add(cell(name, value));
    }
    return cells;
  }

  private String cell(String name, JsonNode value) {
    if (value.isMissingNode() || value.isNull()) {
      return "";
    }
    if (value.isNumber()) {
      return value.decimalValue().toPlainString();
    }
    // A date may come with a time of day after it.
    String text = value.asText("").strip();
    String date = text.length() > 10 && text.charAt(10) == 'T' ? text.substring(0, 10) : text;
    if (!date.matches("[0-9.+-]*")) {
      throw failure("gave a " + name + " that is neither a number nor a date");
    }
    return date;
  }

  /** An answer that is longer than any forecast. */
  private static final class TooLongException extends IOException {
    private static final long serialVersionUID = 1L;
  }

  /** Gathers an answer up to a limit, and hangs up beyond it. */
  private static final class LimitedBody implements HttpResponse.BodySubscriber<byte[]> {
    private final CompletableFuture<byte[]> body = new CompletableFuture<>();
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private Flow.Subscription subscription;

    @Override
    public CompletionStage<byte[]> getBody() {
      return body;
    }

    @Override
    public void onSubscribe(Flow.Subscription begun) {
      subscription = begun;
      begun.request(Long.MAX_VALUE);
    }

    @Override
    public void onNext(List<ByteBuffer> parts) {
      for (ByteBuffer part : parts) {
        if (bytes.size() + part.remaining() > MOST_BYTES) {
          subscription.cancel();
          body.completeExceptionally(new TooLongException());
          return;
        }
        byte[] copy = new byte[part.remaining()];
        part.get(copy);
        bytes.write(copy, 0, copy.length);
      }
    }

    @Override
    public void onError(Throwable failure) {
      body.completeExceptionally(failure);
    }

    @Override
    public void onComplete() {
      body.complete(bytes.toByteArray());
    }
  }
}
