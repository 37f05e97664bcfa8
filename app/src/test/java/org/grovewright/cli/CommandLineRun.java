package org.grovewright.cli;

import java.io.PrintWriter;
import java.io.StringWriter;

/**
 * One run of the program within the test.
 *
 * @param code exit code
 * @param out what it printed as its result
 * @param err what it said besides
 */
record CommandLineRun(int code, String out, String err) {
  static CommandLineRun of(String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = GrovewrightCommand.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
    return new CommandLineRun(code, out.toString(), err.toString());
  }
}
