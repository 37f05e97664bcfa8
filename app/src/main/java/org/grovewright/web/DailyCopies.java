package org.grovewright.web;

import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.grovewright.store.Store;
import org.grovewright.store.StoreException;

/** Has the database copied once a day while the program runs. */
final class DailyCopies implements AutoCloseable {
  private static final long FIRST_AFTER_S = 20;
  private static final long THEN_EVERY_S = 3600;

  private final ScheduledThreadPoolExecutor timer;

  DailyCopies(Supplier<Store> store, Consumer<Throwable> log) {
    timer =
        new ScheduledThreadPoolExecutor(
            1,
            task -> {
              Thread thread = new Thread(task, "daily copies");
              thread.setDaemon(true);
              return thread;
            });
    timer.scheduleWithFixedDelay(
        () -> copy(store, log), FIRST_AFTER_S, THEN_EVERY_S, TimeUnit.SECONDS);
  }

  private static void copy(Supplier<Store> store, Consumer<Throwable> log) {
    try {
      store.get().copyIfDue();
    } catch (StoreException e) {
      // Such as a full disk: whoever saves is told; the next hour tries again.
    } catch (RuntimeException e) {
      log.accept(e);
    }
  }

  @Override
  public void close() {
    timer.shutdownNow();
  }
}
