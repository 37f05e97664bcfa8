package org.grovewright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.Writer;
import java.net.HttpURLConnection;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.store.Store;
import org.grovewright.store.StoreAddress;
import org.grovewright.web.ServerSettings;
import org.grovewright.web.WebServer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/**
 * Does once what users do first, so that the launcher can keep the classes that are loaded on the
 * way and later starts are quick.
 */
@Command(name = "rehearse", hidden = true, description = "For the launcher alone.")
final class RehearseCommand implements Callable<Integer> {
  @Parameters(index = "0", paramLabel = "FOLDER", description = "An empty folder.")
  private Path folder;

  @Override
  public Integer call() throws IOException {
    PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
    GrovewrightCommand.run(nowhere, nowhere, "demo", "--out", folder.resolve("demo").toString());
    // Once to make the database, once to find it there.
    for (int start = 0; start < 2; start++) {
      try (Store store =
              Store.open(new StoreAddress.Folder(folder.resolve("data")), InstantSource.system());
          WebServer server =
              WebServer.start(
                  ServerSettings.local(0),
                  store,
                  CompletableFuture.supplyAsync(() -> CatalogueFiles.load().catalogue()),
                  bug -> {})) {
        visit(server.address());
      }
    }
    return ExitCode.OK;
  }

  private static void visit(String address) throws IOException {
    get(address);
    String csrf = get(address + "api/me").replaceFirst("(?s).*\"csrf\":\"([^\"]+)\".*", "$1");
    String site =
        post(address + "api/sites", csrf, "{\"example\":\"demo\"}")
            .replaceFirst("(?s).*\"id\":\"([^\"]+)\".*", "$1");
    get(address + "api/sites");
    get(address + "api/texts/en");
    get(address + "api/sites/" + site + "/scene?wait=true");
    post(
        address + "api/sites/" + site + "/try",
        csrf,
        "{\"operations\":[{\"type\":\"movePlant\",\"plant\":\"A2\",\"x\":15,\"y\":12}]}");
    get(address + "static/app.js");
    get(address + "webjars/ol/ol.js");
  }

  private static String get(String address) throws IOException {
    return answer((HttpURLConnection) URI.create(address).toURL().openConnection());
  }

  private static String post(String address, String csrf, String body) throws IOException {
    HttpURLConnection connection = (HttpURLConnection) URI.create(address).toURL().openConnection();
    connection.setRequestMethod("POST");
    connection.setRequestProperty("X-CSRF", csrf);
    connection.setDoOutput(true);
    connection.getOutputStream().write(body.getBytes(StandardCharsets.UTF_8));
    return answer(connection);
  }

  private static String answer(HttpURLConnection connection) throws IOException {
    if (connection.getResponseCode() >= 400) {
      return "";
    }
    try (InputStream in = connection.getInputStream()) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
