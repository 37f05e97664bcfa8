package org.grovewright.cli;

import java.io.PrintWriter;
import java.util.Timer;
import java.util.TimerTask;

/** Tells the user that work goes on, if it takes longer than a second. */
final class Patience implements AutoCloseable {
  private static final long PATIENCE_MS = 1000;

  private final Timer timer = new Timer("patience", true);

  /**
   * Starts to wait.
   *
   * @param err takes the message
   * @param what what is being done, in a few words
   */
  Patience(PrintWriter err, String what) {
    timer.schedule(
        new TimerTask() {
          @Override
          public void run() {
            err.println("grovewright: " + what + " ...");
            err.flush();
          }
        },
        PATIENCE_MS);
  }

  @Override
  public void close() {
    timer.cancel();
  }
}
