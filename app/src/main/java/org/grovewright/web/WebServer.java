package org.grovewright.web;

import io.javalin.Javalin;
import io.javalin.router.Endpoint;
import io.javalin.util.JavalinBindException;
import java.net.UnknownHostException;
import java.time.InstantSource;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.store.Store;
import org.grovewright.web.api.Api;
import org.grovewright.web.api.Desk;
import org.grovewright.web.api.Groves;
import org.grovewright.web.api.Limits;
import org.grovewright.web.api.SessionCookie;

/** The running server. */
public final class WebServer implements AutoCloseable {
  /** Port to listen on unless another is asked for. */
  public static final int USUAL_PORT = 4680;

  /** Largest request, bytes: a description is at most 2 MB, and JSON wraps its lines. */
  static final long LARGEST_REQUEST = 3 * 1024 * 1024;

  private static final int MOST_THREADS = 40;
  private static final int LEAST_THREADS = 4;

  private final Javalin server;
  private final Groves groves;
  private final ServerSettings settings;
  private final boolean open;
  private final DailyCopies copies;

  private WebServer(
      Javalin server, Groves groves, ServerSettings settings, boolean open, DailyCopies copies) {
    this.server = server;
    this.groves = groves;
    this.settings = settings;
    this.open = open;
    this.copies = copies;
  }

  /**
   * Starts to serve what is in a store that is open.
   *
   * @param settings how
   * @param store the database, which the caller closes after the server
   * @param catalogue the catalogue, which may still be on its way
   * @param log takes failures that are bugs
   * @throws CannotServeException if it cannot, with a plain sentence that says what to do
   */
  public static WebServer start(
      ServerSettings settings,
      Store store,
      CompletableFuture<Catalogue> catalogue,
      Consumer<Throwable> log) {
    return start(settings, () -> store, store.clock(), catalogue, log);
  }

  /**
   * Starts to serve while the store is still being opened: the first page needs nothing of it.
   *
   * @param settings how
   * @param store gives the database, and waits until it is open
   * @param clock tells the time
   * @param catalogue the catalogue, which may still be on its way
   * @param log takes failures that are bugs
   * @throws CannotServeException if it cannot, with a plain sentence that says what to do
   */
  public static WebServer start(
      ServerSettings settings,
      Supplier<Store> store,
      InstantSource clock,
      CompletableFuture<Catalogue> catalogue,
      Consumer<Throwable> log) {
    boolean open = open(settings);
    if (open && !store.get().accounts().anyPassword()) {
      throw new CannotServeException(
          "Others could reach Grovewright at "
              + settings.bind()
              + ", but no account has a password yet. Set one first with 'grovewright password', or"
              + " leave out --bind and --host-name to serve this machine alone.");
    }
    Groves groves = new Groves(catalogue);
    Limits limits = new Limits(clock);
    SessionCookie cookies = new SessionCookie(settings.certificate().isPresent());
    Desk desk = new Desk(store, groves, open, limits, cookies, log);
    Guard guard = new Guard(store, new Hosts(open, settings.hostNames()), open, cookies, limits);
    Javalin server =
        Javalin.create(
            config -> {
              config.startup.showJavalinBanner = false;
              config.startup.showOldJavalinVersionWarning = false;
              config.startup.startupWatcherEnabled = false;
              config.http.maxRequestSize = LARGEST_REQUEST;
              config.jetty.threadPool = new QueuedThreadPool(MOST_THREADS, LEAST_THREADS);
              config.jetty.modifyServer(jetty -> jetty.setErrorHandler(new UnreadableRequests()));
              settings
                  .certificate()
                  .ifPresent(certificate -> Https.addTo(config.jetty, settings, certificate));
              guard.addTo(config.routes);
              new StaticFiles().addTo(config.routes);
              new Api(desk).addTo(config.routes);
            });
    try {
      if (settings.certificate().isPresent()) {
        server.start();
      } else {
        server.start(settings.bind(), settings.port());
      }
    } catch (JavalinBindException e) {
      groves.close();
      throw new PortTakenException(settings.port());
    }
    return new WebServer(server, groves, settings, open, new DailyCopies(store, log));
  }

  private static boolean open(ServerSettings settings) {
    try {
      return settings.open();
    } catch (UnknownHostException e) {
      throw new CannotServeException(
          "'"
              + settings.bind()
              + "' is no address of this machine; leave --bind out, or give one.");
    }
  }

  /** All routes, for the tests. */
  List<Endpoint> endpoints() {
    return server.unsafe.internalRouter.allHttpHandlers().stream()
        .map(one -> one.endpoint)
        .toList();
  }

  /** Whether others than the user of this machine can reach it. */
  public boolean open() {
    return open;
  }

  /** The port that is listened on. */
  public int port() {
    return server.port();
  }

  /** The address to open in a browser. */
  public String address() {
    String host =
        settings.hostNames().isEmpty()
            ? settings.bind().equals("0.0.0.0") || settings.bind().equals("::")
                ? "localhost"
                : settings.bind()
            : settings.hostNames().get(0);
    String scheme = settings.certificate().isPresent() ? "https" : "http";
    return scheme + "://" + (host.contains(":") ? "[" + host + "]" : host) + ":" + port() + "/";
  }

  @Override
  public void close() {
    server.stop();
    copies.close();
    groves.close();
  }
}
