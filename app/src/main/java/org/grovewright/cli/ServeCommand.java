package org.grovewright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CountDownLatch;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueException;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.store.Store;
import org.grovewright.store.StoreException;
import org.grovewright.web.CannotServeException;
import org.grovewright.web.PortTakenException;
import org.grovewright.web.ServerSettings;
import org.grovewright.web.WebServer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Serves the plan to browsers. */
@Command(
    name = "serve",
    description = {
      "Opens the plan in your browser, to be drawn and changed there.",
      "",
      "Only this machine can reach it, unless --bind names an address that others reach too; then"
          + " everybody must sign in. Your groves are kept in your data folder.",
    },
    mixinStandardHelpOptions = true,
    sortOptions = false,
    footer = {
      "",
      "Examples:",
      "  grovewright                                   the same as grovewright serve",
      "  grovewright serve --no-browser --port 8080",
      "  grovewright serve --bind 0.0.0.0 --certificate cert.pem --key key.pem",
    })
final class ServeCommand implements Callable<Integer> {
  private static final int PORTS_TRIED = 20;

  @Option(
      names = "--port",
      paramLabel = "PORT",
      description =
          "Port to listen on; without it " + WebServer.USUAL_PORT + " or the next that is free.")
  private Integer port;

  @Option(
      names = "--bind",
      paramLabel = "ADDRESS",
      defaultValue = "127.0.0.1",
      description = "Address of this machine to listen on (default: this machine alone).")
  private String bind;

  @Option(
      names = "--host-name",
      paramLabel = "NAME",
      description =
          "Name under which others reach this machine, such as grove.example.org; may be given"
              + " more than once. Everybody must sign in then.")
  private List<String> hostNames = new ArrayList<>();

  @Mixin private DataArguments data;

  @Option(
      names = "--certificate",
      paramLabel = "FILE",
      description = "Certificate for HTTPS, with its chain (PEM).")
  private Path certificate;

  @Option(names = "--key", paramLabel = "FILE", description = "Private key of it (PEM).")
  private Path key;

  @Option(names = "--no-browser", description = "Do not open a browser.")
  private boolean noBrowser;

  @Option(
      names = "--catalogue",
      paramLabel = "FILE",
      description = "Your own rows for the catalogue: a CSV file, or a folder of them.")
  private Path catalogue;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InterruptedException {
    CompletableFuture<Store> opening = CompletableFuture.supplyAsync(data::open);
    CompletableFuture<Catalogue> tables = tables(opening);
    CountDownLatch end = new CountDownLatch(1);
    CountDownLatch ended = new CountDownLatch(1);
    try (WebServer server = start(opening, tables);
        Store store = opening.join()) {
      announce(server, store);
      Runtime.getRuntime().addShutdownHook(new Thread(() -> endAndWait(end, ended)));
      end.await();
      server.close();
    } catch (CompletionException e) {
      throw e.getCause() instanceof BadInputException known ? known : e;
    } finally {
      opening.thenAccept(Store::close);
      ended.countDown();
    }
    return ExitCode.OK;
  }

  private void announce(WebServer server, Store store) {
    PrintWriter out = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    store.trouble().ifPresent(trouble -> err.println("grovewright: " + trouble.getMessage()));
    err.flush();
    out.println("Grovewright is at " + server.address());
    if (server.open() && certificate == null) {
      out.println(
          "Others can reach it, and what they type is not encrypted: give --certificate and --key,"
              + " or let a web server with HTTPS pass requests on. Do not use it over the"
              + " internet without.");
    }
    out.println("Press Ctrl+C to stop it.");
    out.flush();
    if (!noBrowser) {
      Browser.open(server.address());
    }
  }

  private static void endAndWait(CountDownLatch end, CountDownLatch ended) {
    end.countDown();
    try {
      ended.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** The catalogue; the bundled one after the store, so that neither delays the first page. */
  private CompletableFuture<Catalogue> tables(CompletableFuture<Store> opening) {
    if (catalogue == null) {
      return opening.handleAsync((store, failure) -> CatalogueFiles.load().catalogue());
    }
    try {
      return CompletableFuture.completedFuture(CatalogueFiles.load().with(catalogue).catalogue());
    } catch (CatalogueException e) {
      throw new BadInputException(e.getMessage());
    }
  }

  private WebServer start(CompletableFuture<Store> opening, CompletableFuture<Catalogue> tables) {
    PrintWriter err = spec.commandLine().getErr();
    if ((certificate == null) != (key == null)) {
      throw new BadInputException("HTTPS needs both --certificate and --key.");
    }
    Optional<ServerSettings.Certificate> https =
        certificate == null
            ? Optional.empty()
            : Optional.of(new ServerSettings.Certificate(certificate, key));
    int first = port == null ? WebServer.USUAL_PORT : port;
    for (int tried = first; ; tried++) {
      try {
        return WebServer.start(
            new ServerSettings(bind, tried, https, hostNames),
            () -> opened(opening),
            InstantSource.system(),
            tables,
            bug -> told(bug, err));
      } catch (PortTakenException e) {
        if (port != null || tried == first + PORTS_TRIED) {
          throw new BadInputException(e.getMessage());
        }
      } catch (CannotServeException e) {
        throw new BadInputException(e.getMessage());
      }
    }
  }

  /** The store; whoever asks for it while it is found that it cannot be opened is told why. */
  private static Store opened(CompletableFuture<Store> opening) {
    try {
      return opening.join();
    } catch (CompletionException e) {
      if (e.getCause() instanceof BadInputException known) {
        throw new StoreException(StoreException.Reason.UNREACHABLE, known.sentence(), known);
      }
      throw e;
    }
  }

  private static void told(Throwable bug, PrintWriter err) {
    err.println("grovewright: something went wrong, and this is our bug, not yours.");
    bug.printStackTrace(err);
    err.flush();
  }
}
