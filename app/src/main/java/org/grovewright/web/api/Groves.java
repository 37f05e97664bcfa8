package org.grovewright.web.api;

import com.github.benmanes.caffeine.cache.AsyncCache;
import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.edit.DescriptionEditor;
import org.grovewright.formats.description.DescriptionException;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.description.DescriptionReader.Described;
import org.grovewright.model.Grove;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.grovewright.web.api.ApiException.FieldProblem;

/**
 * Groves that were read and plans that were made, by the text of their description: undo finds the
 * plan of before again. Plans are made one after another in the background.
 */
public final class Groves implements AutoCloseable {
  private static final int KEPT = 40;

  /** Sites in which plants are being moved; what is known of each takes some memory. */
  private static final int DRAGGED = 4;

  private static final Duration DRAG_ENDS = Duration.ofMinutes(5);

  private final CompletableFuture<Catalogue> catalogue;
  private final ExecutorService planner;
  private final Cache<String, Described> read = Caffeine.newBuilder().maximumSize(KEPT).build();
  private final AsyncCache<String, Plan> plans;
  private final Cache<String, Drag> drags =
      Caffeine.newBuilder().maximumSize(DRAGGED).expireAfterAccess(DRAG_ENDS).build();

  /**
   * Groves read with a catalogue.
   *
   * @param catalogue the catalogue, which may still be on its way
   */
  public Groves(CompletableFuture<Catalogue> catalogue) {
    this.catalogue = catalogue;
    this.planner =
        Executors.newSingleThreadExecutor(
            task -> {
              Thread thread = new Thread(task, "planner");
              thread.setDaemon(true);
              return thread;
            });
    this.plans = Caffeine.newBuilder().maximumSize(KEPT).executor(Runnable::run).buildAsync();
  }

  /** The catalogue. */
  public Catalogue catalogue() {
    return catalogue.join();
  }

  /** An editor of descriptions. */
  DescriptionEditor editor() {
    return new DescriptionEditor(reader());
  }

  /** A reader of descriptions that name no files. */
  DescriptionReader reader() {
    return new DescriptionReader(
        catalogue(),
        (file, windHeight, source) -> {
          throw new IllegalStateException("descriptions from the browser name no files");
        });
  }

  /**
   * The grove of a description.
   *
   * @throws ApiException if the text is not a description, with all that is wrong
   */
  Described described(String text) {
    Described known = read.getIfPresent(text);
    if (known == null) {
      known = describe(text);
      read.put(text, known);
    }
    return known;
  }

  /** The grove of a text that is not to be kept. */
  Described describe(String text) {
    return told(() -> reader().describe(text, "description"));
  }

  /** What becomes of a description while its plants are moved. */
  Drag drag(String text) {
    return drags.get(
        text, key -> new Drag(told(() -> reader().open(key, "description")), catalogue()));
  }

  /** What reading gives, or what is wrong with the description, by field. */
  static <T> T told(Supplier<T> reading) {
    try {
      return reading.get();
    } catch (DescriptionException e) {
      throw ApiException.problems(
          e.problems().stream()
              .map(p -> new FieldProblem(p.path(), p.line(), p.column(), p.sentence()))
              .toList());
    }
  }

  /**
   * The plan of a description, made or in the making.
   *
   * @throws ApiException if the text is not a description: at once and not from the making, which
   *     the cache would write to the log as a fault of the program
   */
  CompletableFuture<Plan> plan(String text) {
    return plans.get(
        text,
        (key, executor) -> {
          Grove grove = described(key).grove();
          return CompletableFuture.supplyAsync(() -> Planner.plan(grove, catalogue()), planner);
        });
  }

  /** The plan of a description if it is there within a time. */
  Optional<Plan> planWithin(String text, long millis) {
    try {
      return Optional.of(plan(text).get(millis, TimeUnit.MILLISECONDS));
    } catch (TimeoutException e) {
      return Optional.empty();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    } catch (ExecutionException e) {
      throw failure(e.getCause());
    }
  }

  /** The plan of a description. */
  public Plan planNow(String text) {
    try {
      return plan(text).join();
    } catch (CompletionException e) {
      throw failure(e.getCause());
    }
  }

  /** The plan of a grove that is only looked at. */
  Plan planOf(Grove grove) {
    try {
      return CompletableFuture.supplyAsync(() -> Planner.plan(grove, catalogue()), planner).join();
    } catch (CompletionException e) {
      throw failure(e.getCause());
    }
  }

  private static RuntimeException failure(Throwable cause) {
    if (cause instanceof ApiException known) {
      return ApiException.problems(
          known.problems().isEmpty()
              ? List.of(new FieldProblem("", 0, 0, known.sentence()))
              : known.problems());
    }
    return new IllegalStateException("the plan cannot be made", cause);
  }

  @Override
  public void close() {
    planner.shutdownNow();
  }
}
