package org.grovewright.bench;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.store.Store;
import org.grovewright.store.StoreAddress;
import org.grovewright.web.ServerSettings;
import org.grovewright.web.WebServer;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Time from the question of a browser that drags a plant to the figures, over HTTP on this machine,
 * in a grove of 50 plants. The plant stands elsewhere each time. The map asks for the figures and
 * for the cost apart, so that a slow cost never holds the spacing back.
 */
@BenchmarkMode({Mode.AverageTime, Mode.SampleTime})
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 3)
@Measurement(iterations = 5, time = 3)
@Fork(1)
@State(Scope.Benchmark)
public class DragBenchmark {
  private static final int FURTHER_PLANTS = 8;

  /** Whether the cost is asked for, or the other figures. */
  @Param({"false", "true"})
  boolean cost;

  private final HttpClient client = HttpClient.newHttpClient();
  private Store store;
  private WebServer server;
  private URI address;
  private String csrf;
  private int step;

  /** Starts a server with the example and eight more plants. */
  @Setup
  public void start() throws IOException, InterruptedException {
    Path folder = Files.createTempDirectory("grovewright-drag");
    store = Store.open(new StoreAddress.Folder(folder), InstantSource.system());
    server =
        WebServer.start(
            ServerSettings.local(0),
            store,
            CompletableFuture.completedFuture(CatalogueFiles.load().catalogue()),
            Throwable::printStackTrace);
    csrf = member(send("GET", server.address() + "api/me", ""), "csrf");
    String site =
        member(send("POST", server.address() + "api/sites", "{\"example\":\"demo\"}"), "id");
    StringBuilder operations = new StringBuilder();
    for (int i = 0; i < FURTHER_PLANTS; i++) {
      operations
          .append(i == 0 ? "" : ",")
          .append("{\"type\":\"addPlant\",\"species\":\"lemon\",\"x\":")
          .append(4 + 5 * i)
          .append(",\"y\":25,\"fields\":{\"planted\":\"2027-03-20\",\"container\":\"15 L\"}}");
    }
    String edited =
        send(
            "POST",
            server.address() + "api/sites/" + site + "/edits",
            "{\"onVersion\":1,\"label\":\"x\",\"operations\":[" + operations + "]}");
    if (edited.split("\"speciesName\"", -1).length - 1 != 50) {
      throw new IllegalStateException("not 50 plants: " + edited);
    }
    address = URI.create(server.address() + "api/sites/" + site + (cost ? "/try/cost" : "/try"));
    send("GET", server.address() + "api/sites/" + site + "/scene?wait=true", "");
  }

  private static String member(String json, String name) {
    return json.replaceFirst("(?s).*?\"" + name + "\":\"([^\"]+)\".*", "$1");
  }

  private String send(String method, String to, String body)
      throws IOException, InterruptedException {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create(to))
            .method(method, HttpRequest.BodyPublishers.ofString(body));
    if (csrf != null) {
      request.header("X-CSRF", csrf);
    }
    HttpResponse<String> answer =
        client.send(request.build(), HttpResponse.BodyHandlers.ofString());
    if (answer.statusCode() >= 300) {
      throw new IllegalStateException(answer.body());
    }
    return answer.body();
  }

  /** One step of dragging. */
  @Benchmark
  public String drag() throws IOException, InterruptedException {
    step = (step + 1) % 500;
    return send(
        "POST",
        address.toString(),
        String.format(
            Locale.ROOT,
            "{\"cost\":false,\"operations\":[{\"type\":\"movePlant\",\"plant\":\"A2\",\"x\":%.2f,\"y\":12}]}",
            9 + step * 0.01));
  }

  /** Stops the server. */
  @TearDown
  public void stop() {
    server.close();
    store.close();
  }
}
