package org.grovewright.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import java.util.zip.GZIPOutputStream;
import org.grovewright.web.api.Access;

/**
 * Gives out the pages, which come with the program. Each file is read and packed once; a browser
 * that has it already is told so by its tag.
 */
final class StaticFiles {
  private static final String FOLDER = "/org/grovewright/web/static/";
  private static final Pattern PLAIN =
      Pattern.compile("[A-Za-z0-9_-][A-Za-z0-9._-]*(/[A-Za-z0-9_-][A-Za-z0-9._-]*)*");
  private static final int WORTH_PACKING = 1024;

  private static final Map<String, String> TYPES =
      Map.ofEntries(
          Map.entry("html", "text/html; charset=utf-8"),
          Map.entry("css", "text/css; charset=utf-8"),
          Map.entry("js", "text/javascript; charset=utf-8"),
          Map.entry("json", "application/json"),
          Map.entry("webmanifest", "application/manifest+json"),
          Map.entry("svg", "image/svg+xml"),
          Map.entry("png", "image/png"),
          Map.entry("ico", "image/x-icon"),
          Map.entry("woff2", "font/woff2"),
          Map.entry("txt", "text/plain; charset=utf-8"));

  private static final String PLACEHOLDER =
      "<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><title>Grovewright</title>"
          + "<p>Grovewright is running, but its pages are missing from this build.</p></html>";

  private final Map<String, Optional<Held>> held = new ConcurrentHashMap<>();

  private record Held(byte[] bytes, byte[] packed, String type, String tag) {}

  void addTo(RoutesConfig routes) {
    for (String page : new String[] {"/", "/sites", "/start", "/login", "/site/<rest>"}) {
      routes.get(page, this::shell, Access.ANYBODY);
    }
    routes.get(
        "/static/<file>", context -> own(context, context.pathParam("file")), Access.ANYBODY);
    routes.get("/service-worker.js", context -> own(context, "service-worker.js"), Access.ANYBODY);
    routes.get("/favicon.ico", context -> own(context, "favicon.ico"), Access.ANYBODY);
    routes.get("/webjars/ol/{file}", this::map, Access.ANYBODY);
  }

  private void shell(Context context) {
    Held shell = find(FOLDER + "index.html").orElse(null);
    if (shell == null) {
      shell = hold(PLACEHOLDER.getBytes(StandardCharsets.UTF_8), "html");
    }
    give(context, shell);
  }

  private void own(Context context, String file) {
    if (!PLAIN.matcher(file).matches()) {
      missing(context);
      return;
    }
    find(FOLDER + file).ifPresentOrElse(one -> give(context, one), () -> missing(context));
  }

  /** The drawing library of the map; its folder is named after its version. */
  private void map(Context context) {
    String folder = "/META-INF/resources/webjars/ol/" + mapVersion() + "/";
    Optional<Held> file =
        switch (context.pathParam("file")) {
          case "ol.js" -> find(folder + "dist/ol.js");
          case "ol.css" -> find(folder + "ol.css");
          default -> Optional.empty();
        };
    file.ifPresentOrElse(one -> give(context, one), () -> missing(context));
  }

  private static String mapVersion() {
    try (InputStream in =
        StaticFiles.class.getResourceAsStream(
            "/META-INF/maven/org.webjars.npm/ol/pom.properties")) {
      Properties properties = new Properties();
      properties.load(in);
      return properties.getProperty("version");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Optional<Held> find(String resource) {
    return held.computeIfAbsent(resource, StaticFiles::read);
  }

  private static Optional<Held> read(String resource) {
    try (InputStream in = StaticFiles.class.getResourceAsStream(resource)) {
      return in == null
          ? Optional.empty()
          : Optional.of(hold(in.readAllBytes(), resource.substring(resource.lastIndexOf('.') + 1)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Held hold(byte[] bytes, String ending) {
    String type = TYPES.getOrDefault(ending, "application/octet-stream");
    boolean text = type.contains("charset") || type.contains("json") || type.contains("svg");
    byte[] packed = text && bytes.length > WORTH_PACKING ? pack(bytes) : null;
    return new Held(bytes, packed, type, tag(bytes));
  }

  private static byte[] pack(byte[] bytes) {
    ByteArrayOutputStream packed = new ByteArrayOutputStream(bytes.length / 3);
    try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
      gzip.write(bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return packed.toByteArray();
  }

  private static String tag(byte[] bytes) {
    try {
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(bytes);
      return "\"" + HexFormat.of().formatHex(digest, 0, 12) + "\"";
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  private static void give(Context context, Held file) {
    context.header("Cache-Control", "no-cache").header("ETag", file.tag());
    if (file.tag().equals(context.header("If-None-Match"))) {
      context.status(304);
      return;
    }
    context.contentType(file.type());
    String accepted = context.header("Accept-Encoding");
    if (file.packed() != null) {
      context.header("Vary", "Accept-Encoding");
    }
    if (file.packed() != null && accepted != null && accepted.contains("gzip")) {
      context.header("Content-Encoding", "gzip").result(file.packed());
    } else {
      context.result(file.bytes());
    }
  }

  private static void missing(Context context) {
    context.status(404).contentType("text/plain").result("There is nothing at this address.");
  }
}
